import { haveWords, numberOfPile } from '../pile-names.ts';
import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('ro');
const ENTRY = { one: 'înregistrare', few: 'înregistrări', other: 'de înregistrări' };
const WORDS = ['Groasă', 'Medie', 'Subțire'];

export const common: Partial<Catalogue['common']> = {
  appName: 'Evencourse',
  slates: (n) => many(n, { one: 'placă', few: 'plăci', other: 'de plăci' }),
  courses: (n) => many(n, { one: 'rând', few: 'rânduri', other: 'de rânduri' }),
  pallets: (n) => many(n, { one: 'palet', few: 'paleți', other: 'de paleți' }),
  piles: (n) => many(n, { one: 'stivă', few: 'stive', other: 'de stive' }),
  entries: (n) => many(n, ENTRY),
  pileWord: (pile, piles) => (haveWords(piles) ? WORDS[pile - 1] : ''),
  pile: (pile, piles) =>
    haveWords(piles) ? `${pile} ${WORDS[pile - 1]}` : `Stiva ${numberOfPile(pile, piles)}`,
  back: 'Înapoi',
  save: 'Salvează',
  cancel: 'Renunță',
  undo: 'Anulează',
  print: 'Tipărește',
  sheet: {
    page: (page, pages) => `pagina ${page} din ${pages}`,
    mark: (mark) => `amprenta ${mark}`,
    goesOn: 'continuare'
  },
  close: 'Închide',
  remove: 'Scoate',
  change: 'Schimbă',
  online: 'Conectat',
  offline: 'Fără rețea: totul merge și rămâne pe acest aparat',
  lastSaved: (what) => `Ultima salvare: ${what}`,
  nothingSaved: 'Nimic salvat încă',
  unexported: (n) => (n === 0 ? 'Copie la zi' : `${many(n, ENTRY)} fără copie`),
  notSaved: 'NESALVAT',
  retry: 'Încearcă din nou',
  diskFull:
    'Aparatul nu mai are loc, înregistrarea nu s-a salvat. Eliberați spațiu sau faceți o copie a lucrării și treceți pe alt aparat; apoi încercați din nou.',
  dataCleared:
    'Browserul a șters datele aplicației de pe acest aparat cât timp pagina era deschisă. Ce vedeți este tot ce a rămas: notați sau tipăriți ce vă trebuie, apoi reîncărcați pagina și restaurați copia.',
  saveFailed: (detail) =>
    `Browserul nu a salvat înregistrarea (${detail}). Este încă pe ecran: încercați din nou.`,
  leaveUnsaved: (n) =>
    `${many(n, { one: 'înregistrare nesalvată s-ar pierde', few: 'înregistrări nesalvate s-ar pierde', other: 'de înregistrări nesalvate s-ar pierde' })}. Părăsiți totuși lucrarea?`,
  loading: 'Se deschide…',
  jobMissing:
    'Lucrarea nu este pe acest aparat. Deschideți lista lucrărilor sau aduceți-o dintr-o copie.',
  toJobs: 'Toate lucrările',
  steps: {
    overview: 'Lucrare',
    delivery: 'Livrare',
    sort: 'Sortare',
    grades: 'Clase',
    roof: 'Acoperiș',
    courses: 'Rânduri',
    lay: 'Montaj',
    sheet: 'Trasare',
    crew: 'Echipă',
    join: 'Intră într-o lucrare',
    settings: 'Setări'
  },
  unexpected: 'Ceva nu a mers pe acest ecran. Ce s-a salvat este în siguranță.',
  skipToContent: 'La conținut',
  updateWaiting: 'O versiune nouă este gata. Așteaptă acordul dumneavoastră; nu se pierde nimic.',
  updateNow: 'Încarc-o acum',
  stepsLabel: 'Pașii lucrării',
  stepStates: { done: 'gata', now: 'acum', open: 'urmează' },
  language: 'Limba',
  languageReview:
    'Spaniola, franceza, poloneza și româna acoperă sortarea, împărțirea rapidă, fotografiile, echipa și etichetele tipărite; revizuirea de către vorbitori nativi urmează. Restul este în engleză.',
  languageFailed:
    'Limba nu este încă pe aparat. Conectați-vă o dată la rețea și alegeți-o din nou.',
  openFailed: (detail) =>
    `Browserul nu a deschis jurnalul aparatului (${detail}). Închideți alte file ale aplicației și reîncărcați; nu s-a șters nimic.`,
  events: {
    jobOpened: 'lucrare deschisă',
    jobRenamed: 'lucrare redenumită',
    jobSettingsSet: 'setări',
    slateSpecSet: 'mărimea plăcii',
    slateSizesSet: 'mărimi de ardezie',
    setCoursesChosen: 'rânduri pe mărime',
    deliveryDeclared: 'comandă',
    palletAdded: 'palet',
    sampleDrawn: 'lista probei',
    slateGauged: 'placă măsurată',
    readingHeld: 'măsurătoare în așteptare',
    slateTapped: 'placă sortată',
    slateSetAside: 'placă pusă deoparte',
    slateChecked: 'verificare',
    stackMeasured: 'teanc măsurat',
    pileCounted: 'stivă numărată',
    entryVoided: 'anulare',
    gradesSet: 'clase',
    slopeSet: 'versant',
    slopeRemoved: 'versant scos',
    planAdopted: 'plan',
    courseLaid: 'rând montat',
    coursePartLaid: 'rând montat în parte',
    slatesLost: 'plăci pierdute',
    slatesMoved: 'ardezii mutate pe altă stivă',
    defectNoted: 'defect',
    photoAdded: 'fotografie',
    gaugeStudied: 'studiul șublerului',
    copyKept: 'copia unui telefon păstrată',
    jobRescued: 'recuperată dintr-o lucrare deteriorată',
    verdictSigned: 'verdict'
  }
};

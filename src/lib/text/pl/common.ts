import { haveWords, numberOfPile } from '../pile-names.ts';
import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('pl');
const ENTRY = { one: 'wpis', few: 'wpisy', many: 'wpisów', other: 'wpisu' };
const WORDS = ['Gruba', 'Średnia', 'Cienka'];

export const common: Partial<Catalogue['common']> = {
  appName: 'Evencourse',
  slates: (n) => many(n, { one: 'płytka', few: 'płytki', many: 'płytek', other: 'płytki' }),
  courses: (n) => many(n, { one: 'rząd', few: 'rzędy', many: 'rzędów', other: 'rzędu' }),
  pallets: (n) => many(n, { one: 'paleta', few: 'palety', many: 'palet', other: 'palety' }),
  piles: (n) => many(n, { one: 'stos', few: 'stosy', many: 'stosów', other: 'stosu' }),
  entries: (n) => many(n, ENTRY),
  pileWord: (pile, piles) => (haveWords(piles) ? WORDS[pile - 1] : ''),
  pile: (pile, piles) =>
    haveWords(piles) ? `${pile} ${WORDS[pile - 1]}` : `Stos ${numberOfPile(pile, piles)}`,
  back: 'Wróć',
  save: 'Zapisz',
  cancel: 'Anuluj',
  undo: 'Cofnij',
  print: 'Drukuj',
  sheet: {
    page: (page, pages) => `strona ${page} z ${pages}`,
    mark: (mark) => `odcisk ${mark}`,
    goesOn: 'ciąg dalszy'
  },
  close: 'Zamknij',
  remove: 'Usuń',
  change: 'Zmień',
  online: 'Połączono',
  offline: 'Bez sieci: wszystko działa i zostaje na tym urządzeniu',
  lastSaved: (what) => `Ostatni zapis: ${what}`,
  nothingSaved: 'Nic jeszcze nie zapisano',
  unexported: (n) => (n === 0 ? 'Kopia aktualna' : `${many(n, ENTRY)} bez kopii`),
  notSaved: 'NIE ZAPISANO',
  retry: 'Spróbuj ponownie',
  diskFull:
    'Na urządzeniu nie ma miejsca, wpis nie został zapisany. Zwolnij miejsce albo zrób kopię budowy i przejdź na inne urządzenie; potem spróbuj ponownie.',
  dataCleared:
    'Przeglądarka usunęła dane tej aplikacji z urządzenia, gdy strona była otwarta. To, co widać, to wszystko, co zostało: zapisz lub wydrukuj, co potrzebne, potem wczytaj stronę ponownie i przywróć kopię.',
  saveFailed: (detail) =>
    `Przeglądarka nie zapisała wpisu (${detail}). Jest nadal na ekranie: spróbuj ponownie.`,
  leaveUnsaved: (n) =>
    `${many(n, { one: 'niezapisany wpis przepadnie', few: 'niezapisane wpisy przepadną', many: 'niezapisanych wpisów przepadnie', other: 'niezapisanego wpisu przepadnie' })}. Mimo to opuścić budowę?`,
  loading: 'Otwieranie…',
  jobMissing: 'Tej budowy nie ma na urządzeniu. Otwórz listę budów albo przywróć ją z kopii.',
  toJobs: 'Wszystkie budowy',
  steps: {
    overview: 'Budowa',
    delivery: 'Dostawa',
    sort: 'Sortuj',
    grades: 'Klasy',
    roof: 'Dach',
    courses: 'Rzędy',
    lay: 'Układaj',
    sheet: 'Trasowanie',
    crew: 'Ekipa',
    join: 'Dołącz do budowy',
    settings: 'Ustawienia'
  },
  unexpected: 'Coś poszło źle na tym ekranie. To, co zapisano, jest bezpieczne.',
  skipToContent: 'Przejdź do treści',
  updateWaiting: 'Jest nowa wersja. Czeka na twoją zgodę; nic nie zginie.',
  updateNow: 'Wczytaj teraz',
  stepsLabel: 'Kroki budowy',
  stepStates: { done: 'gotowe', now: 'teraz', open: 'później' },
  language: 'Język',
  languageReview:
    'Hiszpański, francuski, polski i rumuński obejmują sortowanie, szybki podział, zdjęcia, ekipę i drukowane karty; przegląd przez rodzimych użytkowników jest przed nami. Reszta jest po angielsku.',
  languageFailed:
    'Tego języka nie ma jeszcze na urządzeniu. Połącz się raz z siecią i wybierz ponownie.',
  openFailed: (detail) =>
    `Przeglądarka nie otworzyła dziennika urządzenia (${detail}). Zamknij inne karty aplikacji i wczytaj stronę ponownie; niczego nie usunięto.`,
  events: {
    jobOpened: 'otwarto budowę',
    jobRenamed: 'zmieniono nazwę budowy',
    jobSettingsSet: 'ustawienia',
    slateSpecSet: 'wymiar płytki',
    slateSizesSet: 'rozmiary łupka',
    setCoursesChosen: 'rzędy każdego rozmiaru',
    deliveryDeclared: 'zamówienie',
    palletAdded: 'paleta',
    sampleDrawn: 'lista próbki',
    slateGauged: 'zmierzono płytkę',
    readingHeld: 'pomiar czeka',
    slateTapped: 'posortowano płytkę',
    slateSetAside: 'odłożono płytkę',
    slateChecked: 'sprawdzenie',
    stackMeasured: 'zmierzono stertę',
    pileCounted: 'policzono stos',
    entryVoided: 'cofnięcie',
    gradesSet: 'klasy',
    slopeSet: 'połać',
    slopeRemoved: 'usunięto połać',
    planAdopted: 'plan',
    courseLaid: 'ułożono rząd',
    coursePartLaid: 'ułożono część rzędu',
    slatesLost: 'utracone płytki',
    slatesMoved: 'przełożono na inny stos',
    defectNoted: 'wada',
    photoAdded: 'zdjęcie',
    gaugeStudied: 'badanie przyrządu',
    copyKept: 'zachowano kopię telefonu',
    jobRescued: 'uratowano z uszkodzonej budowy',
    verdictSigned: 'ocena'
  }
};

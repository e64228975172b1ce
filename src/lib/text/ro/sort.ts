import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('ro');
const SLATE = { one: 'placă', few: 'plăci', other: 'de plăci' };
const ENTRY = { one: 'înregistrare', few: 'înregistrări', other: 'de înregistrări' };

export const sort: Catalogue['sort'] = {
  title: 'Sortare',
  ready: {
    gauge: 'Măsurați o placă',
    hand: 'Atingeți stiva fiecărei plăci'
  },
  sample: {
    count: (label: string, done: number, of: number) =>
      `Paletul ${label}: ${done > of ? `${done} măsurate` : `${done} din ${of}`}.`,
    take: (label: string) => `Luați paletul ${label}`,
    enough: 'Destule măsurători: stabiliți clasele.',
    list: (done: number, of: number, label: string, layer: number, place: number) =>
      `Lista probei: ${done} din ${of}. Urmează: paletul ${label}, stratul ${layer}, placa ${place}`,
    toList: 'Măsurați-o'
  },
  pallet: {
    named: (label) => `paletul ${label}`,
    label: 'De pe paletul',
    more: 'Paleți',
    left: (left, slates) =>
      slates === 0
        ? 'nenumărat'
        : left === 0
          ? 'gol'
          : many(left, { one: 'rămasă', few: 'rămase', other: 'rămase' }),
    measured: (n) => many(n, { one: 'măsurată', other: 'măsurate' }),
    over: (n) => many(n, { other: 'peste etichetă' })
  },
  count: 'Numără stivele',
  mode: { hand: 'Cu mâna', gauge: 'Șubler' },
  entry: 'Citire',
  keypad: {
    label: 'Taste',
    decimal: 'Virgulă',
    back: 'Șterge cifra',
    clear: 'Șterge',
    enter: 'Ia numărul'
  },
  take: (number) => `Ia ${number}`,
  told: {
    byHand: 'cu mâna',
    from: (label) => `de pe paletul ${label}`,
    saving: 'se salvează…',
    saved: 'salvat',
    notSaved: 'NESALVAT',
    borderline: 'La limită',
    borderlineWhy: (threshold) => `foarte aproape de ${threshold}: ambele stive sunt bune`,
    tooThick: 'Prea groasă, verificați',
    tooThin: 'Prea subțire, verificați',
    outsideOrder: (band) => `în afara comenzii, ${band}`,
    beyondSpread: (over) =>
      `cu ${over} dincolo de aproape toate până acum: măsoară din nou sau pune deoparte`,
    sample: 'Măsurată',
    sampleWhy: 'Puneți-o înapoi pe paletul ei.',
    toGrades: 'Stabilește clasele',
    setAside: 'Pusă deoparte',
    taper: (taper) => `pană ${taper}`,
    point: (done, wanted) => `Punctul ${done} din ${wanted}`,
    pointWhy: 'Măsurați punctul următor al aceleiași plăci.',
    side: { left: 'Măsoară partea stângă', right: 'Acum partea dreaptă' },
    sideWhy: 'Aceeași ardezie, lângă margine, la aceeași înălțime.',
    again: 'Nu mișcați: încă o dată',
    againWhy: (first) => `Citit ${first}; măsurați iar același punct.`,
    moved: 'Cele două citiri diferă',
    movedWhy: (first, second) => `${first}, apoi ${second}: măsurați iar punctul.`,
    checkAgrees: 'Verificare: se potrivește',
    checkDiffers: 'Verificare: diferă',
    checkWhy: (thickness, felt, gauged) => `${thickness}: cu mâna ${felt}, cu șublerul ${gauged}`,
    undone: 'Anulat'
  },
  refused: {
    title: 'Nepreluat',
    empty: 'Niciun număr. Scrieți grosimea, de exemplu 6,4.',
    notANumber: (text) => `„${text}” nu este un număr. Scrieți grosimea, de exemplu 6,4.`,
    severalNumbers: (text) => `„${text}” conține mai multe numere. Măsurați iar.`,
    severalDecimals: (text) =>
      `„${text}” are mai multe virgule. Scrieți un singur număr, de exemplu 6,4.`,
    unfinished: (text) => `„${text}” se termină în virgulă. Completați sau ștergeți-o.`,
    tooManyDigits: (text) => `„${text}” are prea multe zecimale. Măsurați iar.`,
    unknownUnit: (unit) => `Unitatea „${unit}” nu este cunoscută. Folosiți mm sau țoli.`,
    negative: (text) => `${text} este sub zero. Aduceți șublerul la zero și citiți iar.`,
    zero: 'Șublerul arată zero. Închideți-l pe placă și citiți iar.',
    tooThin: (value, limit) =>
      `${value} este prea subțire pentru o placă: cel puțin ${limit}. Citiți iar.`,
    tooThick: (value, limit) =>
      `${value} este prea gros pentru o placă: cel mult ${limit}. Citiți iar.`,
    looksLikeInches: (text) => `${text} este prea subțire în milimetri. Sunt țoli?`,
    looksLikeMm: (text) => `${text} este prea gros în țoli. Sunt milimetri?`,
    missingDecimal: (text) => `${text} este prea gros. Lipsește virgula?`,
    cutShort: (text) => `A venit doar „${text}”, o parte din citire. Măsurați iar.`,
    interrupted: (text) => `„${text}” a venit cu o pauză lungă, pot fi două citiri. Măsurați iar.`,
    noPallet: (text) => `Alegeți întâi paletul; ${text} așteaptă aici și nu este salvat.`
  },
  unit: {
    ask: (unit) => `Citirile sunt în ${unit}?`,
    mm: 'milimetri',
    in: 'țoli',
    yes: (unit) => `Da, ${unit}`,
    other: (unit) => `Nu, ${unit}`
  },
  setAside: {
    button: 'Deoparte',
    title: 'Deoparte: de ce?',
    useTitle: 'Pentru',
    which: 'Care placă?',
    newSlate: 'Cea din mână',
    lastSlate: (what) => `Ultima (${what})`,
    reasons: {
      broken: 'Spartă',
      dullRing: 'Sunet surd',
      twisted: 'Strâmbă sau bombată',
      tapered: 'În pană',
      wrongSize: 'Altă mărime',
      inclusion: 'Incluziune',
      colour: 'Culoare',
      other: 'Altceva'
    },
    uses: { undereave: 'Sub streașină', cutPiece: 'Bucată tăiată', return: 'Retur', scrap: 'Rebut' }
  },
  undo: {
    last: 'Anulează',
    list: 'Înregistrări',
    gauged: (thickness, pile) => `${thickness}, ${pile}`,
    sample: (thickness) => `${thickness}, măsurată`,
    tapped: (pile) => `${pile}, cu mâna`,
    setAside: (reason) => `Deoparte: ${reason}`,
    checked: (thickness) => `Verificare ${thickness}`,
    pallet: (label) => `Palet ${label} adăugat`
  },
  check: {
    ask: (pile) => `Verificare: măsurați placa tocmai pusă pe ${pile}.`,
    why: 'Învață ce numește mâna groasă și subțire.',
    type: 'Scrie',
    skip: 'Nu acum'
  },
  sides: {
    next: 'Ardezia următoare: măsurați partea stângă și cea dreaptă',
    this: 'Stânga și dreapta'
  },
  tail: {
    text: 'Măsurați în treimea de jos, departe de muchia cioplită.',
    drawing: 'O placă cu locul de măsurat lângă capătul de jos',
    close: 'Văzut'
  },
  photos: 'Fotografii',
  tally: {
    title: 'Pe stive',
    pace: (n) => `${n} plăci pe oră`,
    noPace: 'Ritmul apare după cinci minute',
    left: (n) => `Pe paleți: ${many(n, SLATE)}`,
    toFinish: (time) => `cam ${time} până la capăt`,
    hours: (hours, minutes) => (hours > 0 ? `${hours} h ${minutes} min` : `${minutes} min`),
    perPallet: 'Plăci pe paleți',
    pallet: 'Palet',
    remaining: 'Rămase',
    setAside: 'Aparte',
    found: 'Numărate pe stive, palet necunoscut',
    total: 'Tot'
  },
  day: {
    button: 'Ziua'
  },
  options: {
    button: 'Opțiuni',
    endingLearnt: 'Învățat: șublerul nu trimite Enter; o pauză ia citirea.',
    tags: 'Etichete și foaie de tipărit'
  },
  caution:
    'Ridicați cu ajutor, stivuiți jos și drept, purtați mănuși: muchiile taie. Decid regulile locale și meseriașii autorizați.',
  unsaved: (n) => `${many(n, ENTRY)} de salvat; rămân pe acest ecran.`,
  live: (n, last) => (n > 1 ? `${many(n, ENTRY)}. Ultima: ${last}` : last)
};

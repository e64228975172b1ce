import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('pl');
const SLATE = { one: 'płytka', few: 'płytki', many: 'płytek', other: 'płytki' };
const ENTRY = { one: 'wpis', few: 'wpisy', many: 'wpisów', other: 'wpisu' };

export const sort: Catalogue['sort'] = {
  title: 'Sortuj',
  ready: {
    gauge: 'Zmierz płytkę',
    hand: 'Dotknij stosu każdej płytki'
  },
  sample: {
    count: (label: string, done: number, of: number) =>
      `Paleta ${label}: ${done > of ? `zmierzono ${done}` : `${done} z ${of}`}.`,
    take: (label: string) => `Weź paletę ${label}`,
    enough: 'Pomiarów wystarczy: ustal klasy.',
    list: (done: number, of: number, label: string, layer: number, place: number) =>
      `Lista próbki: ${done} z ${of}. Następna: paleta ${label}, warstwa ${layer}, płytka ${place}`,
    toList: 'Zmierz ją'
  },
  pallet: {
    named: (label) => `paleta ${label}`,
    label: 'Z palety',
    more: 'Palety',
    left: (left, slates) =>
      slates === 0
        ? 'nie policzono'
        : left === 0
          ? 'pusta'
          : `zostało ${many(left, { other: '' }).trim()}`,
    measured: (n) => `zmierzono ${many(n, { other: '' }).trim()}`,
    over: (n) => many(n, { other: 'ponad etykietę' })
  },
  count: 'Policz stosy',
  mode: { hand: 'Ręką', gauge: 'Przyrząd' },
  entry: 'Odczyt',
  keypad: {
    label: 'Klawisze',
    decimal: 'Przecinek',
    back: 'Skasuj cyfrę',
    clear: 'Skasuj',
    enter: 'Przyjmij liczbę'
  },
  take: (number) => `Przyjmij ${number}`,
  told: {
    byHand: 'ręką',
    from: (label) => `z palety ${label}`,
    saving: 'zapisywanie…',
    saved: 'zapisano',
    notSaved: 'NIE ZAPISANO',
    borderline: 'Na granicy',
    borderlineWhy: (threshold) => `tuż przy ${threshold}: oba stosy są dobre`,
    tooThick: 'Za gruba, sprawdź',
    tooThin: 'Za cienka, sprawdź',
    outsideOrder: (band) => `poza zamówieniem, ${band}`,
    beyondSpread: (over) =>
      `${over} poza prawie wszystkimi dotąd: zmierz ponownie albo odłóż na bok`,
    sample: 'Zmierzono',
    sampleWhy: 'Odłóż ją na jej paletę.',
    toGrades: 'Ustal klasy',
    setAside: 'Odłożono',
    taper: (taper) => `klin ${taper}`,
    point: (done, wanted) => `Punkt ${done} z ${wanted}`,
    pointWhy: 'Zmierz następny punkt tej samej płytki.',
    side: { left: 'Zmierz lewy bok', right: 'Teraz prawy bok' },
    sideWhy: 'Ta sama płytka, przy krawędzi, na jednej wysokości.',
    again: 'Nie ruszaj: jeszcze raz',
    againWhy: (first) => `Odczyt ${first}; zmierz ten sam punkt ponownie.`,
    moved: 'Odczyty się różnią',
    movedWhy: (first, second) => `${first}, potem ${second}: zmierz ten punkt ponownie.`,
    checkAgrees: 'Sprawdzenie: zgodne',
    checkDiffers: 'Sprawdzenie: różne',
    checkWhy: (thickness, felt, gauged) => `${thickness}: ręką ${felt}, przyrządem ${gauged}`,
    undone: 'Cofnięto'
  },
  refused: {
    title: 'Nie przyjęto',
    empty: 'Nie ma liczby. Wpisz grubość, na przykład 6,4.',
    notANumber: (text) => `„${text}” nie jest liczbą. Wpisz grubość, na przykład 6,4.`,
    severalNumbers: (text) => `„${text}” zawiera więcej niż jedną liczbę. Zmierz ponownie.`,
    severalDecimals: (text) =>
      `„${text}” ma więcej niż jeden przecinek. Wpisz jedną liczbę, na przykład 6,4.`,
    unfinished: (text) => `„${text}” kończy się przecinkiem. Dokończ albo usuń go.`,
    tooManyDigits: (text) => `„${text}” ma za dużo miejsc po przecinku. Zmierz ponownie.`,
    unknownUnit: (unit) => `Nieznana jednostka „${unit}”. Użyj mm albo cali.`,
    negative: (text) => `${text} jest poniżej zera. Wyzeruj przyrząd i odczytaj ponownie.`,
    zero: 'Przyrząd pokazuje zero. Zamknij go na płytce i odczytaj ponownie.',
    tooThin: (value, limit) =>
      `${value} to za cienko na płytkę: najmniej ${limit}. Odczytaj ponownie.`,
    tooThick: (value, limit) =>
      `${value} to za grubo na płytkę: najwyżej ${limit}. Odczytaj ponownie.`,
    looksLikeInches: (text) => `${text} to za cienko w milimetrach. Czy to cale?`,
    looksLikeMm: (text) => `${text} to za grubo w calach. Czy to milimetry?`,
    missingDecimal: (text) => `${text} to za grubo. Czy brakuje przecinka?`,
    cutShort: (text) => `Przyszło tylko „${text}”, część odczytu. Zmierz ponownie.`,
    interrupted: (text) =>
      `„${text}” przyszło z długą przerwą, to mogą być dwa odczyty. Zmierz ponownie.`,
    noPallet: (text) => `Najpierw wybierz paletę; ${text} czeka tutaj i nie jest zapisane.`
  },
  unit: {
    ask: (unit) => `Czy odczyty to ${unit}?`,
    mm: 'milimetry',
    in: 'cale',
    yes: (unit) => `Tak, ${unit}`,
    other: (unit) => `Nie, ${unit}`
  },
  setAside: {
    button: 'Odłóż',
    title: 'Odłóż: dlaczego?',
    useTitle: 'Na',
    which: 'Która płytka?',
    newSlate: 'Ta w ręce',
    lastSlate: (what) => `Ostatnia (${what})`,
    reasons: {
      broken: 'Pęknięta',
      dullRing: 'Głuchy dźwięk',
      twisted: 'Skręcona lub wygięta',
      tapered: 'Klinowa',
      wrongSize: 'Zły wymiar',
      inclusion: 'Wtrącenie',
      colour: 'Barwa',
      other: 'Inne'
    },
    uses: { undereave: 'Pod okap', cutPiece: 'Docinka', return: 'Zwrot', scrap: 'Odpad' }
  },
  undo: {
    last: 'Cofnij',
    list: 'Wpisy',
    gauged: (thickness, pile) => `${thickness}, ${pile}`,
    sample: (thickness) => `${thickness}, zmierzono`,
    tapped: (pile) => `${pile}, ręką`,
    setAside: (reason) => `Odłożono: ${reason}`,
    checked: (thickness) => `Sprawdzenie ${thickness}`,
    pallet: (label) => `Dodano paletę ${label}`
  },
  check: {
    ask: (pile) => `Sprawdzenie: zmierz płytkę odłożoną właśnie na ${pile}.`,
    why: 'Uczy, co twoja ręka nazywa grubym i cienkim.',
    type: 'Wpisz',
    skip: 'Nie teraz'
  },
  sides: {
    next: 'Następna płytka: zmierz lewą i prawą stronę',
    this: 'Lewy i prawy bok'
  },
  tail: {
    text: 'Mierz w dolnej trzeciej części, z dala od obrobionej krawędzi.',
    drawing: 'Płytka z miejscem pomiaru przy dolnym końcu',
    close: 'Wiem'
  },
  photos: 'Zdjęcia',
  tally: {
    title: 'Na stosach',
    pace: (n) => `${n} płytek na godzinę`,
    noPace: 'Tempo po pięciu minutach',
    left: (n) => `Na paletach: ${many(n, SLATE)}`,
    toFinish: (time) => `do końca około ${time}`,
    hours: (hours, minutes) => (hours > 0 ? `${hours} h ${minutes} min` : `${minutes} min`),
    perPallet: 'Płytki według palet',
    pallet: 'Paleta',
    remaining: 'Zostało',
    setAside: 'Odłoż.',
    found: 'Policzone na stosach, paleta nieznana',
    total: 'Razem'
  },
  day: {
    button: 'Dzień'
  },
  options: {
    button: 'Opcje',
    endingLearnt: 'Nauczono: przyrząd nie wysyła Enter; odczyt przyjmuje przerwa.',
    tags: 'Karty i arkusz do druku'
  },
  caution:
    'Podnoś z pomocą, układaj nisko i równo, noś rękawice: krawędzie tną. Decydują miejscowe przepisy i uprawnieni fachowcy.',
  unsaved: (n) => `${many(n, ENTRY)} do zapisania; zostaje na tym ekranie.`,
  live: (n, last) => (n > 1 ? `${many(n, ENTRY)}. Ostatni: ${last}` : last)
};

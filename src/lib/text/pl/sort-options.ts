import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('pl');
const SLATE = { one: 'płytka', few: 'płytki', many: 'płytek', other: 'płytki' };

export const sortOptions: Catalogue['sortOptions'] = {
  title: 'Opcje tego telefonu',
  pallets: {
    none: 'Nie ma jeszcze palety',
    noneWhy: 'Wpisz pierwszą paletę, aby liczyć każdą płytkę tam, skąd pochodzi.',
    chooserTitle: 'Palety',
    chooserHint:
      'Dotknij palety, z której bierzesz. Trzymaj kilka otwartych: branie z trzech lub więcej miesza barwę.',
    keepOpen: 'Otwarta',
    name: 'Nazwa na palecie',
    slates: 'Liczba płytek',
    slatesHint: 'Jak na etykiecie. 0, jeśli nikt nie wie.',
    mixed: 'Różne długości razem',
    add: 'Dodaj paletę',
    addTitle: 'Następna paleta',
    nameMissing: 'Nadaj palecie nazwę, na przykład A.',
    nameTaken: (name) => `Jest już paleta ${name}. Nadaj tej inną nazwę.`,
    slatesWrong: 'Wpisz liczbę całkowitą od 0 do 100 000.'
  },
  day: {
    title: 'Dzień do tej pory',
    sorted: (n) => `dziś ${many(n, SLATE)}`,
    worked: (time) => `${time} sortowania bez przerw`,
    ofJob: 'Liczby dotyczą budowy, nigdy osoby.',
    setAsideTitle: 'Odłożone, cała budowa'
  },
  undo: {
    cut: 'Tu można cofnąć tylko ostatnie 20 wpisów. Ze starszych odczytów Klasy wskażą ten, który odstaje.',
    title: 'Ostatnie dziesięć wpisów',
    none: 'Nie ma czego cofać.'
  },
  checked: {
    belongs: (pile) => `Jej miejsce: ${pile}.`,
    put: (pile) => `Połóż na: ${pile}`
  },
  palletRemoved: {
    remove: 'Usuń tę paletę',
    done: (label) => `Paleta ${label} usunięta.`,
    bringBack: 'Przywróć',
    stays:
      'Paleta, dla której wpisano płytki, stos lub miejsce próby, zostaje. Popraw jej nazwę lub liczbę w Dostawie.'
  },
  held: (n, reading) =>
    `${many(n, {
      one: 'pomiar czeka na odpowiedź',
      few: 'pomiary czekają na odpowiedź',
      other: 'pomiarów czeka na odpowiedź'
    })}: ${reading}`,
  sound: 'Ton każdego stosu (niższy to grubsza)',
  vibration: 'Wibracje',
  speech: 'Mów nazwę stosu',
  noVoice: 'Urządzenie nie ma własnego głosu w tym języku.',
  leftHand: 'Układ dla leworęcznych',
  awake: 'Nie wygaszaj ekranu',
  awakeMissing: 'Ta przeglądarka nie umie utrzymać ekranu.',
  holdStill: 'Mierz każdy punkt dwa razy',
  points: 'Punkty mierzone na płytce',
  nickname: 'Kto sortuje (przezwisko albo nic)',
  nicknameHint: 'Tylko aby poznać każdą rękę ze sprawdzeń. Nikogo się nie porównuje.',
  unit: 'Jednostka przyrządu',
  tryOut: 'Wypróbuj znaki stosów',
  storage: 'Pamięć urządzenia',
  storageKept: 'Przeglądarka zachowuje wpisy na tym urządzeniu.',
  storageNotKept: 'Gdy zabraknie miejsca, przeglądarka może je usunąć: rób kopię co dzień.',
  ending: 'Przyrząd, który pisze',
  endingKey: 'kończy odczyt klawiszem Enter lub Tab',
  endingPause: 'nie wysyła końca: odczyt przyjmuje przerwa',
  endingForget: 'Zapomnij, ucz od nowa',
  clicker: {
    title: 'Klawisze pilota',
    hint: 'Ręcznie klawisze 1, 2, 3 … sortują od razu. Tu można nauczyć innych klawiszy. Niektóre telefony zachowują klawisze głośności dla siebie: wtedy ustaw pilota na klawisze stron.',
    none: 'jeszcze bez klawisza',
    press: 'Naciśnij teraz klawisz',
    learn: 'Naucz'
  },
  serial: {
    title: 'Przyrząd na kablu',
    connect: 'Podłącz przyrząd',
    connecting: 'Wybierz przyrząd z listy przeglądarki…',
    speed: 'Szybkość (bod)',
    ending: 'Wiersze kończą się',
    endingLine: 'znakiem końca',
    endingPause: 'przerwą',
    learning: (n) =>
      `Weź jeszcze ${many(n, { one: 'odczyt próbny', few: 'odczyty próbne', many: 'odczytów próbnych', other: 'odczytu próbnego' })}, każdy z innej płytki. Nie są liczone.`,
    rawTitle: 'Co wysyła przyrząd',
    rawNone: 'Jeszcze nic. Naciśnij klawisz danych przyrządu; gdy są dziwne znaki, zmień szybkość.',
    which: 'Która liczba to grubość?',
    noNumber: 'W tych wierszach nie ma liczby. Zmień szybkość.',
    learnt: 'Przyrząd poznany: odczyty są przyjmowane.',
    disconnect: 'Rozłącz',
    forget: 'Ucz od nowa',
    unplugged: 'Przyrząd odłączono. Wcześniejsze odczyty są zachowane.',
    closed: 'Rozłączono.',
    failed: (detail) => `Przyrząd się nie otworzył: ${detail}`,
    bytesLost: 'Część znaków zginęła. Jeśli ostatniej płytki nie zapisano, zmierz ją.',
    noise: (text) => `To nie odczyt, pominięto: ${text}`
  },
  /** What is asked of a slate on a flat board. */
  onBoard: {
    board: (step) => `Na płaskiej desce: kołysze się o ponad ${step}?`,
    rocks: 'Kołysze się',
    skip: 'Tylko jeden bok'
  },
  /** Answers to what a reading is. */
  answers: {
    measureAgain: 'Zmierz ponownie',
    keep: 'Zostaw'
  }
};

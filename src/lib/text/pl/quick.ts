import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('pl');

export const quick: Catalogue['quick'] = {
  title: 'Szybki podział',
  lead: 'Bez palet i bez dachu: gdzie dzielić, na podstawie 20 płytek.',
  slates: 'Ile jest płytek?',
  know: 'Co wiesz o dachu?',
  knows: { courses: 'Liczbę rzędów', size: 'Krokiew, szerokość i płytkę' },
  courses: 'Rzędy od okapu do kalenicy',
  rafter: 'Długość krokwi',
  width: 'Szerokość przy okapie',
  slateLength: 'Długość płytki',
  slateWidth: 'Szerokość płytki',
  headlap: 'Zakład',
  measure: 'Zmierz 20 płytek',
  wrong: {
    slates: 'Wpisz, ile jest płytek: liczbę całkowitą od 1 do 100 000.',
    courses: 'Wpisz, ile jest rzędów: liczbę całkowitą od 1 do 300.',
    length: 'Wpisz długość w milimetrach, na przykład 5000.',
    moreCourses: 'To mniej niż jedna płytka na rząd. Sprawdź obie liczby.',
    roof: (field) => `Dachu o tych wymiarach nie da się pokryć. Sprawdź: ${field}.`,
    anyRoof: 'Dachu o tych wymiarach nie da się pokryć. Sprawdź wymiary.'
  },
  caution:
    'Skrzynie otwieraj na płask, na twardym podłożu. Podnoś we dwóch, w rękawicach: krawędzie tną.',
  count: (done, asked) => `${done} z ${asked}`,
  counted: (done) =>
    many(done, {
      one: 'płytka zmierzona',
      few: 'płytki zmierzone',
      many: 'płytek zmierzonych',
      other: 'płytki zmierzonej'
    }),
  takeBack: (thickness) => `Cofnij ${thickness}`,
  show: 'Pokaż podział',
  paste: 'Wklej listę',
  pasteLabel: 'Grubości w mm, jedna w wierszu',
  pasteTake: 'Weź listę',
  pasteWrong: {
    empty: 'Lista jest pusta. Wpisz lub wklej grubości, na przykład 6,2.',
    tooMany: 'Lista ma ponad 2000 liczb. Weź mniej.',
    notAReading: (text) =>
      `„${text}” nie jest grubością od 1,5 do 40 mm. Popraw; nic jeszcze nie zostało wzięte.`
  },
  tooFew: (readings, fewest) =>
    `${many(readings, { one: 'płytka', few: 'płytki', many: 'płytek', other: 'płytki' })} to za mało: zmierz ${fewest} lub więcej, najlepiej 20.`,
  allEqual: (thickness) =>
    `Wszystkie mają ${thickness}: nie ma czego dzielić. Zmierz więcej albo układaj tak, jak są.`,
  lines: 'Gdzie dzielić',
  over: (from) => `${from} i więcej`,
  between: (from, to) => `${from} do ${to}`,
  under: (to) => `poniżej ${to}`,
  share: (isFirst, courses) =>
    `${isFirst ? 'około ' : ''}${many(courses, isFirst ? { one: 'rzędu', other: 'rzędów' } : { one: 'rząd', few: 'rzędy', many: 'rzędów', other: 'rzędu' })}`,
  slatesOf: (slates) => `około ${slates} płytek`,
  picture: (said) => `Dach od okapu do kalenicy: ${said}`,
  joints: (sorted, unsorted) => `Styki widoczne na 100: ${sorted}; bez sortowania ${unsorted}.`,
  about: (n) => `około ${n}`,
  lessThanOne: 'mniej niż 1',
  short: (missing) => `Na dach brakuje około ${missing} płytek.`,
  rough: (readings) =>
    `Na podstawie ${many(readings, { one: 'płytki', other: 'płytek' })}: pierwsze przybliżenie.`,
  keep: 'Zachowaj jako budowę',
  more: 'Mierz dalej',
  numbers: 'Zmień liczby',
  restart: 'Zacznij od nowa',
  restartSure: (readings) =>
    `Odrzucić ${many(readings, { one: 'pomiar', few: 'pomiary', many: 'pomiarów', other: 'pomiaru' })}?`,
  jobName: (day) => `Szybki podział, ${day}`,
  pallet: 'Wszystkie',
  slope: 'Dach'
};

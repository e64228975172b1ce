import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('pl');
const SLATE = { one: 'płytka', few: 'płytki', many: 'płytek', other: 'płytki' };

export const tags: Catalogue['tags'] = {
  title: 'Bez telefonu',
  lead: 'Wydrukuj, sortuj z ołówkiem i kartą, a potem wpisz kreski tutaj.',
  toSort: 'Sortuj',
  sheets: {
    label: 'Co wydrukować',
    piles: 'Karty stosów',
    pallets: 'Karty palet',
    tally: 'Arkusz kresek',
    card: 'Sprawdzian szczelinowy'
  },
  print: 'Drukuj ten arkusz',
  perPage: (tags, perPage, pages) =>
    `Na stronie ${many(perPage, { one: 'karta', few: 'karty', many: 'kart', other: 'karty' })}: ${many(tags, { one: 'karta zajmuje', few: 'karty zajmują', many: 'kart zajmuje', other: 'karty zajmuje' })} ${many(pages, { one: 'stronę', few: 'strony', many: 'stron', other: 'strony' })}.`,
  noGrades: 'Najpierw ustal klasy: karty i sprawdzian potrzebują granic stosów.',
  toGrades: 'Ustal klasy',
  noPallets: 'Najpierw wpisz palety na ekranie Sortuj.',
  thickest: (limit) => `${limit} i grubsze`,
  between: (low, high) => `od ${low} do poniżej ${high}`,
  thinnest: (limit) => `poniżej ${limit}`,
  pallet: 'Paleta',
  slates: (n) => many(n, SLATE),
  slatesUnknown: 'Płytek: ________',
  drawnFrom: 'Bierz z kilku palet naraz.',
  date: 'Data',
  sorter: 'Kto sortuje (może zostać puste)',
  strokes: 'Jedna kreska na płytkę: cztery pionowe, piąta w poprzek. Jedna piątka w kratce.',
  palletsOn: (labels) => `${labels.length === 1 ? 'Paleta' : 'Palety'} ${labels.join(', ')}`,
  boxes: (pile, strokes) => `${pile}: kratki na ${strokes} kresek`,
  setAside: 'Odłożone',
  sum: 'Suma',
  cardTitle: 'Sprawdzian szczelinowy',
  cardHow:
    'Drukuj w skali 100 %. Zmierz linię kontrolną: musi mieć 100 mm. Naklej kartę na sztywny plastik i wytnij szczeliny po wewnętrznej stronie linii. Przed użyciem sprawdź każdą szczelinę suwmiarką.',
  cardCare:
    'Tnij od siebie, na twardej desce, z rękawicą odporną na przecięcie na drugiej dłoni. Obowiązują miejscowe przepisy BHP.',
  checkLine: 'Linia kontrolna: 100 mm',
  stops: (limit, pile) => `Nie wchodzi w ${limit}: ${pile}`,
  enters: (limit, next, pile) => `Wchodzi w ${limit}, nie w ${next}: ${pile}`,
  entersLast: (limit, pile) => `Wchodzi w ${limit}: ${pile}`,
  tailThird: 'Mierz w dolnej trzeciej części, z dala od obrobionej krawędzi.',
  backTitle: 'Wpisz arkusz kresek',
  backHint: 'Na ekranie sortowania, w Policz stosy: paleta po palecie, także odłożone.'
};

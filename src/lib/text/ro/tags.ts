import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('ro');
const SLATE = { one: 'placă', few: 'plăci', other: 'de plăci' };

export const tags: Catalogue['tags'] = {
  title: 'Fără telefon',
  lead: 'Tipăriți, sortați cu creionul și calibrul, apoi treceți liniuțele aici.',
  toSort: 'Sortare',
  sheets: {
    label: 'Ce se tipărește',
    piles: 'Etichete de stivă',
    pallets: 'Etichete de palet',
    tally: 'Foaie de numărare',
    card: 'Calibru trece/nu trece'
  },
  print: 'Tipărește foaia',
  perPage: (tags, perPage, pages) =>
    `${many(perPage, { one: 'etichetă', few: 'etichete', other: 'de etichete' })} pe pagină: ${many(tags, { one: 'etichetă ocupă', few: 'etichete ocupă', other: 'de etichete ocupă' })} ${many(pages, { one: 'pagină', few: 'pagini', other: 'de pagini' })}.`,
  noGrades: 'Stabiliți întâi clasele: etichetele și calibrul au nevoie de limite.',
  toGrades: 'Stabilește clasele',
  noPallets: 'Treceți întâi paleții, pe ecranul Sortare.',
  thickest: (limit) => `${limit} și mai groase`,
  between: (low, high) => `de la ${low} la sub ${high}`,
  thinnest: (limit) => `sub ${limit}`,
  pallet: 'Palet',
  slates: (n) => many(n, SLATE),
  slatesUnknown: 'Plăci: ________',
  drawnFrom: 'Luați din mai mulți paleți deodată.',
  date: 'Data',
  sorter: 'Cine sortează (poate rămâne gol)',
  strokes:
    'O liniuță pentru fiecare placă: patru drepte, a cincea peste ele. Un grup de cinci într-o căsuță.',
  palletsOn: (labels) => `${labels.length === 1 ? 'Palet' : 'Paleți'} ${labels.join(', ')}`,
  boxes: (pile, strokes) => `${pile}: căsuțe pentru ${strokes} liniuțe`,
  setAside: 'Deoparte',
  sum: 'Suma',
  cardTitle: 'Calibru trece/nu trece',
  cardHow:
    'Tipăriți la 100 %. Măsurați linia de control: trebuie să aibă 100 mm. Lipiți cartonul pe plastic rigid și decupați fantele pe interiorul liniilor. Verificați fiecare fantă cu șublerul înainte de folosire.',
  cardCare:
    'Tăiați dinspre dumneavoastră spre afară, pe o scândură fermă, cu mănușă anti-tăiere pe cealaltă mână. Se aplică regulile locale de siguranță.',
  checkLine: 'Linie de control: 100 mm',
  stops: (limit, pile) => `Nu intră în ${limit}: ${pile}`,
  enters: (limit, next, pile) => `Intră în ${limit}, nu în ${next}: ${pile}`,
  entersLast: (limit, pile) => `Intră în ${limit}: ${pile}`,
  tailThird: 'Măsurați în treimea de jos, departe de muchia cioplită.',
  backTitle: 'Trece foaia de numărare',
  backHint: 'La sortare, sub Numără stivele: palet cu palet, și cele puse deoparte.'
};

import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('es');
const SLATE = { one: 'pizarra', other: 'pizarras' };

export const tags: Catalogue['tags'] = {
  title: 'Sin teléfono',
  lead: 'Imprima esto, clasifique con lápiz y galga, y escriba después los trazos aquí.',
  toSort: 'Clasificar',
  sheets: {
    label: 'Qué imprimir',
    piles: 'Etiquetas de montón',
    pallets: 'Etiquetas de palé',
    tally: 'Hoja de recuento',
    card: 'Galga pasa/no pasa'
  },
  print: 'Imprimir esta hoja',
  perPage: (tags, perPage, pages) =>
    `${many(perPage, { one: 'etiqueta', other: 'etiquetas' })} por página: ${many(tags, { one: 'etiqueta ocupa', other: 'etiquetas ocupan' })} ${many(pages, { one: 'página', other: 'páginas' })}.`,
  noGrades: 'Fije primero los grados: las etiquetas y la galga necesitan los límites.',
  toGrades: 'Fijar los grados',
  noPallets: 'Anote primero los palés, en la pantalla Clasificar.',
  thickest: (limit) => `${limit} y más gruesas`,
  between: (low, high) => `de ${low} a menos de ${high}`,
  thinnest: (limit) => `menos de ${limit}`,
  pallet: 'Palé',
  slates: (n) => many(n, SLATE),
  slatesUnknown: 'Pizarras: ________',
  drawnFrom: 'Tome de varios palés a la vez.',
  date: 'Fecha',
  sorter: 'Quién clasifica (puede quedar vacío)',
  strokes:
    'Un trazo por pizarra: cuatro de pie, el quinto los cruza. Un grupo de cinco por casilla.',
  palletsOn: (labels) => `${labels.length === 1 ? 'Palé' : 'Palés'} ${labels.join(', ')}`,
  boxes: (pile, strokes) => `${pile}: casillas para ${strokes} trazos`,
  setAside: 'Apartadas',
  sum: 'Suma',
  cardTitle: 'Galga pasa/no pasa',
  cardHow:
    'Imprima al 100 %. Mida la línea de control: debe medir 100 mm. Pegue la tarjeta sobre plástico rígido y recorte las ranuras por el interior de sus líneas. Compruebe cada ranura con un calibre antes de usarla.',
  cardCare:
    'Corte hacia fuera, sobre una tabla firme, con guante anticorte en la otra mano. Valen las normas locales de seguridad.',
  checkLine: 'Línea de control: 100 mm',
  stops: (limit, pile) => `No entra en ${limit}: ${pile}`,
  enters: (limit, next, pile) => `Entra en ${limit}, no en ${next}: ${pile}`,
  entersLast: (limit, pile) => `Entra en ${limit}: ${pile}`,
  tailThird: 'Mida en el tercio inferior, lejos del borde labrado.',
  backTitle: 'Pasar la hoja de recuento',
  backHint: 'En Clasificar, en Contar montones: palé por palé, también lo apartado.'
};

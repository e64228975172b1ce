import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('es');
const SLATE = { one: 'pizarra', other: 'pizarras' };

export const sortCount: Catalogue['sortCount'] = {
  title: 'Contar montones',
  what: { label: '¿Qué cuenta?', piles: 'Montones enteros', pallets: 'De cada palé' },
  by: { label: '¿Qué escribe?', slates: 'Pizarras', height: 'Altura' },
  lead: {
    piles: '¿Cuántas hay ahora? Deje vacío lo que no contó.',
    pallets: 'De una hoja de recuento, o contadas palé por palé. Se suman a lo ya anotado.'
  },
  book: (n) => `Anotadas hasta ahora: ${n}`,
  unit: { slates: 'pizarras', mm: 'mm', in: 'pulg.' },
  severalStacks: 'Varias pilas: súmelas, 420 + 380.',
  about: (slates, low, high) => `Unas ${slates} pizarras, de ${low} a ${high}`,
  pallet: (label) => `Palé ${label}`,
  cell: (pallet, pile) => `Palé ${pallet}, ${pile}`,
  setAside: 'Apartadas',
  asideFor: 'Apartadas para',
  inCount: {
    label: '¿Cuándo se clasificaron?',
    since: 'Después de contar los montones',
    before: 'Antes: están en ese recuento'
  },
  wide: { title: 'Pizarras y media', of: (pile) => `Pizarras y media, ${pile}` },
  stack: {
    title: 'Una pila contada',
    lead: 'Cuente una pila de un montón y mídala como está: después bastan las alturas.',
    none: 'Cuente primero una pila y mídala como está. Después bastan las alturas.',
    pile: 'Montón',
    slates: 'Pizarras que tiene',
    slatesWrong: 'Escriba cuántas pizarras contó, de 1 a 1000.',
    height: 'Su altura',
    add: 'Guardar esta pila',
    line: (pile, slates, height) => `${pile}: ${many(slates, SLATE)}, ${height} de alto`,
    remove: 'Quitar'
  },
  problems: {
    notWhole: 'Escriba un número entero, o déjelo vacío.',
    tooMany: 'Son demasiadas para una casilla. Cuente otra vez.',
    notAHeight: 'Escriba la altura, por ejemplo 640, o 420 + 380.',
    heightZero: 'Una pila de 0 no tiene pizarras. Mídala, o déjelo vacío.',
    tooHigh: 'Ninguna pila es tan alta. Mídala otra vez.',
    noStack: 'Cuente primero una pila, o escriba el número de pizarras.',
    noThickness: (pile) => `Cuente una pila de ${pile}, o escriba el número de pizarras.`,
    aboveCame: (most) =>
      `Como mucho puede haber ${most}: no llegaron más. Cuente otra vez, o anote el palé que falta.`,
    aboveWithOthers: (sum, most) =>
      `Con los otros montones son ${sum}, y solo llegaron ${most}. Cuente otra vez.`,
    abovePallet: (left, label) =>
      `En el palé ${label} ${left === 1 ? 'queda' : 'quedan'} ${left}: esto es más. Cuente otra vez.`
  },
  nothing: 'Escriba al menos un número.',
  save: 'Guardar el recuento',
  saving: 'Guardando…',
  savedPiles: (n) => `${many(n, { one: 'montón', other: 'montones' })}: contado.`,
  savedSlates: (n) => `${many(n, SLATE)}: guardado.`,
  undoAll: { piles: 'Deshacer este recuento', slates: 'Deshacer estas pizarras' }
};

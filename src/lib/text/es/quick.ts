import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('es');
const SLATE = { one: 'pizarra', other: 'pizarras' };

export const quick: Catalogue['quick'] = {
  title: 'Reparto rápido',
  lead: 'Sin palés ni cubierta: por dónde separar, con 20 pizarras.',
  slates: '¿Cuántas pizarras?',
  know: '¿Qué sabe de la cubierta?',
  knows: { courses: 'El número de hiladas', size: 'Faldón, ancho y pizarra' },
  courses: 'Hiladas, del alero a la cumbrera',
  rafter: 'Largo del faldón',
  width: 'Ancho en el alero',
  slateLength: 'Largo de la pizarra',
  slateWidth: 'Ancho de la pizarra',
  headlap: 'Solape',
  measure: 'Medir 20 pizarras',
  wrong: {
    slates: 'Escriba cuántas pizarras hay: un número entero de 1 a 100.000.',
    courses: 'Escriba cuántas hiladas: un número entero de 1 a 300.',
    length: 'Escriba una medida en milímetros, por ejemplo 5000.',
    moreCourses: 'Sale menos de una pizarra por hilada. Revise los dos números.',
    roof: (field) => `Con esas medidas no se puede colocar. Revise: ${field}.`,
    anyRoof: 'Con esas medidas no se puede colocar. Revise las medidas.'
  },
  caution:
    'Abra las cajas tumbadas en suelo firme. Levante con ayuda y con guantes: los cantos cortan.',
  count: (done, asked) => `${done} de ${asked}`,
  counted: (done) => many(done, { one: 'pizarra medida', other: 'pizarras medidas' }),
  takeBack: (thickness) => `Anular ${thickness}`,
  show: 'Ver el reparto',
  paste: 'Pegar una lista',
  pasteLabel: 'Gruesos en mm, uno por línea',
  pasteTake: 'Tomar la lista',
  pasteWrong: {
    empty: 'La lista está vacía. Escriba o pegue gruesos, por ejemplo 6,2.',
    tooMany: 'La lista tiene más de 2.000 números. Tome menos.',
    notAReading: (text) =>
      `“${text}” no es un grueso de 1,5 a 40 mm. Corríjalo; aún no se ha tomado nada.`
  },
  tooFew: (readings, fewest) =>
    `${readings === 1 ? 'Una pizarra no dice' : `${many(readings, SLATE)} no dicen`} nada todavía: mida ${fewest} o más, mejor 20.`,
  allEqual: (thickness) =>
    `Todas miden ${thickness}: no hay nada que separar. Mida más, o colóquelas como están.`,
  lines: 'Por dónde separar',
  over: (from) => `${from} y más`,
  between: (from, to) => `${from} a ${to}`,
  under: (to) => `menos de ${to}`,
  share: (isFirst, courses) =>
    `${isFirst ? 'unas ' : ''}${many(courses, { one: 'hilada', other: 'hiladas' })}`,
  slatesOf: (slates) => `unas ${slates} pizarras`,
  picture: (said) => `La cubierta, del alero a la cumbrera: ${said}`,
  joints: (sorted, unsorted) =>
    `${sorted} de cada 100 juntas se notarán; sin separar, ${unsorted}.`,
  about: (n) => `Unas ${n}`,
  lessThanOne: 'Menos de 1',
  short: (missing) => `Faltan unas ${missing} pizarras para la cubierta.`,
  rough: (readings) => `Con ${many(readings, SLATE)}: una primera idea.`,
  keep: 'Guardar como obra',
  more: 'Medir más',
  numbers: 'Cambiar los números',
  restart: 'Empezar de nuevo',
  restartSure: (readings) => `¿Descartar ${many(readings, { one: 'lectura', other: 'lecturas' })}?`,
  jobName: (day) => `Reparto rápido, ${day}`,
  pallet: 'Todas',
  slope: 'Cubierta'
};

import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('fr');
const SLATE = { one: 'ardoise', other: 'ardoises' };

export const quick: Catalogue['quick'] = {
  title: 'Tri rapide',
  lead: 'Ni palettes, ni toit : où séparer, d’après 20 ardoises.',
  slates: 'Combien d’ardoises ?',
  know: 'Que savez-vous du toit ?',
  knows: { courses: 'Le nombre de rangs', size: 'Rampant, largeur et ardoise' },
  courses: 'Rangs, de l’égout au faîtage',
  rafter: 'Longueur du rampant',
  width: 'Largeur à l’égout',
  slateLength: 'Longueur de l’ardoise',
  slateWidth: 'Largeur de l’ardoise',
  headlap: 'Recouvrement',
  measure: 'Mesurer 20 ardoises',
  wrong: {
    slates: 'Tapez le nombre d’ardoises : un nombre entier de 1 à 100 000.',
    courses: 'Tapez le nombre de rangs : un nombre entier de 1 à 300.',
    length: 'Tapez une longueur en millimètres, par exemple 5000.',
    moreCourses: 'Cela fait moins d’une ardoise par rang. Vérifiez les deux nombres.',
    roof: (field) => `Un toit de ces mesures ne se couvre pas. Vérifiez : ${field}.`,
    anyRoof: 'Un toit de ces mesures ne se couvre pas. Vérifiez les mesures.'
  },
  caution:
    'Ouvrez les caisses à plat sur un sol ferme. Levez à deux, avec des gants : les bords coupent.',
  count: (done, asked) => `${done} sur ${asked}`,
  counted: (done) => many(done, { one: 'ardoise mesurée', other: 'ardoises mesurées' }),
  takeBack: (thickness) => `Reprendre ${thickness}`,
  show: 'Voir le tri',
  paste: 'Coller une liste',
  pasteLabel: 'Épaisseurs en mm, une par ligne',
  pasteTake: 'Prendre la liste',
  pasteWrong: {
    empty: 'La liste est vide. Tapez ou collez des épaisseurs, par exemple 6,2.',
    tooMany: 'La liste a plus de 2 000 nombres. Prenez-en moins.',
    notAReading: (text) =>
      `« ${text} » n’est pas une épaisseur de 1,5 à 40 mm. Corrigez ; rien n’est encore pris.`
  },
  tooFew: (readings, fewest) =>
    `${readings === 1 ? 'Une ardoise ne dit' : `${many(readings, SLATE)} ne disent`} encore rien : mesurez-en ${fewest} ou plus, 20 de préférence.`,
  allEqual: (thickness) =>
    `Toutes font ${thickness} : rien à séparer. Mesurez-en d’autres, ou posez-les telles quelles.`,
  lines: 'Où séparer',
  over: (from) => `${from} et plus`,
  between: (from, to) => `${from} à ${to}`,
  under: (to) => `moins de ${to}`,
  share: (isFirst, courses) =>
    `${isFirst ? 'environ ' : ''}${many(courses, { one: 'rang', other: 'rangs' })}`,
  slatesOf: (slates) => `environ ${slates} ardoises`,
  picture: (said) => `Le toit, de l’égout au faîtage : ${said}`,
  joints: (sorted, unsorted) => `${sorted} joints sur 100 se verront ; sans tri, ${unsorted}.`,
  about: (n) => `Environ ${n}`,
  lessThanOne: 'Moins de 1',
  short: (missing) => `Il manque environ ${missing} ardoises pour le toit.`,
  rough: (readings) => `D’après ${many(readings, SLATE)} : une première idée.`,
  keep: 'Garder comme chantier',
  more: 'Mesurer encore',
  numbers: 'Changer les nombres',
  restart: 'Recommencer',
  restartSure: (readings) => `Abandonner ${many(readings, { one: 'mesure', other: 'mesures' })} ?`,
  jobName: (day) => `Tri rapide, ${day}`,
  pallet: 'Toutes',
  slope: 'Toit'
};

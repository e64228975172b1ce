import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('fr');
const SLATE = { one: 'ardoise', other: 'ardoises' };

export const sortCount: Catalogue['sortCount'] = {
  title: 'Compter les tas',
  what: { label: 'Que comptez-vous ?', piles: 'Tas entiers', pallets: 'De chaque palette' },
  by: { label: 'Que tapez-vous ?', slates: 'Ardoises', height: 'Hauteur' },
  lead: {
    piles: 'Combien y en a-t-il maintenant ? Laissez vide ce que vous n’avez pas compté.',
    pallets:
      'D’une feuille de comptage, ou comptées palette par palette. Elles s’ajoutent à ce qui est noté.'
  },
  book: (n) => `Notées jusqu’ici : ${n}`,
  unit: { slates: 'ardoises', mm: 'mm', in: 'po' },
  severalStacks: 'Plusieurs piles : additionnez-les, 420 + 380.',
  about: (slates, low, high) => `Environ ${slates} ardoises, de ${low} à ${high}`,
  pallet: (label) => `Palette ${label}`,
  cell: (pallet, pile) => `Palette ${pallet}, ${pile}`,
  setAside: 'Écartées',
  asideFor: 'Écartées pour',
  inCount: {
    label: 'Quand ont-elles été triées ?',
    since: 'Après le comptage des tas',
    before: 'Avant : elles sont dans ce comptage'
  },
  wide: { title: 'Ardoises et demie', of: (pile) => `Ardoises et demie, ${pile}` },
  stack: {
    title: 'Une pile comptée',
    lead: 'Comptez une pile d’un tas et mesurez-la telle quelle : ensuite les hauteurs suffisent.',
    none: 'Comptez d’abord une pile et mesurez-la telle quelle. Ensuite les hauteurs suffisent.',
    pile: 'Tas',
    slates: 'Ardoises dedans',
    slatesWrong: 'Tapez combien d’ardoises vous avez comptées, de 1 à 1000.',
    height: 'Sa hauteur',
    add: 'Garder cette pile',
    line: (pile, slates, height) => `${pile} : ${many(slates, SLATE)}, ${height} de haut`,
    remove: 'Retirer'
  },
  problems: {
    notWhole: 'Tapez un nombre entier, ou laissez vide.',
    tooMany: 'C’est trop pour une case. Recomptez.',
    notAHeight: 'Tapez la hauteur, par exemple 640, ou 420 + 380.',
    heightZero: 'Une pile de 0 ne contient aucune ardoise. Mesurez-la, ou laissez vide.',
    tooHigh: 'Aucune pile n’est si haute. Remesurez-la.',
    noStack: 'Comptez d’abord une pile, ou tapez le nombre d’ardoises.',
    noThickness: (pile) => `Comptez une pile de ${pile}, ou tapez le nombre d’ardoises.`,
    aboveCame: (most) =>
      `Il peut y en avoir ${most} au plus : il n’en est pas venu davantage. Recomptez, ou notez la palette qui manque.`,
    aboveWithOthers: (sum, most) =>
      `Avec les autres tas cela fait ${sum}, et il n’en est venu que ${most}. Recomptez.`,
    abovePallet: (left, label) =>
      `Il en reste ${left} sur la palette ${label} : c’est plus. Recomptez.`
  },
  nothing: 'Tapez au moins un nombre.',
  save: 'Enregistrer le comptage',
  saving: 'Enregistrement…',
  savedPiles: (n) => `${many(n, { one: 'tas compté', other: 'tas comptés' })}.`,
  savedSlates: (n) => `${many(n, SLATE)} : enregistré.`,
  undoAll: { piles: 'Annuler ce comptage', slates: 'Annuler ces ardoises' }
};

import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('fr');
const SLATE = { one: 'ardoise', other: 'ardoises' };

export const tags: Catalogue['tags'] = {
  title: 'Sans téléphone',
  lead: 'Imprimez ces feuilles, triez au crayon et à la carte, puis reportez les traits ici.',
  toSort: 'Trier',
  sheets: {
    label: 'Que faut-il imprimer ?',
    piles: 'Étiquettes de tas',
    pallets: 'Étiquettes de palette',
    tally: 'Feuille de comptage',
    card: 'Carte passe/ne passe pas'
  },
  print: 'Imprimer cette feuille',
  perPage: (tags, perPage, pages) =>
    `${many(perPage, { one: 'étiquette', other: 'étiquettes' })} par page : ${many(tags, { one: 'étiquette prend', other: 'étiquettes prennent' })} ${many(pages, { one: 'page', other: 'pages' })}.`,
  noGrades: 'Fixez d’abord les classes : étiquettes et carte ont besoin des limites.',
  toGrades: 'Fixer les classes',
  noPallets: 'Notez d’abord les palettes, sur l’écran Trier.',
  thickest: (limit) => `${limit} et plus épaisses`,
  between: (low, high) => `de ${low} à moins de ${high}`,
  thinnest: (limit) => `moins de ${limit}`,
  pallet: 'Palette',
  slates: (n) => many(n, SLATE),
  slatesUnknown: 'Ardoises : ________',
  drawnFrom: 'Prenez sur plusieurs palettes à la fois.',
  date: 'Date',
  sorter: 'Trieur (peut rester vide)',
  strokes:
    'Un trait par ardoise : quatre debout, le cinquième en travers. Un groupe de cinq par case.',
  palletsOn: (labels) => `${labels.length === 1 ? 'Palette' : 'Palettes'} ${labels.join(', ')}`,
  boxes: (pile, strokes) => `${pile} : cases pour ${strokes} traits`,
  setAside: 'Écartées',
  sum: 'Somme',
  cardTitle: 'Carte passe/ne passe pas',
  cardHow:
    'Imprimez à 100 %. Mesurez le trait de contrôle : il doit faire 100 mm. Collez la carte sur un plastique rigide et découpez les fentes à l’intérieur de leurs traits. Vérifiez chaque fente au pied à coulisse avant usage.',
  cardCare:
    'Coupez en éloignant la lame de vous, sur une planche ferme, gant anti-coupure à l’autre main. Les règles locales de sécurité s’appliquent.',
  checkLine: 'Trait de contrôle : 100 mm',
  stops: (limit, pile) => `N’entre pas dans ${limit} : ${pile}`,
  enters: (limit, next, pile) => `Entre dans ${limit}, pas dans ${next} : ${pile}`,
  entersLast: (limit, pile) => `Entre dans ${limit} : ${pile}`,
  tailThird: 'Mesurez dans le tiers bas, loin du bord épaufré.',
  backTitle: 'Reporter la feuille de comptage',
  backHint: 'Sur l’écran de tri, sous Compter les tas : palette par palette, écartées comprises.'
};

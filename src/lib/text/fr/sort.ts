import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('fr');
const SLATE = { one: 'ardoise', other: 'ardoises' };

export const sort: Catalogue['sort'] = {
  title: 'Trier',
  ready: {
    gauge: 'Mesurez une ardoise',
    hand: 'Touchez le tas de chaque ardoise'
  },
  sample: {
    count: (label: string, done: number, of: number) =>
      `Palette ${label} : ${done > of ? `${done} mesurées` : `${done} sur ${of}`}.`,
    take: (label: string) => `Prenez la palette ${label}`,
    enough: 'Assez de mesures : fixez les classes.',
    list: (done: number, of: number, label: string, layer: number, place: number) =>
      `Liste d’échantillon : ${done} sur ${of}. Suivante : palette ${label}, couche ${layer}, ardoise ${place}`,
    toList: 'La mesurer'
  },
  pallet: {
    named: (label) => `palette ${label}`,
    label: 'De la palette',
    more: 'Palettes',
    left: (left, slates) =>
      slates === 0 ? 'non compté' : left === 0 ? 'vide' : many(left, { other: 'restent' }),
    measured: (n) => many(n, { one: 'mesurée', other: 'mesurées' }),
    over: (n) => many(n, { other: 'de plus que l’étiquette' })
  },
  count: 'Compter les tas',
  mode: { hand: 'À la main', gauge: 'Calibre' },
  entry: 'Mesure',
  keypad: {
    label: 'Pavé',
    decimal: 'Virgule',
    back: 'Effacer un chiffre',
    clear: 'Effacer',
    enter: 'Prendre le nombre'
  },
  take: (number) => `Prendre ${number}`,
  told: {
    byHand: 'à la main',
    from: (label) => `de la palette ${label}`,
    saving: 'enregistrement…',
    saved: 'enregistré',
    notSaved: 'NON ENREGISTRÉ',
    borderline: 'Limite',
    borderlineWhy: (threshold) => `tout près de ${threshold} : les deux tas conviennent`,
    tooThick: 'Trop épaisse, à vérifier',
    tooThin: 'Trop mince, à vérifier',
    outsideOrder: (band) => `hors commande, ${band}`,
    beyondSpread: (over) =>
      `${over} au-delà de presque toutes jusqu’ici : remesurer, sinon mettre de côté`,
    sample: 'Mesurée',
    sampleWhy: 'Remettez-la sur sa palette.',
    toGrades: 'Fixer les classes',
    setAside: 'Écartée',
    taper: (taper) => `biais ${taper}`,
    point: (done, wanted) => `Point ${done} sur ${wanted}`,
    pointWhy: 'Mesurez le point suivant de la même ardoise.',
    side: { left: 'Mesurez le côté gauche', right: 'Maintenant le côté droit' },
    sideWhy: 'La même ardoise, près du bord, à une même hauteur.',
    again: 'Ne bougez pas : encore une fois',
    againWhy: (first) => `${first} lu ; mesurez encore le même point.`,
    moved: 'Les deux mesures diffèrent',
    movedWhy: (first, second) => `${first}, puis ${second} : mesurez encore ce point.`,
    checkAgrees: 'Contrôle : conforme',
    checkDiffers: 'Contrôle : différent',
    checkWhy: (thickness, felt, gauged) => `${thickness} : à la main ${felt}, au calibre ${gauged}`,
    undone: 'Défait'
  },
  refused: {
    title: 'Pas pris',
    empty: 'Pas de nombre. Tapez l’épaisseur, par exemple 6,4.',
    notANumber: (text) => `« ${text} » n’est pas un nombre. Tapez l’épaisseur, par exemple 6,4.`,
    severalNumbers: (text) => `« ${text} » contient plusieurs nombres. Mesurez encore.`,
    severalDecimals: (text) =>
      `« ${text} » a plus d’une virgule. Tapez un seul nombre, par exemple 6,4.`,
    unfinished: (text) => `« ${text} » finit par une virgule. Complétez, ou ôtez-la.`,
    tooManyDigits: (text) => `« ${text} » a trop de décimales. Mesurez encore.`,
    unknownUnit: (unit) => `L’unité « ${unit} » est inconnue. Prenez mm ou pouces.`,
    negative: (text) => `${text} est sous zéro. Remettez le calibre à zéro et relisez.`,
    zero: 'Le calibre indique zéro. Fermez-le sur l’ardoise et relisez.',
    tooThin: (value, limit) =>
      `${value} est trop fin pour une ardoise : ${limit} au moins. Relisez.`,
    tooThick: (value, limit) =>
      `${value} est trop épais pour une ardoise : ${limit} au plus. Relisez.`,
    looksLikeInches: (text) => `${text} est trop fin en millimètres. Est-ce en pouces ?`,
    looksLikeMm: (text) => `${text} est trop épais en pouces. Est-ce en millimètres ?`,
    missingDecimal: (text) => `${text} est trop épais. Manque-t-il la virgule ?`,
    cutShort: (text) => `Seul « ${text} » est arrivé, un bout de mesure. Mesurez encore.`,
    interrupted: (text) =>
      `« ${text} » est venu avec une longue pause, peut-être deux mesures. Mesurez encore.`,
    noPallet: (text) =>
      `Choisissez d’abord la palette ; ${text} attend ici et n’est pas enregistré.`
  },
  unit: {
    ask: (unit) => `Les mesures sont-elles en ${unit} ?`,
    mm: 'millimètres',
    in: 'pouces',
    yes: (unit) => `Oui, ${unit}`,
    other: (unit) => `Non, ${unit}`
  },
  setAside: {
    button: 'Écarter',
    title: 'Écarter : pourquoi ?',
    useTitle: 'Pour',
    which: 'Quelle ardoise ?',
    newSlate: 'Celle en main',
    lastSlate: (what) => `La dernière (${what})`,
    reasons: {
      broken: 'Cassée',
      dullRing: 'Son mat',
      twisted: 'Gauche ou bombée',
      tapered: 'En biais',
      wrongSize: 'Mauvais format',
      inclusion: 'Inclusion',
      colour: 'Teinte',
      other: 'Autre'
    },
    uses: { undereave: 'Doublis', cutPiece: 'Coupe', return: 'Retour', scrap: 'Rebut' }
  },
  undo: {
    last: 'Défaire',
    list: 'Saisies',
    gauged: (thickness, pile) => `${thickness}, ${pile}`,
    sample: (thickness) => `${thickness}, mesurée`,
    tapped: (pile) => `${pile}, à la main`,
    setAside: (reason) => `Écartée : ${reason}`,
    checked: (thickness) => `Contrôle ${thickness}`,
    pallet: (label) => `Palette ${label} ajoutée`
  },
  check: {
    ask: (pile) => `Contrôle : mesurez l’ardoise que vous venez de mettre sur ${pile}.`,
    why: 'Cela apprend ce que votre main appelle épais et fin.',
    type: 'Taper',
    skip: 'Plus tard'
  },
  sides: {
    next: 'Ardoise suivante : mesurez le côté gauche et le droit',
    this: 'Gauche et droite'
  },
  tail: {
    text: 'Mesurez dans le tiers bas, loin du bord épaufré.',
    drawing: 'Une ardoise avec l’endroit à mesurer près du bas',
    close: 'Vu'
  },
  photos: 'Photos',
  tally: {
    title: 'Sur les tas',
    pace: (n) => `${n} ardoises par heure`,
    noPace: 'La cadence vient après cinq minutes',
    left: (n) => `Reste ${many(n, SLATE)} sur les palettes`,
    toFinish: (time) => `encore environ ${time}`,
    hours: (hours, minutes) => (hours > 0 ? `${hours} h ${minutes} min` : `${minutes} min`),
    perPallet: 'Ardoises par palette',
    pallet: 'Palette',
    remaining: 'Reste',
    setAside: 'Écart',
    found: 'Comptées sur les tas, palette inconnue',
    total: 'Tout'
  },
  day: {
    button: 'La journée'
  },
  options: {
    button: 'Options',
    endingLearnt: 'Appris : ce calibre n’envoie pas Entrée ; une pause prend la mesure.',
    tags: 'Étiquettes et feuille à imprimer'
  },
  caution:
    'Levez à deux, empilez bas et d’aplomb, portez des gants : les bords coupent. Les règles locales et le métier décident.',
  unsaved: (n) =>
    `${many(n, { one: 'saisie attend', other: 'saisies attendent' })} l’enregistrement et restent à l’écran.`,
  live: (n, last) => (n > 1 ? `${n} saisies. Dernière : ${last}` : last)
};

import { haveWords, numberOfPile } from '../pile-names.ts';
import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('fr');
const ENTRY = { one: 'saisie', other: 'saisies' };
const WORDS = ['Épaisse', 'Moyenne', 'Fine'];

export const common: Partial<Catalogue['common']> = {
  appName: 'Evencourse',
  slates: (n) => many(n, { one: 'ardoise', other: 'ardoises' }),
  courses: (n) => many(n, { one: 'rang', other: 'rangs' }),
  pallets: (n) => many(n, { one: 'palette', other: 'palettes' }),
  piles: (n) => many(n, { one: 'tas', other: 'tas' }),
  entries: (n) => many(n, ENTRY),
  pileWord: (pile, piles) => (haveWords(piles) ? WORDS[pile - 1] : ''),
  pile: (pile, piles) =>
    haveWords(piles) ? `${pile} ${WORDS[pile - 1]}` : `Tas ${numberOfPile(pile, piles)}`,
  back: 'Retour',
  save: 'Enregistrer',
  cancel: 'Annuler',
  undo: 'Défaire',
  print: 'Imprimer',
  sheet: {
    page: (page, pages) => `page ${page} sur ${pages}`,
    mark: (mark) => `empreinte ${mark}`,
    goesOn: 'suite'
  },
  close: 'Fermer',
  remove: 'Retirer',
  change: 'Changer',
  online: 'En ligne',
  offline: 'Hors ligne : tout marche, tout est gardé sur cet appareil',
  lastSaved: (what) => `Dernier enregistrement : ${what}`,
  nothingSaved: 'Rien d’enregistré',
  unexported: (n) => (n === 0 ? 'Tout est sauvegardé' : `${many(n, ENTRY)} sans sauvegarde`),
  notSaved: 'NON ENREGISTRÉ',
  retry: 'Réessayer',
  diskFull:
    'Cet appareil n’a plus de place, la saisie n’est pas enregistrée. Libérez de la place, ou sauvegardez le chantier et changez d’appareil ; puis réessayez.',
  dataCleared:
    'Le navigateur a effacé les données de l’application sur cet appareil pendant que la page était ouverte. Ce que vous voyez est tout ce qui reste : notez ou imprimez ce qu’il vous faut, puis rechargez la page et restaurez votre sauvegarde.',
  saveFailed: (detail) =>
    `Le navigateur n’a pas enregistré la saisie (${detail}). Elle reste à l’écran : réessayez.`,
  leaveUnsaved: (n) =>
    `${many(n, { one: 'saisie non enregistrée serait perdue', other: 'saisies non enregistrées seraient perdues' })}. Quitter quand même le chantier ?`,
  loading: 'Ouverture…',
  jobMissing:
    'Ce chantier n’est pas sur cet appareil. Ouvrez la liste des chantiers, ou reprenez une sauvegarde.',
  toJobs: 'Tous les chantiers',
  steps: {
    overview: 'Chantier',
    delivery: 'Livraison',
    sort: 'Trier',
    grades: 'Classes',
    roof: 'Toit',
    courses: 'Rangs',
    lay: 'Poser',
    sheet: 'Traçage',
    crew: 'Équipe',
    join: 'Rejoindre un chantier',
    settings: 'Réglages'
  },
  unexpected: 'Un problème est survenu sur cet écran. Ce qui est enregistré est à l’abri.',
  skipToContent: 'Aller au contenu',
  updateWaiting: 'Une nouvelle version est prête. Elle attend votre accord ; rien ne se perd.',
  updateNow: 'La charger',
  stepsLabel: 'Étapes du chantier',
  stepStates: { done: 'fait', now: 'maintenant', open: 'à venir' },
  language: 'Langue',
  languageReview:
    'L’espagnol, le français, le polonais et le roumain couvrent Trier, le tri rapide, les photos, l’équipe et les étiquettes imprimées ; la relecture par des gens du métier reste à faire. Le reste est en anglais.',
  languageFailed:
    'Cette langue n’est pas encore sur l’appareil. Connectez-vous une fois, puis choisissez-la.',
  openFailed: (detail) =>
    `Le navigateur n’a pas ouvert le journal de cet appareil (${detail}). Fermez les autres onglets de l’application et rechargez ; rien n’est effacé.`,
  events: {
    jobOpened: 'chantier ouvert',
    jobRenamed: 'chantier renommé',
    jobSettingsSet: 'réglages',
    slateSpecSet: 'format d’ardoise',
    slateSizesSet: 'formats d’ardoise',
    setCoursesChosen: 'rangs de chaque format',
    deliveryDeclared: 'commande',
    palletAdded: 'palette',
    sampleDrawn: 'liste d’échantillon',
    slateGauged: 'ardoise mesurée',
    readingHeld: 'mesure en attente',
    slateTapped: 'ardoise triée',
    slateSetAside: 'ardoise écartée',
    slateChecked: 'contrôle',
    stackMeasured: 'pile mesurée',
    pileCounted: 'tas compté',
    entryVoided: 'annulation',
    gradesSet: 'classes',
    slopeSet: 'versant',
    slopeRemoved: 'versant retiré',
    planAdopted: 'plan',
    courseLaid: 'rang posé',
    coursePartLaid: 'rang posé en partie',
    slatesLost: 'ardoises perdues',
    slatesMoved: 'ardoises passées à un autre tas',
    defectNoted: 'défaut',
    photoAdded: 'photo',
    gaugeStudied: 'étude du calibre',
    copyKept: 'copie d’un téléphone gardée',
    jobRescued: 'sauvé d’un chantier abîmé',
    verdictSigned: 'avis'
  }
};

import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('fr');
const SLATE = { one: 'ardoise', other: 'ardoises' };

export const sortOptions: Catalogue['sortOptions'] = {
  title: 'Options de ce téléphone',
  pallets: {
    none: 'Pas encore de palette',
    noneWhy: 'Notez la première palette, pour compter chaque ardoise là d’où elle vient.',
    chooserTitle: 'Palettes',
    chooserHint:
      'Touchez la palette d’où vous prenez. Gardez-en plusieurs ouvertes : prendre sur trois ou plus mélange les teintes.',
    keepOpen: 'Ouverte',
    name: 'Nom sur la palette',
    slates: 'Nombre d’ardoises',
    slatesHint: 'Selon l’étiquette. 0 si personne ne sait.',
    mixed: 'Plusieurs longueurs mélangées',
    add: 'Ajouter la palette',
    addTitle: 'Autre palette',
    nameMissing: 'Donnez un nom à la palette, par exemple A.',
    nameTaken: (name) => `Il y a déjà une palette ${name}. Donnez un autre nom.`,
    slatesWrong: 'Tapez un nombre entier de 0 à 100 000.'
  },
  day: {
    title: 'La journée jusqu’ici',
    sorted: (n) => `${many(n, SLATE)} aujourd’hui`,
    worked: (time) => `${time} de tri, sans les pauses`,
    ofJob: 'Les chiffres sont ceux du chantier, jamais d’une personne.',
    setAsideTitle: 'Écartées, tout le chantier'
  },
  undo: {
    cut: 'Seules les 20 dernières saisies s’annulent ici. Parmi les mesures plus anciennes, Classes nomme celle qui sort du lot.',
    title: 'Dix dernières saisies',
    none: 'Rien à défaire.'
  },
  checked: {
    belongs: (pile) => `Elle va sur ${pile}.`,
    put: (pile) => `La mettre sur ${pile}`
  },
  palletRemoved: {
    remove: 'Retirer cette palette',
    done: (label) => `Palette ${label} retirée.`,
    bringBack: 'La remettre',
    stays:
      'Une palette qui a des ardoises, une pile ou une place d’échantillon saisies reste. Corrigez son nom ou son compte sous Livraison.'
  },
  held: (n, reading) =>
    `${many(n, { one: 'mesure attend votre réponse', other: 'mesures attendent votre réponse' })} : ${reading}`,
  sound: 'Un son par tas (plus grave, plus épais)',
  vibration: 'Vibration',
  speech: 'Dire le tas à voix haute',
  noVoice: 'Cet appareil n’a pas de voix à lui pour cette langue.',
  leftHand: 'Pour gaucher',
  awake: 'Garder l’écran allumé',
  awakeMissing: 'Ce navigateur ne peut pas garder l’écran allumé.',
  holdStill: 'Mesurer deux fois chaque point',
  points: 'Points mesurés par ardoise',
  nickname: 'Qui trie (un surnom, ou rien)',
  nicknameHint: 'Seulement pour connaître chaque main par les contrôles. Personne n’est comparé.',
  unit: 'Unité du calibre',
  tryOut: 'Essayer les signes de chaque tas',
  storage: 'Mémoire de cet appareil',
  storageKept: 'Le navigateur garde les saisies de cet appareil.',
  storageNotKept:
    'Le navigateur peut vider cet appareil s’il manque de place : sauvegardez chaque jour.',
  ending: 'Calibre qui écrit',
  endingKey: 'finit chaque mesure par Entrée ou Tab',
  endingPause: 'n’envoie pas de fin : une pause prend la mesure',
  endingForget: 'Oublier, apprendre encore',
  clicker: {
    title: 'Touches d’une télécommande',
    hint: 'À la main, les touches 1, 2, 3 … trient aussitôt. Apprenez ici d’autres touches. Certains téléphones gardent les touches de volume pour eux : prenez alors celles de page.',
    none: 'pas encore de touche',
    press: 'Appuyez sur la touche',
    learn: 'Apprendre'
  },
  serial: {
    title: 'Calibre par câble',
    connect: 'Brancher un calibre',
    connecting: 'Choisissez le calibre dans la liste du navigateur…',
    speed: 'Vitesse (bauds)',
    ending: 'Les lignes finissent',
    endingLine: 'par une fin de ligne',
    endingPause: 'par une pause',
    learning: (n) =>
      `Prenez ${many(n, { one: 'mesure d’essai de plus', other: 'mesures d’essai de plus' })}, chacune d’une autre ardoise. Elles ne comptent pas.`,
    rawTitle: 'Ce que le calibre envoie',
    rawNone:
      'Rien encore. Appuyez sur la touche de données ; si des signes étranges viennent, changez de vitesse.',
    which: 'Lequel est l’épaisseur ?',
    noNumber: 'Pas de nombre dans ces lignes. Changez de vitesse.',
    learnt: 'Calibre appris : ses mesures sont prises.',
    disconnect: 'Débrancher',
    forget: 'Apprendre encore',
    unplugged: 'Le calibre a été débranché. Ce qui précède est gardé.',
    closed: 'Débranché.',
    failed: (detail) => `Le calibre ne s’est pas ouvert : ${detail}`,
    bytesLost: 'Des signes du calibre sont perdus. Si la dernière ardoise manque, mesurez-la.',
    noise: (text) => `Pas une mesure, laissé : ${text}`
  },
  /** What is asked of a slate on a flat board. */
  onBoard: {
    board: (step) => `Sur une planche plane : bascule-t-elle de plus de ${step} ?`,
    rocks: 'Elle bascule',
    skip: 'Un seul côté'
  },
  /** Answers to what a reading is. */
  answers: {
    measureAgain: 'Mesurer encore',
    keep: 'Garder'
  }
};

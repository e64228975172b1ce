import { pluralizer } from '../plural.ts';
import type { Translation } from '../words.svelte.ts';

const many = pluralizer('fr');
const NOT_SHARED = { one: 'saisie non partagée', other: 'saisies non partagées' };

export const crew: Translation['crew'] = {
  title: 'Équipe',
  intro: 'Un chantier sur tous les appareils de l’équipe. Chacun continue sans réseau.',
  strip: (notShared) => (notShared === 0 ? 'Partagé avec l’équipe' : many(notShared, NOT_SHARED)),
  removedStrip: 'Non partagé : retiré de l’équipe',
  state: {
    shared: 'L’équipe a toutes vos saisies.',
    waiting: (n) => `${many(n, NOT_SHARED)}. Elles partiront d’elles-mêmes avec le réseau.`,
    first: 'Recherche du serveur…',
    'no-answer': 'Pas de réseau, ou le serveur ne répond pas. Continuez : rien ne se perd.',
    removed:
      'Cet appareil n’est plus dans l’équipe. Le chantier reste ici, mais rien ne part plus. Demandez une nouvelle invitation.',
    'hub-full': 'Le serveur n’a plus de place. Les saisies attendent ici ; prévenez qui le tient.',
    'device-full': 'Cet appareil n’a plus de place. Libérez-en, puis rouvrez le chantier.',
    wait: 'Le serveur est occupé. Nouvel essai dans une demi-minute.',
    refused:
      'Le serveur a refusé les saisies. Elles attendent ici ; chargez la dernière version de l’application.'
  },
  lastShared: (when) => `Dernier partage : ${when}.`,
  alone: 'Ce chantier est sur cet appareil seul.',
  name: 'Votre nom, tel que l’équipe le voit',
  needsName: 'Écrivez un nom, pour que les autres sachent qui c’est.',
  start: 'Former une équipe pour ce chantier',
  people: 'Qui est sur ce chantier',
  you: 'vous',
  keeper: 'peut inviter',
  nameless: 'sans nom',
  heard: (when) => `dernières nouvelles : ${when}`,
  neverHeard: 'pas encore de nouvelles',
  remove: 'Retirer',
  removeWhom: (name) => `Retirer ${name}`,
  removeSure: (name) =>
    `Retirer ${name} de l’équipe ? Ses saisies restent. Son appareil garde sa copie.`,
  invite: 'Inviter quelqu’un',
  inviteKeeper: 'Inviter quelqu’un qui pourra inviter aussi',
  inviteHow:
    'Bonne pour une personne et sept jours. Faites-la scanner, ou envoyez le lien. Qui l’a peut lire le chantier.',
  qrAlt: 'L’invitation en code QR',
  copy: 'Copier le lien',
  copied: 'Copié.',
  notCopied: 'Non copié : marquez le lien et copiez-le.',
  send: 'Envoyer le lien',
  lock: 'Changer la clé',
  lockHow:
    'Prend une nouvelle clé pour le chantier. À faire quand un appareil est perdu. Il faudra réinviter tous les autres. Ce qui est déjà partagé reste sur leurs appareils.',
  lockSure: 'Changer la clé ? Il faudra réinviter tous les autres.',
  leave: 'Quitter l’équipe',
  leaveHow: 'Le chantier reste sur cet appareil. Rien ne part ni n’arrive plus.',
  leaveSure: 'Quitter l’équipe ? Le chantier reste sur cet appareil.',
  sees: 'Ce que voit le serveur',
  seesWhat:
    'Le serveur garde les saisies scellées et ne peut pas les lire. Il voit leur taille, quand elles viennent, de quelle adresse, et combien d’appareils il y a. Ses sauvegardes sont scellées aussi.',
  copiedStrip: 'Non partagé : ce téléphone a été copié. Voir Équipe',
  keepBoth: 'Garder les deux',
  keepBothHow: 'Garde les saisies des deux, chacune une fois.',
  mate: {
    title: 'Envoyer à un collègue',
    how: 'Sans serveur ni réseau : en fichier, ou en codes que sa caméra lit sur cet écran.',
    send: 'Envoyer le fichier',
    save: 'Enregistrer le fichier',
    show: 'Montrer en codes',
    tooMuch: 'Trop pour des codes. Envoyez le fichier.',
    nothing: 'Il a déjà tout.',
    stop: 'Arrêter',
    next: 'Code suivant',
    have: 'Ce que j’ai'
  },
  scan: {
    start: 'Scanner un code',
    looking: 'Tenez la caméra au-dessus du code.',
    stop: 'Arrêter de scanner'
  },
  warnings: {
    held: (name) =>
      `Des saisies de ${name} ne vont pas et attendent. Le chantier est inchangé ; comparez les empreintes.`,
    copied: 'Ce téléphone a été copié : le serveur a d’autres saisies sous son numéro.',
    'put-back':
      'Le serveur est revenu à une ancienne copie. L’application renvoie ce qu’il a perdu.',
    withheld: (name) =>
      `Le serveur donne moins de ${name} que d’autres n’ont vu. Demandez à qui le tient ; comparez les empreintes.`
  },
  faults: {
    'no-answer': 'Le serveur ne répond pas. Vérifiez le réseau et l’adresse, puis réessayez.',
    'not-let-in': 'Le serveur ne connaît pas cette clé. Demandez un nouveau lien à qui le tient.',
    removed: 'Cet appareil n’est plus dans l’équipe. Demandez une nouvelle invitation.',
    'keeper-only': 'Seul qui peut inviter peut faire cela.',
    'last-keeper': 'C’est le dernier qui peut inviter. Invitez-en d’abord un autre.',
    'too-many': 'Trop d’essais en une minute. Attendez une minute, puis réessayez.',
    full: 'Le serveur n’a plus de place. Prévenez qui le tient.',
    used: 'Cette invitation a déjà servi. Chacune vaut pour une personne : demandez-en une autre.',
    expired: 'Cette invitation a plus de sept jours. Demandez-en une autre.',
    revoked: 'Cette invitation a été reprise. Demandez-en une autre.',
    'unknown-invitation': 'Le serveur ne connaît pas cette invitation. Demandez-en une autre.',
    'other-version':
      'Serveur et application ne vont pas ensemble. Chargez la dernière version de l’application.',
    failed: 'Le serveur n’a pas pu. Réessayez ; si cela dure, prévenez qui le tient.',
    cut: 'Il manque un bout du lien. Copiez-le en entier, ou scannez-le.',
    'too-new': 'Le lien est d’une version plus récente. Chargez d’abord la dernière version.',
    'no-job': 'Personne de l’équipe n’a encore mis le chantier. Réessayez dans une minute.',
    'nothing-yet':
      'Vous êtes admis, mais le chantier n’y est pas encore. Réessayez dans une minute.'
  },
  join: {
    title: 'Rejoindre un chantier',
    found: 'On vous invite sur un chantier. Il vient sur cet appareil et reste partagé.',
    join: 'Rejoindre',
    working: 'Le chantier arrive…',
    keyKept: 'Cet appareil peut maintenant former des équipes. Ouvrez un chantier, puis Équipe.',
    toJobs: 'Aux chantiers'
  }
};

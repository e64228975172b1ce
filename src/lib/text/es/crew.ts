import { pluralizer } from '../plural.ts';
import type { Translation } from '../words.svelte.ts';

const many = pluralizer('es');
const ENTRY = { one: 'registro', other: 'registros' };

export const crew: Translation['crew'] = {
  title: 'Cuadrilla',
  intro: 'Una obra en todos los aparatos de la cuadrilla. Cada uno sigue sin cobertura.',
  strip: (notShared) =>
    notShared === 0 ? 'Compartida con la cuadrilla' : `${many(notShared, ENTRY)} sin compartir`,
  removedStrip: 'Sin compartir: fuera de la cuadrilla',
  state: {
    shared: 'La cuadrilla tiene todos sus registros.',
    waiting: (n) => `${many(n, ENTRY)} sin compartir. Saldrán solos cuando haya cobertura.`,
    first: 'Buscando el servidor…',
    'no-answer': 'No hay cobertura, o el servidor no responde. Siga: no se pierde nada.',
    removed:
      'Este aparato ya no está en la cuadrilla. La obra sigue aquí, pero ya no sale nada. Pida otra invitación.',
    'hub-full': 'El servidor no tiene espacio. Los registros esperan aquí; avise a quien lo lleva.',
    'device-full': 'Este aparato no tiene espacio. Libere algo y abra la obra otra vez.',
    wait: 'El servidor está ocupado. Se reintenta en medio minuto.',
    refused:
      'El servidor no aceptó los registros. Esperan aquí; cargue la última versión de la aplicación.'
  },
  lastShared: (when) => `Compartido por última vez: ${when}.`,
  alone: 'Esta obra está solo en este aparato.',
  name: 'Su nombre, como lo ve la cuadrilla',
  needsName: 'Escriba un nombre, para que los demás sepan quién es.',
  start: 'Formar una cuadrilla para esta obra',
  people: 'Quién está en esta obra',
  you: 'usted',
  keeper: 'puede invitar',
  nameless: 'sin nombre',
  heard: (when) => `última noticia: ${when}`,
  neverHeard: 'aún sin noticias',
  remove: 'Quitar',
  removeWhom: (name) => `Quitar a ${name}`,
  removeSure: (name) =>
    `¿Quitar a ${name} de la cuadrilla? Lo que anotó se queda. Su aparato conserva su copia.`,
  invite: 'Invitar a alguien',
  inviteKeeper: 'Invitar a alguien que también pueda invitar',
  inviteHow:
    'Vale para una persona y siete días. Que la escanee, o envíe el enlace. Quien lo tenga puede leer la obra.',
  qrAlt: 'La invitación en código QR',
  copy: 'Copiar el enlace',
  copied: 'Copiado.',
  notCopied: 'No se copió: marque el enlace y cópielo.',
  send: 'Enviar el enlace',
  lock: 'Cambiar la llave',
  lockHow:
    'Toma una llave nueva para la obra. Úselo si se perdió un aparato. Habrá que invitar de nuevo a los demás. Lo ya compartido sigue en sus aparatos.',
  lockSure: '¿Cambiar la llave? Habrá que invitar de nuevo a los demás.',
  leave: 'Dejar la cuadrilla',
  leaveHow: 'La obra sigue en este aparato. Ya no sale ni entra nada.',
  leaveSure: '¿Dejar la cuadrilla? La obra sigue en este aparato.',
  sees: 'Qué ve el servidor',
  seesWhat:
    'El servidor guarda los registros sellados y no puede leerlos. Ve su tamaño, cuándo llegan, de qué dirección y cuántos aparatos hay. Sus copias también van selladas.',
  copiedStrip: 'Sin compartir: este teléfono fue copiado. Vea Cuadrilla',
  keepBoth: 'Conservar ambos',
  keepBothHow: 'Conserva los registros de ambos, cada uno una vez.',
  mate: {
    title: 'Enviar a un compañero',
    how: 'Sin servidor ni cobertura: como archivo, o como códigos que su cámara lee de esta pantalla.',
    send: 'Enviar el archivo',
    save: 'Guardar el archivo',
    show: 'Mostrar como códigos',
    tooMuch: 'Demasiado para códigos. Envíe el archivo.',
    nothing: 'Ya lo tiene todo.',
    stop: 'Parar',
    next: 'Código siguiente',
    have: 'Lo que tengo'
  },
  scan: {
    start: 'Escanear un código',
    looking: 'Ponga la cámara sobre el código.',
    stop: 'Dejar de escanear'
  },
  warnings: {
    held: (name) =>
      `Hay registros de ${name} que no encajan y esperan. La obra está como estaba; comparen las huellas.`,
    copied: 'Este teléfono fue copiado: el servidor tiene otros registros con su número.',
    'put-back': 'El servidor volvió a una copia vieja. La aplicación envía de nuevo lo perdido.',
    withheld: (name) =>
      `El servidor da menos de ${name} de lo que vieron otros. Pregunte a quien lo lleva; comparen las huellas.`
  },
  faults: {
    'no-answer': 'El servidor no responde. Mire la cobertura y la dirección, y reintente.',
    'not-let-in': 'El servidor no conoce esta llave. Pida un enlace nuevo a quien lo lleva.',
    removed: 'Este aparato ya no está en la cuadrilla. Pida otra invitación.',
    'keeper-only': 'Eso solo lo puede hacer quien puede invitar.',
    'last-keeper': 'Es la última persona que puede invitar. Invite antes a otra.',
    'too-many': 'Demasiados intentos en un minuto. Espere un minuto y reintente.',
    full: 'El servidor no tiene espacio. Avise a quien lo lleva.',
    used: 'Esta invitación ya se usó. Cada una vale para una persona: pida otra.',
    expired: 'Esta invitación tiene más de siete días. Pida otra.',
    revoked: 'Esta invitación fue retirada. Pida otra.',
    'unknown-invitation': 'El servidor no conoce esta invitación. Pida otra.',
    'other-version':
      'El servidor y la aplicación no encajan. Cargue la última versión de la aplicación.',
    failed: 'El servidor no pudo hacerlo. Reintente; si sigue así, avise a quien lo lleva.',
    cut: 'Falta parte del enlace. Cópielo entero, o escanéelo.',
    'too-new': 'El enlace es de una versión más nueva. Cargue antes la última versión.',
    'no-job': 'Nadie de la cuadrilla ha puesto la obra todavía. Reintente en un minuto.',
    'nothing-yet': 'Ya está dentro, pero la obra no ha llegado. Reintente en un minuto.'
  },
  join: {
    title: 'Unirse a una obra',
    found: 'Le invitan a una obra. Viene a este aparato y sigue compartida.',
    join: 'Unirse',
    working: 'Trayendo la obra…',
    keyKept: 'Este aparato ya puede formar cuadrillas. Abra una obra y luego Cuadrilla.',
    toJobs: 'A las obras'
  }
};

import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('es');
const SLATE = { one: 'pizarra', other: 'pizarras' };

export const sortOptions: Catalogue['sortOptions'] = {
  title: 'Opciones de este teléfono',
  pallets: {
    none: 'Aún no hay palés',
    noneWhy: 'Anote el primer palé, para contar cada pizarra donde vino.',
    chooserTitle: 'Palés',
    chooserHint:
      'Toque el palé del que toma pizarras. Tenga varios abiertos: tomar de tres o más mezcla el color.',
    keepOpen: 'Abierto',
    name: 'Nombre en el palé',
    slates: 'Pizarras que trae',
    slatesHint: 'Según la etiqueta. 0 si nadie lo sabe.',
    mixed: 'Varias longitudes mezcladas',
    add: 'Añadir palé',
    addTitle: 'Otro palé',
    nameMissing: 'Dé un nombre al palé, por ejemplo A.',
    nameTaken: (name) => `Ya hay un palé ${name}. Dé otro nombre a este.`,
    slatesWrong: 'Escriba un número entero de 0 a 100 000.'
  },
  day: {
    title: 'El día hasta ahora',
    sorted: (n) => `${many(n, SLATE)} hoy`,
    worked: (time) => `${time} clasificando, sin las pausas`,
    ofJob: 'Las cifras son de la obra, nunca de una persona.',
    setAsideTitle: 'Apartadas, toda la obra'
  },
  undo: {
    cut: 'Aquí solo se deshacen las últimas 20 anotaciones. De las lecturas más viejas, Grados nombra la que se sale.',
    title: 'Últimos diez registros',
    none: 'Nada que deshacer.'
  },
  checked: {
    belongs: (pile) => `Va en ${pile}.`,
    put: (pile) => `Ponerla en ${pile}`
  },
  palletRemoved: {
    remove: 'Quitar este palé',
    done: (label) => `Palé ${label} quitado.`,
    bringBack: 'Devolverlo',
    stays:
      'Un palé con pizarras, una pila o un puesto de muestra anotados se queda. Corrija su nombre o su número en Entrega.'
  },
  held: (n, reading) =>
    `${many(n, { one: 'medida espera su respuesta', other: 'medidas esperan su respuesta' })}: ${reading}`,
  sound: 'Un tono por montón (más grave, más gruesa)',
  vibration: 'Vibración',
  speech: 'Decir el montón en voz alta',
  noVoice: 'Este aparato no tiene voz propia para este idioma.',
  leftHand: 'Para zurdos',
  awake: 'Mantener la pantalla encendida',
  awakeMissing: 'Este navegador no puede mantener la pantalla encendida.',
  holdStill: 'Medir dos veces cada punto',
  points: 'Puntos medidos en cada pizarra',
  nickname: 'Quién clasifica (un apodo, o nada)',
  nicknameHint: 'Solo para conocer cada mano por las comprobaciones. No se compara a nadie.',
  unit: 'Unidad del calibre',
  tryOut: 'Probar las señales de cada montón',
  storage: 'Memoria de este aparato',
  storageKept: 'El navegador conserva los registros de este aparato.',
  storageNotKept:
    'El navegador puede vaciar este aparato si le falta espacio: haga copia cada día.',
  ending: 'Calibre que escribe',
  endingKey: 'acaba cada lectura con Enter o Tab',
  endingPause: 'no manda final: una pausa toma la lectura',
  endingForget: 'Olvidar y aprender de nuevo',
  clicker: {
    title: 'Teclas de un pulsador',
    hint: 'A mano, las teclas 1, 2, 3 … clasifican al momento. Enseñe aquí otras teclas. Algunos móviles se reservan las teclas de volumen: use entonces las de página.',
    none: 'aún sin tecla',
    press: 'Pulse ahora la tecla',
    learn: 'Aprender'
  },
  serial: {
    title: 'Calibre por cable',
    connect: 'Conectar un calibre',
    connecting: 'Elija el calibre en la lista del navegador…',
    speed: 'Velocidad (baudios)',
    ending: 'Las líneas acaban',
    endingLine: 'con fin de línea',
    endingPause: 'con una pausa',
    learning: (n) =>
      `Tome ${many(n, { one: 'lectura de prueba más', other: 'lecturas de prueba más' })}, cada una de otra pizarra. No se cuentan.`,
    rawTitle: 'Lo que manda el calibre',
    rawNone:
      'Nada aún. Pulse la tecla de datos del calibre; si salen signos raros, pruebe otra velocidad.',
    which: '¿Cuál es el grosor?',
    noNumber: 'No hay número en estas líneas. Pruebe otra velocidad.',
    learnt: 'Calibre aprendido: sus lecturas se toman.',
    disconnect: 'Desconectar',
    forget: 'Aprender de nuevo',
    unplugged: 'Se desenchufó el calibre. Lo que mandó antes se conserva.',
    closed: 'Desconectado.',
    failed: (detail) => `El calibre no se abrió: ${detail}`,
    bytesLost: 'Se perdieron signos del calibre. Si la última pizarra no se tomó, mídala.',
    noise: (text) => `No es una lectura, se deja: ${text}`
  },
  /** What is asked of a slate on a flat board. */
  onBoard: {
    board: (step) => `Sobre una tabla plana: ¿baila más de ${step}?`,
    rocks: 'Baila',
    skip: 'Un solo lado'
  },
  /** Answers to what a reading is. */
  answers: {
    measureAgain: 'Medir otra vez',
    keep: 'Conservar'
  }
};

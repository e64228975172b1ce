import { haveWords, numberOfPile } from '../pile-names.ts';
import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('es');
const ENTRY = { one: 'registro', other: 'registros' };
const WORDS = ['Gruesa', 'Media', 'Fina'];

export const common: Partial<Catalogue['common']> = {
  appName: 'Evencourse',
  slates: (n) => many(n, { one: 'pizarra', other: 'pizarras' }),
  courses: (n) => many(n, { one: 'hilada', other: 'hiladas' }),
  pallets: (n) => many(n, { one: 'palé', other: 'palés' }),
  piles: (n) => many(n, { one: 'montón', other: 'montones' }),
  entries: (n) => many(n, ENTRY),
  pileWord: (pile, piles) => (haveWords(piles) ? WORDS[pile - 1] : ''),
  pile: (pile, piles) =>
    haveWords(piles) ? `${pile} ${WORDS[pile - 1]}` : `Montón ${numberOfPile(pile, piles)}`,
  back: 'Volver',
  save: 'Guardar',
  cancel: 'Cancelar',
  undo: 'Deshacer',
  print: 'Imprimir',
  sheet: {
    page: (page, pages) => `página ${page} de ${pages}`,
    mark: (mark) => `huella ${mark}`,
    goesOn: 'continúa'
  },
  close: 'Cerrar',
  remove: 'Quitar',
  change: 'Cambiar',
  online: 'Con conexión',
  offline: 'Sin conexión: todo funciona y se guarda en este aparato',
  lastSaved: (what) => `Último guardado: ${what}`,
  nothingSaved: 'Aún no hay nada guardado',
  unexported: (n) => (n === 0 ? 'Copia al día' : `${many(n, ENTRY)} sin copia`),
  notSaved: 'NO GUARDADO',
  retry: 'Reintentar',
  diskFull:
    'Este aparato no tiene espacio y el registro no se ha guardado. Libere espacio, o haga una copia de la obra y pase a otro aparato; luego reintente.',
  dataCleared:
    'El navegador borró los datos de esta aplicación en este aparato con la página abierta. Lo que ve es todo lo que queda: anote o imprima lo que necesite, luego recargue la página y restaure su copia.',
  saveFailed: (detail) =>
    `El navegador no guardó el registro (${detail}). Sigue en la pantalla: reintente.`,
  leaveUnsaved: (n) =>
    `${many(n, { one: 'registro sin guardar', other: 'registros sin guardar' })} se perdería${n === 1 ? '' : 'n'}. ¿Dejar la obra de todos modos?`,
  loading: 'Abriendo…',
  jobMissing:
    'Esta obra no está en este aparato. Abra la lista de obras o recupérela de una copia.',
  toJobs: 'Todas las obras',
  steps: {
    overview: 'Obra',
    delivery: 'Entrega',
    sort: 'Clasificar',
    grades: 'Grados',
    roof: 'Cubierta',
    courses: 'Hiladas',
    lay: 'Colocar',
    sheet: 'Replanteo',
    crew: 'Cuadrilla',
    join: 'Unirse a una obra',
    settings: 'Ajustes'
  },
  unexpected: 'Algo falló en esta pantalla. Lo guardado está a salvo.',
  skipToContent: 'Ir al contenido',
  updateWaiting: 'Hay una versión nueva. Espera hasta que usted diga; no se pierde nada.',
  updateNow: 'Cargarla ahora',
  stepsLabel: 'Pasos de la obra',
  stepStates: { done: 'hecho', now: 'ahora', open: 'pendiente' },
  language: 'Idioma',
  languageReview:
    'El español, francés, polaco y rumano cubren Clasificar, el reparto rápido, las fotos, la cuadrilla y las etiquetas impresas; falta la revisión por hablantes nativos. Lo demás está en inglés.',
  languageFailed: 'Este idioma aún no está en el aparato. Conéctese una vez y vuelva a elegirlo.',
  openFailed: (detail) =>
    `El navegador no abrió el diario de este aparato (${detail}). Cierre otras pestañas de la aplicación y recargue; no se ha borrado nada.`,
  events: {
    jobOpened: 'obra abierta',
    jobRenamed: 'obra renombrada',
    jobSettingsSet: 'ajustes',
    slateSpecSet: 'medida de pizarra',
    slateSizesSet: 'tamaños de pizarra',
    setCoursesChosen: 'hiladas de cada tamaño',
    deliveryDeclared: 'pedido',
    palletAdded: 'palé',
    sampleDrawn: 'lista de muestra',
    slateGauged: 'pizarra medida',
    readingHeld: 'medida en espera',
    slateTapped: 'pizarra clasificada',
    slateSetAside: 'pizarra apartada',
    slateChecked: 'comprobación',
    stackMeasured: 'pila medida',
    pileCounted: 'montón contado',
    entryVoided: 'deshacer',
    gradesSet: 'grados',
    slopeSet: 'faldón',
    slopeRemoved: 'faldón quitado',
    planAdopted: 'plan',
    courseLaid: 'hilada colocada',
    coursePartLaid: 'hilada colocada en parte',
    slatesLost: 'pizarras perdidas',
    slatesMoved: 'pizarras pasadas a otro montón',
    defectNoted: 'defecto',
    photoAdded: 'foto',
    gaugeStudied: 'estudio del calibre',
    copyKept: 'copia de un teléfono conservada',
    jobRescued: 'rescatada de una obra dañada',
    verdictSigned: 'dictamen'
  }
};

import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('es');
const SLATE = { one: 'pizarra', other: 'pizarras' };

export const sort: Catalogue['sort'] = {
  title: 'Clasificar',
  ready: {
    gauge: 'Mida una pizarra',
    hand: 'Toque el montón de cada pizarra'
  },
  sample: {
    count: (label: string, done: number, of: number) =>
      `Palé ${label}: ${done > of ? `${done} medidas` : `${done} de ${of}`}.`,
    take: (label: string) => `Tome el palé ${label}`,
    enough: 'Ya basta de medir: fije los grados.',
    list: (done: number, of: number, label: string, layer: number, place: number) =>
      `Lista de muestra: ${done} de ${of}. Sigue: palé ${label}, capa ${layer}, pizarra ${place}`,
    toList: 'Medirla'
  },
  pallet: {
    named: (label) => `palé ${label}`,
    label: 'Del palé',
    more: 'Palés',
    left: (left, slates) =>
      slates === 0
        ? 'sin contar'
        : left === 0
          ? 'vacío'
          : many(left, { one: 'queda', other: 'quedan' }),
    measured: (n) => many(n, { one: 'medida', other: 'medidas' }),
    over: (n) => many(n, { other: 'más que en la etiqueta' })
  },
  count: 'Contar montones',
  mode: { hand: 'A mano', gauge: 'Calibre' },
  entry: 'Lectura',
  keypad: {
    label: 'Teclado',
    decimal: 'Coma decimal',
    back: 'Borrar cifra',
    clear: 'Borrar',
    enter: 'Tomar el número'
  },
  take: (number) => `Tomar ${number}`,
  told: {
    byHand: 'a mano',
    from: (label) => `del palé ${label}`,
    saving: 'guardando…',
    saved: 'guardado',
    notSaved: 'NO GUARDADO',
    borderline: 'En el límite',
    borderlineWhy: (threshold) => `muy cerca de ${threshold}: valen ambos montones`,
    tooThick: 'Demasiado gruesa, revísela',
    tooThin: 'Demasiado fina, revísela',
    outsideOrder: (band) => `fuera del pedido, ${band}`,
    beyondSpread: (over) =>
      `${over} más allá de casi todas hasta ahora: mídala otra vez o apártela`,
    sample: 'Medida',
    sampleWhy: 'Devuélvala a su palé.',
    toGrades: 'Fijar los grados',
    setAside: 'Apartada',
    taper: (taper) => `cuña ${taper}`,
    point: (done, wanted) => `Punto ${done} de ${wanted}`,
    pointWhy: 'Mida el punto siguiente de la misma pizarra.',
    side: { left: 'Mida el lado izquierdo', right: 'Ahora el lado derecho' },
    sideWhy: 'La misma pizarra, cerca del borde, a una misma altura.',
    again: 'Quieto: otra vez',
    againWhy: (first) => `Leído ${first}; mida otra vez el mismo punto.`,
    moved: 'Las dos lecturas difieren',
    movedWhy: (first, second) => `${first}, luego ${second}: mida otra vez el punto.`,
    checkAgrees: 'Comprobación: coincide',
    checkDiffers: 'Comprobación: difiere',
    checkWhy: (thickness, felt, gauged) => `${thickness}: a mano ${felt}, con calibre ${gauged}`,
    undone: 'Deshecho'
  },
  refused: {
    title: 'No se toma',
    empty: 'Aún no hay número. Escriba el grosor, por ejemplo 6,4.',
    notANumber: (text) => `«${text}» no es un número. Escriba el grosor, por ejemplo 6,4.`,
    severalNumbers: (text) => `«${text}» contiene más de un número. Mida otra vez.`,
    severalDecimals: (text) =>
      `«${text}» tiene más de una coma decimal. Escriba un número, por ejemplo 6,4.`,
    unfinished: (text) => `«${text}» acaba en coma decimal. Complete el número o quítela.`,
    tooManyDigits: (text) => `«${text}» tiene demasiados decimales. Mida otra vez.`,
    unknownUnit: (unit) => `No se conoce la unidad «${unit}». Use mm o pulgadas.`,
    negative: (text) => `${text} es menos que cero. Ponga a cero el calibre y lea otra vez.`,
    zero: 'El calibre marca cero. Ciérrelo sobre la pizarra y lea otra vez.',
    tooThin: (value, limit) =>
      `${value} es demasiado fino para una pizarra: lo mínimo es ${limit}. Lea otra vez.`,
    tooThick: (value, limit) =>
      `${value} es demasiado grueso para una pizarra: lo máximo es ${limit}. Lea otra vez.`,
    looksLikeInches: (text) => `${text} es demasiado fino en milímetros. ¿Son pulgadas?`,
    looksLikeMm: (text) => `${text} es demasiado grueso en pulgadas. ¿Son milímetros?`,
    missingDecimal: (text) => `${text} es demasiado grueso. ¿Falta la coma decimal?`,
    cutShort: (text) => `Solo llegó «${text}», una parte de la lectura. Mida otra vez.`,
    interrupted: (text) =>
      `«${text}» llegó con una larga pausa y pueden ser dos lecturas. Mida otra vez.`,
    noPallet: (text) => `Elija antes el palé; ${text} espera aquí y no está guardado.`
  },
  unit: {
    ask: (unit) => `¿Están las lecturas en ${unit}?`,
    mm: 'milímetros',
    in: 'pulgadas',
    yes: (unit) => `Sí, ${unit}`,
    other: (unit) => `No, ${unit}`
  },
  setAside: {
    button: 'Apartar',
    title: 'Apartar: ¿por qué?',
    useTitle: 'Para',
    which: '¿Qué pizarra?',
    newSlate: 'La que está en la mano',
    lastSlate: (what) => `La última (${what})`,
    reasons: {
      broken: 'Rota',
      dullRing: 'Sonido sordo',
      twisted: 'Alabeada',
      tapered: 'En cuña',
      wrongSize: 'Otra medida',
      inclusion: 'Inclusión',
      colour: 'Color',
      other: 'Otra causa'
    },
    uses: { undereave: 'Alero', cutPiece: 'Recorte', return: 'Devolver', scrap: 'Desecho' }
  },
  undo: {
    last: 'Deshacer',
    list: 'Registros',
    gauged: (thickness, pile) => `${thickness}, ${pile}`,
    sample: (thickness) => `${thickness}, medida`,
    tapped: (pile) => `${pile}, a mano`,
    setAside: (reason) => `Apartada: ${reason}`,
    checked: (thickness) => `Comprobación ${thickness}`,
    pallet: (label) => `Palé ${label} añadido`
  },
  check: {
    ask: (pile) => `Comprobación: mida la pizarra recién puesta en ${pile}.`,
    why: 'Enseña qué llama su mano gruesa y fina.',
    type: 'Escribir',
    skip: 'Ahora no'
  },
  sides: {
    next: 'Pizarra siguiente: mida el lado izquierdo y el derecho',
    this: 'Izquierda y derecha'
  },
  tail: {
    text: 'Mida en el tercio inferior, lejos del borde labrado.',
    drawing: 'Una pizarra con el punto de medida cerca del extremo inferior',
    close: 'Visto'
  },
  photos: 'Fotos',
  tally: {
    title: 'En los montones',
    pace: (n) => `${n} pizarras por hora`,
    noPace: 'El ritmo sale tras cinco minutos',
    left: (n) => `Quedan ${many(n, SLATE)} en los palés`,
    toFinish: (time) => `unas ${time} para acabar`,
    hours: (hours, minutes) => (hours > 0 ? `${hours} h ${minutes} min` : `${minutes} min`),
    perPallet: 'Pizarras por palé',
    pallet: 'Palé',
    remaining: 'Quedan',
    setAside: 'Aparte',
    found: 'Contadas en los montones, palé sin saber',
    total: 'Todo'
  },
  day: {
    button: 'El día'
  },
  options: {
    button: 'Opciones',
    endingLearnt: 'Aprendido: el calibre no manda Enter; una pausa toma la lectura.',
    tags: 'Etiquetas y hoja de recuento para imprimir'
  },
  caution:
    'Levante con ayuda, apile bajo y a nivel, use guantes: los cantos cortan. Deciden las normas locales y los profesionales.',
  unsaved: (n) =>
    `${many(n, { one: 'registro espera', other: 'registros esperan' })} a guardarse y siguen en esta pantalla.`,
  live: (n, last) => (n > 1 ? `${n} registros. Último: ${last}` : last)
};

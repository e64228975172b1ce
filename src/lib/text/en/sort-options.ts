import { pluralizer } from '../plural.ts';

const many = pluralizer('en');

/** Words of the options of Sort, of clickers and of gauges on a cable. */
export const sortOptions = {
  title: 'Options of this phone',
  palletRemoved: {
    remove: 'Remove this pallet',
    done: (label: string) => `Pallet ${label} removed.`,
    bringBack: 'Bring it back',
    stays:
      'A pallet with slates, a stack or a sample place entered stays. Correct its name or count under Delivery.'
  },
  held: (n: number, reading: string) =>
    `${many(n, { one: 'reading waits for your answer', other: 'readings wait for your answer' })}: ${reading}`,
  sound: 'Tone for each pile (lower is thicker)',
  vibration: 'Vibration',
  speech: 'Say the pile aloud',
  noVoice: 'This device has no voice of its own for this language.',
  leftHand: 'Left-handed layout',
  awake: 'Keep the screen on',
  awakeMissing: 'This browser cannot keep the screen on.',
  holdStill: 'Hold still: gauge every point twice',
  points: 'Points gauged on each slate',
  nickname: 'Who sorts (a nickname, or leave it empty)',
  nicknameHint: 'Only to learn each hand from spot checks. Nobody is compared or ranked.',
  unit: 'Unit of the gauge',
  tryOut: 'Try the signs of each pile',
  storage: 'Storage on this device',
  storageKept: 'The browser keeps the entries of this device.',
  storageNotKept: 'The browser may clear this device when it runs short of room: back up each day.',
  ending: 'Gauge that types',
  endingKey: 'ends each reading with Enter or Tab',
  endingPause: 'sends no end: a pause takes the reading',
  endingForget: 'Forget, learn again',
  clicker: {
    title: 'Keys of a clicker',
    hint: 'By hand the keys 1, 2, 3 … sort at once. Teach other keys here. Some phones keep the volume keys to themselves: then set the clicker to page keys.',
    none: 'no key yet',
    press: 'Press the key now',
    learn: 'Learn'
  },
  serial: {
    title: 'Gauge on a cable',
    connect: 'Connect a gauge',
    connecting: 'Choose the gauge in the browser’s list…',
    speed: 'Speed (baud)',
    ending: 'Lines end',
    endingLine: 'with a line end',
    endingPause: 'with a pause',
    learning: (n: number) =>
      `Take ${many(n, { one: 'more trial reading', other: 'more trial readings' })}, each of another slate. They are not counted.`,
    rawTitle: 'What the gauge sends',
    rawNone: 'Nothing yet. Press the gauge’s data key; if only odd signs come, try another speed.',
    which: 'Which of these is the thickness?',
    noNumber: 'No number in these lines. Try another speed.',
    learnt: 'The gauge is learnt: its readings are taken.',
    disconnect: 'Disconnect',
    forget: 'Learn again',
    unplugged: 'The gauge was unplugged. What it sent before is kept.',
    closed: 'Disconnected.',
    failed: (detail: string) => `The gauge did not open: ${detail}`,
    bytesLost: 'Some signs from the gauge were lost. If the last slate was not taken, gauge it.',
    noise: (text: string) => `Not a reading, left out: ${text}`
  },
  /** What is asked of a slate on a flat board. */
  onBoard: {
    board: (step: string) => `On a flat board: does it rock by over ${step}?`,
    rocks: 'It rocks',
    skip: 'One side only'
  },
  /** Answers to what a reading is. */
  answers: {
    measureAgain: 'Measure again',
    keep: 'Keep'
  }
};

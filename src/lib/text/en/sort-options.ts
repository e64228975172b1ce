import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };

/** Words of the options of Sort, of clickers and of gauges on a cable. */
export const sortOptions = {
  title: 'Options of this phone',
  pallets: {
    none: 'No pallet yet',
    noneWhy: 'Enter the first pallet, so that every slate is counted where it came from.',
    chooserTitle: 'Pallets',
    chooserHint:
      'Tap the pallet you take slates from. Keep several open: slates drawn from three or more pallets blend their colour.',
    keepOpen: 'Open',
    name: 'Name on the pallet',
    slates: 'Slates on it',
    slatesHint: 'As on the label. 0 if nobody knows.',
    mixed: 'Several lengths mixed',
    add: 'Add pallet',
    addTitle: 'Another pallet',
    nameMissing: 'Give the pallet a name, for example A.',
    nameTaken: (name: string) => `There is a pallet ${name} already. Give this one another name.`,
    slatesWrong: 'Type a whole number from 0 to 100,000.'
  },
  day: {
    title: 'The day so far',
    sorted: (n: number) => `${many(n, SLATE)} measured or sorted today`,
    worked: (time: string) => `${time} of sorting, pauses left out`,
    ofJob: 'Figures are of the job, never of a person.',
    setAsideTitle: 'Set aside, whole job'
  },
  undo: {
    cut: 'Only the last 20 entries can be taken back here. Of older readings, Grades names the one that is far out.',
    title: 'Last ten entries',
    none: 'Nothing to undo.'
  },
  /** A slate whose spot check found it on the wrong pile. */
  checked: {
    belongs: (pile: string) => `It belongs on ${pile}.`,
    put: (pile: string) => `Put it on ${pile}`
  },
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

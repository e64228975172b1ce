export {
  type ReadingUnit,
  type AcceptedReading,
  type RefusedText,
  type RefusedNumber,
  type UnreadableReason,
  type Reading,
  parseReading
} from './reading-grammar.ts';
export { type LikelyRange, findLostPoint } from './lost-point.ts';
export {
  type UnitTrial,
  NUMBERS_IN_DOUBT,
  startUnitTrial,
  addToUnitTrial,
  isUnitInDoubt
} from './units-plausibility.ts';
export {
  type WedgeEnding,
  type WedgeSettings,
  type WedgeEvent,
  type TornReading,
  type WedgeOutcome,
  type WedgeState,
  type WedgeStep,
  IDLE_WEDGE
} from './wedge-state.ts';
export { BURST_GAP_MS, PAUSE_ENDS_MS, wedgeStep, looksUnended } from './wedge.ts';
export { type KeyPress, type KeyMeaning, meaningOfKey } from './wedge-keys.ts';
export {
  type LearntKey,
  type TapKeyAct,
  type TapKeyEffect,
  type TapKeyPress,
  type TapKeysSettings,
  type TypedSoFar,
  TapKeys,
  nameOfKey
} from './tap-keys.ts';
export { type WedgeLesson, READINGS_TO_LEARN, learnWedgeEnding } from './wedge-setup.ts';
export {
  type CaptureField,
  type KeyClaim,
  type WedgeAudience,
  WedgeListener
} from './wedge-listener.ts';
export { type TextChange, changeOfText } from './field-text.ts';
export {
  type KeyTouch,
  type KeypadKey,
  type KeypadState,
  type KeypadSettings,
  type KeypadEffect,
  type KeypadStep,
  EMPTY_KEYPAD,
  USUAL_TAKING,
  pressKeypad
} from './keypad.ts';
export { readPoints } from './read-points.ts';
export {
  type PointsState,
  type PointsStep,
  type GaugedSlate,
  startPoints,
  addPoint,
  dropPoint
} from './points.ts';
export {
  type RepeatState,
  type RepeatEffect,
  type RepeatStep,
  USUAL_REPEAT_LIMIT_MM,
  startRepeatCheck,
  repeatReading
} from './repeat-check.ts';
export {
  type LineEnding,
  type LineState,
  type LineStep,
  type RawLine,
  PAUSE_ENDS_LINE_MS,
  startLines,
  takeBytes,
  passTime
} from './serial-lines.ts';
export {
  type DecimalMark,
  type LinePattern,
  type LineCandidate,
  type LineLesson,
  type NoiseLine,
  LINES_TO_LEARN,
  learnLinePattern,
  readLine
} from './line-pattern.ts';
export {
  type SerialReader,
  type SerialSpeed,
  type SerialPortLike,
  type SerialSettings,
  type SerialEvent,
  type NoiseReason,
  SerialGauge
} from './serial.ts';
export type { Timer } from './timer.ts';

export { default as Afterwards } from './Afterwards.svelte';
export { default as Choice } from './Choice.svelte';
export { default as CourseChooser } from './CourseChooser.svelte';
export { default as EntryList } from './EntryList.svelte';
export { default as Field } from './Field.svelte';
export { default as FilePicker } from './FilePicker.svelte';
export { default as FittedTable } from './FittedTable.svelte';
export { default as Fold } from './Fold.svelte';
export { default as Hatch } from './Hatch.svelte';
export { default as Keypad } from './Keypad.svelte';
export { default as LanguageChooser } from './LanguageChooser.svelte';
export { default as Notice } from './Notice.svelte';
export { default as NumberEntry } from './NumberEntry.svelte';
export { default as Panel } from './Panel.svelte';
export { default as PhotoPart } from './PhotoPart.svelte';
export { default as PhotoStrip } from './PhotoStrip.svelte';
export { default as PileChooser } from './PileChooser.svelte';
export { default as PileMark } from './PileMark.svelte';
export { default as PrintHead } from './PrintHead.svelte';
export { sheetName } from './sheet-name.ts';
export { default as PrintPage } from './PrintPage.svelte';
export { default as RoofElevation } from './RoofElevation.svelte';
export { default as Sign } from './Sign.svelte';
export { default as Slab } from './Slab.svelte';
export { default as SlopeElevation } from './SlopeElevation.svelte';
export { default as SlopeFrame } from './SlopeFrame.svelte';
export { default as StatusStrip } from './StatusStrip.svelte';
export { default as StepTrack } from './StepTrack.svelte';
export { default as StepBar } from './StepBar.svelte';
export { default as TailDrawing } from './TailDrawing.svelte';
export { default as Verdict } from './Verdict.svelte';
export { default as WarningLines } from './WarningLines.svelte';
export { sayBand } from './say-band.ts';
export { sayAct, sayPile, sayUndo } from './act-words.ts';
export { type CoursePlace, createBySlope } from './by-slope.ts';
export { linearScale, stepFor, ticksBetween } from './chart-scale.ts';
export { focusFirstWrong } from './focus.ts';
export { showPageHead } from './page-heads.ts';
export { intoView } from './into-view.ts';
export {
  fieldText,
  lengthWriter,
  readLength,
  readNumber,
  retypeLength,
  runUnits,
  type FieldReading,
  type LengthWriter,
  type RunUnits,
  type ShownUnit
} from './length-words.ts';
export { pileColour, pileInk } from './pile-colour.ts';
export { type PartOfGroup, groupsInPages } from './groups-in-pages.ts';
export { inPages } from './in-pages.ts';
export { PAPER_ROOM, paperLines } from './paper-room.ts';
export { Printing } from './printing.svelte.ts';
export { frameOfNet, roofFromAbove, roofNet, shareFromAbove } from './roof-net.ts';
export { sayChance } from './say-chance.ts';
export { sayKickers } from './say-kickers.ts';
export { sayShape } from './say-shape.ts';
export {
  courseAt,
  down,
  frameOf,
  numberedCourses,
  outlinePath,
  piecesPath
} from './slope-outline.ts';
export { oneFingerOnly } from './touch-guard.ts';
export { sayPallet, type PalletView } from './views.ts';
export { tellWidth } from './tell-width.ts';
export { whenNear } from './when-near.ts';
export { wholeSlates } from './whole-slates.ts';

export { JobState, type SaveFailure } from './job.svelte.ts';
export { provideJob, useJob } from './job-context.ts';
export { copyText } from './copy-text.ts';
export { device } from './device.svelte.ts';
export { JobsState } from './jobs.svelte.ts';
export { startCheck } from './start-check.svelte.ts';
export { updates } from './updates.svelte.ts';
export { type NextStep, type ToMeasure, nextStep, toMeasure } from './next-step.ts';
export { FilesState, type CsvChoice, type CsvImport } from './files.svelte.ts';
export { type ReadyFile, download, share } from './file-saving.ts';
export { type DevicePreferences, Preferences, preferences } from './preferences.svelte.ts';
export { SortState } from './sort.svelte.ts';
export { PaceClock } from './pace-clock.svelte.ts';
export { serialPorts } from './serial-ports.ts';
export { verdictWords, type VerdictWords } from './verdict-words.ts';
export { sayTold } from './told.ts';
export { sayAct } from './act-words.ts';
export { WakeLock } from './wake-lock.ts';
export { localVoice } from './feedback.ts';
export { drawnThicknessMm } from './drawn-thickness.ts';
export { GradesState } from './grades.svelte.ts';
export { HeldOut } from './held-out.svelte.ts';
export { palletSpreads } from './pallet-spreads.ts';
export { GradesAdvice, type Regrade, type SorterStudy } from './grades-advice.svelte.ts';
export { GaugeStudy, STUDY_SIZES, type StudySize } from './gauge-study.svelte.ts';
export { ARROW_STEP_MM, PAGE_STEP_MM } from './grades-handles.ts';
export type { GradeWay } from './grade-ways.ts';
export { HealthState, type Persistence } from './health.svelte.ts';
export { type ReadyBackup, makeBackup, noteBackup, restore, sayRestore } from './backup.ts';
export { clearsUnusedSites, isBackupDue } from './backup-reminder.ts';
export { RoofDesk, type ListedSlope } from './roof.svelte.ts';
export {
  type EdgeForm,
  type OpeningForm,
  type SlopeForm,
  WAYS_OF_EDGE,
  blankOpening
} from './roof-forms.ts';
export type { FieldTrouble } from './roof-reading.ts';
export { type LengthWriter, type ShownUnit, lengthWriter } from './length-words.ts';
export { type ToldTrouble, sayRoofTrouble } from './say-roof-trouble.ts';
export { type PileMaterial, pileMaterials, undereaveNails } from './pile-materials.ts';
export { type SetAsideForUndereave, setAsideForUndereave } from './set-aside-for-undereave.ts';
export { undereaveServedAtMost } from './roof-undereave.ts';
export { TallySheetState } from './tally-sheet.svelte.ts';
export { chooseLanguage, startLanguage } from './language.ts';
export { per100IfSharp } from './plan-reading.ts';
export { type PileRow, pileRows } from './pile-rows.ts';
export { type PileLeft, pilesLeft } from './piles-left.ts';
export { type HeldRisk, type MadePlan, PlanDesk, type PlanStage } from './plan-desk.svelte.ts';
export { DeliveryState } from './delivery.svelte.ts';
export { today } from './calendar-day.ts';
export {
  type ListProgress,
  type OfferedSlate,
  type SampleStanding,
  labelsOf,
  placeKey,
  signedVerdict
} from './delivery-sample.ts';
export type { Judged, NoFindings, SoFar } from './delivery-judge.ts';
export type { ListCoverage } from './delivery-coverage.ts';
export { sayCoverage, sayPlanSoFar, sayToFinish } from './delivery-so-far.ts';
export { LARGEST_AMOUNT, LARGEST_COUNT, type OrderProblem } from './delivery-fields.ts';
export { OrderDesk, type OrderForm, type OrderProblems } from './delivery-order.svelte.ts';
export { PalletEntry } from './delivery-pallets.svelte.ts';
export { PlanDraft } from './delivery-draft.svelte.ts';
export type { PlanRefusal, ReadyPlan } from './delivery-plan.ts';
export {
  type ListedPlace,
  MeasureWizard,
  SLATE_FIELDS,
  type SlateField
} from './delivery-measure.svelte.ts';
export { DeliveryExtras } from './delivery-extras.svelte.ts';
export { DeliveryPhotos, LARGEST_PHOTO_BYTES } from './delivery-photos.svelte.ts';
export { DeliveriesState } from './delivery-compare.svelte.ts';
export { sayDecision, sayMessage, sayVerdict } from './delivery-report.ts';
export { hasAmounts, missingFigures, sayCostPace, sayCosts } from './delivery-costs.ts';
export { sayFindings } from './delivery-glance.ts';
export { sayMissing } from './delivery-missing.ts';
export { judgedReadings } from './delivery-readings.ts';
export { paceSince, sortedMinutesOf } from './pace.ts';
export { CoursesState, TRIAL_TIMES, type Trial, type WhatIfLine } from './courses.svelte.ts';
export type { WhatIfChange } from './courses-choices.ts';
export { WIDE_STORE, palletsForDraw } from './draw-pallets.ts';
export { LayState, ROGUE_CHANCE, type RogueAnswer } from './lay.svelte.ts';
export type { LaidAct, SlopeProgress } from './lay-reading.ts';
export { needsInstallHint } from './install-hint.ts';

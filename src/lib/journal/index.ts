export {
  BODIES,
  BOUNDARY_METHODS,
  SET_ASIDE_REASONS,
  SET_ASIDE_USES,
  type BodyOf,
  type BoundaryMethod,
  type EventType,
  type SampleSlate,
  type SetAsideReason,
  type SetAsideUse,
  type SlateSpecBody,
  type SlopeBody
} from './bodies.ts';
export {
  type JournalEvent,
  type NewEvent,
  type ReadEvent,
  type StoredEvent,
  eventVersion,
  isEventType,
  readEvent
} from './events.ts';
export {
  BranchMap,
  type KeptBranch,
  branchAsDevice,
  branchDeviceId,
  isSameAct
} from './branches.ts';
export { canonicalJson } from './canonical.ts';
export { clockOfId, createIdSource, isEventId, isUuid } from './ids.ts';
export { ViewDraft } from './draft.ts';
export { meanHundredths } from './effects.ts';
export { EMPTY_VIEW, foldAll, foldEvent } from './fold.ts';
export { LONGEST_UNDO_CHAIN, type Lookup, findUndoFault, isVoided } from './undo.ts';
export { type Register, type Setting, current } from './register.ts';
export {
  VIEW_VERSION,
  type AnyPart,
  type Counts,
  type JobPart,
  type JobView,
  type PalletPart,
  type PartKey,
  type PilePart,
  type SampledSlate,
  canonicalView,
  hourKey,
  emptyPart,
  isEmptyPart,
  minutesOfPallet,
  palletIds,
  partOf,
  sorterNames,
  unpiledMinutesOfPallet
} from './view.ts';
export {
  DEFAULT_SETTINGS,
  type Grades,
  type JobSettings,
  type PalletTally,
  binsOf,
  deliveryOf,
  gradesIdOfKey,
  gradesOf,
  jobName,
  pileOfKey,
  pilesOf,
  settingsOf,
  slopesOf,
  specOf,
  sum,
  tallyPallet,
  tallyPallets
} from './queries.ts';
export { type ReadingCounts, readingCounts } from './reading-counts.ts';
export { type PalletStock, type PileStock, type Stock, NO_SPREAD, stockOf } from './stock.ts';
export {
  type RoofOfJob,
  CUSTOMARY_OVERHANGS,
  roofLayoutOf,
  slateForEngine,
  slateSpecOf,
  slopeForEngine,
  slopesForEngine
} from './roof-of.ts';
export { type PiecesByPile, partsOfPieces, piecesOfParts } from './course-parts.ts';
export {
  type CourseDone,
  type MissingForPlan,
  type PileBefore,
  type PlanGround,
  type PlanNotReady,
  planRequestOf,
  wideNeeded
} from './plan-request.ts';
export { placeOf, planOfParts } from './plan-of-parts.ts';
export {
  type AdoptedPlan,
  type Shortfall,
  adoptedPlanOf,
  planAdoption,
  shortfallsOf
} from './adopted-plan.ts';

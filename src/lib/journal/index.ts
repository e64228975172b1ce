export {
  BODIES,
  type BodyOf,
  type EventType,
  type SlateSpecBody,
  type SlopeBody
} from './bodies.ts';
export { CLAIM_ASKS, type ClaimAsk } from './bodies-delivery.ts';
export type { SlateSizeBody } from './bodies-roof.ts';
export {
  BOUNDARY_METHODS,
  SET_ASIDE_USES,
  type BoundaryMethod,
  type SampleSlate,
  type SetAsideUse
} from './bodies-sorting.ts';
export {
  AGREED_LIMITS,
  DEFECTS,
  SET_ASIDE_REASONS,
  type AgreedLimitName,
  type Defect,
  type SetAsideReason
} from './faults.ts';
export { lastOfEach } from './lists.ts';
export { own } from './own.ts';
export { canonicalJson } from './canonical.ts';
export { ViewDraft } from './draft.ts';
export { meanHundredths } from './effects.ts';
export {
  eventVersion,
  isEventType,
  readEvent,
  type JournalEvent,
  type NewEvent,
  type ReadEvent,
  type StoredEvent
} from './events.ts';
export {
  BranchMap,
  type EventStamp,
  type KeptBranch,
  branchAsDevice,
  branchDeviceId,
  isSameAct
} from './branches.ts';
export { EMPTY_VIEW, foldAll, applyEvent } from './fold.ts';
export { clockOfId, createIdSource, isEventId, isUuid } from './ids.ts';
export { current, type Register, type Setting } from './register.ts';
export { LONGEST_UNDO_CHAIN, findUndoFault, isVoided, type Lookup } from './undo.ts';
export {
  VIEW_VERSION,
  canonicalView,
  emptyPart,
  hourKey,
  isEmptyPart,
  minutesOfPallet,
  palletIds,
  partOf,
  sorterNames,
  type AnyPart,
  type Counts,
  type JobPart,
  type JobView,
  type PalletPart,
  type PartKey,
  type PilePart,
  type SampledSlate,
  unpiledMinutesOfPallet
} from './view.ts';

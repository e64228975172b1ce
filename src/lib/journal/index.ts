export {
  AGREED_LIMITS,
  BODIES,
  BOUNDARY_METHODS,
  CLAIM_ASKS,
  SET_ASIDE_REASONS,
  SET_ASIDE_USES,
  type AgreedLimitName,
  type BodyOf,
  type BoundaryMethod,
  type ClaimAsk,
  type EventType,
  type SampleSlate,
  type SetAsideReason,
  type SetAsideUse,
  type SlateSpecBody,
  type SlateSizeBody,
  type SlopeBody
} from './bodies.ts';
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

export { Exchange, type ExchangeParts } from './exchange.ts';
export { exchangeAs } from './exchange-as.ts';
export { keepBothRuns } from './keep-both.ts';
export { type CrewStanding, standingOf } from './crew-standing.ts';
export {
  type CrewLink,
  type CrewOutcome,
  type CrewReport,
  type CrewRecord,
  type CrewWarning,
  type Held,
  type SyncJournal,
  newCrewState
} from './crew-state.ts';
export {
  type Joiner,
  type Mate,
  crewOf,
  inviteMate,
  joinCrew,
  leaveCrew,
  moveIn,
  newToken,
  openInvites,
  readHubKey,
  startCrew
} from './crew.ts';
export { LiveLine, SILENT_MS } from './live.ts';
export type { InviteEntry as OpenInvite } from '../../hub/protocol.ts';
export { HubClient, HubRefused, HubSilent } from './hub-client.ts';
export {
  type Invitation,
  type InvitationFault,
  readInvitation,
  writeInvitation
} from './invitation.ts';
export { deriveKeys, newJobKey } from './keys.ts';
export { FrameReader, type FrameProgress, writeFrames } from './frames.ts';
export { readLacksCode, writeLacksCode } from './lacks.ts';
export {
  type Handover,
  type MateFault,
  handoverFor,
  isMateText,
  mergeMate,
  packHandover,
  type ReadMate,
  readMateText,
  unpackHandover,
  writeMateText
} from './mate-file.ts';

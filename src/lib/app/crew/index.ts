export {
  forgetCrew,
  keepCrew,
  keepHubKey,
  ownHub,
  recallCrew,
  recallHubKey
} from './crew-memory.ts';
export { CrewState } from './crew.svelte.ts';
export { journalFingerprint } from './fingerprint.ts';
export { JoinState } from './join.svelte.ts';
export type { CrewStanding } from '$lib/sync';
export { crewHolding, crewStanding, type CrewHolding } from './crew-holding.ts';
export type { CrewNews } from './crew-news.ts';
export { ScanState } from './scan.svelte.ts';
export { SendState } from './send.svelte.ts';
export { SharingState } from './sharing.svelte.ts';

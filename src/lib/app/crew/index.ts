export {
  forgetCrew,
  keepCrew,
  keepHubKey,
  ownHub,
  recallCrew,
  recallHubKey
} from './crew-memory.ts';
export { CrewState } from './crew.svelte.ts';
export { JoinState } from './join.svelte.ts';
export { SharingState, type CrewNews } from './sharing.svelte.ts';
export { crewHolding, type CrewHolding } from './crew-holding.ts';

export {
  forgetCrew,
  keepCrew,
  keepHubKey,
  ownHub,
  recallCrew,
  recallHubKey
} from './crew-memory.ts';
export { CrewDesk } from './crew-desk.svelte.ts';
export { JoinDesk } from './join-desk.svelte.ts';
export { SharingState, type CrewNews } from './sharing.svelte.ts';

// Fetched when a file is chosen: the first screen does without.
export { rescue, restore, sayWhatIsMissing, sayRestore } from '$lib/app';

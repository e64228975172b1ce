// Fetched when a file is chosen: the first screen does without.
export { rescue, restore, sayNotRead, sayRestore } from '$lib/app';

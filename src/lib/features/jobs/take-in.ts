// Fetched when a file is chosen: the first screen does without.
export { restore, sayRestore } from '$lib/app';

// Fetched when a file is chosen: the first screen does without.
export { rescue, restore, sayMissing, sayRestore } from '$lib/app';

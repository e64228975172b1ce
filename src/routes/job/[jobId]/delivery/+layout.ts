import { words } from '$lib/text';

/** The words of this screen. */
export const load = (): Promise<void> => words.load('delivery', 'sort', 'sortOptions', 'photos');

import type { ClaimAsk } from '$lib/journal';

/** What a buyer who takes the delivery can still ask for: who has the slates collected takes none. */
export const TAKER_ASKS = ['credit', 'replacement'] as const satisfies readonly ClaimAsk[];
export type TakerAsk = (typeof TAKER_ASKS)[number];

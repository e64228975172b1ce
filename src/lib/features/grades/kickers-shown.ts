/** Fewer kickers in 100 joints than few readings can tell from none. Ours. */
const TOO_FEW_TO_TELL = 0.1;

/** What is known of the boundaries shown. */
export interface KickersKnown {
  /** Kickers per 100 joints on the readings that the boundaries were cut from. */
  readonly inSample: number;
  /** The same on readings left out: a figure, still tried, or not to be had for these boundaries. */
  readonly heldOut: number | 'trying' | 'none';
  /** Whether the readings are so few that the figure in the sample is too good. */
  readonly isFlattered: boolean;
}

/** The figure told first; `atBest` where slates can turn out worse, undefined while it is tried. */
export type KickersShown = { readonly per100: number; readonly atBest: boolean } | undefined;

/**
 * The kickers that a screen tells first. From few readings boundaries part the very slates that would
 * have kicked, so then the figure from slates left out is told, never below the one in the sample.
 */
export function kickersShown({ inSample, heldOut, isFlattered }: KickersKnown): KickersShown {
  if (!isFlattered) return { per100: inSample, atBest: false };
  if (heldOut === 'trying') return undefined;
  if (heldOut === 'none') return { per100: inSample, atBest: true };
  const per100 = Math.max(inSample, heldOut);
  return { per100, atBest: per100 < TOO_FEW_TO_TELL };
}

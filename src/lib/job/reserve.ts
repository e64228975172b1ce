import type { JobSettings } from './queries.ts';

/** Breakage and spares together are never taken to be more of a pile than this. Ours. */
const MOST_KEPT = 0.9;

/** A share of a count in whole slates, rounded up; free of the binary error of decimals. */
export function reservedOf(slates: number, share: number): number {
  return Math.ceil(Number((slates * share).toFixed(6)));
}

/** The shares for breakage and spares of a job, so that some slates are left of those that come. */
export function keptShares({
  breakageShare,
  sparesShare
}: Pick<JobSettings, 'breakageShare' | 'sparesShare'>): {
  breakageShare: number;
  sparesShare: number;
} {
  const breakage = Math.min(breakageShare, MOST_KEPT);
  return { breakageShare: breakage, sparesShare: Math.min(sparesShare, MOST_KEPT - breakage) };
}

/** The two together. */
export function keptShare(settings: Pick<JobSettings, 'breakageShare' | 'sparesShare'>): number {
  const { breakageShare, sparesShare } = keptShares(settings);
  return breakageShare + sparesShare;
}

import type { PileCount } from '$lib/engine/courses';
import type { JobSettings, PileBefore } from '$lib/job';

type Shares = Pick<JobSettings, 'breakageShare' | 'sparesShare'>;

/**
 * The greatest shares for breakage and spares that release given slates from the piles' reserves.
 * The spares for repairs give way first, for breakages come anyhow. One share holds for all piles,
 * so the others release some too. Rounded down to a millionth.
 *
 * @param before the piles before laying; not modified
 * @example
 * // 10 of 1,000 slates released at breakage 2.5 % and spares 2 %: spares become 1 %
 */
export function sharesThatRelease(
  { breakageShare, sparesShare }: Shares,
  before: readonly PileBefore[],
  release: readonly PileCount[]
): Shares {
  const shares = release.flatMap(({ pile, slates, slateAndAHalves }) => {
    const own = before[pile - 1];
    const wide = own.slateAndAHalves ?? 0;
    const kept = breakageShare + sparesShare;
    return [
      ...(slates > 0
        ? [
            {
              all: (own.reservedSlates - slates) / own.slates,
              spares: (own.sparesForRepairs - slates) / own.slates
            }
          ]
        : []),
      ...(slateAndAHalves > 0 && wide > 0
        ? [{ all: (Math.ceil(kept * wide - 1e-6) - slateAndAHalves) / wide, spares: sparesShare }]
        : [])
    ];
  });
  const most = Math.min(breakageShare + sparesShare, ...shares.map(({ all }) => all));
  const mostSpares = Math.min(sparesShare, ...shares.map(({ spares }) => spares));
  return {
    breakageShare: floored(Math.min(breakageShare, most)),
    sparesShare: floored(Math.min(mostSpares, most - breakageShare))
  };
}

function floored(share: number): number {
  return Math.max(0, Math.floor(share * 1e6 + 1e-6) / 1e6);
}

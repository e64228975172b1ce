import { requireFinite, requireWhole, EngineError } from '../errors.ts';

/** What was gauged on one pallet. */
export interface PalletSummary {
  readonly id: string;
  /** Slates gauged, whole, 0 or more. */
  readonly sampled: number;
  readonly meanMm: number;
  /** Sample SD (n − 1), mm; not used where fewer than 2 were gauged. */
  readonly sdMm: number;
}

/** One pallet on the chart. */
export interface ChartPoint {
  readonly id: string;
  readonly sampled: number;
  readonly meanMm: number;
  /** Limits for this pallet's own number of slates, mm. */
  readonly lowMm: number;
  readonly highMm: number;
  readonly position: 'inside' | 'below' | 'above';
}

export interface ControlChart {
  /** Mean of all gauged slates, mm. */
  readonly centreMm: number;
  /** SD within pallets, pooled over pallets, mm. */
  readonly withinSdMm: number;
  /** Degrees of freedom behind the SD. */
  readonly degreesOfFreedom: number;
  /** Width of the limits in standard errors of a pallet mean. */
  readonly limitWidth: number;
  /** In the order given; pallets with nothing gauged are left out. */
  readonly points: readonly ChartPoint[];
}

/** The usual width: three standard errors either side. */
export const LIMIT_WIDTH = 3;

/**
 * Chart of pallet means with limits: which pallets differ from the rest by more than the scatter
 * within pallets explains.
 *
 * @param pallets in the order they are to be drawn
 * @returns a point for each pallet with something gauged. `too-few` when fewer than two pallets
 *   have slates gauged, or no pallet has two, so that no scatter within is known.
 * @throws EngineError `not-finite`, `not-whole`, `out-of-range`
 *
 * Definition: centre x̿ = Σnᵢx̄ᵢ/Σnᵢ; within SD s = √(Σ(nᵢ − 1)sᵢ²/Σ(nᵢ − 1)); limits
 * x̿ ± 3·s/√nᵢ, one pair for each nᵢ. The SD is pooled and not divided by c₄: with ν degrees of
 * freedom c₄ is about 1 − 1/(4ν). Natural slate differs from pallet to pallet, so a point outside
 * says "look at this pallet", not "outside the order". A mean on a limit is inside.
 * Source: Shewhart chart for means (common in quality texts).
 */
export function palletMeansChart(
  pallets: readonly PalletSummary[]
):
  | { readonly ok: true; readonly chart: ControlChart }
  | { readonly ok: false; readonly reason: 'too-few' } {
  for (const pallet of pallets) requireSummary(pallet);
  const gauged = pallets.filter(({ sampled }) => sampled > 0);
  const total = gauged.reduce((sum, { sampled }) => sum + sampled, 0);
  const degreesOfFreedom = total - gauged.length;
  if (gauged.length < 2 || degreesOfFreedom < 1) return { ok: false, reason: 'too-few' };

  const centreMm = gauged.reduce((sum, each) => sum + each.sampled * each.meanMm, 0) / total;
  const squares = gauged.reduce(
    (sum, { sampled, sdMm }) => sum + (sampled > 1 ? (sampled - 1) * sdMm * sdMm : 0),
    0
  );
  const withinSdMm = Math.sqrt(squares / degreesOfFreedom);
  const points = gauged.map(({ id, sampled, meanMm }): ChartPoint => {
    const half = (LIMIT_WIDTH * withinSdMm) / Math.sqrt(sampled);
    const lowMm = centreMm - half;
    const highMm = centreMm + half;
    const position = meanMm < lowMm ? 'below' : meanMm > highMm ? 'above' : 'inside';
    return { id, sampled, meanMm, lowMm, highMm, position };
  });
  return {
    ok: true,
    chart: { centreMm, withinSdMm, degreesOfFreedom, limitWidth: LIMIT_WIDTH, points }
  };
}

function requireSummary({ id, sampled, meanMm, sdMm }: PalletSummary): void {
  requireWhole(sampled, 0, `slates gauged on pallet ${id}`);
  if (sampled > 0) requireFinite(meanMm, `mean of pallet ${id}`);
  if (sampled > 1) {
    requireFinite(sdMm, `SD of pallet ${id}`);
    if (sdMm < 0) throw new EngineError('out-of-range', `SD of pallet ${id} is ${sdMm}`);
  }
}

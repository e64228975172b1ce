import { EngineError, requireWhole } from '../errors.ts';
import {
  type ThicknessBins,
  type ThicknessInterval,
  binsFromPairs,
  countBetween,
  mergeBins,
  quantilesMm,
  totalCount
} from '../thickness/index.ts';
import { likelyShares } from './likely-shares.ts';
import type { PalletSample } from './pallet-sample.ts';

/** One pallet: its random sample by gauge, and what was put on piles by hand. */
export interface TappedPallet extends PalletSample {
  /** Slates that each hand tapped onto each pile, thickest pile first, checked ones among them. */
  readonly taps: readonly (readonly number[])[];
  /** Of those, the ones gauged as well, by hand and pile likewise. */
  readonly checks: readonly (readonly ThicknessBins[])[];
}

/** Readings that weigh alike: the gauged slates of a pallet, or spot checks of one stratum there. */
export interface ReadingGroup {
  readonly bins: ThicknessBins;
  /** Share of the stock that one of these readings stands for. */
  readonly weight: number;
  /** Place of its pallet; undefined for spot checks of which the pallet is not known. */
  readonly pallet: number | undefined;
  /** Place of its stratum among those with checks; undefined for the random sample. */
  readonly stratum: number | undefined;
}

/** What is known of one pallet. */
export interface SampledPallet extends PalletSample {
  /** Chances of a slate of this pallet by thickness, adding up to 1; empty where nothing is known. */
  readonly spread: ThicknessBins;
  /** What the random sample by gauge counts for in this spread, 0 to 1; the rest is by taps. */
  readonly gaugeShare: number;
  /** Tapped slates that count. */
  readonly tapped: number;
}

/** A delivery by gauge and taps together. */
export interface DoubleSample {
  readonly ok: true;
  /** In the order given. */
  readonly pallets: readonly SampledPallet[];
  readonly groups: readonly ReadingGroup[];
  /** The stock's spread, every reading weighed; adds up to the readings. */
  readonly bins: ThicknessBins;
  /** Spot checks of each stratum that counts, all pallets together. */
  readonly strata: readonly ThicknessBins[];
  readonly tapsCounted: number;
  /** Taps of hands that no spot check tells: they count for piles, never for millimetres. */
  readonly tapsLeftOut: number;
  /**
   * Thickness of the slates that a hand put on a pile, adding up to 1: on one pallet, or on all of
   * them; undefined where no spot check of that hand tells.
   */
  readonly told: (hand: number, pile: number, pallet?: number) => ThicknessBins | undefined;
}

/** Why there is no spread in millimetres. */
export interface NoDoubleSample {
  readonly ok: false;
  readonly reason:
    /** Not one slate was gauged, nor a tap checked. */
    | 'nothing-gauged'
    /** There are taps, but no hand was ever checked. */
    | 'no-spot-checks';
}

/**
 * Spot checks of the same stratum on other pallets that count beside a pallet's own. Ours: in
 * simulation 2 to 16 did alike where pallets differ little, and fewer did better where they differ
 * more than the slates of a pallet do.
 */
const MIXED_IN = 4;

/**
 * Gauge and taps together, without a model of the hand: every hand's piles are strata, whose sizes the
 * taps tell and whose thickness the spot checks tell; that is put together with the random sample by
 * gauge.
 *
 * @param pallets every pallet, opened or not, in any order; not modified. Spot checks must be picked
 * without regard to their thickness
 * @param loose spot checks of slates of which the pallet is not known, by hand and pile; not modified
 * @returns each pallet's spread and the stock's; or why taps do not count in millimetres
 *
 * Definition: double sampling for stratification. Of a pallet of N slates with g gauged, the other
 * R = N − g are told as α of the gauged and 1 − α of Σ wₖ × (checks of stratum k), wₖ the share of the
 * taps in stratum k. A stratum's checks on a pallet are mixed with those of all pallets as if 4 more had
 * been made. α = a / (a + κt) weighs by inverse variance: a = gR/N readings against t taps worth κ each,
 * where κt over all pallets is what the strata tell of the thirds of all readings, s² / Σ Wₖ²sₖ²/mₖ. A
 * pile of a hand without a check goes with that hand's nearest pile that has some; a hand without any
 * check is left out. Every reading so gets a weight, and all figures follow from the weights. Cost:
 * pallets × strata × bins.
 *
 * @throws EngineError `wrong-length` where pallets tell different hands or piles, `out-of-range` for
 * more slates gauged than a pallet holds, `not-whole`
 * @source Cochran, Sampling Techniques, 3rd edition, chapter 12 (double sampling, stratification), from
 * memory
 * @example
 * // 40 tapped, 30 of them thick; 5 of each pile checked, all thick ones 7 mm, all thin ones 5 mm
 * doubleSample([{ palletId: 'a', slates: 40, bins: binsFromPairs([]), taps: [[30, 10]],
 *   checks: [[binsFromPairs([[700, 5]]), binsFromPairs([[500, 5]])]] }]); // three in four are 7 mm
 */
export function doubleSample(
  pallets: readonly TappedPallet[],
  loose: TappedPallet['checks'] = []
): DoubleSample | NoDoubleSample {
  const { homes, strata, tapsLeftOut } = strataOf(pallets, loose);
  const taps = pallets.map((pallet) => tapsByStratum(pallet, homes, strata.length));
  const known = pallets.map(({ bins }, pallet) => bins.counts.length > 0 || sum(taps[pallet]) > 0);
  if (!known.some(Boolean))
    return { ok: false, reason: tapsLeftOut > 0 ? 'no-spot-checks' : 'nothing-gauged' };
  const tapsCounted = sum(taps.map(sum));
  if (tapsCounted === 0 && tapsLeftOut > 0) return { ok: false, reason: 'no-spot-checks' };

  const mixes = pallets.map((_, pallet) => strata.map((stratum) => mixOf(stratum, pallet)));
  const worthOfTap = tapsCounted > 0 ? readingsPerTap(pallets, taps, strata) : 0;
  const inAll = sum(pallets.map(({ slates }, pallet) => (known[pallet] ? slates : 0)));
  const groups: ReadingGroup[] = [];
  const checkWeights = strata.map(({ parts }) => parts.map(() => 0));
  const sampled = pallets.map(({ palletId, slates, bins }, pallet): SampledPallet => {
    const gauged = totalCount(bins);
    const tapped = sum(taps[pallet]);
    const rest = slates - gauged;
    const worth = (gauged * rest) / slates;
    const alpha = tapped === 0 ? 1 : worth / (worth + worthOfTap * tapped);
    const gaugeShare = gauged === 0 ? 0 : (gauged + alpha * rest) / slates;
    const share = slates / inAll;
    const parts = [bins];
    const weights = [gauged === 0 ? 0 : gaugeShare / gauged];
    if (gauged > 0)
      groups.push({ bins, weight: (share * gaugeShare) / gauged, pallet, stratum: undefined });
    for (const [place, stratum] of strata.entries())
      if (taps[pallet][place] > 0)
        for (const [part, each] of mixes[pallet][place].entries()) {
          const weight = ((1 - gaugeShare) * taps[pallet][place] * each) / tapped;
          parts.push(stratum.parts[part].bins);
          weights.push(weight);
          checkWeights[place][part] += share * weight;
        }
    const spread = known[pallet] ? mergeBins(parts, weights) : NONE;
    return { palletId, slates, bins, spread, gaugeShare, tapped };
  });
  for (const [stratum, { parts }] of strata.entries())
    for (const [part, { bins, pallet }] of parts.entries()) {
      const weight = checkWeights[stratum][part];
      if (weight > 0) groups.push({ bins, weight, pallet, stratum });
    }

  const readings = sum(groups.map(({ bins }) => totalCount(bins)));
  const told: DoubleSample['told'] = (hand, pile, pallet) => {
    const place = homes[hand]?.[pile - 1] ?? -1;
    if (place < 0) return undefined;
    const { parts } = strata[place];
    const of = parts.map(({ bins }) => bins);
    if (pallet !== undefined) return mergeBins(of, mixes[pallet]?.[place]);
    const own = pallets.map((other) => other.taps[hand][pile - 1]);
    const all = sum(own);
    const shares = parts.map((_, part) =>
      all > 0
        ? sum(own.map((slates, other) => (slates * mixes[other][place][part]) / all))
        : 1 / totalCount(strata[place].all)
    );
    return mergeBins(of, shares);
  };
  return {
    ok: true,
    pallets: sampled,
    groups,
    bins: mergeBins(
      groups.map(({ bins }) => bins),
      groups.map(({ weight }) => weight * readings)
    ),
    strata: strata.map(({ all }) => all),
    tapsCounted,
    tapsLeftOut,
    told
  };
}

const NONE = binsFromPairs([]);

/** Spot checks of one stratum, by pallet. */
interface Stratum {
  readonly all: ThicknessBins;
  readonly parts: readonly { bins: ThicknessBins; pallet: number | undefined }[];
}

/** For every hand and pile the place of its stratum, −1 for a hand that was never checked. */
function strataOf(pallets: readonly TappedPallet[], loose: TappedPallet['checks']) {
  const shape = pallets[0]?.taps.map((piles) => piles.length) ?? [];
  for (const pallet of pallets) requirePallet(pallet, shape);
  const strata: Stratum[] = [];
  let tapsLeftOut = 0;
  const homes = shape.map((piles, hand) => {
    const own = Array.from({ length: piles }, (_, pile): Stratum => {
      const found = pallets.map(({ checks }, pallet) => ({ bins: checks[hand][pile], pallet }));
      const more = { bins: loose[hand]?.[pile] ?? NONE, pallet: undefined };
      const parts = [...found, more].filter(({ bins }) => bins.counts.length > 0);
      return { parts, all: mergeBins(parts.map(({ bins }) => bins)) };
    });
    const checked = own.flatMap(({ parts }, pile) => (parts.length > 0 ? [pile] : []));
    if (checked.length === 0) {
      tapsLeftOut += sum(pallets.map(({ taps }) => sum(taps[hand])));
      return own.map(() => -1);
    }
    const places = new Map(checked.map((pile) => [pile, strata.push(own[pile]) - 1]));
    return own.map((_, pile) => {
      const nearest = checked.reduce((best, other) =>
        Math.abs(other - pile) < Math.abs(best - pile) ? other : best
      );
      return places.get(nearest) ?? -1;
    });
  });
  return { homes, strata, tapsLeftOut };
}

function tapsByStratum({ taps }: TappedPallet, homes: number[][], strata: number): number[] {
  const own = new Array<number>(strata).fill(0);
  for (const [hand, piles] of taps.entries())
    for (const [pile, slates] of piles.entries())
      if (homes[hand][pile] >= 0) own[homes[hand][pile]] += slates;
  return own;
}

/** What each check of a stratum, part by part, counts for on one pallet; Σ over checks is 1. */
function mixOf({ parts, all }: Stratum, pallet: number): number[] {
  const own = parts.find((part) => part.pallet === pallet);
  const checks = own ? totalCount(own.bins) : 0;
  const others = MIXED_IN / (checks + MIXED_IN) / totalCount(all);
  return parts.map((part) => others + (part === own ? 1 / (checks + MIXED_IN) : 0));
}

/** Readings of a random sample that one tap is worth, judged by the thirds of all readings. */
function readingsPerTap(
  pallets: readonly TappedPallet[],
  taps: readonly (readonly number[])[],
  strata: readonly Stratum[]
): number {
  const ofPallets = pallets.map(({ bins, checks }) => mergeBins([bins, ...checks.flat()]));
  const gauged = ofPallets.map(totalCount);
  const all = mergeBins([...pallets.map(({ bins }) => bins), ...strata.map((own) => own.all)]);
  const tapped = taps.map(sum);
  const slates = sum(pallets.map((pallet, place) => (tapped[place] > 0 ? pallet.slates : 0)));
  const weights = strata.map((_, stratum) =>
    sum(
      pallets.map((pallet, place) =>
        tapped[place] > 0 ? (pallet.slates * taps[place][stratum]) / tapped[place] / slates : 0
      )
    )
  );
  const inAll = sum(pallets.map((pallet) => pallet.slates));
  let [ofSlates, ofStrata] = [0, 0];
  for (const third of thirdsOf(all)) {
    const hits = ofPallets.map((bins) => countBetween(bins, third));
    const { shares } = likelyShares(hits, gauged);
    ofSlates += sum(shares.map((p, place) => (pallets[place].slates * p * (1 - p)) / inAll));
    for (const [stratum, own] of strata.entries())
      ofStrata +=
        (weights[stratum] ** 2 * varianceOfCheck(own.all, third, shareOf(all, third))) /
        totalCount(own.all);
  }
  const readings = ofStrata > 0 ? ofSlates / ofStrata : 0;
  // readings all alike tell neither; then a check is worth a reading
  const worth = readings > 0 ? readings : sum(strata.map((own) => totalCount(own.all)));
  return worth / sum(tapped);
}

/** Variance of one check of a stratum as 1 or 0 for a band, one slate of the stock mixed in. */
export function varianceOfCheck(
  checks: ThicknessBins,
  band: ThicknessInterval,
  ofStock: number
): number {
  const share = (countBetween(checks, band) + ofStock) / (totalCount(checks) + 1);
  return share * (1 - share);
}

function thirdsOf(bins: ThicknessBins): ThicknessInterval[] {
  const cuts = quantilesMm(bins, [1 / 3, 2 / 3]);
  if (!cuts.ok) return [];
  const edges = [0, ...new Set(cuts.quantilesMm.map((mm) => Math.round(mm * 100) / 100)), Infinity];
  return edges.slice(1).map((toMm, place) => ({ fromMm: edges[place], toMm }));
}

/** Share of the slates of a spread, 0 to 1, whose thickness lies in a band. */
export function shareOf(bins: ThicknessBins, band: ThicknessInterval): number {
  return countBetween(bins, band) / totalCount(bins);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function requirePallet({ palletId, slates, bins, taps, checks }: TappedPallet, shape: number[]) {
  requireWhole(slates, 1, `slates on pallet ${palletId}`);
  const gauged = totalCount(bins);
  if (gauged > slates)
    throw new EngineError('out-of-range', `pallet ${palletId}: ${gauged} gauged of ${slates}`);
  const isSame = (piles: readonly (readonly unknown[])[]): boolean =>
    piles.length === shape.length && piles.every((own, hand) => own.length === shape[hand]);
  if (!isSame(taps) || !isSame(checks))
    throw new EngineError('wrong-length', `pallet ${palletId} tells other hands or piles`);
  for (const [hand, piles] of taps.entries())
    for (const [pile, count] of piles.entries()) requireWhole(count, 0, `taps ${hand} ${pile}`);
}

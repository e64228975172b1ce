import { type ThicknessBins, binsFromPairs, totalCount } from '$lib/engine/thickness';
import { type JobView, partOf } from '$lib/journal';
import { likelyRangeOfBins } from './likely-range.ts';
import { binsOf, readingsOf, tallyPallets } from './queries.ts';
import { mmBeyond } from './slate-judgement.ts';

/** A reading that counts and lies as far from all others as one that Sort would have asked about. */
export interface FarReading {
  readonly palletId: string;
  readonly label: string;
  readonly hundredths: number;
  /** Slates of the pallet that measure just this. */
  readonly slates: number;
  /** Measured for the check of the delivery, which says itself what becomes of it. */
  readonly isOfSample: boolean;
  /** How far it lies beyond what the others make likely, mm. */
  readonly beyondMm: number;
}

/**
 * Readings that lie outside what the others of the job make likely (J65), the furthest first. Sort asks
 * about such a reading as it comes; one that came before Sort knew what is usual counts, and shows here.
 * A pallet that mostly measures so is another kind of slate and no slip.
 *
 * @returns none while fewer than six slates were measured
 * @example 40 slates of 5.6 to 6.4 mm and one of 15.2 → that one
 */
export function farReadings(view: JobView): FarReading[] {
  const pallets = tallyPallets(view);
  const all = readingsOf(view);
  const far = new Map([...farAtEnd(all, true), ...farAtEnd(all, false)]);
  if (far.size === 0) return [];
  return pallets
    .flatMap(({ palletId, label, gaugedBins }) => {
      const found = pairsOf(gaugedBins).filter(([hundredths]) => far.has(hundredths));
      const slates = found.reduce((sum, [, count]) => sum + count, 0);
      if (slates > 1 && 2 * slates > totalCount(gaugedBins)) return [];
      const sampled = pairsOf(binsOf(partOf(view, `pallet:${palletId}`).sampled));
      return found.map(([hundredths, count]) => ({
        ...{ palletId, label, hundredths, slates: count },
        isOfSample: sampled.some(([other, n]) => other === hundredths && n === count),
        beyondMm: far.get(hundredths) ?? 0
      }));
    })
    .sort((one, other) => other.beyondMm - one.beyondMm);
}

/** From the thickest reading down, or from the thinnest up: those that the others make unlikely. */
function farAtEnd(all: ThicknessBins, isThick: boolean): [hundredths: number, beyondMm: number][] {
  const pairs = pairsOf(all);
  const found: [number, number][] = [];
  for (const [hundredths] of isThick ? [...pairs].reverse() : pairs) {
    const others = pairs.map(([value, n]): [number, number] => [
      value,
      value === hundredths ? n - 1 : n
    ]);
    const likely = likelyRangeOfBins(binsFromPairs(others.filter(([, n]) => n > 0)));
    const beyondMm = likely ? mmBeyond(hundredths / 100, likely) : 0;
    if (beyondMm <= 0) break;
    found.push([hundredths, beyondMm]);
  }
  return found;
}

function pairsOf({ hundredths, counts }: ThicknessBins): [hundredths: number, count: number][] {
  return Array.from(counts, (count, at): [number, number] => [hundredths[at], count]);
}

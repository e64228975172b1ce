import { requireWhole } from '../errors.ts';
import type { Interval } from './basis.ts';
import { clopperPearson } from './proportion-intervals.ts';

/** One judged delivery, as it goes into the comparison. */
export interface DeliverySummary {
  readonly id: string;
  /** Nickname of the supplier. */
  readonly supplier: string;
  /** YYYY-MM-DD. */
  readonly arrivalDate: string;
  /** Slates of the unsorted sample that were gauged, at least 1. */
  readonly sampled: number;
  readonly meanMm: number;
  /** Sample SD (n − 1), mm; 0 where one slate was gauged. */
  readonly sdMm: number;
  /** Slates of the sample outside the order. */
  readonly outside: number;
  /** Slates handled in sorting, and of these set aside. */
  readonly sorted: number;
  readonly setAside: number;
  /** Predicted kickers per 100 joints with the piles used; left out where none was predicted. */
  readonly kickersPer100Joints?: number;
}

/** A delivery with the shares that its counts speak for. */
export interface ComparedDelivery extends DeliverySummary {
  readonly shareOutside: number;
  readonly shareOutsideInterval: Interval;
  /** Undefined where nothing was sorted yet. */
  readonly shareSetAside?: number;
}

/** All deliveries of one supplier taken together. */
export interface ComparedSupplier {
  readonly supplier: string;
  readonly deliveries: number;
  readonly sampled: number;
  /** Mean over all sampled slates, mm. */
  readonly meanMm: number;
  /** SD over all sampled slates, within deliveries and between them, mm. */
  readonly sdMm: number;
  readonly shareOutside: number;
  readonly shareOutsideInterval: Interval;
}

/**
 * Puts deliveries side by side over time and by supplier.
 *
 * @param deliveries any order; not modified
 * @param level confidence of the intervals, such as 0.95
 * @returns deliveries by arrival date (ties by id), suppliers by nickname; empty gives empty
 * @throws EngineError `not-whole`, `out-of-range`
 *
 * The interval of a supplier takes its slates as one sample; where deliveries differ much it is
 * too short, and the deliveries above it show that. Source: definition; Clopper–Pearson.
 */
export function compareDeliveries(
  deliveries: readonly DeliverySummary[],
  level: number
): {
  readonly deliveries: readonly ComparedDelivery[];
  readonly suppliers: readonly ComparedSupplier[];
} {
  for (const { id, sampled } of deliveries)
    requireWhole(sampled, 1, `slates sampled of delivery ${id}`);
  const byDate = [...deliveries].sort(
    (one, other) => compareText(one.arrivalDate, other.arrivalDate) || compareText(one.id, other.id)
  );
  const suppliers = [...new Set(byDate.map(({ supplier }) => supplier))].sort(compareText);
  return {
    deliveries: byDate.map((each) => ({
      ...each,
      shareOutside: each.outside / each.sampled,
      shareOutsideInterval: clopperPearson(each.outside, each.sampled, level),
      ...(each.sorted > 0 && { shareSetAside: each.setAside / each.sorted })
    })),
    suppliers: suppliers.map((supplier) =>
      together(
        supplier,
        byDate.filter((each) => each.supplier === supplier),
        level
      )
    )
  };
}

function together(
  supplier: string,
  deliveries: readonly DeliverySummary[],
  level: number
): ComparedSupplier {
  const total = (of: (each: DeliverySummary) => number): number =>
    deliveries.reduce((sum, each) => sum + of(each), 0);
  const sampled = total((each) => each.sampled);
  const outside = total((each) => each.outside);
  const meanMm = total((each) => each.sampled * each.meanMm) / sampled;
  const squares = total(
    ({ sampled: n, meanMm: mean, sdMm }) => (n - 1) * sdMm ** 2 + n * (mean - meanMm) ** 2
  );
  return {
    supplier,
    deliveries: deliveries.length,
    sampled,
    meanMm,
    sdMm: sampled > 1 ? Math.sqrt(squares / (sampled - 1)) : 0,
    shareOutside: outside / sampled,
    shareOutsideInterval: clopperPearson(outside, sampled, level)
  };
}

/** By code unit, the same on every device whatever its language. */
function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

import type { PlannedCourse } from './plan-types.ts';

/** Kickers of a roof over all times it was laid. All 0 until it is laid once. */
export interface SimulatedKickers {
  readonly mean: number;
  /** Spread from roof to roof, n − 1; 0 for fewer than two roofs. */
  readonly sd: number;
  /** Standard error of the mean. */
  readonly standardError: number;
  /** Mean kickers per 100 joints. */
  readonly per100Joints: number;
  /** Kickers that 5, 50 and 95 of 100 roofs stay at or below (quantiles of type 7). */
  readonly low: number;
  readonly median: number;
  readonly high: number;
  /** The course with most kickers on average; undefined until one kicks. */
  readonly worstCourse?: {
    readonly slopeId: string;
    readonly course: number;
    readonly meanKickers: number;
  };
  /** Mean kickers of each roof's own worst course. */
  readonly worstOfEachRoof: number;
  /** How many roofs had each number of kickers, fewest first. */
  readonly distribution: readonly { readonly kickers: number; readonly roofs: number }[];
}

/** Counts kickers roof by roof. */
export interface KickerTally {
  /** One kicker in the course of the given index. */
  kick(course: number): void;
  /** The roof is laid; the next one begins. */
  endRoof(): void;
  result(joints: number): SimulatedKickers;
}

/** A tally to add simulated courses to, one by one; each course is counted in its own place. */
export function createTally(courses: readonly PlannedCourse[]): KickerTally {
  const roofs: number[] = [];
  const byCourse = new Float64Array(courses.length);
  const thisRoof = new Int32Array(courses.length);
  let kickers = 0;
  let worstSum = 0;
  return {
    kick(course) {
      thisRoof[course]++;
      kickers++;
    },
    endRoof() {
      let worst = 0;
      for (let course = 0; course < thisRoof.length; course++) {
        byCourse[course] += thisRoof[course];
        worst = Math.max(worst, thisRoof[course]);
      }
      roofs.push(kickers);
      worstSum += worst;
      thisRoof.fill(0);
      kickers = 0;
    },
    result(joints) {
      const times = Math.max(1, roofs.length);
      const sorted = roofs.toSorted((one, other) => one - other);
      const mean = sorted.reduce((sum, count) => sum + count, 0) / times;
      const squares = sorted.reduce((sum, count) => sum + (count - mean) ** 2, 0);
      const sd = sorted.length < 2 ? 0 : Math.sqrt(squares / (sorted.length - 1));
      const worst = indexOfMost(byCourse);
      return {
        mean,
        sd,
        standardError: sd / Math.sqrt(times),
        per100Joints: joints === 0 ? 0 : (100 * mean) / joints,
        low: quantile(sorted, 0.05),
        median: quantile(sorted, 0.5),
        high: quantile(sorted, 0.95),
        ...(byCourse[worst] > 0 && {
          worstCourse: {
            slopeId: courses[worst].slopeId,
            course: courses[worst].course,
            meanKickers: byCourse[worst] / times
          }
        }),
        worstOfEachRoof: worstSum / times,
        distribution: distributionOf(sorted)
      };
    }
  };
}

function quantile(sorted: readonly number[], share: number): number {
  if (sorted.length === 0) return 0;
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.ceil(place);
  return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
}

function distributionOf(sorted: readonly number[]): { kickers: number; roofs: number }[] {
  const distribution: { kickers: number; roofs: number }[] = [];
  for (const kickers of sorted) {
    const last = distribution.at(-1);
    if (last?.kickers === kickers) last.roofs++;
    else distribution.push({ kickers, roofs: 1 });
  }
  return distribution;
}

function indexOfMost(counts: Float64Array): number {
  let most = 0;
  for (let index = 1; index < counts.length; index++)
    if (counts[index] > counts[most]) most = index;
  return most;
}

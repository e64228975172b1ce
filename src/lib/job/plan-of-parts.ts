import {
  type CoursePart,
  type Evenness,
  type KickChances,
  type Plan,
  type PlannedCourse,
  type PlanRequest,
  inOrderOfPiles
} from '$lib/engine/courses';
import { type CourseDemand, piecesInRun } from '$lib/engine/roof';

/** A course's place on the roof as one text, as the journal's view keeps it. */
export function placeOf({ slopeId, course }: { slopeId: string; course: number }): string {
  return `${slopeId}|${course}`;
}

/**
 * The figures of given parts: those of the courses that have parts, in laying order. Spares are
 * what the request's stock, less its reserve, has left beyond them, and fall below 0 where it does
 * not carry them.
 */
export function planOfParts(
  { piles, kicks }: PlanRequest,
  demand: readonly CourseDemand[],
  partsOf: (place: string) => readonly CoursePart[] | undefined
): Plan {
  const laid = demand.flatMap((course): PlannedCourse[] => {
    const parts = partsOf(placeOf(course));
    if (!parts) return [];
    return [plannedOf(course, parts, kicks)];
  });
  const courses = inOrderOfPiles(laid, (course) => course);
  const bySlope = new Map<string, Tally>();
  const whole = { joints: 0, kickers: 0 };
  const slates = piles.map(() => 0);
  const slateAndAHalves = piles.map(() => 0);
  let changeovers = 0;
  for (const course of courses) {
    const own = bySlope.get(course.slopeId) ?? { joints: 0, kickers: 0 };
    bySlope.set(course.slopeId, own);
    for (const tally of [own, whole]) {
      tally.joints += course.joints;
      tally.kickers += course.kickers;
    }
    if (course.parts.length > 1) changeovers++;
    for (const part of course.parts) {
      slates[part.pile - 1] += part.slates;
      slateAndAHalves[part.pile - 1] += part.slateAndAHalves;
    }
  }
  return {
    status: 'optimal',
    objective: Math.round(whole.kickers * 1e9),
    ...evennessOfTally(whole),
    courses,
    changeovers,
    slopes: new Map([...bySlope].map(([slopeId, own]) => [slopeId, evennessOfTally(own)])),
    piles: piles.map((stock, index) => ({
      pile: index + 1,
      slates: slates[index],
      slateAndAHalves: slateAndAHalves[index],
      spareSlates: stock.slates - stock.reservedSlates - slates[index],
      spareSlateAndAHalves:
        stock.slateAndAHalves - stock.reservedSlateAndAHalves - slateAndAHalves[index]
    })),
    spareCommonSlateAndAHalves: 0
  };
}

const known = new WeakMap<
  readonly CoursePart[],
  { readonly of: CourseDemand; readonly kicks: KickChances; readonly planned: PlannedCourse }
>();

/**
 * A course laid from parts, with its figures: the same object for the same parts, so that a plan that is
 * set by hand works out and draws again what a step changed and no more.
 */
function plannedOf(
  of: CourseDemand,
  parts: readonly CoursePart[],
  kicks: KickChances
): PlannedCourse {
  const last = known.get(parts);
  if (last?.of === of && last.kicks === kicks) return last.planned;
  const { slopeId, course, heightMm } = of;
  const figures = evennessOf(of, parts, kicks);
  const planned = { slopeId, course, heightMm, parts, commonSlateAndAHalves: 0, ...figures };
  known.set(parts, { of, kicks, planned });
  return planned;
}

/** Joints and expected kickers of one course, walked from its left end. */
function evennessOf(
  { runs }: CourseDemand,
  parts: readonly CoursePart[],
  { within, between }: KickChances
): Evenness {
  if (parts.length === 1) return evennessOfOne(runs, parts[0].pile, within);
  const pileOfPiece = parts.flatMap(({ pile, slates, slateAndAHalves }) =>
    new Array<number>(slates + slateAndAHalves).fill(pile - 1)
  );
  let joints = 0;
  let kickers = 0;
  let first = 0;
  for (const run of runs) {
    const end = Math.min(first + piecesInRun(run), pileOfPiece.length);
    for (let piece = first + 1; piece < end; piece++) {
      const [left, right] = [pileOfPiece[piece - 1], pileOfPiece[piece]];
      joints++;
      kickers += left === right ? within[left] : between[left][right];
    }
    first = end;
  }
  return evennessOfTally({ joints, kickers });
}

/** The same for a course of one pile, which need not be walked: a plan is set by hand in steps of these. */
function evennessOfOne(
  runs: CourseDemand['runs'],
  pile: number,
  within: KickChances['within']
): Evenness {
  const joints = runs.reduce((sum, run) => sum + Math.max(0, piecesInRun(run) - 1), 0);
  return evennessOfTally({ joints, kickers: joints * within[pile - 1] });
}

interface Tally {
  joints: number;
  kickers: number;
}

function evennessOfTally({ joints, kickers }: Tally): Evenness {
  return { joints, kickers, per100Joints: joints === 0 ? 0 : (100 * kickers) / joints };
}

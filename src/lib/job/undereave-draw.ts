import type { CoursePart, PileStock, Plan, PlannedCourse } from '$lib/engine/courses';
import type { CourseDemand, RoofLayout } from '$lib/engine/roof';
import type { BodyOf } from '$lib/journal';

/** The undereave row of one slope and where its slates come from. */
export interface UndereaveDraw {
  readonly slopeId: string;
  /** Slates that it takes, and pieces of the width of a slate-and-a-half. */
  readonly slates: number;
  readonly slateAndAHalves: number;
  /** Of the slates, those that were set aside for it. */
  readonly fromSetAside: number;
  /** What the piles give, the thickest first: mostly one pile. */
  readonly parts: readonly CoursePart[];
  /** Slates that no pile has beyond its reserve. */
  readonly lacking: number;
}

/** An undereave row that lies: what was taken for it, by the places of the piles. */
export interface UndereaveLaid {
  readonly slopeId: string;
  readonly fromSetAside: number;
  readonly parts: readonly CoursePart[];
}

/**
 * Where the undereave slates of each slope come from whose first course is not begun: first from those
 * set aside for it, then from the thickest pile that holds the whole rest of the row beyond its
 * reserve, since the thickest lie at the eaves. Where no pile does, the one that has most gives first
 * and the others the rest. Wide ones come from the same pile.
 *
 * It rests on the stock alone and not on a plan, so that every plan of what is left finds the same
 * slates kept back.
 *
 * @param courses still to lay; a slope whose first course is not among them takes none
 * @param begun slopes of whose first course a part lies
 * @param left what is left of each pile, the thickest first; not modified
 * @param setAside slates set aside for the undereave that will do and lie nowhere yet
 */
export function undereaveDraws(
  { slopes }: Pick<RoofLayout, 'slopes'>,
  courses: readonly Pick<CourseDemand, 'slopeId' | 'course'>[],
  begun: ReadonlySet<string>,
  left: readonly PileStock[],
  setAside: number
): UndereaveDraw[] {
  const free = left.map(({ slates, reservedSlates }) => Math.max(0, slates - reservedSlates));
  const first = new Set(courses.filter(({ course }) => course === 1).map((one) => one.slopeId));
  let aside = setAside;
  return slopes.flatMap(({ slope: { id: slopeId }, totals }): UndereaveDraw[] => {
    const { undereaveSlates: slates, undereaveSlateAndAHalves: slateAndAHalves } = totals;
    if (slates + slateAndAHalves === 0 || !first.has(slopeId) || begun.has(slopeId)) return [];
    const fromSetAside = Math.min(aside, slates);
    aside -= fromSetAside;
    const given = free.map(() => 0);
    let lacking = slates - fromSetAside;
    const main = pileFor(lacking, free);
    while (lacking > 0) {
      const at = free[main] > 0 ? main : indexOfMost(free);
      const part = Math.min(lacking, free[at]);
      if (part === 0) break;
      given[at] += part;
      free[at] -= part;
      lacking -= part;
    }
    const parts = given.flatMap((own, at): CoursePart[] => {
      const wide = at === main ? slateAndAHalves : 0;
      return own + wide > 0 ? [{ pile: at + 1, slates: own, slateAndAHalves: wide }] : [];
    });
    return [{ slopeId, slates, slateAndAHalves, fromSetAside, parts, lacking }];
  });
}

/** The place of the thickest pile that gives so many slates, else of the one that has most. */
function pileFor(slates: number, free: readonly number[]): number {
  const whole = free.findIndex((own) => own > 0 && own >= slates);
  return whole >= 0 ? whole : indexOfMost(free);
}

function indexOfMost(numbers: readonly number[]): number {
  return numbers.reduce((best, number, index) => (number > numbers[best] ? index : best), 0);
}

/** What undereave rows take of each of so many piles, pile 1 first: slates, and wide ones. */
export function undereaveOfPiles(
  rows: readonly Pick<UndereaveDraw, 'parts'>[],
  piles: number
): { readonly slates: number; readonly slateAndAHalves: number }[] {
  const parts = rows.flatMap((row) => row.parts);
  return Array.from({ length: piles }, (_, index) => {
    const own = parts.filter(({ pile }) => pile === index + 1);
    return {
      slates: own.reduce((sum, { slates }) => sum + slates, 0),
      slateAndAHalves: own.reduce((sum, { slateAndAHalves: wide }) => sum + wide, 0)
    };
  });
}

/** A plan with a course 0 below the first of each slope: what its undereave row takes of each pile. */
export function withUndereave(rest: Plan, draws: readonly UndereaveDraw[]): Plan {
  const courses = rest.courses.flatMap((course): PlannedCourse[] => {
    const draw = course.course === 1 && draws.find(({ slopeId }) => slopeId === course.slopeId);
    return draw ? [{ ...course, course: 0, parts: draw.parts }, course] : [course];
  });
  const taken = undereaveOfPiles(draws, rest.piles.length);
  const piles = rest.piles.map((use, index) => ({
    ...use,
    slates: use.slates + taken[index].slates,
    slateAndAHalves: use.slateAndAHalves + taken[index].slateAndAHalves
  }));
  return { ...rest, courses, piles };
}

/**
 * What an entry that lays some of a slope's first course says of its undereave row: as it lies, else as
 * it is drawn now; undefined where the slope has none, or it comes as an article of its own.
 *
 * @param numbers the number that stands on each pile, by its place
 */
export function undereaveLaying(
  ground: {
    readonly undereave: readonly UndereaveDraw[];
    readonly undereaveLaid: readonly UndereaveLaid[];
    readonly numbers: readonly number[];
  },
  { slopeId, course }: { readonly slopeId: string; readonly course: number }
): NonNullable<BodyOf<'courseLaid'>['undereave']> | undefined {
  if (course !== 1) return undefined;
  const row = [...ground.undereaveLaid, ...ground.undereave].find((one) => one.slopeId === slopeId);
  if (!row) return undefined;
  const piles = row.parts.map((part) => ({ ...part, pile: ground.numbers[part.pile - 1] }));
  return { setAside: row.fromSetAside, piles };
}

import type { CoursePart, LayingEvent } from '$lib/engine/courses';
import { type CourseDemand, courseStretch, piecesOfDemand } from '$lib/engine/roof';
import { type BodyOf, type JobView, type Register, partOf } from '$lib/journal';
import { lastCountOf } from './counted-piles.ts';
import { type PiecesByPile, joinParts, partsOfPieces } from './course-parts.ts';
import { type CourseLying, type LaidStretch, courseLying, slicePieces } from './laid-stretches.ts';
import type { Stock } from './stock.ts';
import type { UndereaveLaid } from './undereave-draw.ts';

/** A course that is laid, by what it was laid from. */
export interface CourseDone {
  readonly slopeId: string;
  readonly course: number;
  readonly parts: readonly CoursePart[];
}

/** A course of which a part lies. */
export interface CoursePartDone extends CourseDone {
  /** Its pieces that lie, of all that it has. */
  readonly pieces: number;
  readonly of: number;
  /** The end it was begun from. */
  readonly from: 'left' | 'right';
  /** For whoever goes on with it. */
  readonly note?: string;
}

/** The whole of a course of which a part lies, once its rest is laid from some parts. */
export function wholeCourse(
  { from, parts }: CoursePartDone,
  rest: readonly CoursePart[]
): CoursePart[] {
  return from === 'left' ? joinParts(parts, rest) : joinParts(rest, parts);
}

/** What happened on the roof, for the engine, and what goes before it. */
export interface LayingFacts {
  readonly events: readonly LayingEvent[];
  readonly laid: readonly CourseDone[];
  readonly partLaid: readonly CoursePartDone[];
  /** By pile: slates laid and lost before the pile was counted by hand. */
  readonly takenBeforeCount: readonly number[];
  readonly wideCounted: readonly (number | undefined)[];
  /** By pile: pieces of courses that the roof has no more. */
  readonly strayPieces: readonly number[];
  readonly strayCourses: number;
  readonly lostOfPile: readonly number[];
  /** Undereave rows that lie, in the order of their courses' places. */
  readonly undereaveLaid: readonly UndereaveLaid[];
}

/**
 * Reads what was laid, lost and counted, in the order in which it happened, by the place of each pile in
 * the stock. Linear in the pieces.
 */
export function layingFacts(
  view: JobView,
  demand: readonly CourseDemand[],
  stock: Stock,
  needed: number
): LayingFacts {
  const laying = partOf(view, 'laying');
  const piles = stock.piles.length;
  const zeros = (): number[] => new Array<number>(piles).fill(0);
  const [takenBeforeCount, strayPieces, lostOfPile] = [zeros(), zeros(), zeros()];
  const wideBefore = zeros();
  const counts = stock.piles.map(({ number }) => lastCountOf(view, number));
  const places = new Map(stock.piles.map(({ number, pile }) => [number, pile]));
  const isBeforeCount = (id: string, index: number): boolean => id < (counts[index]?.id ?? '');
  const demandOf = new Map(demand.map((course) => [`${course.slopeId}|${course.course}`, course]));

  const events: { id: string; event: LayingEvent }[] = [];
  const laid: { id: string; done: CourseDone }[] = [];
  const partLaid: CoursePartDone[] = [];
  const undereaveLaid: UndereaveLaid[] = [];
  let strayCourses = 0;
  for (const place of new Set([...Object.keys(laying.laid), ...Object.keys(laying.partLaid)])) {
    const whole = laying.laid[place]?.at(-1);
    const parts = laying.partLaid[place] ?? [];
    const course = demandOf.get(place);
    const of = course ? piecesOfDemand(course) : 0;
    const lying = inPlaces(courseLying(parts, whole, of), places);
    const under = lying.pieces > 0 ? undereaveOf([...parts, ...(laying.laid[place] ?? [])]) : [];
    for (const { id, slopeId, fromSetAside, parts: named } of under) {
      const own = named.map((part) => ({ ...part, pile: places.get(part.pile) ?? places.size }));
      for (const { pile, slates, slateAndAHalves } of own)
        if (isBeforeCount(id, pile - 1)) {
          takenBeforeCount[pile - 1] += slates;
          wideBefore[pile - 1] += slateAndAHalves;
        }
      events.push({ id, event: { type: 'undereave-laid', parts: own } });
      undereaveLaid.push({ slopeId, fromSetAside, parts: own });
    }
    if (!course) {
      strayCourses += Number(whole !== undefined || lying.pieces > 0);
      for (const stretch of lying.stretches)
        for (const { pile, pieces } of piecesOf(lying, stretch))
          if (!isBeforeCount(stretch.id, pile - 1)) strayPieces[pile - 1] += pieces;
      continue;
    }
    // A course that grew shorter lies whole with what was laid of it.
    const isWhole = whole !== undefined || (lying.pieces > 0 && lying.pieces >= of);
    const own = { slopeId: course.slopeId, course: course.course };
    const stretches = lying.stretches.map((stretch) => layStretch(course, of, lying, stretch));
    for (const { id, taken } of stretches)
      for (const { pile, slates, slateAndAHalves } of taken)
        if (isBeforeCount(id, pile - 1)) {
          takenBeforeCount[pile - 1] += slates;
          wideBefore[pile - 1] += slateAndAHalves;
        }
    for (const { id, taken, rest } of isWhole ? stretches.slice(0, -1) : stretches)
      events.push({ id, event: { type: 'course-part-laid', parts: taken, rest } });
    const lies = courseStretch(course, lying.first, lying.first + lying.pieces);
    const done = { ...own, parts: partsOfPieces(lies, lying.piles) };
    if (isWhole) {
      const id = whole?.id ?? stretches[stretches.length - 1].id;
      const taken = stretches.at(-1)?.taken ?? [];
      events.push({ id, event: { type: 'course-laid', ...own, parts: taken } });
      laid.push({ id, done });
      continue;
    }
    const note = parts.at(-1)?.value.note;
    const { pieces, from } = lying;
    if (pieces > 0 || note) partLaid.push({ ...done, pieces, of, from, ...(note && { note }) });
  }
  for (const { id, value } of laying.lost) {
    const pile = places.get(value.pile);
    if (pile === undefined) continue;
    lostOfPile[pile - 1] += value.slates;
    if (isBeforeCount(id, pile - 1)) takenBeforeCount[pile - 1] += value.slates;
    const event = { type: 'slates-lost', pile, slates: value.slates, slateAndAHalves: 0 } as const;
    events.push({ id, event });
  }
  const wideCounted = counts.map((count, index) => {
    const counted = count?.value.slateAndAHalves;
    return counted === undefined ? undefined : counted + wideBefore[index];
  });
  for (const [index, count] of counts.entries())
    if (count) {
      const { pile, slates } = stock.piles[index];
      const slateAndAHalves = count.value.slateAndAHalves ?? needed;
      events.push({ id: count.id, event: { type: 'pile-counted', pile, slates, slateAndAHalves } });
    }
  return {
    events: events.sort(byId).map(({ event }) => event),
    laid: laid.sort(byId).map(({ done }) => done),
    partLaid,
    takenBeforeCount,
    wideCounted,
    strayPieces,
    strayCourses,
    lostOfPile,
    undereaveLaid
  };
}

/** The undereave row that the entries of a course say, by the earliest: it lies with the first slates. */
function undereaveOf(
  entries: Register<BodyOf<'courseLaid'> | BodyOf<'coursePartLaid'>>
): (UndereaveLaid & { readonly id: string })[] {
  const [first] = entries
    .filter(({ value }) => value.undereave !== undefined)
    .sort((one, other) => (one.id < other.id ? -1 : 1));
  if (!first?.value.undereave) return [];
  const { setAside: fromSetAside, piles: parts } = first.value.undereave;
  return [{ id: first.id, slopeId: first.value.slopeId, fromSetAside, parts }];
}

/** What lies, by the places of its piles: every pile that was laid from has one in the stock. */
function inPlaces(lying: CourseLying, places: ReadonlyMap<number, number>): CourseLying {
  return {
    ...lying,
    piles: lying.piles
      .filter(({ pieces }) => pieces > 0)
      .map((part) => ({ ...part, pile: places.get(part.pile) ?? places.size }))
  };
}

function piecesOf({ piles, first }: CourseLying, { start, end }: LaidStretch): PiecesByPile {
  return slicePieces(piles, start - first, end - first);
}

/** One stretch of a course as it was laid, and what was left of the course then. */
function layStretch(course: CourseDemand, of: number, lying: CourseLying, stretch: LaidStretch) {
  const { id, start, end } = stretch;
  return {
    id,
    taken: partsOfPieces(courseStretch(course, start, end), piecesOf(lying, stretch)),
    rest: lying.from === 'left' ? courseStretch(course, end, of) : courseStretch(course, 0, start)
  };
}

function byId(one: { id: string }, other: { id: string }): number {
  return one.id < other.id ? -1 : 1;
}

import { EngineError } from '../errors.ts';
import type { BondName } from './bonds.ts';
import type { CourseDemand } from './course-demand.ts';
import { type BattenLine, type CourseLine, type CourseSetOut, setOutCourses } from './courses.ts';
import {
  type PieceCounts,
  addCounts,
  countPieces,
  courseDemand,
  piecesCounted,
  slatesUsed
} from './demand.ts';
import type { FieldProblem } from './field-problem.ts';
import { holeFromTailMm } from './gauge.ts';
import {
  type CourseMeeting,
  type Join,
  alikeAtHips,
  joinsOf,
  levelJoinedCourses,
  meetingsOf
} from './joined-slopes.ts';
import { NAILS_PER_PIECE, battenLengthM } from './materials.ts';
import {
  type OutOfSquare,
  type SharedBatten,
  asMeasured,
  outOfSquareOf,
  sharedBattens
} from './out-of-square.ts';
import { type PerpMarks, bondOfCourse, setOutPerps } from './perps.ts';
import { type PieceRun, piecesInCourse } from './pieces.ts';
import { type RoofCheck, checkRoof } from './roof-checks.ts';
import { leastSideLapMm } from './side-lap.ts';
import { type SlateSpec, slateSpecProblems } from './slate-spec.ts';
import { slopeProblems } from './slope-problems.ts';
import {
  type Slope,
  leftAtMm,
  meetingAtRidge,
  rightAtMm,
  slopeAreaMm2,
  stripAreaMm2
} from './slope-shape.ts';
import { type UndereaveRow, undereavePattern } from './undereave.ts';

/** One course, laid out piece by piece. */
export interface CourseLayout extends CourseLine {
  readonly bond: BondName;
  /** Ends of the slated width at the tails and at the top of the margin, in slope coordinates. */
  readonly tailLeftMm: number;
  readonly tailRightMm: number;
  readonly marginLeftMm: number;
  readonly marginRightMm: number;
  /** What shows of the course, openings out. */
  readonly areaM2: number;
  readonly runs: readonly PieceRun[];
  readonly counts: PieceCounts;
}

/** What a slope, or a job, takes. */
export interface RoofTotals {
  readonly courses: number;
  readonly counts: PieceCounts;
  /** Slates used up, slate-and-a-halves and undereave slates apart. */
  readonly slates: number;
  readonly slateAndAHalves: number;
  /** Undereave slates, cut from slates or from what was set aside; wide ones apart. */
  readonly undereaveSlates: number;
  readonly undereaveSlateAndAHalves: number;
  readonly areaM2: number;
  readonly battenM: number;
  readonly nails: number;
}

/** One slope, laid out. */
export interface SlopeLayout extends Omit<CourseSetOut, 'courses' | 'undereaveLengthMm'> {
  readonly slope: Slope;
  readonly battens: readonly BattenLine[];
  readonly holeFromTailMm: number;
  readonly perps: PerpMarks;
  readonly courses: readonly CourseLayout[];
  readonly undereave: UndereaveRow & { readonly runs: readonly PieceRun[] };
  /** Least side lap, beside cut pieces too; left out where no two courses have such joints. */
  readonly sideLapMm?: number;
  /** Where the slope is out of square: by how much, and its battens with the difference shared. */
  readonly outOfSquare?: OutOfSquare & { readonly battens: readonly SharedBatten[] };
  readonly totals: RoofTotals;
  readonly checks: readonly RoofCheck[];
}

/** A job's whole roof, laid out. Plain frozen data that survives a structured clone. */
export interface RoofLayout {
  readonly ok: true;
  readonly spec: SlateSpec;
  readonly slopes: readonly SlopeLayout[];
  /** Hips, valleys and ridges that slopes share, and how their courses come together there. */
  readonly joins: readonly Join[];
  readonly meetings: readonly CourseMeeting[];
  /** Every course that takes a slate, lowest first; at one height in the order of the slopes. */
  readonly demand: readonly CourseDemand[];
  readonly totals: RoofTotals;
}

/** A field that keeps the roof from being laid out; without a slope it is a field of the slate. */
export interface RoofProblem extends FieldProblem {
  readonly slopeId?: string;
}

/** A roof that cannot be laid out yet, with every reason. */
export interface RoofRefused {
  readonly ok: false;
  readonly reason: 'problems';
  readonly problems: readonly RoofProblem[];
}

/**
 * Lays a whole roof out: courses, perps, pieces, undereave, totals, checks and the demand that the
 * planner fills.
 *
 * @param slopes any number, ids all different; not modified; may hold anything somebody typed
 * @param spec the job's slate; may hold anything somebody typed
 * @returns the layout, frozen; or every problem, the slate's first. No slopes give an empty layout
 *
 * Cost: linear in the pieces of the roof.
 * @example
 * const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
 * const south = makeSlope({ id: 's', rafterLengthMm: 5500, eaveWidthMm: 8000, pitchDegrees: 35 });
 * layOutRoof([south], spec); // 28 courses, the last one short
 */
export function layOutRoof(slopes: readonly Slope[], spec: SlateSpec): RoofLayout | RoofRefused {
  const problems: RoofProblem[] = slateSpecProblems(spec);
  if (problems.length === 0) {
    for (const [index, slope] of slopes.entries()) {
      if (slopes.findIndex((other) => other.id === slope.id) < index)
        problems.push({ slopeId: slope.id, field: 'id', code: 'same-id', value: null });
      for (const problem of slopeProblems(slope, spec))
        problems.push({ slopeId: slope.id, ...problem });
    }
  }
  if (problems.length > 0) return deepFreeze({ ok: false, reason: 'problems', problems });

  const joins = joinsOf(slopes);
  const spaces = spacesOfAlike(slopes, joins, spec);
  const laid = slopes.map((slope) => layOutSlope(slope, spec, spaces.get(slope.id)));
  const demand = laid
    .flatMap(({ slope, courses }) =>
      courses
        .filter((course) => course.runs.length > 0)
        .map((course) => courseDemand(slope.id, course, course.runs))
    )
    .sort((one, other) => one.heightMm - other.heightMm);
  const heights = new Map(
    laid.map(({ slope, courses }) => [
      slope.id,
      new Map(courses.map(({ course, heightMm }) => [course, heightMm]))
    ])
  );
  return deepFreeze({
    ok: true,
    spec: { ...spec },
    slopes: laid,
    joins,
    meetings: meetingsOf(joins, heights),
    demand: levelJoinedCourses(demand, joins),
    totals: sumTotals(laid.map((slope) => slope.totals))
  });
}

/** Spaces between battens for slopes that meet and were meant to be alike: the most that one needs. */
function spacesOfAlike(
  slopes: readonly Slope[],
  joins: readonly Join[],
  spec: SlateSpec
): Map<string, number> {
  const spaces = new Map<string, number>();
  for (const group of alikeAtHips(slopes, joins)) {
    const own = slopes
      .filter(({ id }) => group.includes(id))
      .map((slope) => setOutCourses(asMeasured(meetingAtRidge(slope)), spec).spaces);
    for (const id of group) spaces.set(id, Math.max(...own));
  }
  return spaces;
}

function layOutSlope(given: Slope, spec: SlateSpec, leastSpaces?: number): SlopeLayout {
  const slope = asMeasured(meetingAtRidge(structuredCopy(given)));
  const outOfSquare = outOfSquareOf(given);
  const { courses: lines, undereaveLengthMm, ...setOut } = setOutCourses(slope, spec, leastSpaces);
  const perps = setOutPerps(slope, spec);
  const pattern = undereavePattern(spec, setOut.gaugeMm);
  const fullHoleMm = holeFromTailMm(spec, setOut.gaugeMm);
  const courses = lines.map((line): CourseLayout => {
    const bond = bondOfCourse(line.course);
    const marginTopMm = line.tailMm + line.marginMm;
    const holeMm = line.tailMm + (line.kind === 'top' ? pattern.holeFromTailMm : fullHoleMm);
    const runs = piecesInCourse(slope, { ...line, holeMm }, perps.bonds[bond], spec);
    return {
      ...line,
      bond,
      tailLeftMm: leftAtMm(slope, line.tailMm),
      tailRightMm: rightAtMm(slope, line.tailMm),
      marginLeftMm: leftAtMm(slope, marginTopMm),
      marginRightMm: rightAtMm(slope, marginTopMm),
      areaM2: stripAreaMm2(slope, line.tailMm, marginTopMm) / 1e6,
      runs,
      counts: countPieces(runs)
    };
  });
  const first = lines[0];
  const undereaveRuns = piecesInCourse(
    slope,
    {
      tailMm: first.tailMm,
      headMm: first.tailMm + undereaveLengthMm,
      holeMm: first.tailMm + pattern.holeFromTailMm,
      marginMm: first.marginMm
    },
    perps.bonds[bondOfCourse(0)],
    spec
  );
  const undereaveCounts = countPieces(undereaveRuns);
  const counts = addCounts(courses.map((course) => course.counts));
  const sideLapMm = leastSideLapMm(courses);
  const piecesOf = (runs: readonly PieceRun[]) => runs.flatMap((run) => run.pieces);
  const pieces = courses.flatMap((course) => piecesOf(course.runs));
  const narrow = pieces
    .filter((piece) => piece.isCut)
    .map((piece) => Math.max(piece.tailWidthMm, piece.marginWidthMm))
    .filter((widthMm) => widthMm < spec.narrowestCutMm - 0.01);
  const slatedMm = rightAtMm(slope, 0) - leftAtMm(slope, 0);
  return {
    ...setOut,
    slope,
    holeFromTailMm: fullHoleMm,
    perps,
    courses,
    undereave: {
      ...pattern,
      counts: undereaveCounts,
      runs: undereaveRuns
    },
    ...(sideLapMm !== undefined && { sideLapMm }),
    ...(outOfSquare && {
      outOfSquare: { ...outOfSquare, battens: sharedBattens(given, spec, setOut.spaces) }
    }),
    totals: {
      courses: courses.filter((course) => course.runs.length > 0).length,
      counts,
      slates: slatesUsed(counts),
      slateAndAHalves: counts.slateAndAHalf,
      undereaveSlates: slatesUsed(undereaveCounts),
      undereaveSlateAndAHalves: undereaveCounts.slateAndAHalf,
      areaM2: slopeAreaMm2(slope) / 1e6,
      battenM: battenLengthM(
        slope,
        setOut.battens.map((batten) => batten.fromEaveMm)
      ),
      nails: NAILS_PER_PIECE * (piecesCounted(counts) + piecesCounted(undereaveCounts))
    },
    checks: checkRoof({
      spec,
      pitchDegrees: slope.pitchDegrees,
      headlapMm: setOut.headlapMm,
      sideLapMm,
      cutsWithoutNail: [...pieces, ...piecesOf(undereaveRuns)].filter((piece) => !piece.holdsNail)
        .length,
      narrowCuts: narrow.length,
      narrowestCutMm: narrow.length > 0 ? Math.min(...narrow) : spec.widthMm,
      ...(perps.finish &&
        !perps.isWhole && {
          wholeWidth: { slatedMm, nearestMm: perps.finish.nearestWholeWidthMm }
        })
    })
  };
}

function sumTotals(parts: readonly RoofTotals[]): RoofTotals {
  const sum = (value: (part: RoofTotals) => number) =>
    parts.reduce((total, part) => total + value(part), 0);
  return {
    courses: sum((part) => part.courses),
    counts: addCounts(parts.map((part) => part.counts)),
    slates: sum((part) => part.slates),
    slateAndAHalves: sum((part) => part.slateAndAHalves),
    undereaveSlates: sum((part) => part.undereaveSlates),
    undereaveSlateAndAHalves: sum((part) => part.undereaveSlateAndAHalves),
    areaM2: sum((part) => part.areaM2),
    battenM: sum((part) => part.battenM),
    nails: sum((part) => part.nails)
  };
}

/** A copy of a slope that later changes to the original cannot reach. */
function structuredCopy(slope: Slope): Slope {
  return {
    ...slope,
    left: { ...slope.left },
    right: { ...slope.right },
    openings: slope.openings.map((opening) => ({ ...opening }))
  };
}

/** Freezes plain data through and through. */
function deepFreeze<Data>(data: Data): Data {
  if (typeof data === 'object' && data !== null && !Object.isFrozen(data)) {
    for (const value of Object.values(data)) deepFreeze(value);
    Object.freeze(data);
  }
  return data;
}

/** The course of a layout by slope and number. @throws EngineError `out-of-range` where none is */
export function courseOf(roof: RoofLayout, slopeId: string, course: number): CourseLayout {
  const found = roof.slopes
    .find((laid) => laid.slope.id === slopeId)
    ?.courses.find((line) => line.course === course);
  if (!found) throw new EngineError('out-of-range', `no course ${course} on slope ${slopeId}`);
  return found;
}

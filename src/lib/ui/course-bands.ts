import type { PlannedCourse } from '$lib/engine/courses';
import type { CoursePartDone } from '$lib/job';
import { type CourseLayout, type SlopeLayout, leftAtMm, rightAtMm } from '$lib/engine/roof';

/** What shows of one pile in one course, in the slope's own millimetres, y down from the ridge. */
export interface BandPart {
  readonly pile: number;
  readonly path: string;
}

/** One course as it is drawn. */
export interface CourseBand {
  readonly course: number;
  /** One part for each pile, from the left; none for a course without a plan. */
  readonly parts: readonly BandPart[];
  /** The whole band, to hatch, mark and choose. */
  readonly path: string;
  /** What lies of a course that was begun. */
  readonly begunPath?: string;
  /** Left end of the tails. */
  readonly leftMm: number;
  readonly topMm: number;
  readonly bottomMm: number;
  /** Where the pile changes, from the eave's left corner. */
  readonly changeAtMm?: number;
}

/**
 * The courses of a slope as bands, each split where its pile changes. Eaves first.
 *
 * @param begun by course: how many pieces of it lie, and from which end
 */
export function courseBands(
  laid: SlopeLayout,
  planned: ReadonlyMap<number, PlannedCourse>,
  begun: ReadonlyMap<number, Begun> = new Map()
): CourseBand[] {
  return laid.courses.map((line) => {
    const now = {
      slope: laid.slope,
      planned: planned.get(line.course),
      begun: begun.get(line.course)
    };
    const last = drawn.get(line);
    const isSame =
      last?.slope === now.slope && last.planned === now.planned && last.begun === now.begun;
    if (last && isSame) return last.band;
    const band = bandOf(laid, line, now.planned, now.begun);
    drawn.set(line, { ...now, band });
    return band;
  });
}

type Begun = Pick<CoursePartDone, 'pieces' | 'of' | 'from'>;

/** The band of each course as it was drawn last: a change that is dragged leaves most as they were. */
const drawn = new WeakMap<
  CourseLayout,
  {
    readonly slope: SlopeLayout['slope'];
    readonly planned: PlannedCourse | undefined;
    readonly begun: Begun | undefined;
    readonly band: CourseBand;
  }
>();

function bandOf(
  { slope }: SlopeLayout,
  line: CourseLayout,
  planned: PlannedCourse | undefined,
  begun: Begun | undefined
): CourseBand {
  const topFromEaveMm = Math.min(line.tailMm + line.marginMm, slope.rafterLengthMm);
  const bottomMm = slope.rafterLengthMm - line.tailMm;
  const topMm = slope.rafterLengthMm - topFromEaveMm;
  const low = [leftAtMm(slope, line.tailMm), rightAtMm(slope, line.tailMm)] as const;
  const high = [leftAtMm(slope, topFromEaveMm), rightAtMm(slope, topFromEaveMm)] as const;
  /** The band between two uprights. */
  const between = (from: number, to: number): string => {
    const clamp = (x: number, [left, right]: readonly [number, number]) =>
      Math.min(Math.max(x, left), Math.max(left, right));
    const corners = [
      [clamp(from, low), bottomMm],
      [clamp(to, low), bottomMm],
      [clamp(to, high), topMm],
      [clamp(from, high), topMm]
    ];
    return `M${corners.map(([x, y]) => `${round(x)} ${round(y)}`).join('L')}Z`;
  };
  const edge = 1e6;
  const parts = planned?.parts ?? [];
  const lefts = line.runs.flatMap((run) => run.pieces).map((piece) => piece.leftMm);
  let pieces = 0;
  const changesAtMm = parts.slice(0, -1).flatMap((part) => {
    pieces += part.slates + part.slateAndAHalves;
    return lefts[pieces] ?? [];
  });
  const changeAtMm = changesAtMm.at(0);
  const fromLeft = begun?.from === 'left';
  const endsAtMm = begun && (lefts[fromLeft ? begun.pieces : begun.of - begun.pieces] ?? edge);
  return {
    course: line.course,
    path: between(-edge, edge),
    leftMm: low[0],
    topMm,
    bottomMm,
    ...(endsAtMm !== undefined && {
      begunPath: fromLeft ? between(-edge, endsAtMm) : between(endsAtMm, edge)
    }),
    ...(changeAtMm !== undefined && { changeAtMm }),
    parts:
      changeAtMm === undefined
        ? parts.slice(0, 1).map(({ pile }) => ({ pile, path: between(-edge, edge) }))
        : parts.slice(0, changesAtMm.length + 1).map(({ pile }, at) => ({
            pile,
            path: between(changesAtMm[at - 1] ?? -edge, changesAtMm[at] ?? edge)
          }))
  };
}

/** Courses one above the other that are laid from one pile, and where its mark stands. */
export interface PileStretch {
  readonly pile: number;
  readonly fromCourse: number;
  readonly toCourse: number;
  /** Middle of the mark, pixels from the top. */
  readonly yPx: number;
}

/**
 * The stretches of a slope by pile, from the eaves up, with their marks in the middle of each, but
 * never closer to each other than a mark is high.
 */
export function pileStretches(
  bands: readonly CourseBand[],
  pxPerMm: number,
  markPx: number,
  heightPx: number
): PileStretch[] {
  const stretches: { pile: number; fromCourse: number; toCourse: number; yPx: number }[] = [];
  let bottomMm = 0;
  for (const band of bands) {
    for (const { pile } of band.parts) {
      const last = stretches.at(-1);
      if (last?.pile === pile) last.toCourse = band.course;
      else {
        stretches.push({ pile, fromCourse: band.course, toCourse: band.course, yPx: 0 });
        bottomMm = band.bottomMm;
      }
      const now = stretches[stretches.length - 1];
      now.yPx = ((bottomMm + band.topMm) / 2) * pxPerMm;
    }
  }
  let ceiling = heightPx - markPx / 2;
  for (const stretch of stretches) {
    stretch.yPx = Math.min(stretch.yPx, ceiling);
    ceiling = stretch.yPx - markPx;
  }
  let floor = markPx / 2;
  for (const stretch of stretches.toReversed()) {
    stretch.yPx = Math.max(stretch.yPx, floor);
    floor = stretch.yPx + markPx;
  }
  return stretches;
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10;
}

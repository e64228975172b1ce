import { type SetsProblem, type SlateSet, meanWidthMm, setsProblems } from '$lib/engine/sizes';
import {
  type JobPart,
  type JobView,
  type Register,
  type SlateSizeBody,
  current,
  palletIds,
  partOf
} from '$lib/journal';
import { sizesOf } from '../queries.ts';
import { slateSpecOf } from '../roof-of.ts';

/** A size as the engine takes it. A size without a width is as wide as random slates of no bounds. */
export function setOfSize(size: SlateSizeBody): SlateSet {
  const { sizeId, lengthMm, widthMm, widthFromMm, widthToMm, meanWidthMm } = size;
  return {
    id: sizeId,
    lengthMm,
    widths:
      widthMm === undefined
        ? {
            kind: 'random',
            fromMm: widthFromMm ?? Number.NaN,
            toMm: widthToMm ?? Number.NaN,
            ...(meanWidthMm !== undefined && { meanMm: meanWidthMm })
          }
        : { kind: 'one', widthMm }
  };
}

/** What keeps the sizes of a job from one roof; empty before the slate is entered. */
export function sizeProblemsOf(view: JobView): SetsProblem[] {
  const base = slateSpecOf(view);
  return base ? setsProblems(sizesOf(view).map(setOfSize), base) : [];
}

const partsOfSize = new WeakMap<JobPart, Map<string, JobPart>>();
const basicViews = new WeakMap<JobView, Map<string, JobView>>();

/**
 * A job seen for one of its sizes: its slate, its grades and plans, its pallets and what was counted
 * of its piles. Whatever is worked out of a view is so worked out for the size. What was laid is as
 * in the whole job: see `viewOfSize`.
 */
export function basicViewOfSize(view: JobView, sizeId: string): JobView {
  const views = basicViews.get(view) ?? new Map<string, JobView>();
  basicViews.set(view, views);
  let seen = views.get(sizeId);
  if (!seen) {
    seen = seenForSize(view, sizeId);
    views.set(sizeId, seen);
  }
  return seen;
}

/** The id that the slate of a job gets as it takes further sizes: what came before belongs to it. */
export const FIRST_SIZE = 'first';

/** The size of acts and pallets that name none: the job's slate as it was, else the longest. */
function sizeOfOld(view: JobView): string | undefined {
  const sizes = sizesOf(view);
  return (sizes.find(({ sizeId }) => sizeId === FIRST_SIZE) ?? sizes[0])?.sizeId;
}

/** The size of a pallet: as entered; that of the job's old slate where nobody said. */
export function sizeOfPallet(view: JobView, palletId: string): string | undefined {
  const entered = current(partOf(view, `pallet:${palletId}`).declared)?.sizeId;
  return sizesOf(view).some(({ sizeId }) => sizeId === entered) ? entered : sizeOfOld(view);
}

function seenForSize(view: JobView, sizeId: string): JobView {
  const isFirst = sizeOfOld(view) === sizeId;
  const isOf = (of: string | undefined): boolean => (of ?? (isFirst ? sizeId : '')) === sizeId;
  const own = new Set(palletIds(view).filter((id) => sizeOfPallet(view, id) === sizeId));
  const seen = new Map(view);
  for (const key of view.keys())
    if (key.startsWith('pallet:') && !own.has(key.slice('pallet:'.length))) seen.delete(key);
  seen.set('job', jobPartOfSize(view, sizeId, isOf));

  const { slates } = partOf(view, 'sample');
  seen.set('sample', { slates: slates.filter(({ value }) => own.has(value.palletId)) });
  const { plans } = partOf(view, 'plans');
  seen.set('plans', { plans: plans.filter(({ value }) => isOf(value.sizeId)) });
  const laying = partOf(view, 'laying');
  const grades = new Set(ofSize(partOf(view, 'job').grades, isOf).map(({ id }) => id));
  const counted = Object.entries(laying.counted).flatMap(([place, register]) => {
    const at = place.lastIndexOf('|');
    const [of, pile] = [place.slice(0, at), place.slice(at)];
    if (grades.has(of)) return [[place, register] as const];
    const isBeforeGrades = of === sizeId || (of === '' && isFirst);
    return isBeforeGrades ? [[pile, register] as const] : [];
  });
  seen.set('laying', {
    ...laying,
    counted: Object.fromEntries(counted),
    lost: laying.lost.filter(({ value }) => isOf(value.sizeId)),
    moved: laying.moved.filter(({ value }) => isOf(value.sizeId))
  });
  return seen;
}

function ofSize<T extends { sizeId?: string }>(
  register: Register<T>,
  isOf: (sizeId: string | undefined) => boolean
): Register<T> {
  return register.filter(({ value }) => isOf(value.sizeId));
}

/** What the job is, for one size. The same object as long as it is the same job part. */
function jobPartOfSize(
  view: JobView,
  sizeId: string,
  isOf: (sizeId: string | undefined) => boolean
): JobPart {
  const job = partOf(view, 'job');
  const known = partsOfSize.get(job) ?? new Map<string, JobPart>();
  partsOfSize.set(job, known);
  let part = known.get(sizeId);
  if (!part) {
    const size = sizesOf(view).find((other) => other.sizeId === sizeId);
    const spec = job.spec.map((setting) => ({
      ...setting,
      value: { ...setting.value, ...(size && slateOfSize(size)) }
    }));
    part = { ...job, spec, grades: ofSize(job.grades, isOf), draws: ofSize(job.draws, isOf) };
    known.set(sizeId, part);
  }
  return part;
}

/** Length and width that a size gives to the job's slate; random widths stand for their mean. */
function slateOfSize(size: SlateSizeBody) {
  const { lengthMm, widths } = setOfSize(size);
  const widthMm = meanWidthMm(widths);
  return { lengthMm, widthMm, slateAndAHalfWidthMm: 1.5 * widthMm };
}

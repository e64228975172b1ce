import type { CourseDraw } from '$lib/engine/courses';

/** What one course takes of one pile. */
export interface DrawLine {
  readonly key: string;
  /** Undefined for the second pile of a course. */
  readonly course?: number;
  readonly pile: number;
  /** Slates of each pallet, in the order given; 0 where it gives none. */
  readonly of: readonly number[];
  readonly slates: number;
  readonly wide: number;
}

/**
 * A line for each pile of each course, from the eaves up.
 *
 * @param pallets ids of the pallets, in the order of the columns
 * @param wideStore where slate-and-a-halves are kept
 */
export function drawLines(
  courses: readonly CourseDraw[],
  pallets: readonly { readonly palletId: string }[],
  wideStore: string
): DrawLine[] {
  return courses.flatMap(({ course, draws }) =>
    [...new Set(draws.map(({ pile }) => pile ?? 0))].map((pile, index): DrawLine => {
      const own = draws.filter((draw) => draw.pile === pile);
      return {
        key: `${course}-${pile}`,
        ...(index === 0 && { course }),
        pile,
        of: pallets.map(
          ({ palletId }) => own.find((draw) => draw.palletId === palletId)?.slates ?? 0
        ),
        slates: own.reduce((sum, draw) => sum + draw.slates, 0),
        wide: own.find((draw) => draw.palletId === wideStore)?.slateAndAHalves ?? 0
      };
    })
  );
}

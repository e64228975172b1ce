import { PAPER_ROOM } from '$lib/ui';

/** Strokes in a row of boxes, five to a box as a gate of four bars and one across. */
export const STROKES_A_ROW = 100;

/** Sizes on paper, mm: a gate's box, a pile's name, a pallet's name, space below a band and a pallet. */
export const TALLY_MM = { box: 8.6, name: 7.5, pallet: 8, gap: 2, below: 4 } as const;

/** Rows of each pile at least: 300 strokes. */
const FEWEST_ROWS = 3;
/** The boxes of all piles hold so many times the pallet, since piles are never alike. Ours. */
const TIMES_THE_PALLET = 1.5;

/** Boxes for one pile of a pallet, or for what is set aside. */
export interface TallyBand {
  /** Undefined for slates set aside. */
  readonly pile?: number;
  readonly rows: number;
}

/** A pallet on one page, whole or in part. */
export interface TallyPart {
  /** Place of the pallet in the list. */
  readonly pallet: number;
  readonly bands: readonly TallyBand[];
  readonly isStart: boolean;
  readonly isEnd: boolean;
}

/** The bands of a pallet of so many slates; 0 where nobody said how many. */
export function tallyBands(slates: number, piles: number): TallyBand[] {
  const rows = Math.max(
    FEWEST_ROWS,
    Math.ceil((TIMES_THE_PALLET * slates) / piles / STROKES_A_ROW)
  );
  const bands = Array.from({ length: piles }, (_, index): TallyBand => ({ pile: index + 1, rows }));
  return [...bands, { rows: 1 }];
}

export function heightOfBands(bands: readonly TallyBand[]): number {
  const { pallet, name, box, gap, below } = TALLY_MM;
  return pallet + below + bands.reduce((sum, { rows }) => sum + name + rows * box + gap, 0);
}

/**
 * Pallets on pages: as many to a page as it holds whole; a pallet too large for one page takes a page of
 * its own and goes on, by whole piles, on the next.
 *
 * @param pallets slates of each; 0 where nobody said how many
 */
export function tallyPages(
  pallets: readonly { readonly slates: number }[],
  piles: number,
  roomMm: number
): TallyPart[][] {
  const pages: TallyPart[][] = [];
  let left = 0;
  for (const [pallet, { slates }] of pallets.entries()) {
    const bands = tallyBands(slates, piles);
    for (let at = 0; at < bands.length;) {
      if (left < roomMm && heightOfBands(bands.slice(at)) > left) left = 0;
      if (left === 0) {
        pages.push([]);
        left = roomMm;
      }
      let to = bands.length;
      while (to > at + 1 && heightOfBands(bands.slice(at, to)) > left) to--;
      const own = bands.slice(at, to);
      const isEnd = to === bands.length;
      pages[pages.length - 1].push({ pallet, bands: own, isStart: at === 0, isEnd });
      left = isEnd ? Math.max(0, left - heightOfBands(own)) : 0;
      at = to;
    }
  }
  return pages;
}

/** The pages of a tally sheet on A4 or Letter, below the words on its head. */
export function tallyPagesOnPaper(
  pallets: readonly { readonly slates: number }[],
  piles: number
): TallyPart[][] {
  return tallyPages(pallets, piles, PAPER_ROOM.heightMm - LEAD_MM);
}

/** Date, sorter and how to draw a stroke, above the boxes of each page. */
const LEAD_MM = 14;

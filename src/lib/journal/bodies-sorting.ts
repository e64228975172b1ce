import * as v from 'valibot';
import {
  amount,
  finite,
  gradesId,
  key,
  lengthMm,
  pile,
  points,
  reading,
  shortText,
  sizeId,
  whole
} from './body-fields.ts';
import { SET_ASIDE_REASONS } from './faults.ts';
import { allDiffer } from './lists.ts';

/** What a slate that goes on no pile is still good for. */
export const SET_ASIDE_USES = ['undereave', 'cutPiece', 'return', 'scrap'] as const;
export type SetAsideUse = (typeof SET_ASIDE_USES)[number];

/** Ways to set the boundaries between grades. */
export const BOUNDARY_METHODS = ['naturalBreaks', 'suitTheRoof', 'equalShares', 'byHand'] as const;
export type BoundaryMethod = (typeof BOUNDARY_METHODS)[number];

/** Where in the pallets a slate of the unsorted sample was drawn, and what else was measured. */
const sampleSlate = v.object({
  drawId: key,
  layer: v.optional(whole),
  place: v.optional(whole),
  lengthMm: v.optional(lengthMm),
  widthMm: v.optional(lengthMm),
  outOfSquareMm: v.optional(lengthMm),
  edgeBowMm: v.optional(lengthMm),
  flatnessMm: v.optional(lengthMm),
  ring: v.optional(v.picklist(['clear', 'dull'])),
  defects: v.optional(v.pipe(v.array(v.picklist(SET_ASIDE_REASONS)), v.maxLength(8)))
});
export type SampleSlate = v.InferOutput<typeof sampleSlate>;

/** A reading of one slate and the pile it was told; null before there are grades. */
const readSlate = {
  palletId: key,
  points,
  gradesId,
  pile: v.nullable(pile),
  /** Whether it rocks on a flat board by more than the kick allowance; left out: not tried. */
  rocks: v.optional(v.boolean())
};

/** Pallets, readings and piles. */
export const SORTING_BODIES = {
  palletAdded: v.object({
    palletId: key,
    label: v.pipe(shortText, v.minLength(1)),
    slates: whole,
    layers: v.optional(whole),
    perLayer: v.optional(whole),
    stackOf100Mm: v.optional(lengthMm),
    sizeId
  }),
  gradesSet: v.pipe(
    v.object({
      method: v.picklist(BOUNDARY_METHODS),
      thresholdsMm: v.pipe(
        v.array(lengthMm),
        v.minLength(1),
        v.maxLength(7),
        v.check(
          (mm) => mm.every((threshold, at) => at === 0 || threshold < mm[at - 1]),
          'each threshold lies below the one before'
        )
      ),
      /** The number of the pile that each grade goes to, the thickest first; left out: 1, 2, 3 … */
      piles: v.optional(
        v.pipe(
          v.array(pile),
          v.check((numbers) => allDiffer(numbers, String), 'a pile twice')
        )
      ),
      sampleSlates: v.optional(whole),
      sizeId
    }),
    v.check(
      ({ piles, thresholdsMm }) => !piles || piles.length === thresholdsMm.length + 1,
      'a pile for each grade'
    )
  ),
  slateGauged: v.object({ ...readSlate, sample: v.optional(sampleSlate) }),
  /** A reading that fits no slate of the job: it counts nowhere until the sorter says what it is. */
  readingHeld: v.object(readSlate),
  slateTapped: v.object({ palletId: key, pile, gradesId }),
  slateSetAside: v.object({
    palletId: key,
    reason: v.picklist(SET_ASIDE_REASONS),
    use: v.picklist(SET_ASIDE_USES),
    points: v.optional(points),
    sample: v.optional(sampleSlate)
  }),
  slateChecked: v.object({
    palletId: v.nullable(key),
    /** What is checked is a tap. A slate of a pile may stand in a file; it tells no hand, so it is counted nowhere. */
    of: v.picklist(['tap', 'pile']),
    pile,
    gradesId,
    points
  }),
  stackMeasured: v.object({
    palletId: v.nullable(key),
    slates: v.pipe(whole, v.minValue(1)),
    totalMm: lengthMm,
    /** The sorted pile it stands on; left out, a stack of the delivery as it came. */
    pile: v.optional(pile),
    gradesId: v.optional(gradesId)
  }),
  pileCounted: v.object({
    gradesId,
    pile,
    slates: whole,
    slateAndAHalves: v.optional(whole),
    /** What the tally said of the pile at that moment: slates tallied later come on top. */
    tallied: v.optional(whole),
    /** Slates of the pile that were laid or lost by then. */
    taken: v.optional(whole),
    /** Height that the count was worked out from, and how far it may be off, as an SD in slates. */
    heightMm: v.optional(lengthMm),
    sdSlates: v.optional(amount),
    sizeId
  }),
  slatesLost: v.object({
    pile,
    gradesId,
    slates: whole,
    reason: v.picklist(['broken', 'rogue', 'ranOut', 'other']),
    thicknessHundredths: v.optional(reading),
    sizeId
  }),
  /** Slates that came off one pile and joined another, as a rogue that suits a thinner one. */
  slatesMoved: v.pipe(
    v.object({
      fromPile: pile,
      toPile: pile,
      gradesId,
      slates: v.pipe(whole, v.minValue(1)),
      thicknessHundredths: v.optional(reading),
      /** A whole pile put on another, or sorted again; left out for single slates. */
      why: v.optional(v.picklist(['merged', 'sortedAgain'])),
      /** The course that they are kept for. */
      keptFor: v.optional(v.object({ slopeId: key, course: whole })),
      sizeId
    }),
    v.check(({ fromPile, toPile }) => fromPile !== toPile, 'from a pile to itself')
  ),
  gaugeStudied: v.object({
    /** Readings by part, then sorter, then trial, hundredths of a millimetre. */
    readings: v.pipe(v.array(v.array(v.array(reading))), v.maxLength(50)),
    sorters: v.pipe(v.array(shortText), v.maxLength(50)),
    repeatabilitySdMm: finite
  })
} as const;

import * as v from 'valibot';
import { amount, finite, key, lengthMm, shortText, signedMm, whole } from './body-fields.ts';
import { allDiffer } from './lists.ts';

/** One of several sizes of slate: a width, or the bounds of random widths. */
const slateSize = v.object({
  sizeId: key,
  lengthMm,
  widthMm: v.optional(lengthMm),
  widthFromMm: v.optional(lengthMm),
  widthToMm: v.optional(lengthMm),
  /** Mean of random widths, where somebody measured. */
  meanWidthMm: v.optional(lengthMm)
});
export type SlateSizeBody = v.InferOutput<typeof slateSize>;

const edge = v.object({
  kind: v.picklist(['verge', 'hip', 'valley', 'abutment']),
  insetAtTopMm: v.optional(signedMm),
  planAngleDegrees: v.optional(finite)
});

const opening = v.object({
  kind: v.picklist(['rooflight', 'chimney']),
  fromEaveMm: lengthMm,
  heightMm: lengthMm,
  /** Left of the eave's corner where a valley widens the slope. */
  fromLeftMm: signedMm,
  widthMm: lengthMm
});

/** The roof: its slates and its slopes. */
export const ROOF_BODIES = {
  slateSpecSet: v.object({
    lengthMm,
    widthMm: lengthMm,
    slateAndAHalfWidthMm: v.optional(lengthMm),
    nailing: v.picklist(['centre', 'head']),
    headNailLineMm: v.optional(lengthMm),
    headlapMm: lengthMm,
    jointMinMm: lengthMm,
    jointMaxMm: lengthMm,
    eaveOverhangMm: lengthMm,
    vergeOverhangMm: lengthMm,
    holeClearanceMm: v.optional(lengthMm),
    undereaveHoleFromHeadMm: v.optional(lengthMm),
    narrowestCutMm: v.optional(lengthMm),
    densityKgPerM3: v.optional(amount)
  }),
  /** Several sizes on one roof, longest first; none takes the job back to one size. */
  slateSizesSet: v.object({
    sizes: v.pipe(
      v.array(slateSize),
      v.maxLength(8),
      v.check((sizes) => allDiffer(sizes, ({ sizeId: id }) => id), 'a size twice')
    )
  }),
  /** How many courses each size takes, as chosen to lay by. */
  setCoursesChosen: v.object({
    courses: v.pipe(
      v.array(v.object({ sizeId: key, courses: v.pipe(whole, v.maxValue(1000)) })),
      v.maxLength(8),
      v.check((courses) => allDiffer(courses, ({ sizeId: id }) => id), 'a size twice')
    )
  }),
  slopeSet: v.object({
    slopeId: key,
    name: v.pipe(shortText, v.minLength(1)),
    rafterLengthMm: lengthMm,
    eaveWidthMm: lengthMm,
    pitchDegrees: v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(90))),
    eaveHeightMm: lengthMm,
    left: edge,
    right: edge,
    openings: v.pipe(v.array(opening), v.maxLength(50)),
    ridgeGapMm: v.optional(lengthMm),
    setOutFrom: v.optional(v.picklist(['left', 'right'])),
    rafterLeftMm: v.optional(lengthMm),
    rafterRightMm: v.optional(lengthMm),
    ridgeWidthMm: v.optional(lengthMm),
    diagonalMm: v.optional(lengthMm)
  }),
  slopeRemoved: v.object({ slopeId: key })
} as const;

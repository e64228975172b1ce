import * as v from 'valibot';
import { isCalendarDay } from './calendar.ts';
import { isEventId, isUuid } from './ids.ts';
import { allDiffer } from './lists.ts';

/** Short text that a person typed: trimmed, at most 200 characters. */
const shortText = v.pipe(v.string(), v.trim(), v.maxLength(200));
const longText = v.pipe(v.string(), v.maxLength(4000));
/** A key made by the app; letters, digits, dot and dash. */
const key = v.pipe(v.string(), v.regex(/^[A-Za-z0-9.-]{1,64}$/));
const uuid = v.pipe(v.string(), v.check(isUuid, 'not a UUID in lower case'));
const day = v.pipe(v.string(), v.isoDate(), v.check(isCalendarDay, 'no such day in the calendar'));
const whole = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(10_000_000));
const amount = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1e9));
const lengthMm = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1_000_000));
const signedMm = v.pipe(v.number(), v.finite(), v.minValue(-1_000_000), v.maxValue(1_000_000));
/** Any number that JSON can hold: a backup must give back what was stored. */
const finite = v.pipe(v.number(), v.finite());
const pile = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(8));

const missingReason = v.picklist(['gone', 'damaged']);

/** A thickness reading in whole hundredths of a millimetre, inside the accepted 1.5 to 40 mm. */
const reading = v.pipe(v.number(), v.integer(), v.minValue(150), v.maxValue(4000));
const points = v.pipe(v.array(reading), v.minLength(1), v.maxLength(4));

/** The set of grades a slate was told its pile by: the id of a gradesSet, or null before any. */
const gradesId = v.nullable(key);

/** Which of several sizes an act belongs to; left out in a job of one size, and by older releases. */
const sizeId = v.optional(key);

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

/** Why a slate goes on no pile. */
export const SET_ASIDE_REASONS = [
  'broken',
  'dullRing',
  'twisted',
  'tapered',
  'wrongSize',
  'inclusion',
  'colour',
  'other'
] as const;
/**
 * Limits that a buyer can confirm from the order or contract: measured checks other than thickness,
 * the ring, and each defect.
 */
export const AGREED_LIMITS = [
  'length',
  'width',
  'squareness',
  'edge',
  'flatness',
  'ring',
  'broken',
  'twisted',
  'tapered',
  'wrongSize',
  'inclusion',
  'colour',
  'other'
] as const;
/** What a claim can ask the supplier for. */
export const CLAIM_ASKS = ['credit', 'replacement', 'collection'] as const;
export const SET_ASIDE_USES = ['undereave', 'cutPiece', 'return', 'scrap'] as const;
export const BOUNDARY_METHODS = ['naturalBreaks', 'suitTheRoof', 'equalShares', 'byHand'] as const;

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

const piecesOfPile = v.object({ pile, pieces: whole });

const pilesOfCourse = v.pipe(v.array(piecesOfPile), v.minLength(1), v.maxLength(2));

/** From left to right; a course begun under one plan and ended under another has more than two. */
const pilesAsLaid = v.pipe(v.array(piecesOfPile), v.maxLength(8));

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

/** A share of slates outside and the chance to accept such a delivery, both 0 to 1. */
const riskPoint = v.object({
  share: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
  acceptance: v.pipe(v.number(), v.minValue(0), v.maxValue(1))
});

/**
 * What each type of event carries. Types are past tense; lengths are millimetres, readings whole
 * hundredths of a millimetre. To change a body, raise its version in {@link EVENT_VERSIONS} and add
 * an upcaster.
 */
export const BODIES = {
  jobOpened: v.object({ name: v.pipe(shortText, v.minLength(1)) }),
  jobRenamed: v.object({ name: v.pipe(shortText, v.minLength(1)) }),
  jobSettingsSet: v.object({
    kickAllowanceMm: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(20))),
    lengthUnit: v.optional(v.picklist(['mm', 'ftIn'])),
    readingUnit: v.optional(v.picklist(['mm', 'in'])),
    pointsPerSlate: v.optional(v.pipe(whole, v.minValue(1), v.maxValue(4))),
    piles: v.optional(v.pipe(whole, v.minValue(2), v.maxValue(8))),
    breakageShare: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(0.9))),
    sparesShare: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(0.9))),
    runOutRisk: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(1))),
    gaugeSdMm: v.optional(v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(5)))),
    stackHeightMm: v.optional(lengthMm),
    liftMassKg: v.optional(amount),
    sortingRatePerHour: v.optional(amount),
    sortingPacePerHour: v.optional(amount),
    carryMassKg: v.optional(v.pipe(v.number(), v.minValue(1), v.maxValue(200))),
    battenWasteShare: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(0.9))),
    layingPacePerHour: v.optional(v.nullable(amount)),
    battenLengthMm: v.optional(v.pipe(lengthMm, v.minValue(500), v.maxValue(20_000)))
  }),
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
  deliveryDeclared: v.object({
    supplier: shortText,
    /** Size as declared; left out, that of the slate on the roof. */
    lengthMm: v.optional(lengthMm),
    widthMm: v.optional(lengthMm),
    nominalThicknessMm: v.optional(lengthMm),
    tolerancePercent: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(100))),
    /** Where the order or contract states the tolerance. */
    toleranceWhere: v.optional(shortText),
    /** Limits confirmed from the order or contract, one by one, each with where it is written. */
    agreed: v.optional(
      v.pipe(
        v.array(
          v.object({
            limit: v.picklist(AGREED_LIMITS),
            limitMm: v.optional(lengthMm),
            where: v.pipe(shortText, v.minLength(1))
          })
        ),
        v.maxLength(AGREED_LIMITS.length),
        v.check((limits) => allDiffer(limits, ({ limit }) => limit), 'a limit twice')
      )
    ),
    texture: v.optional(v.picklist(['verySmooth', 'smooth', 'normal', 'textured'])),
    slatesOrdered: v.optional(whole),
    pricePerThousand: v.optional(amount),
    currency: v.optional(v.pipe(v.string(), v.maxLength(8))),
    stackOf100Mm: v.optional(lengthMm),
    stackTolerancePercent: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(100))),
    arrivedOn: v.optional(day),
    daysToClaim: v.optional(whole),
    /** The buyer as the claim names them, and the papers of the delivery. */
    buyer: v.optional(shortText),
    orderNumber: v.optional(shortText),
    orderedOn: v.optional(day),
    deliveryNote: v.optional(shortText),
    batches: v.optional(shortText),
    product: v.optional(shortText),
    /** What was measured with, its last check, and who measured. */
    gauge: v.optional(shortText),
    gaugeCheckedOn: v.optional(day),
    measuredBy: v.optional(shortText),
    /** What the claim asks for, and by when. */
    asks: v.optional(v.pipe(v.array(v.picklist(CLAIM_ASKS)), v.maxLength(CLAIM_ASKS.length))),
    answerBy: v.optional(day),
    replacementDays: v.optional(whole),
    queryDays: v.optional(whole),
    delayCostPerDay: v.optional(amount),
    returnCost: v.optional(amount),
    creditPerThousand: v.optional(amount),
    /** Kickers per 100 joints that are accepted without sorting. */
    acceptableKickersPer100: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(100)))
  }),
  palletAdded: v.object({
    palletId: key,
    label: v.pipe(shortText, v.minLength(1)),
    slates: whole,
    layers: v.optional(whole),
    perLayer: v.optional(whole),
    stackOf100Mm: v.optional(lengthMm),
    sizeId
  }),
  sampleDrawn: v.object({
    seed: v.pipe(v.number(), v.integer()),
    sizeId,
    plan: v.picklist(['attributes', 'variables', 'own']),
    level: v.optional(v.picklist(['I', 'II', 'III'])),
    aqlPercent: v.optional(finite),
    severity: v.optional(v.picklist(['normal', 'tightened'])),
    /** Slates that the acceptance number holds for; lists of older releases may have more places. */
    planSize: v.optional(whole),
    acceptAtMost: v.optional(whole),
    good: v.optional(riskPoint),
    poor: v.optional(riskPoint),
    positions: v.pipe(
      /** `full`: chance picked this place for the full check: size, squareness, edge and bow. */
      v.array(
        v.object({ palletId: key, layer: whole, place: whole, full: v.optional(v.boolean()) })
      ),
      v.minLength(1),
      v.maxLength(5000),
      v.check(
        (places) =>
          allDiffer(places, ({ palletId, layer, place }) => `${palletId}|${layer}|${place}`),
        'a place twice'
      )
    )
  }),
  slateGauged: v.object({
    palletId: key,
    points,
    gradesId,
    pile: v.nullable(pile),
    sample: v.optional(sampleSlate),
    /** Whether it rocks on a flat board by more than the kick allowance; left out: not tried. */
    rocks: v.optional(v.boolean())
  }),
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
    of: v.picklist(['tap', 'pile']),
    pile,
    gradesId,
    points
  }),
  stackMeasured: v.object({
    palletId: v.nullable(key),
    slates: v.pipe(whole, v.minValue(1)),
    totalMm: lengthMm
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
    sizeId
  }),
  entryVoided: v.object({ voids: v.pipe(v.string(), v.check(isEventId, 'not an event id')) }),
  gradesSet: v.object({
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
    sampleSlates: v.optional(whole),
    sizeId
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
  slopeRemoved: v.object({ slopeId: key }),
  planAdopted: v.object({
    gradesId,
    kickAllowanceMm: finite,
    expectedKickers: finite,
    joints: whole,
    courses: v.pipe(
      v.array(v.object({ slopeId: key, course: whole, piles: pilesOfCourse })),
      v.maxLength(5000),
      v.check(
        (courses) => allDiffer(courses, ({ slopeId, course }) => `${slopeId}|${course}`),
        'a course twice'
      )
    ),
    heldUnder: v.optional(v.pipe(v.number(), v.gtValue(0), v.ltValue(1))),
    way: v.optional(v.picklist(['byRule', 'mostEven', 'own'])),
    sizeId
  }),
  courseLaid: v.object({
    slopeId: key,
    course: whole,
    piles: v.pipe(pilesAsLaid, v.minLength(1))
  }),
  /** So much of a course lies, counted from one end; no pieces: none of it after all. */
  coursePartLaid: v.object({
    slopeId: key,
    course: whole,
    from: v.picklist(['left', 'right']),
    piles: pilesAsLaid,
    /** For whoever goes on with it. */
    note: v.optional(longText)
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
      /** The course that they are kept for. */
      keptFor: v.optional(v.object({ slopeId: key, course: whole })),
      sizeId
    }),
    v.check(({ fromPile, toPile }) => fromPile !== toPile, 'from a pile to itself')
  ),
  defectNoted: v.object({ palletId: v.nullable(key), text: longText }),
  photoAdded: v.object({
    photoId: key,
    palletId: v.nullable(key),
    caption: shortText,
    sha256: v.pipe(v.string(), v.hexadecimal()),
    bytes: whole
  }),
  gaugeStudied: v.object({
    /** Readings by part, then sorter, then trial, hundredths of a millimetre. */
    readings: v.pipe(v.array(v.array(v.array(reading))), v.maxLength(50)),
    sorters: v.pipe(v.array(shortText), v.maxLength(50)),
    repeatabilitySdMm: finite
  }),
  /** Whence the events of a copied phone came: a note, which counts nothing. */
  copyKept: v.object({
    branches: v.pipe(
      v.array(v.object({ deviceId: uuid, after: whole, keptAs: uuid, events: whole })),
      v.minLength(1),
      v.maxLength(1000)
    )
  }),
  /** Whence the events of a job came that was damaged, and what of it is missing: a note. */
  jobRescued: v.object({
    jobId: uuid,
    events: whole,
    missing: v.pipe(
      v.array(v.object({ deviceId: uuid, from: whole, to: whole, reason: missingReason })),
      v.maxLength(10_000)
    ),
    photos: v.pipe(v.array(v.object({ photoId: key, reason: missingReason })), v.maxLength(10_000))
  }),
  verdictSigned: v.object({
    verdict: v.picklist(['take', 'query', 'refuse']),
    signedBy: shortText,
    note: longText,
    journalSha256: v.pipe(v.string(), v.hexadecimal()),
    events: whole
  })
} as const;

export type EventType = keyof typeof BODIES;
export type BodyOf<T extends EventType> = v.InferOutput<(typeof BODIES)[T]>;
export type SetAsideReason = (typeof SET_ASIDE_REASONS)[number];
export type AgreedLimitName = (typeof AGREED_LIMITS)[number];
export type ClaimAsk = (typeof CLAIM_ASKS)[number];
export type SetAsideUse = (typeof SET_ASIDE_USES)[number];
export type BoundaryMethod = (typeof BOUNDARY_METHODS)[number];
export type SampleSlate = v.InferOutput<typeof sampleSlate>;
export type SlopeBody = BodyOf<'slopeSet'>;
export type SlateSpecBody = BodyOf<'slateSpecSet'>;
export type SlateSizeBody = v.InferOutput<typeof slateSize>;

/** The present version of each body. Absent means 1. */
export const EVENT_VERSIONS: Partial<Record<EventType, number>> = {
  planAdopted: 2,
  pileCounted: 2,
  courseLaid: 2
};

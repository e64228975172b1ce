import * as v from 'valibot';
import { amount, key, lengthMm, shortText, uuid, whole } from './body-fields.ts';
import { isEventId } from './ids.ts';

const missingReason = v.picklist(['gone', 'damaged']);

/** The job itself: its name, settings and photos, and notes on its own entries. */
export const JOB_BODIES = {
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
    battenLengthMm: v.optional(v.pipe(lengthMm, v.minValue(500), v.maxValue(20_000))),
    undereaveOrdered: v.optional(v.boolean())
  }),
  photoAdded: v.object({
    photoId: key,
    palletId: v.nullable(key),
    caption: shortText,
    sha256: v.pipe(v.string(), v.hexadecimal()),
    bytes: whole
  }),
  entryVoided: v.object({ voids: v.pipe(v.string(), v.check(isEventId, 'not an event id')) }),
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
  })
} as const;

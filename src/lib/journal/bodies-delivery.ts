import * as v from 'valibot';
import {
  amount,
  day,
  finite,
  key,
  lengthMm,
  longText,
  shortText,
  sizeId,
  whole
} from './body-fields.ts';
import { AGREED_LIMITS } from './faults.ts';
import { allDiffer } from './lists.ts';

/** What a claim can ask the supplier for. */
export const CLAIM_ASKS = ['credit', 'replacement', 'collection'] as const;
export type ClaimAsk = (typeof CLAIM_ASKS)[number];

const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const percent = v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(100)));

/** A share of slates outside and the chance to accept such a delivery, both 0 to 1. */
const riskPoint = v.object({
  share,
  acceptance: share
});

const asks = v.optional(v.pipe(v.array(v.picklist(CLAIM_ASKS)), v.maxLength(CLAIM_ASKS.length)));
const hash = v.pipe(v.string(), v.hexadecimal());

/** A delivery: what was ordered, the sample of it and the verdict. */
export const DELIVERY_BODIES = {
  deliveryDeclared: v.object({
    supplier: shortText,
    /** Size as declared; left out, that of the slate on the roof. */
    lengthMm: v.optional(lengthMm),
    widthMm: v.optional(lengthMm),
    nominalThicknessMm: v.optional(lengthMm),
    tolerancePercent: percent,
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
    stackTolerancePercent: percent,
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
    asks,
    answerBy: v.optional(day),
    replacementDays: v.optional(whole),
    queryDays: v.optional(whole),
    delayCostPerDay: v.optional(amount),
    returnCost: v.optional(amount),
    creditPerThousand: v.optional(amount),
    /** Kickers per 100 joints that are accepted without sorting. */
    acceptableKickersPer100: percent
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
    /** Whether places share layers, so that few are opened; from anywhere on the pallet where left out. */
    fewLayers: v.optional(v.boolean()),
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
  defectNoted: v.object({ palletId: v.nullable(key), text: longText }),
  verdictSigned: v.object({
    verdict: v.picklist(['take', 'query', 'refuse']),
    signedBy: shortText,
    note: longText,
    /** What a buyer who takes the delivery asks for all the same; nothing where left out. */
    asks,
    /** A mark of what it rests on: order, pallets, readings. */
    ground: v.optional(hash),
    journalSha256: hash,
    events: whole
  })
} as const;

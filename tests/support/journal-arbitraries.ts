import fc from 'fast-check';
import {
  AGREED_LIMITS,
  BOUNDARY_METHODS,
  type BodyOf,
  type EventType,
  type NewEvent,
  SET_ASIDE_REASONS,
  SET_ASIDE_USES,
  type StoredEvent,
  eventVersion
} from '$lib/journal';

export const JOB_ID = '018f0000-0000-7000-8000-000000000001';
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const palletId = fc.constantFrom('p1', 'p2', 'constructor');
const slopeId = fc.constantFrom('s1', 's2');
const gradesId = fc.constantFrom(null, 'g1', 'g2');
const sizeId = fc.constantFrom('long', 'short', 'z');
const pile = fc.integer({ min: 1, max: 12 });
const count = fc.integer({ min: 0, max: 5000 });
const lengthMm = fc.integer({ min: 0, max: 10_000 });
const reading = fc.integer({ min: 150, max: 4000 });
const points = fc.array(reading, { minLength: 1, maxLength: 4 });
const name = fc.constantFrom('Barn', 'Chapel', 'toString', '小屋');
const reason = fc.constantFrom(...SET_ASIDE_REASONS);
const use = fc.constantFrom(...SET_ASIDE_USES);
const sample = maybe(
  fc.record({
    drawId: fc.constantFrom('d1', 'd2'),
    layer: count,
    ring: fc.constant('clear' as const)
  })
);
const edge = fc.record({ kind: fc.constantFrom('verge' as const, 'hip' as const) });
const piles = fc.array(fc.record({ pile, pieces: count }), { minLength: 1, maxLength: 2 });
const undereave = fc.record({
  setAside: count,
  piles: fc.array(fc.record({ pile, slates: count, slateAndAHalves: count }), { maxLength: 2 })
});
const hash = fc.constant('0'.repeat(64));

/** For each type of event, any of its bodies. `entryVoided` names what the caller puts in. */
export const BODY: {
  [T in Exclude<EventType, 'entryVoided'>]: fc.Arbitrary<BodyOf<T>>;
} = {
  jobOpened: fc.record({ name }),
  jobRenamed: fc.record({ name }),
  jobSettingsSet: fc.record({
    kickAllowanceMm: fc.constantFrom(1, 1.5, 2),
    piles: maybe(fc.constant(3)),
    carryMassKg: maybe(fc.constantFrom(20, 25)),
    battenWasteShare: maybe(fc.constantFrom(0.05, 0.1)),
    layingPacePerHour: maybe(fc.constantFrom(null, 40)),
    battenLengthMm: maybe(fc.constantFrom(4800, 6000)),
    undereaveOrdered: maybe(fc.boolean())
  }),
  slateSpecSet: fc.record({
    lengthMm,
    widthMm: lengthMm,
    nailing: fc.constantFrom('centre' as const, 'head' as const),
    headlapMm: lengthMm,
    jointMinMm: lengthMm,
    jointMaxMm: lengthMm,
    eaveOverhangMm: lengthMm,
    vergeOverhangMm: lengthMm
  }),
  slateSizesSet: fc.record({
    sizes: fc.uniqueArray(fc.record({ sizeId, lengthMm, widthMm: lengthMm }), {
      maxLength: 3,
      selector: ({ sizeId: id }) => id
    })
  }),
  setCoursesChosen: fc.record({
    courses: fc.uniqueArray(fc.record({ sizeId, courses: fc.nat(40) }), {
      maxLength: 3,
      selector: ({ sizeId: id }) => id
    })
  }),
  deliveryDeclared: fc.record({
    supplier: name,
    slatesOrdered: maybe(count),
    toleranceWhere: maybe(name),
    buyer: maybe(name),
    orderedOn: maybe(fc.constant('2026-02-28')),
    asks: maybe(fc.constant(['credit' as const])),
    agreed: maybe(
      fc.uniqueArray(
        fc.record(
          { limit: fc.constantFrom(...AGREED_LIMITS), limitMm: lengthMm, where: name },
          { requiredKeys: ['limit', 'where'] }
        ),
        { maxLength: 3, selector: ({ limit }) => limit }
      )
    )
  }),
  palletAdded: fc.record(
    { palletId, label: name, slates: count, sizeId },
    { requiredKeys: ['palletId', 'label', 'slates'] }
  ),
  sampleDrawn: fc.record({
    seed: fc.integer(),
    plan: fc.constantFrom('own' as const, 'variables' as const),
    fewLayers: maybe(fc.boolean()),
    positions: fc.uniqueArray(
      fc.record(
        { palletId, layer: count, place: count, full: fc.boolean() },
        { requiredKeys: ['palletId', 'layer', 'place'] }
      ),
      {
        minLength: 1,
        maxLength: 3,
        selector: ({ palletId: of, layer, place }) => `${of}|${layer}|${place}`
      }
    )
  }),
  slateGauged: fc.record({
    ...{ palletId, points, gradesId, pile: fc.option(pile), sample },
    rocks: maybe(fc.boolean())
  }),
  readingHeld: fc.record({
    ...{ palletId, points, gradesId, pile: fc.option(pile) },
    rocks: maybe(fc.boolean())
  }),
  slateTapped: fc.record({ palletId, pile, gradesId }),
  slateSetAside: fc.record({ palletId, reason, use, points: maybe(points), sample }),
  slateChecked: fc.record({
    palletId: fc.option(palletId),
    of: fc.constantFrom('tap' as const, 'pile' as const),
    pile,
    gradesId,
    points
  }),
  stackMeasured: fc.record(
    {
      palletId: fc.option(palletId),
      slates: fc.integer({ min: 1, max: 100 }),
      totalMm: lengthMm,
      pile,
      gradesId
    },
    { requiredKeys: ['palletId', 'slates', 'totalMm'] }
  ),
  pileCounted: fc.record(
    {
      ...{ gradesId, pile, slates: count, tallied: count, taken: count, sizeId },
      ...{ heightMm: lengthMm, sdSlates: fc.double({ min: 0, max: 50, noNaN: true }) }
    },
    { requiredKeys: ['gradesId', 'pile', 'slates'] }
  ),
  gradesSet: fc
    .record({
      method: fc.constantFrom(...BOUNDARY_METHODS),
      thresholdsMm: fc
        .uniqueArray(lengthMm, { minLength: 1, maxLength: 7 })
        .map((mm) => mm.sort((one, other) => other - one)),
      numbers: maybe(fc.uniqueArray(pile, { minLength: 8, maxLength: 8 }))
    })
    .map(({ numbers, ...body }) => ({
      ...body,
      ...(numbers && { piles: numbers.slice(0, body.thresholdsMm.length + 1) })
    })),
  slopeSet: fc.record(
    {
      slopeId,
      name,
      rafterLengthMm: lengthMm,
      eaveWidthMm: lengthMm,
      pitchDegrees: fc.constantFrom(null, 35, 40),
      eaveHeightMm: lengthMm,
      left: edge,
      right: edge,
      openings: fc.constant([]),
      ridgeGapMm: lengthMm,
      setOutFrom: fc.constantFrom('left' as const, 'right' as const),
      rafterLeftMm: lengthMm,
      rafterRightMm: lengthMm,
      ridgeWidthMm: lengthMm,
      diagonalMm: lengthMm
    },
    {
      requiredKeys: [
        'slopeId',
        'name',
        'rafterLengthMm',
        'eaveWidthMm',
        'pitchDegrees',
        'eaveHeightMm',
        'left',
        'right',
        'openings'
      ]
    }
  ),
  slopeRemoved: fc.record({ slopeId }),
  planAdopted: fc.record(
    {
      gradesId,
      kickAllowanceMm: fc.constant(1.5),
      expectedKickers: fc.constantFrom(0, 3.25),
      joints: count,
      courses: fc.uniqueArray(fc.record({ slopeId, course: count, piles }), {
        maxLength: 3,
        selector: ({ slopeId: of, course }) => `${of}|${course}`
      }),
      heldUnder: fc.constantFrom(0.05, 0.1),
      way: fc.constantFrom('byRule' as const, 'mostEven' as const, 'own' as const)
    },
    { requiredKeys: ['gradesId', 'kickAllowanceMm', 'expectedKickers', 'joints', 'courses'] }
  ),
  courseLaid: fc.record(
    { slopeId, course: fc.integer({ min: 1, max: 3 }), piles, undereave },
    { requiredKeys: ['slopeId', 'course', 'piles'] }
  ),
  coursePartLaid: fc.record(
    {
      slopeId,
      course: fc.integer({ min: 1, max: 3 }),
      from: fc.constantFrom('left' as const, 'right' as const),
      piles: fc.array(fc.record({ pile, pieces: count }), { maxLength: 3 }),
      note: name,
      undereave
    },
    { requiredKeys: ['slopeId', 'course', 'from', 'piles'] }
  ),
  slatesLost: fc.record({
    pile,
    gradesId,
    slates: count,
    reason: fc.constantFrom('broken' as const, 'rogue' as const)
  }),
  slatesMoved: fc
    .record(
      {
        ...{ fromPile: pile, toPile: pile, gradesId, slates: fc.integer({ min: 1, max: 9 }) },
        ...{
          thicknessHundredths: reading,
          sizeId,
          why: fc.constantFrom('merged' as const, 'sortedAgain' as const)
        },
        keptFor: fc.record({ slopeId, course: fc.integer({ min: 1, max: 3 }) })
      },
      { requiredKeys: ['fromPile', 'toPile', 'gradesId', 'slates'] }
    )
    .filter(({ fromPile, toPile }) => fromPile !== toPile),
  defectNoted: fc.record({ palletId: fc.option(palletId), text: name }),
  photoAdded: fc.record({
    photoId: fc.constantFrom('f1', 'f2'),
    palletId: fc.option(palletId),
    caption: name,
    sha256: hash,
    bytes: count
  }),
  gaugeStudied: fc.record({
    readings: fc.array(fc.array(points, { maxLength: 2 }), { maxLength: 2 }),
    sorters: fc.array(name, { maxLength: 2 }),
    repeatabilitySdMm: fc.constant(0.05)
  }),
  copyKept: fc.record({
    branches: fc.array(
      fc.record({
        deviceId: fc.constant(JOB_ID),
        after: count,
        keptAs: fc.constant(JOB_ID),
        events: count
      }),
      { minLength: 1, maxLength: 2 }
    )
  }),
  jobRescued: fc.record({
    jobId: fc.constant(JOB_ID),
    events: count,
    missing: fc.array(
      fc.record({
        deviceId: fc.constant(JOB_ID),
        from: count,
        to: count,
        reason: fc.constantFrom('gone' as const, 'damaged' as const)
      }),
      { maxLength: 2 }
    ),
    photos: fc.array(
      fc.record({ photoId: fc.constantFrom('f1', 'f2'), reason: fc.constant('gone' as const) }),
      { maxLength: 2 }
    )
  }),
  verdictSigned: fc.record(
    {
      verdict: fc.constantFrom('take' as const, 'query' as const),
      signedBy: name,
      note: name,
      asks: fc.constantFrom(['credit' as const], ['credit' as const, 'replacement' as const]),
      ground: hash,
      journalSha256: hash,
      events: count
    },
    { requiredKeys: ['verdict', 'signedBy', 'note', 'journalSha256', 'events'] }
  )
};

/** Every type that has a count of its own. */
export const COUNTED_TYPES = Object.keys(BODY) as (keyof typeof BODY)[];

/** Any act but an undo. */
export const act: fc.Arbitrary<NewEvent> = fc.oneof(
  ...COUNTED_TYPES.map((type) =>
    (BODY[type] as fc.Arbitrary<object>).map((body) => ({ type, body }) as NewEvent)
  )
);

/** The id of the event with the given place in a made-up journal; ids rise with places. */
export function idAt(place: number): string {
  const clock = (1_770_000_000_000 + place * 20_000).toString(16).padStart(12, '0');
  return `${clock.slice(0, 8)}-${clock.slice(8)}-7000-8000-${String(place).padStart(12, '0')}`;
}

export function deviceAt(place: number): string {
  return `018f0000-0000-7000-8000-0000000000${10 + place}`;
}

/** An undo of the event with the given place. */
interface Undo {
  readonly undoOf: number;
}

/**
 * A whole journal: acts of two devices and sorters, a third of them undos of what came before, also
 * of undos. In order of id, each device's numbers without a gap.
 */
export const journal: fc.Arbitrary<StoredEvent[]> = fc
  .array(
    fc.record({
      what: fc.oneof(
        { weight: 2, arbitrary: act as fc.Arbitrary<NewEvent | Undo> },
        { weight: 1, arbitrary: fc.record({ undoOf: fc.nat(1000) }) }
      ),
      device: fc.constantFrom(0, 1),
      sorter: fc.constantFrom('', 'Wren', 'valueOf')
    }),
    { minLength: 1, maxLength: 40, size: 'max' }
  )
  .map((acts) => {
    const numbers = [0, 0];
    return acts.map(({ what, device, sorter }, place): StoredEvent => {
      const event: NewEvent =
        'undoOf' in what
          ? place === 0
            ? { type: 'jobOpened', body: { name: 'Barn' } }
            : { type: 'entryVoided', body: { voids: idAt(what.undoOf % place) } }
          : what;
      return {
        id: idAt(place),
        jobId: JOB_ID,
        deviceId: deviceAt(device),
        deviceSeq: ++numbers[device],
        at: new Date(1_770_000_000_000 + place * 20_000).toISOString(),
        sorter,
        type: event.type,
        v: eventVersion(event.type),
        body: { ...event.body }
      };
    });
  });

import { createRandom } from '$lib/engine';
import { drawFullChecks, drawSamplingList } from '$lib/engine/delivery';
import {
  type BodyOf,
  type NewEvent,
  type SetAsideReason,
  type StoredEvent,
  createIdSource,
  eventVersion
} from '$lib/journal';
import { PALLETS } from './delivery.ts';
import type { ExampleAct } from './example-act.ts';
import {
  type ExamplePallet,
  breaksOf,
  gaugeSome,
  sampleSlate,
  tapSome
} from './example-sorting.ts';

/**
 * Stand for the ids of the example's gradesSet and sampleDrawn, which only storage makes:
 * {@link exampleEvents} puts the real ones in.
 */
export const EXAMPLE_GRADES_ID = 'example-grades';
export const EXAMPLE_DRAW_ID = 'example-draw';

const SEED = 1906;
const GAUGER = 'Wren';
const TAPPER = 'Finch';
const SAMPLE_SIZE = 100;
/** Slates of it that get the full check. */
const FULL_CHECKS = 25;
/** Which slate of the sample, counted from 0, has an inclusion. */
const WITH_INCLUSION = 41;
/** Where the hand is told to part piles before there are grades. */
const FIRST_FEEL = { gradesId: null, thresholdsMm: [6.5, 5.7] };

/** The delivery's pallets at the size of a whole roof: 4,200 slates. */
const EXAMPLE_PALLETS: readonly ExamplePallet[] = PALLETS.map((pallet, index) => {
  const perLayer = [176, 173, 175, 174, 177, 175][index];
  return { ...pallet, palletId: `p${index + 1}`, layers: 4, perLayer, slates: 4 * perLayer };
});

/** Two stacks packed tight and measured across, a little over the label. */
const STACKS: readonly BodyOf<'stackMeasured'>[] = [
  { palletId: 'p3', slates: 100, totalMm: 624 },
  { palletId: 'p5', slates: 50, totalMm: 316 }
];

/**
 * The worked example: an invented job, act by act, the same every time. A delivery of six pallets
 * is sampled, measured in part and sorted in part by two people, then graded, then sorted on; the
 * roof takes a little less than the delivery will give. The plan is left to be made.
 */
export function workedExample(): { acts: ExampleAct[] } {
  const random = createRandom(SEED);
  const [p1, p2, p3, p4, p5, p6] = EXAMPLE_PALLETS;
  const acts = [...setUp(), ...sampling()];
  acts.push(
    ...gaugeSome(random, p1, 90, FIRST_FEEL, GAUGER),
    ...gaugeSome(random, p3, 80, FIRST_FEEL, GAUGER),
    ...tapSome(random, p2, 120, FIRST_FEEL, TAPPER),
    ...gaugeSome(random, p6, 90, FIRST_FEEL, GAUGER),
    ...tapSome(random, p4, 100, FIRST_FEEL, TAPPER),
    ...gaugeSome(random, p5, 80, FIRST_FEEL, GAUGER)
  );
  const thresholdsMm = breaksOf(acts);
  const sampleSlates = acts.filter(({ act }) => act.type === 'slateGauged').length;
  acts.push(
    by('', 'gradesSet', { method: 'naturalBreaks', thresholdsMm: [...thresholdsMm], sampleSlates })
  );
  const grades = { gradesId: EXAMPLE_GRADES_ID, thresholdsMm };
  acts.push(
    ...gaugeSome(random, p1, 130, grades, GAUGER),
    ...tapSome(random, p2, 190, grades, TAPPER),
    ...gaugeSome(random, p6, 120, grades, GAUGER),
    ...tapSome(random, p4, 160, grades, TAPPER),
    ...tapSome(random, p3, 140, grades, TAPPER),
    ...gaugeSome(random, p5, 130, grades, GAUGER)
  );
  return { acts: [...acts, ...roof()] };
}

/** What {@link exampleEvents} needs of the device the example is opened on. */
export interface ExampleDevice {
  readonly jobId: string;
  readonly deviceId: string;
  /** When the last act was done, milliseconds since 1970. */
  readonly endsAt: number;
  /** Sixteen random hexadecimal digits. */
  readonly randomHex: () => string;
}

/**
 * A worked example as events, the long barn unless other acts are given, to be merged into a store in
 * one transaction: as if done on this device in the hours before `endsAt`, at the pace of a gauge and
 * of a hand.
 */
export function exampleEvents(
  device: ExampleDevice,
  acts: readonly ExampleAct[] = workedExample().acts
): StoredEvent[] {
  const took = acts.reduce((sum, { act }) => sum + durationMs(act), 0);
  let time = device.endsAt - took;
  const nextId = createIdSource(() => time, device.randomHex);
  const names = new Map<string, string>();
  return acts.map(({ sorter, act }, index): StoredEvent => {
    time += durationMs(act);
    const id = nextId();
    if (act.type === 'gradesSet') names.set(EXAMPLE_GRADES_ID, id);
    if (act.type === 'sampleDrawn') names.set(EXAMPLE_DRAW_ID, id);
    return {
      id,
      jobId: device.jobId,
      deviceId: device.deviceId,
      deviceSeq: index + 1,
      at: new Date(time).toISOString(),
      sorter,
      type: act.type,
      v: eventVersion(act.type),
      body: {
        ...(named(act.body, names) as StoredEvent['body']),
        ...arrival(act, device.endsAt)
      }
    };
  });
}

/** The example's delivery always came yesterday, so that its claim clock still runs. */
function arrival(act: NewEvent, endsAt: number): { arrivedOn?: string } {
  if (act.type !== 'deliveryDeclared') return {};
  return { arrivedOn: new Date(endsAt - 24 * 3_600_000).toISOString().slice(0, 10) };
}

/** The same body with placeholders for ids replaced, at any depth. */
function named(value: unknown, names: ReadonlyMap<string, string>): unknown {
  if (typeof value === 'string') return names.get(value) ?? value;
  if (Array.isArray(value)) return value.map((item) => named(item, names));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, field]) => [key, named(field, names)])
  );
}

/** How long an act takes, whole milliseconds. Invented, near what is possible. */
function durationMs({ type }: NewEvent): number {
  if (type === 'slateTapped') return 5_400;
  if (type === 'slateGauged' || type === 'slateChecked') return 9_100;
  return type === 'slateSetAside' ? 7_000 : 60_000;
}

function setUp(): ExampleAct[] {
  return [
    by('', 'jobOpened', { name: 'Worked example: the long barn' }),
    by('', 'jobSettingsSet', {
      kickAllowanceMm: 1.5,
      lengthUnit: 'mm',
      readingUnit: 'mm',
      pointsPerSlate: 1,
      piles: 3,
      breakageShare: 0.05,
      sparesShare: 0.02,
      gaugeSdMm: 0.03,
      sortingRatePerHour: 34,
      sortingPacePerHour: 600
    }),
    by('', 'slateSpecSet', {
      lengthMm: 500,
      widthMm: 250,
      slateAndAHalfWidthMm: 375,
      nailing: 'centre',
      headlapMm: 85,
      jointMinMm: 3,
      jointMaxMm: 5,
      eaveOverhangMm: 50,
      vergeOverhangMm: 50,
      holeClearanceMm: 10,
      densityKgPerM3: 2800
    }),
    by('', 'deliveryDeclared', {
      supplier: 'an invented quarry',
      nominalThicknessMm: 6,
      tolerancePercent: 35,
      toleranceWhere: 'order, line 2',
      agreed: [
        { limit: 'length', where: 'order, line 1' },
        { limit: 'width', where: 'order, line 1' },
        { limit: 'flatness', where: 'order, line 3' },
        { limit: 'broken', where: 'terms, clause 4' },
        { limit: 'inclusion', where: 'order, line 4' }
      ],
      texture: 'normal',
      slatesOrdered: 4200,
      pricePerThousand: 1850,
      currency: 'EUR',
      stackOf100Mm: 620,
      stackTolerancePercent: 3,
      arrivedOn: '2026-03-02',
      daysToClaim: 8,
      acceptableKickersPer100: 4,
      creditPerThousand: 60,
      queryDays: 3,
      replacementDays: 12,
      delayCostPerDay: 180,
      returnCost: 420
    }),
    ...EXAMPLE_PALLETS.map(({ palletId, label, slates, layers, perLayer }) =>
      by('', 'palletAdded', { palletId, label, slates, layers, perLayer })
    )
  ];
}

/**
 * A sample drawn before sorting, by an own plan of 100 slates: seven outside are still accepted, so
 * that a delivery with 4 % outside passes 95 times in 100 and one with 11.5 % one time in ten. The
 * list is the one that its seed draws.
 */
function sampling(): ExampleAct[] {
  const packed = EXAMPLE_PALLETS.map(({ palletId, layers, perLayer, slates }) => ({
    id: palletId,
    layers,
    perLayer,
    count: slates
  }));
  const listRandom = createRandom(SEED);
  const list = drawSamplingList(packed, SAMPLE_SIZE, listRandom);
  if (!list.ok) throw new Error(`the example has no sample: ${list.reason}`);
  const full = drawFullChecks(list.places, FULL_CHECKS, listRandom);
  const drawn = EXAMPLE_PALLETS.flatMap((pallet) =>
    list.places.flatMap(({ palletId, layer, place }, index) =>
      palletId === pallet.palletId ? [{ pallet, layer, place, isFull: full[index] }] : []
    )
  );
  const random = createRandom(SEED + 1);
  return [
    by('', 'sampleDrawn', {
      seed: SEED,
      plan: 'own',
      good: { share: 0.04, acceptance: 0.95 },
      poor: { share: 0.115, acceptance: 0.1 },
      planSize: SAMPLE_SIZE,
      acceptAtMost: 7,
      positions: drawn.map(({ pallet: { palletId }, layer, place, isFull }) => ({
        palletId,
        layer,
        place,
        ...(isFull && { full: true })
      }))
    }),
    ...drawn.map(({ pallet, layer, place, isFull }, index) => {
      const slate = sampleSlate(random, pallet, EXAMPLE_DRAW_ID, { layer, place }, isFull);
      const defects: SetAsideReason[] = index === WITH_INCLUSION ? ['inclusion'] : [];
      const sample = slate.sample && { ...slate.sample, defects };
      return by(GAUGER, 'slateGauged', { ...slate, sample });
    }),
    ...STACKS.map((stack) => by(GAUGER, 'stackMeasured', stack))
  ];
}

/** A gable roof whose two slopes take a little less than the delivery will give. */
function roof(): ExampleAct[] {
  return (['front', 'back'] as const).map((side) =>
    by('', 'slopeSet', {
      slopeId: side,
      name: side === 'front' ? 'Front slope' : 'Back slope',
      rafterLengthMm: 7400,
      eaveWidthMm: 12_800,
      pitchDegrees: 37.5,
      eaveHeightMm: 0,
      left: { kind: 'verge' },
      right: { kind: 'verge' },
      openings: []
    })
  );
}

function by<T extends NewEvent['type']>(
  sorter: string,
  type: T,
  body: Extract<NewEvent, { type: T }>['body']
): ExampleAct {
  return { sorter, act: { type, body } as NewEvent };
}

import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import hypergeometricCdf from '@stdlib/stats-base-dists-hypergeometric-cdf';
import { mean, sampleStandardDeviation } from 'simple-statistics';

/*
 * Every figure of a claim, worked out from the job file alone and with nothing of the app: counts by
 * plain comparison, distributions by the @stdlib functions that the app does not use (it sums its own
 * distributions and takes ranges of shares from the beta quantile), mean and SD by simple-statistics.
 */

interface FileEvent {
  readonly id: string;
  readonly type: string;
  readonly body: Record<string, unknown>;
}
interface Order {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly nominalThicknessMm: number;
  readonly tolerancePercent: number;
  readonly slatesOrdered: number;
  readonly agreed: readonly { limit: string; limitMm?: number; where: string }[];
}
interface Draw {
  readonly acceptAtMost: number;
  readonly good: { share: number; acceptance: number };
  readonly poor: { share: number; acceptance: number };
  readonly positions: readonly {
    palletId: string;
    layer: number;
    place: number;
    full?: boolean;
  }[];
}
interface Slate {
  readonly palletId: string;
  readonly points: readonly number[];
  readonly sample: {
    readonly layer: number;
    readonly place: number;
    readonly lengthMm?: number;
    readonly widthMm?: number;
    readonly outOfSquareMm?: number;
    readonly edgeBowMm?: number;
    readonly flatnessMm?: number;
    readonly ring?: 'clear' | 'dull';
    readonly defects?: readonly string[];
  };
}

export type CheckName =
  'thickness' | 'length' | 'width' | 'squareness' | 'edge' | 'flatness' | 'ring' | 'defects';

/** Counts of one check, and what they leave possible in the delivery. */
export interface CheckFigures {
  readonly measured: number;
  readonly failed: number;
  readonly range: readonly [number, number];
}

export interface ClaimFigures {
  readonly ordered: number;
  readonly delivered: number;
  readonly sampled: number;
  readonly placesOfList: number;
  readonly fullChecks: number;
  readonly certain: number;
  readonly outside: number;
  /** Slates of the delivery, 95 %: outside for certain, and with those asked about. */
  readonly rangeCertain: readonly [number, number];
  readonly rangeOutside: readonly [number, number];
  /** Share of what the supplier makes, 95 % (Clopper–Pearson). */
  readonly shareCertain: readonly [number, number];
  /** Slates of the delivery that are sound and of the size ordered, however thick, 95 %. */
  readonly rangeUsable: readonly [number, number];
  readonly byCheck: Readonly<Record<CheckName, CheckFigures>>;
  readonly bandMm: readonly [number, number];
  /** The least plan that keeps both risks, and the number for the slates drawn. */
  readonly leastPlan: { readonly sampleSize: number; readonly acceptAtMost: number };
  readonly acceptAtMost: number;
  readonly sellersRisk: number;
  readonly buyersRisk: number;
  /** Thickness of the sampled slates inside the order, mm. */
  readonly inside: {
    readonly slates: number;
    readonly thinnestMm: number;
    readonly thickestMm: number;
    readonly meanMm: number;
    readonly sdMm: number;
  };
  readonly byPallet: readonly {
    label: string;
    outside: number;
    of: number;
    meanMm: number;
    sdMm: number;
  }[];
  readonly readings: readonly {
    label: string;
    layer: number;
    place: number;
    thicknessMm: number;
  }[];
}

const RISK = 0.025;

/** Events of a job file that hold: those taken back are left out. */
export function eventsOfFile(file: string): FileEvent[] {
  const [header, ...lines] = file.split('\n');
  const { events } = JSON.parse(header) as { events: number };
  const all = lines.slice(0, events).map((line) => JSON.parse(line) as FileEvent);
  const voided = new Set(
    all.filter(({ type }) => type === 'entryVoided').map(({ body }) => body.voids)
  );
  return all.filter(({ id }) => !voided.has(id));
}

const bodiesOf = <Body>(events: readonly FileEvent[], type: string): Body[] =>
  events.filter((event) => event.type === type).map(({ body }) => body as Body);

/** Counts that are left possible: no tail at what was found is below half the risk. */
export function rangeOfLot(lot: number, sampled: number, found: number): [number, number] {
  const atMost = (bad: number, count: number): number =>
    count < 0 ? 0 : hypergeometricCdf(count, lot, bad, sampled);
  let low = found;
  while (1 - atMost(low, found - 1) < RISK) low++;
  let high = lot - (sampled - found);
  while (atMost(high, found) < RISK) high--;
  return [low, high];
}

/** Clopper–Pearson by its definition: shares whose binomial tails are the half risk. */
export function rangeOfShare(found: number, sampled: number): [number, number] {
  const solve = (tooHigh: (share: number) => boolean): number => {
    let [low, high] = [0, 1];
    for (let step = 0; step < 60; step++) {
      const middle = (low + high) / 2;
      if (tooHigh(middle)) high = middle;
      else low = middle;
    }
    return low;
  };
  return [
    found === 0 ? 0 : solve((share) => 1 - binomialCdf(found - 1, sampled, share) >= RISK),
    found === sampled ? 1 : solve((share) => binomialCdf(found, sampled, share) <= RISK)
  ];
}

/** The least sample that keeps both risks, with its acceptance number. */
function leastPlan({ good, poor }: Draw): { sampleSize: number; acceptAtMost: number } {
  for (let sampleSize = 1; ; sampleSize++) {
    let acceptAtMost = 0;
    while (binomialCdf(acceptAtMost, sampleSize, good.share) < good.acceptance) acceptAtMost++;
    if (binomialCdf(acceptAtMost, sampleSize, poor.share) <= poor.acceptance)
      return { sampleSize, acceptAtMost };
  }
}

/** What one slate is outside of. Bow: EN 12326-1 as published by trade bodies, normal texture. */
function failuresOf({ points, sample }: Slate, order: Order): CheckName[] {
  const limitOf = (name: string, usual: number): number =>
    order.agreed.find(({ limit }) => limit === name)?.limitMm ?? usual;
  const mm = mean([...points]) / 100;
  const offMm = (nominalMm: number, measured: number | undefined): number =>
    measured === undefined ? 0 : Math.abs(measured - nominalMm);
  const tests: [CheckName, boolean][] = [
    [
      'thickness',
      offMm(order.nominalThicknessMm, mm) >
        (order.nominalThicknessMm * order.tolerancePercent) / 100 + 1e-9
    ],
    ['length', offMm(order.lengthMm, sample.lengthMm) > limitOf('length', 5)],
    ['width', offMm(order.widthMm, sample.widthMm) > limitOf('width', 5)],
    ['squareness', (sample.outOfSquareMm ?? 0) > limitOf('squareness', order.lengthMm / 100)],
    ['edge', (sample.edgeBowMm ?? 0) > limitOf('edge', 5)],
    ['flatness', (sample.flatnessMm ?? 0) >= limitOf('flatness', (order.lengthMm * 1.5) / 100)],
    ['ring', sample.ring === 'dull'],
    ['defects', (sample.defects ?? []).length > 0]
  ];
  return tests.filter(([, isOutside]) => isOutside).map(([name]) => name);
}

/** Whether the order states or the buyer confirmed one of the limits that a slate fails. */
function isCertain({ sample }: Slate, failures: readonly CheckName[], order: Order): boolean {
  const isAgreed = (name: string): boolean => order.agreed.some(({ limit }) => limit === name);
  return failures.some(
    (name) =>
      name === 'thickness' ||
      (name === 'defects' ? (sample.defects ?? []).some(isAgreed) : isAgreed(name))
  );
}

const FULL: readonly CheckName[] = ['length', 'width', 'squareness', 'edge', 'flatness'];

/** Whether a check was made on a slate. */
function isMeasured({ sample }: Slate, check: CheckName): boolean {
  const { lengthMm, widthMm, outOfSquareMm, edgeBowMm, flatnessMm, ring, defects } = sample;
  const made = { lengthMm, widthMm, outOfSquareMm, edgeBowMm, flatnessMm };
  if (check === 'thickness') return true;
  if (check === 'ring') return ring !== undefined;
  if (check === 'defects') return defects !== undefined;
  return Object.values(made)[FULL.indexOf(check)] !== undefined;
}

/** The figures of a claim whose list is drawn once by an own plan and measured to its end. */
export function claimFigures(file: string): ClaimFigures {
  const events = eventsOfFile(file);
  const order = bodiesOf<Order>(events, 'deliveryDeclared').at(-1);
  const draw = bodiesOf<Draw>(events, 'sampleDrawn').at(-1);
  if (!order || !draw) throw new Error('no order or no list in the file');
  const pallets = bodiesOf<{ palletId: string; label: string; slates: number }>(
    events,
    'palletAdded'
  );
  const slates = bodiesOf<Slate>(events, 'slateGauged');
  const delivered = pallets.reduce((sum, pallet) => sum + pallet.slates, 0);
  const judged = slates.map((slate) => {
    const failures = failuresOf(slate, order);
    const { label = '' } = pallets.find(({ palletId }) => palletId === slate.palletId) ?? {};
    const isFull = draw.positions.some(
      ({ palletId, layer, place, full }) =>
        full &&
        palletId === slate.palletId &&
        layer === slate.sample.layer &&
        place === slate.sample.place
    );
    return {
      slate,
      label,
      failures,
      isFull,
      isCertain: isCertain(slate, failures, order),
      thicknessMm: mean([...slate.points]) / 100
    };
  });
  const rangeOf = (sampled: number, found: number): [number, number] =>
    rangeOfLot(delivered, sampled, found);
  const checks: CheckName[] = ['thickness', ...FULL, 'ring', 'defects'];
  const figuresOf = (check: CheckName): CheckFigures => {
    const base = FULL.includes(check) ? judged.filter(({ isFull }) => isFull) : judged;
    const failed = base.filter(({ failures }) => failures.includes(check)).length;
    const measured = judged.filter(({ slate }) => isMeasured(slate, check)).length;
    return { measured, failed, range: rangeOf(base.length, failed) };
  };
  const byCheck = Object.fromEntries(checks.map((check) => [check, figuresOf(check)])) as Record<
    CheckName,
    CheckFigures
  >;
  const certain = judged.filter((each) => each.isCertain).length;
  const outside = judged.filter(({ failures }) => failures.length > 0).length;
  const inside = judged
    .filter(({ failures }) => failures.length === 0)
    .map(({ thicknessMm }) => thicknessMm);
  const unusable = judged.filter(({ failures }) => failures.some((name) => name !== 'thickness'));
  const [unusableLow, unusableHigh] = rangeOf(judged.length, unusable.length);
  const least = leastPlan(draw);
  let acceptAtMost = least.acceptAtMost;
  while (binomialCdf(acceptAtMost, judged.length, draw.good.share) < draw.good.acceptance)
    acceptAtMost++;
  const accepted = (share: number): number =>
    hypergeometricCdf(acceptAtMost, delivered, Math.round(delivered * share), judged.length);
  const band = (order.nominalThicknessMm * order.tolerancePercent) / 100;
  return {
    ordered: order.slatesOrdered,
    delivered,
    sampled: judged.length,
    placesOfList: draw.positions.length,
    fullChecks: judged.filter(({ isFull }) => isFull).length,
    certain,
    outside,
    rangeCertain: rangeOf(judged.length, certain),
    rangeOutside: rangeOf(judged.length, outside),
    shareCertain: rangeOfShare(certain, judged.length),
    rangeUsable: [delivered - unusableHigh, delivered - unusableLow],
    byCheck,
    bandMm: [order.nominalThicknessMm - band, order.nominalThicknessMm + band],
    leastPlan: least,
    acceptAtMost,
    sellersRisk: 1 - accepted(draw.good.share),
    buyersRisk: accepted(draw.poor.share),
    inside: {
      slates: inside.length,
      thinnestMm: Math.min(...inside),
      thickestMm: Math.max(...inside),
      meanMm: mean(inside),
      sdMm: sampleStandardDeviation(inside)
    },
    byPallet: pallets.map(({ label }) => {
      const own = judged.filter((each) => each.label === label);
      const mm = own.map(({ thicknessMm }) => thicknessMm);
      return {
        label,
        outside: own.filter(({ failures }) => failures.length > 0).length,
        of: own.length,
        meanMm: mean(mm),
        sdMm: sampleStandardDeviation(mm)
      };
    }),
    readings: judged.map(({ label, slate, thicknessMm, failures }) => ({
      label,
      layer: slate.sample.layer,
      place: slate.sample.place,
      thicknessMm,
      isOutside: failures.length > 0
    }))
  };
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom } from '$lib/engine';
import { drawFullChecks, drawSamplingList, findAttributesPlan } from '$lib/engine/delivery';
import {
  type JournalEvent,
  type NewEvent,
  createIdSource,
  eventVersion,
  type JobView,
  foldAll,
  readEvent
} from '$lib/journal';
import { tallyPallets } from './queries.ts';
import { fixedExample } from '../../../tests/support/fixed-example.ts';
import { judgeJob } from '$lib/features/delivery/delivery-judge.ts';
import { packedPallets } from '$lib/features/delivery/delivery-plan.ts';
import { drawsOf, listProgress, offeredSlates } from './delivery-sample.ts';

const JOB = '01890000-0000-7000-8000-000000000001';
const DEVICE = '01890000-0000-7000-8000-000000000002';
const MINUTE = 60_000;
const START = 29_000_000 * MINUTE;

const viewOf = (events: readonly unknown[]): JobView => foldAll(events.map(readEvent));

/** A job told act by act, each with the minute it was done in. */
class Told {
  #minute = 0;
  #nextId = createIdSource(
    () => START + this.#minute * MINUTE,
    () => '0123456789abcdef'
  );
  readonly events: JournalEvent[] = [];

  at(minute: number, ...acts: NewEvent[]): string {
    this.#minute = minute;
    for (const act of acts)
      this.events.push({
        ...act,
        id: this.#nextId(),
        jobId: JOB,
        deviceId: DEVICE,
        deviceSeq: this.events.length + 1,
        at: new Date(START + minute * MINUTE).toISOString(),
        sorter: '',
        v: eventVersion(act.type)
      } as JournalEvent);
    return this.events[this.events.length - 1].id;
  }

  offered() {
    return offeredSlates(viewOf(this.events));
  }
}

const pallet: NewEvent = {
  type: 'palletAdded',
  body: { palletId: 'a', label: 'A', slates: 40, layers: 4, perLayer: 10 }
};
const list: NewEvent = {
  type: 'sampleDrawn',
  body: {
    seed: 1,
    plan: 'own',
    positions: [1, 2, 3].map((place) => ({ palletId: 'a', layer: 1, place }))
  }
};
const sorted: NewEvent = {
  type: 'slateGauged',
  body: { palletId: 'a', points: [600], gradesId: null, pile: 1 }
};
const slate = (drawId: string, place: number, points = [600]): NewEvent => ({
  type: 'slateGauged',
  body: { palletId: 'a', points, gradesId: null, pile: null, sample: { drawId, layer: 1, place } }
});

describe('which slates judge a delivery', () => {
  it('those on the list, drawn and measured before sorting', () => {
    const job = new Told();
    job.at(0, pallet);
    const drawId = job.at(1, list);
    job.at(2, slate(drawId, 1, [590, 600, 610]), slate(drawId, 2));
    job.at(9, sorted);
    expect(job.offered()).toMatchObject([
      { standing: 'judges', label: 'A', layer: 1, place: 1, thicknessMm: 6 },
      { standing: 'judges', place: 2 }
    ]);
  });

  it('a slate measured after sorting began on its pallet does not judge', () => {
    const job = new Told();
    job.at(0, pallet);
    const drawId = job.at(1, list);
    job.at(2, slate(drawId, 1));
    job.at(3, sorted);
    job.at(4, slate(drawId, 2));
    expect(job.offered().map(({ standing }) => standing)).toEqual(['judges', 'measured-late']);
    expect(job.offered()[1].measured.drawnAs).toBe('other');
  });

  it('the minute in which sorting began counts as before', () => {
    const job = new Told();
    job.at(0, pallet);
    const drawId = job.at(1, list);
    job.at(3, sorted, slate(drawId, 1));
    expect(job.offered()[0].standing).toBe('judges');
  });

  it('a list drawn after sorting began judges nothing of that pallet', () => {
    const job = new Told();
    job.at(0, pallet, sorted);
    const drawId = job.at(5, list);
    job.at(6, slate(drawId, 1));
    expect(job.offered()[0].standing).toBe('drawn-late');
  });

  it('sorting that was taken back is as if it had never been', () => {
    const job = new Told();
    const sortedId = job.at(0, pallet, sorted);
    const drawId = job.at(5, list);
    job.at(6, slate(drawId, 1), { type: 'entryVoided', body: { voids: sortedId } });
    expect(job.offered()[0].standing).toBe('judges');
  });

  it('a place that is not on the list, and a list that is not in the job, judge nothing', () => {
    const job = new Told();
    job.at(0, pallet);
    const drawId = job.at(1, list);
    job.at(2, slate(drawId, 9), slate('elsewhere', 1));
    expect(job.offered().map(({ standing }) => standing)).toEqual(['not-on-list', 'list-unknown']);
  });

  it('of a place measured twice the later reading counts, and no slate counts twice', () => {
    const job = new Told();
    job.at(0, pallet);
    const drawId = job.at(1, list);
    job.at(2, slate(drawId, 1, [500]), slate(drawId, 1, [700]));
    expect(job.offered()).toMatchObject([
      { standing: 'measured-again', thicknessMm: 5 },
      { standing: 'judges', thicknessMm: 7 }
    ]);
    const progress = listProgress(viewOf(job.events), job.offered());
    expect(progress).toMatchObject({ measured: 1 });
    expect(progress?.places.map(({ isMeasured }) => isMeasured)).toEqual([true, false, false]);
  });

  it('a slate set aside from the list is looked over, with its reason as defect', () => {
    const job = new Told();
    job.at(0, pallet);
    const drawId = job.at(1, list);
    const sample = { drawId, layer: 1, place: 3, ring: 'dull' as const };
    const body = { palletId: 'a', reason: 'broken', use: 'return', sample } as const;
    job.at(2, { type: 'slateSetAside', body });
    const [broken] = job.offered();
    expect(broken.standing).toBe('judges');
    expect(broken.measured).toEqual({
      palletId: 'a',
      drawnAs: 'unsorted sample',
      pointsMm: [],
      ring: 'dull',
      defects: ['broken'],
      isFullCheck: false
    });
  });
});

describe('the worked example', () => {
  const events = fixedExample();
  const view = viewOf(events);
  const offered = offeredSlates(view);
  const judgement = judgeJob(view, offered);

  it('has 100 slates that judge, all drawn before sorting', () => {
    expect(offered.filter(({ standing }) => standing === 'judges')).toHaveLength(100);
    expect(drawsOf(view)).toHaveLength(1);
  });

  it('is queried since the reserve of its roof may run short, with every cost known', () => {
    if (!judgement.ok) throw new Error(judgement.reason);
    expect(judgement.verdict.verdict).toBe('query');
    expect(judgement.verdict.reasons.map(({ code }) => code)).toEqual([
      'roof-reserve-uncertain',
      'sorting-needed'
    ]);
    expect(judgement.findings.outsideOrder).toMatchObject({ judged: 100, outside: 4 });
    expect(judgement.bars.reduce((sum, { count }) => sum + count, 0)).toBe(100);
    expect(judgement.costs.flatMap(({ unknown }) => unknown)).toEqual([]);
  });

  it('was sampled by the list that its seed draws, under the plan that its two risks give', () => {
    const [{ value }] = drawsOf(view);
    const { packed } = packedPallets(tallyPallets(view));
    const random = createRandom(value.seed);
    const again = drawSamplingList(packed, value.positions.length, random);
    const places = value.positions.map(({ palletId, layer, place }) => ({
      palletId,
      layer,
      place
    }));
    expect(again).toMatchObject({ ok: true, places });
    if (!value.good || !value.poor) throw new Error('the list names no risks');
    expect(findAttributesPlan(value.good, value.poor)).toEqual({
      ok: true,
      plan: { sampleSize: value.planSize, acceptAtMost: value.acceptAtMost }
    });
  });

  it('names by the same seed the quarter of its places that get the full check', () => {
    const [{ value }] = drawsOf(view);
    const { packed } = packedPallets(tallyPallets(view));
    const random = createRandom(value.seed);
    const again = drawSamplingList(packed, value.positions.length, random);
    if (!again.ok) throw new Error(again.reason);
    const full = drawFullChecks(again.places, 25, random);
    expect(value.positions.map((place) => place.full === true)).toEqual(full);
    const sized = offered.filter(({ measured }) => measured.lengthMm !== undefined);
    expect(sized).toHaveLength(25);
    expect(sized.every(({ isFull }) => isFull)).toBe(true);
  });

  it('comes to the same verdict and figures in whatever order the readings came', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(offered, { minLength: offered.length }), (shuffled) => {
        expect(judgeJob(view, shuffled)).toEqual(judgement);
      }),
      { seed: 606, numRuns: 10 }
    );
  });
});

describe('what is missing before a delivery can be judged', () => {
  const reasonOf = (job: Told): string => {
    const view = viewOf(job.events);
    const judgement = judgeJob(view, offeredSlates(view));
    return judgement.ok ? 'judged' : judgement.reason;
  };
  const order: NewEvent = {
    type: 'deliveryDeclared',
    body: {
      supplier: 'Heron',
      lengthMm: 500,
      widthMm: 250,
      nominalThicknessMm: 6,
      slatesOrdered: 40
    }
  };

  it('is told one after the other', () => {
    const job = new Told();
    job.at(0, { type: 'jobOpened', body: { name: 'Shed' } });
    expect(reasonOf(job)).toBe('no-order');
    job.at(1, order);
    expect(reasonOf(job)).toBe('no-pallets');
    job.at(2, pallet);
    expect(reasonOf(job)).toBe('no-list');
    const drawId = job.at(3, list);
    expect(reasonOf(job)).toBe('no-unsorted-sample');
    job.at(4, slate(drawId, 1));
    expect(reasonOf(job)).toBe('list-unfinished');
    job.at(5, slate(drawId, 2), slate(drawId, 3));
    expect(reasonOf(job)).toBe('judged');
  });

  it('a delivery smaller than its list is refused', () => {
    const job = new Told();
    job.at(0, order, { ...pallet, body: { ...pallet.body, slates: 2 } } as NewEvent);
    const drawId = job.at(1, list);
    job.at(2, slate(drawId, 1));
    expect(reasonOf(job)).toBe('sample-exceeds-lot');
  });
});

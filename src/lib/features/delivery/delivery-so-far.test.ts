import { describe, expect, it } from 'vitest';
import { type JobView, type StoredEvent, foldAll, readEvent } from '$lib/journal';
import { type Catalogue, NumberWords } from '$lib/text';
import { fixedExample } from '../../../../tests/support/fixed-example.ts';
import { common } from '$lib/text/en/common.ts';
import { delivery } from '$lib/text/en/delivery.ts';
import { sort } from '$lib/text/en/sort.ts';
import { listCoverage } from '$lib/job/delivery-coverage.ts';
import { type SoFar, judgeJob } from './delivery-judge.ts';
import { sayMessage } from './delivery-message.ts';
import { sayVerdict } from './delivery-report.ts';
import { listProgress, offeredSlates } from '$lib/job/delivery-sample.ts';
import { placeKey } from '$lib/job/sample-place.ts';
import { sayCoverage, sayPlanSoFar, sayToFinish } from './delivery-so-far.ts';

const text = { common, delivery, sort } as Catalogue;
const numbers = new NumberWords('en-GB');

const JOB = { name: 'Shed', photos: 0, coursesLaid: 0 };

interface Sampled {
  readonly palletId: string;
  readonly sample?: { readonly layer: number; readonly place: number };
}
const example = fixedExample();
const whole = foldAll(example.map(readEvent));
const walk = listProgress(whole, offeredSlates(whole))?.places ?? [];
const pallets = [...new Set(walk.map(({ label }) => label))];

/** The example with only these places of its list measured, its order made out with these fields. */
function viewWith(
  isMeasured: (place: (typeof walk)[number], index: number) => boolean,
  fields: object = {}
): JobView {
  const kept = new Set(walk.filter(isMeasured).map(placeKey));
  const isKept = ({ body }: StoredEvent): boolean => {
    const { palletId, sample } = body as unknown as Sampled;
    return !sample || kept.has(placeKey({ palletId, ...sample }));
  };
  const changed = example
    .filter(isKept)
    .map((event) =>
      event.type === 'deliveryDeclared'
        ? ({ ...event, body: { ...event.body, ...fields } } as StoredEvent)
        : event
    );
  return foldAll(changed.map(readEvent));
}
function soFarOf(view: JobView): SoFar {
  const judgement = judgeJob(view, offeredSlates(view));
  if (judgement.ok || judgement.reason !== 'list-unfinished')
    throw new Error('the list counts as finished');
  return judgement.soFar;
}
const firstPlaces = (count: number) => (_: unknown, index: number) => index < count;
const RANGE = /\d+ to \d+|between|95 %|[Uu]sable|costs?\b/;

describe('a list measured on one pallet alone', () => {
  const soFar = soFarOf(viewWith(firstPlaces(12)));

  it('knows that nothing is known of the others', () => {
    expect(soFar.coverage).toMatchObject({
      state: 'some-pallets',
      places: 100,
      measured: 12,
      isFirst: true,
      reached: [pallets[0]],
      unreached: pallets.slice(1)
    });
    expect(soFar.coverage.open.reduce((sum, { slates }) => sum + slates, 0)).toBe(88);
  });

  it('says so, and what would finish it', () => {
    const said = sayCoverage({ ...soFar.coverage, lost: [] }, text, numbers);
    expect(said).toBe(
      'The first 12 of 100 listed slates are measured, all of pallet A1; nothing is known of pallets A2, B1, B2, C1, and C2 yet.'
    );
    expect(sayToFinish({ ...soFar.coverage, lost: [] }, text)).toMatch(
      /^To finish it, measure \d+ slates of pallet A1, .* and \d+ slates of pallet C2\.$/
    );
    expect(sayPlanSoFar(soFar, text)).toMatch(/ is not decided yet\.$/);
  });

  it('messages what was found and no range, no usable slates and no cost', () => {
    const message = sayMessage(soFar, JOB, text, numbers);
    expect(message).toContain('The first 12 of 100 listed slates are measured');
    expect(message).toMatch(/ of 12 slates of the sample (is|are) outside a limit of the order/);
    expect(message).toMatch(/^Of all 100, \d+ may be outside\. The plan is not decided yet\.$/m);
    expect(message).toContain('We hold the delivery unfixed until our sample is finished.');
    expect(message).not.toContain('The list is unfinished');
    expect(message).not.toMatch(RANGE);
  });

  it('names finishing, and neither tolerance nor spread, as what would change it', () => {
    expect(sayVerdict(soFar, text, numbers).changes).toEqual([
      'Finishing the list: 12 of 100 are measured. Only the whole list counts.'
    ]);
  });

  it('tells apart a pallet whose sorting has begun, which can be judged no more', () => {
    const said = sayCoverage({ ...soFar.coverage, lost: ['C2'] }, text, numbers);
    expect(said).toContain('nothing is known of pallets A2, B1, B2, and C1 yet; ');
    expect(said).toContain('nothing is known of pallet C2, where sorting began before');
  });

  it('tells measured places out of turn as such', () => {
    const { coverage } = soFarOf(viewWith((_, index) => index > 0 && index < 13));
    expect(coverage.isFirst).toBe(false);
    expect(sayCoverage(coverage, text, numbers)).toMatch(/^12 of 100 listed slates are measured,/);
  });
});

describe('a list measured on every pallet, but not to its end', () => {
  const soFar = soFarOf(viewWith((_, index) => index % 10 > 0));

  it('still says nothing of the whole', () => {
    expect(soFar.coverage).toMatchObject({ state: 'all-pallets', measured: 90, unreached: [] });
    expect(sayCoverage(soFar.coverage, text, numbers)).toBe(
      '90 of 100 listed slates are measured, some of every pallet; 10 slates still to be measured.'
    );
    const message = sayMessage(soFar, JOB, text, numbers);
    expect(message).not.toMatch(RANGE);
  });
});

describe('a plan that is decided before the end', () => {
  it('refuses, and says that the rest cannot turn it', () => {
    const soFar = soFarOf(viewWith(firstPlaces(40), { tolerancePercent: 5 }));
    expect(soFar.verdict.verdict).toBe('refuse');
    const message = sayMessage(soFar, JOB, text, numbers);
    expect(message).toContain('The plan refuses, whatever the other 60 show.');
    expect(message).toContain('We refuse the delivery and hold it unfixed.');
    expect(message).not.toMatch(RANGE);
  });
});

describe('a finished list', () => {
  it('is judged as a whole', () => {
    const view = viewWith(() => true);
    expect(listCoverage(view, offeredSlates(view))).toMatchObject({
      state: 'finished',
      measured: 100,
      open: []
    });
    expect(judgeJob(view, offeredSlates(view)).ok).toBe(true);
  });

  it('goes on speaking while another list is drawn and not begun', () => {
    const drawn = example.find(({ type }) => type === 'sampleDrawn');
    if (!drawn) throw new Error('the example draws a list');
    const last = example[example.length - 1];
    const other = {
      ...drawn,
      id: last.id.replace(/.{4}$/, 'ffff'),
      deviceSeq: last.deviceSeq + 1,
      body: {
        ...drawn.body,
        positions: walk.map(({ palletId, layer, place }) => ({ palletId, layer, place: place + 1 }))
      }
    } as StoredEvent;
    const view = foldAll([...example, other].map(readEvent));
    expect(listProgress(view, offeredSlates(view))?.measured).toBeLessThan(100);
    expect(listCoverage(view, offeredSlates(view))).toMatchObject({
      state: 'finished',
      measured: 100
    });
  });
});

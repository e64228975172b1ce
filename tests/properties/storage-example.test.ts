import { describe, expect, it } from 'vitest';
import { layOutRoof, makeSlope, slateSpec } from '$lib/engine/roof';
import { canonicalView, current, palletIds, partOf, readEvent, sorterNames } from '$lib/journal';
import { MemoryStore } from '../support/memory-store.ts';
import {
  EXAMPLE_GRADES_ID,
  exampleEvents,
  workedExample
} from '../../src/lib/example/worked-example.ts';

const JOB = '018f0000-0000-7000-8000-00000000000a';
const DEVICE = '018f0000-0000-7000-8000-00000000000b';
let drawn = 0;
const randomHex = () => (drawn++).toString(16).padStart(16, '0');
const endsAt = Date.UTC(2026, 2, 3, 16, 0);
const events = exampleEvents({ jobId: JOB, deviceId: DEVICE, endsAt, randomHex });

async function openedExample() {
  const store = new MemoryStore({ now: () => endsAt, randomHex });
  const result = await store.merge(events);
  const job = await store.open(JOB);
  if (!job) throw new Error('no job');
  return { store, result, ...job };
}

describe('the worked example', () => {
  it('is the same every time, and all of it can be read', () => {
    const { acts } = workedExample();
    expect(workedExample().acts).toEqual(acts);
    expect(acts.length).toBeGreaterThan(1500);
    expect(acts.length).toBeLessThan(1700);
    expect(new Set(events.map((event) => readEvent(event).kind))).toEqual(new Set(['known']));
    expect(JSON.stringify(events)).not.toContain(EXAMPLE_GRADES_ID);
  });

  it('opens in one merge, ends when it is told to, and rebuilds to the same view', async () => {
    const { store, result, view } = await openedExample();
    expect(result).toMatchObject({ ok: true, added: events.length, unknown: 0 });
    expect(events.at(-1)?.at).toBe(new Date(endsAt).toISOString());
    const rebuilt = await store.rebuild(JOB);
    expect(rebuilt && canonicalView(rebuilt.view)).toBe(canonicalView(view));
    const later = await store.append(JOB, [{ type: 'jobOpened', body: { name: 'mine' } }]);
    expect(later.summary.name).toBe('mine');
  });

  it('has six pallets part gauged, part tapped, part set aside, and spot checks', async () => {
    const { view } = await openedExample();
    expect(palletIds(view)).toEqual(['p1', 'p2', 'p3', 'p4', 'p5', 'p6']);
    const sum = (counts: Record<string, number>) =>
      Object.values(counts).reduce((total, count) => total + count, 0);
    let [declared, gauged, tapped, aside, sampled] = [0, 0, 0, 0, 0];
    for (const id of palletIds(view)) {
      const pallet = partOf(view, `pallet:${id}`);
      declared += current(pallet.declared)?.slates ?? 0;
      sampled += sum(pallet.sampled);
      aside += sum(pallet.setAside);
      for (const pile of Object.values(pallet.piles)) {
        gauged += sum(pile.gauged);
        tapped += sum(pile.tapped);
      }
    }
    expect({ declared, sampled }).toEqual({ declared: 4200, sampled: 100 });
    expect(gauged).toBeGreaterThan(600);
    expect(tapped).toBeGreaterThan(600);
    expect(aside).toBeGreaterThan(30);
    expect(sorterNames(view)).toEqual(['Finch']);
    expect(sum(partOf(view, 'sorter:Finch').checks)).toBeGreaterThan(25);
  });

  it('names its grades and its draw by the ids of the events that set them', async () => {
    const { view } = await openedExample();
    const job = partOf(view, 'job');
    const gradesId = job.grades[0].id;
    expect(current(job.grades)?.thresholdsMm).toHaveLength(2);
    const keys = new Set(Object.keys(partOf(view, 'pallet:p2').piles));
    expect([...keys].filter((key) => !key.startsWith('|'))).toEqual(
      expect.arrayContaining([`${gradesId}|1`, `${gradesId}|2`, `${gradesId}|3`])
    );
    const { slates } = partOf(view, 'sample');
    expect(new Set(slates.map(({ value }) => value.sample.drawId))).toEqual(
      new Set([job.draws[0].id])
    );
  });

  it('has a roof that takes a little less than the delivery gives', async () => {
    const { view } = await openedExample();
    const job = partOf(view, 'job');
    const spec = current(job.spec);
    if (!spec) throw new Error('no slate');
    const slopes = Object.values(job.slopes).map((register) => {
      const slope = current(register);
      if (!slope) throw new Error('no slope');
      const { slopeId: id, rafterLengthMm, eaveWidthMm, pitchDegrees } = slope;
      return makeSlope({ id, rafterLengthMm, eaveWidthMm, pitchDegrees: pitchDegrees ?? 0 });
    });
    const layout = layOutRoof(slopes, slateSpec(spec));
    if (!layout.ok) throw new Error(JSON.stringify(layout.problems));
    const usable = 4200 * (1 - 0.05 - 0.02);
    expect(layout.totals.slates).toBeLessThan(usable);
    expect(layout.totals.slates).toBeGreaterThan(0.85 * usable);
  });
});

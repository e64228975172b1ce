import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { partOf } from '$lib/journal';
import { MemoryStore } from '../../../../tests/support/memory-store.ts';
import { MeasureWizard } from './delivery-measure.svelte.ts';
import { JobState } from '$lib/app/job.svelte.ts';
import { Preferences } from '$lib/app/preferences.svelte.ts';

const JOB = '01998f00-0000-7000-8000-0000000000aa';
const kept = new Map<string, string>();
let job: JobState;
let wizard: MeasureWizard;

const open = (): MeasureWizard => new MeasureWizard(() => job, new Preferences());
const read = (...valuesMm: number[]): void => valuesMm.forEach((value) => wizard.choose(value));
const pointsSaved = (): number[] =>
  partOf(job.view, 'sample').slates.map(({ value }) => value.points[0]);
const settled = (): Promise<void> => vi.waitFor(() => expect(wizard.isSaving).toBe(false));

beforeEach(async () => {
  kept.clear();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key)
  });
  let clock = Date.UTC(2026, 4, 1, 8);
  let digits = 0;
  const randomHex = () => (digits++).toString(16).padStart(16, '0');
  job = new JobState(JOB, new MemoryStore({ now: () => (clock += 1000), randomHex }));
  const positions = [1, 2, 3, 4, 5].map((place) => ({ palletId: 'a', layer: 1, place }));
  await job.act([
    { type: 'jobOpened', body: { name: 'Job' } },
    {
      type: 'palletAdded',
      body: { palletId: 'a', label: 'A', slates: 40, layers: 4, perLayer: 10 }
    },
    { type: 'sampleDrawn', body: { seed: 1, plan: 'own', positions } }
  ]);
  wizard = open();
});
afterEach(() => vi.unstubAllGlobals());

describe('a slate without marks', () => {
  it('is saved by Enter, which goes on to the next place', async () => {
    read(5.9);
    expect(pointsSaved()).toEqual([]);
    wizard.input.refuseEmpty();
    await settled();
    expect(pointsSaved()).toEqual([590]);
    expect(wizard.place?.place).toBe(2);
    expect(wizard.refusal).toBeUndefined();
  });

  it('is saved by the next reading, which is not lost, however fast they come', async () => {
    read(5.9, 6.1, 6.3);
    await vi.waitFor(() => expect(pointsSaved()).toEqual([590, 610]));
    expect(wizard.gauged?.thicknessMm).toBe(6.3);
    expect(wizard.place?.place).toBe(3);
    expect(wizard.waitingMm).toBeUndefined();
  });

  it('leaves Enter a refusal while nothing is gauged', () => {
    wizard.input.refuseEmpty();
    expect(wizard.refusal).toMatchObject({ reason: 'empty' });
  });

  it('of more than one point is complete before a reading is of the next', async () => {
    await wizard.setPoints(2);
    read(5.9, 6.1, 7);
    await vi.waitFor(() => expect(pointsSaved()).toHaveLength(1));
    expect(partOf(job.view, 'sample').slates[0].value.points).toEqual([590, 610]);
    expect(wizard.prompt).toMatchObject({ kind: 'point', done: 1 });
  });
});

describe('a slate that was looked over', () => {
  it('is saved as sound by one tap', async () => {
    read(5.9);
    expect(await wizard.saveSound()).toBe(true);
    const [slate] = partOf(job.view, 'sample').slates;
    expect(slate.value.sample).toMatchObject({ ring: 'clear', defects: [] });
    expect([wizard.ring, wizard.defects]).toEqual([undefined, undefined]);
    expect(wizard.place?.place).toBe(2);
  });

  it('is not saved by that tap before it is gauged', async () => {
    expect(await wizard.saveSound()).toBe(false);
    expect(pointsSaved()).toEqual([]);
  });
});

describe('points that come in one text', () => {
  const type = (text: string): void => {
    for (const key of [...text, 'Enter'])
      page.dispatchEvent(Object.assign(new Event('keydown'), { key, code: '' }));
  };
  let page: EventTarget;
  beforeEach(() => {
    page = new EventTarget();
    return wizard.start(page, Object.assign(new EventTarget(), { value: '' }));
  });

  it('are one slate, whatever number of points is set', async () => {
    type('6.20/6.30/6.10');
    expect(wizard.gauged).toMatchObject({ pointsMm: [6.2, 6.3, 6.1], thicknessMm: 6.2 });
    expect(wizard.refusal).toBeUndefined();
    expect(wizard.input.text).toBe('');
    type('5.9/6.1');
    await vi.waitFor(() => expect(pointsSaved()).toHaveLength(1));
    expect(wizard.gauged).toMatchObject({ pointsMm: [5.9, 6.1], thicknessMm: 6 });
  });

  it('are refused whole where one of them is no reading', () => {
    type('6.20/60');
    expect(wizard.gauged).toBeUndefined();
    expect(wizard.refusal).toMatchObject({ text: '6.20/60' });
  });
});

describe('a slate with marks', () => {
  it('waits for its button, and the next reading with it', async () => {
    read(9);
    wizard.ring = 'dull';
    wizard.input.refuseEmpty();
    expect(wizard.isButtonAsked).toBe(true);
    read(5.9);
    expect(wizard.waitingMm).toBe(5.9);
    expect(pointsSaved()).toEqual([]);
    await wizard.save();
    expect(pointsSaved()).toEqual([900]);
    expect(wizard.gauged?.thicknessMm).toBe(5.9);
    expect(wizard.ring).toBeUndefined();
  });

  it('gauged again drops what was read after it', () => {
    read(9);
    wizard.toggleDefect('broken');
    read(5.9);
    wizard.gaugeAgain();
    expect(wizard.gauged).toBeUndefined();
    expect(wizard.defects).toEqual(['broken']);
    read(6);
    expect(wizard.gauged?.thicknessMm).toBe(6);
  });
});

describe('a slate that is in hand when the page is left', () => {
  it('is in hand again, with its marks, at its place', () => {
    wizard.goTo({ palletId: 'a', layer: 1, place: 3 });
    read(9);
    wizard.ring = 'dull';
    wizard.fields.lengthMm = '50x';
    wizard.keep();
    wizard = open();
    expect(wizard.place?.place).toBe(3);
    expect(wizard.gauged?.thicknessMm).toBe(9);
    expect(wizard.ring).toBe('dull');
    expect(wizard.fields.lengthMm).toBe('50x');
  });

  it('is in hand again after some of its points, and goes on with the next', async () => {
    await wizard.setPoints(3);
    wizard.goTo({ palletId: 'a', layer: 1, place: 2 });
    read(5.9, 6.1);
    wizard.keep();
    wizard = open();
    expect(wizard.place?.place).toBe(2);
    expect(wizard.prompt).toEqual({ kind: 'point', done: 2, wanted: 3 });
    read(6.3);
    expect(wizard.gauged?.pointsMm).toEqual([5.9, 6.1, 6.3]);
    await wizard.save();
    expect(partOf(job.view, 'sample').slates[0].value.points).toEqual([590, 610, 630]);
    wizard.keep();
    expect(kept.size).toBe(0);
  });

  it('drops points that are no beginning any more, or cannot be read', async () => {
    await wizard.setPoints(3);
    read(5.9, 6.1);
    wizard.keep();
    await wizard.setPoints(2);
    wizard = open();
    expect(wizard.prompt).toBeUndefined();
    const [key] = kept.keys();
    kept.set(key, (kept.get(key) ?? '').replace('5.9', '"5.9"'));
    expect(open().prompt).toBeUndefined();
  });

  it('is kept no more once it is saved, nor where its place was measured elsewhere', async () => {
    read(9);
    wizard.keep();
    expect(kept.size).toBe(1);
    await wizard.save();
    expect(open().gauged).toBeUndefined();
    wizard.keep();
    expect(kept.size).toBe(0);
  });

  it('is nothing where what was kept cannot be read', () => {
    kept.set(`evencourse.slate-in-hand.${JOB}`, '{"place":3}');
    expect(open().gauged).toBeUndefined();
    kept.set(`evencourse.slate-in-hand.${JOB}`, '{"place":"a|1|1","fields":{},"gauged":{}}');
    expect(open().gauged).toBeUndefined();
  });
});

describe('a slate that gets the full check', () => {
  const sizes = { lengthMm: '500', widthMm: '250', outOfSquareMm: '2', edgeBowMm: '1' };
  const saved = () => partOf(job.view, 'sample').slates;

  beforeEach(async () => {
    const positions = [1, 2, 3].map((place) => ({ palletId: 'a', layer: 1, place, full: true }));
    await job.act({ type: 'sampleDrawn', body: { seed: 2, plan: 'own', positions } });
    wizard = open();
  });

  it('is not saved without its sizes, by button or by the next reading, before that is said', async () => {
    read(5.9);
    expect(await wizard.saveSound()).toBe(false);
    expect(wizard.areSizesAsked).toBe(true);
    read(6.1);
    Object.assign(wizard.fields, sizes);
    expect(await wizard.save()).toBe(false);
    expect(saved()).toEqual([]);
    await wizard.saveSizesLater();
    expect(saved()[0].value).toMatchObject({ points: [590], sample: { lengthMm: 500 } });
    expect(wizard.gauged?.thicknessMm).toBe(6.1); // what waited is in hand
    await wizard.save(); // said once for this walk
    expect(saved()).toHaveLength(2);
    expect(wizard.withoutSizes.map(({ place }) => place)).toEqual([1, 2]);
  });

  it('is in hand again from the list, as it was saved, and gets its sizes', async () => {
    wizard.startSides();
    wizard.sides.rocks = true;
    read(5.9, 6.1);
    wizard.ring = 'dull';
    wizard.fields.lengthMm = '499.5';
    await wizard.saveSizesLater();
    wizard.addSizes(wizard.withoutSizes[0]);
    expect(wizard.place?.place).toBe(1);
    expect(wizard.fields.lengthMm).toBe('499.5');
    Object.assign(wizard.fields, sizes);
    wizard.keep();
    wizard = open(); // the page was left and opened again
    wizard.fields.flatnessMm = '3';
    expect(await wizard.save()).toBe(true);
    expect(saved()).toHaveLength(1);
    expect(saved()[0].value).toMatchObject({
      points: [590, 610],
      rocks: true,
      sample: { lengthMm: 500, widthMm: 250, flatnessMm: 3, ring: 'dull' }
    });
    expect(wizard.withoutSizes).toEqual([]);
    expect(wizard.progress?.measured).toBe(1);
    expect(wizard.place?.place).toBe(2);
  });

  it('is saved as before where all its sizes are typed', async () => {
    read(5.9);
    Object.assign(wizard.fields, sizes, { flatnessMm: '3' });
    expect(await wizard.saveSound()).toBe(true);
    expect(wizard.withoutSizes).toEqual([]);
  });
});

describe('the fifth slate of the list', () => {
  const fifth = () => wizard.goTo({ palletId: 'a', layer: 1, place: 5 });

  it('is asked for left and right, and for rocking, and no other is', async () => {
    expect(wizard.asksSides).toBe(false);
    fifth();
    expect(wizard.asksSides).toBe(true);
    wizard.startSides();
    expect(wizard.prompt).toEqual({ kind: 'side', side: 'left' });
    wizard.sides.rocks = true;
    read(6);
    expect(wizard.prompt).toEqual({ kind: 'side', side: 'right' });
    wizard.keep();
    wizard = open(); // the page was left and opened again
    expect(wizard.prompt).toEqual({ kind: 'side', side: 'right' });
    read(6.4);
    expect(wizard.gauged).toMatchObject({ thicknessMm: 6.2, taperMm: 0.4 });
    wizard.keep();
    expect(open().sides.rocks).toBe(true);
    await wizard.save();
    const [slate] = partOf(job.view, 'sample').slates;
    expect(slate.value).toMatchObject({ points: [600, 640], rocks: true });
    expect(wizard.sides.isOn).toBe(false);
  });

  it('says nothing of rocking where nobody answered', async () => {
    fifth();
    wizard.startSides();
    read(6);
    wizard.keep();
    wizard = open();
    expect(wizard.prompt).toEqual({ kind: 'side', side: 'right' });
    read(6.4);
    await wizard.save();
    const [slate] = partOf(job.view, 'sample').slates;
    expect(slate.value.points).toEqual([600, 640]);
    expect(slate.value.rocks).toBeUndefined();
  });

  it('may be measured on one side only, whatever was read', async () => {
    fifth();
    wizard.startSides();
    read(6);
    wizard.skipSides();
    expect(wizard.gauged).toMatchObject({ thicknessMm: 6, pointsMm: [6] });
    await wizard.save();
    const [slate] = partOf(job.view, 'sample').slates;
    expect(slate.value.points).toEqual([600]);
    expect(slate.value.rocks).toBeUndefined();
  });

  it('is measured as any other where nobody taps', async () => {
    fifth();
    read(6);
    await wizard.save();
    expect(partOf(job.view, 'sample').slates[0].value.points).toEqual([600]);
  });
});

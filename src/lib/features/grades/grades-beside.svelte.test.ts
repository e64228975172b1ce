import { beforeEach, describe, expect, it } from 'vitest';
import { MemoryStore } from '../../../../tests/support/memory-store.ts';
import { JobState } from '$lib/app/job.svelte.ts';
import { gradesBody, stockOf } from '$lib/job';
import { BesidePiles } from './grades-beside.svelte.ts';

const JOB = '01998f00-0000-7000-8000-0000000000ab';
const PALLET = 'pallet-A';

let job: JobState;
let beside: BesidePiles;

/** Four slates on pile 1, which new grades then leave beside them as they open 4 and 5. */
beforeEach(async () => {
  let clock = Date.UTC(2026, 4, 1, 8);
  let digits = 0;
  const randomHex = () => (digits++).toString(16).padStart(16, '0');
  job = new JobState(JOB, new MemoryStore({ now: () => (clock += 1000), randomHex }));
  await job.act([
    { type: 'jobOpened', body: { name: 'Job' } },
    { type: 'palletAdded', body: { palletId: PALLET, label: 'A', slates: 0 } }
  ]);
  await job.act({ type: 'gradesSet', body: gradesBody(job.view, { method: 'byHand' }, [7, 6]) });
  const gradesId = job.grades?.gradesId ?? null;
  for (const hundredths of [705, 715, 740, 760])
    await job.act({
      type: 'slateGauged',
      body: { palletId: PALLET, points: [hundredths], gradesId, pile: 1 }
    });
  await job.act({ type: 'gradesSet', body: gradesBody(job.view, { method: 'byHand' }, [7.3, 6]) });
  beside = new BesidePiles(() => job);
});

const piles = () =>
  Object.fromEntries(
    stockOf(job.view).piles.map(({ number, onPile, bins }) => [
      number,
      { onPile, bins: [...bins.hundredths] }
    ])
  );

describe('J63 a pile beside the grades', () => {
  it('is put on another with all that lies on it, and an undo brings it back', async () => {
    expect(job.pileNumbers).toEqual([4, 5, 3]);
    await beside.merge(1, 4, 4);
    expect(piles()[4]).toEqual({ onPile: 4, bins: [705, 715, 740, 760] });
    expect(piles()[1]).toBeUndefined();
    await beside.undo();
    expect(beside.canUndo).toBe(false);
    expect(piles()[1].onPile).toBe(4);
    expect(piles()[4].onPile).toBe(0);
  });

  it('is sorted again: each pile gets what of it is of its grade', async () => {
    expect(await beside.sortAgain(1, 4, { 4: '2', 5: ' 2 ', 3: '' })).toBeUndefined();
    expect(piles()[4]).toEqual({ onPile: 2, bins: [740, 760] });
    expect(piles()[5]).toEqual({ onPile: 2, bins: [705, 715] });
    expect(piles()[1]).toBeUndefined();
    await beside.undo();
    expect(piles()[1]).toEqual({ onPile: 4, bins: [705, 715, 740, 760] });
  });

  it('is not sorted again by numbers that cannot be, and nothing is stored', async () => {
    const before = job.newest.length;
    expect(await beside.sortAgain(1, 4, {})).toBe('nothing');
    expect(await beside.sortAgain(1, 4, { 4: '0', 5: '' })).toBe('nothing');
    expect(await beside.sortAgain(1, 4, { 4: 'two' })).toBe('not-whole');
    expect(await beside.sortAgain(1, 4, { 4: '-1' })).toBe('not-whole');
    expect(await beside.sortAgain(1, 4, { 4: '3', 5: '2' })).toBe('too-many');
    expect(job.newest).toHaveLength(before);
  });

  it('is used up by a loss of what lay there', async () => {
    await beside.useUp(1, 4);
    expect(job.newest[0]).toMatchObject({
      type: 'slatesLost',
      body: { pile: 1, slates: 4, reason: 'ranOut' }
    });
    await beside.undo();
    expect(job.newest[0].type).toBe('entryVoided');
  });
});

import { describe, expect, it } from 'vitest';
import { type Catalogue, NumberWords } from '$lib/text';
import { common } from '$lib/text/en/common.ts';
import { delivery } from '$lib/text/en/delivery.ts';
import { sort } from '$lib/text/en/sort.ts';
import { MemoryStore } from '../../../../tests/support/memory-store.ts';
import { JobState } from '$lib/app/job.svelte.ts';
import { sayUndone, undoneEntries } from './delivery-undone.ts';

const text = { common, delivery, sort } as Catalogue;
const numbers = new NumberWords('en-GB');
const JOB = '01998f00-0000-7000-8000-0000000000aa';

function newJob(): { store: MemoryStore; job: JobState } {
  let clock = Date.UTC(2026, 4, 1, 8);
  let digits = 0;
  const randomHex = () => (digits++).toString(16).padStart(16, '0');
  const store = new MemoryStore({ now: () => (clock += 1000), randomHex });
  return { store, job: new JobState(JOB, store) };
}

describe('entries taken back', () => {
  it('lists those about the delivery, counts the others, and leaves out what was brought back', async () => {
    const { store, job } = newJob();
    const slate = (points: number[], place?: number) => ({
      type: 'slateGauged' as const,
      body: {
        palletId: 'a',
        points,
        gradesId: null,
        pile: null,
        ...(place && { sample: { drawId: 'd', layer: 2, place } })
      }
    });
    const made = await job.act([
      { type: 'jobOpened', body: { name: 'Job' } },
      { type: 'palletAdded', body: { palletId: 'a', label: 'A1', slates: 40 } },
      slate([612], 7),
      slate([640], 8),
      slate([655]),
      { type: 'stackMeasured', body: { palletId: null, slates: 100, totalMm: 640 } }
    ]);
    expect(await undoneEntries(store, JOB, job.view)).toEqual({ ofDelivery: [], others: 0 });
    const [, , listed, kept, sorted, stack] = made ?? [];
    for (const { id } of [listed, kept, sorted, stack]) await job.undo(id);
    const undo = job.newest.find(({ body }) => (body as { voids?: string }).voids === kept.id);
    await job.undo(undo?.id ?? '');

    const { ofDelivery, others } = await undoneEntries(store, JOB, job.view);
    expect(ofDelivery.map(({ id }) => id)).toEqual([listed.id, stack.id]);
    expect(others).toBe(1);
    const said = ofDelivery.map((event) => sayUndone(event, job.view, text, numbers));
    expect(said[0]).toMatch(
      /^1 May 2026, .*: 6\.12\smm, measured\. Pallet A1, layer 2, slate 7\.$/
    );
    expect(said[1]).toMatch(/: stack measured\.$/);
  });
});

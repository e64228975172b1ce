import { describe, expect, it } from 'vitest';
import type { BodyOf } from '$lib/journal';
import { MemoryStore } from '../../../../tests/support/memory-store.ts';
import { JobState } from '$lib/app/job.svelte.ts';
import { DeliveryExtras } from './delivery-extras.svelte.ts';

const JOB = '01998f00-0000-7000-8000-0000000000aa';

async function extrasWith(
  slates: string,
  total: string,
  order?: BodyOf<'deliveryDeclared'>
): Promise<DeliveryExtras> {
  let clock = Date.UTC(2026, 4, 1, 8);
  let digits = 0;
  const randomHex = () => (digits++).toString(16).padStart(16, '0');
  const job = new JobState(JOB, new MemoryStore({ now: () => (clock += 1000), randomHex }));
  await job.act({ type: 'jobOpened', body: { name: 'Job' } });
  if (order) await job.act({ type: 'deliveryDeclared', body: order });
  const extras = new DeliveryExtras(() => job);
  extras.stackSlates = slates;
  extras.stackTotal = total;
  await extras.addStack();
  return extras;
}
const kept = ({ stacks }: DeliveryExtras): (number | undefined)[][] =>
  stacks.map(({ value }) => [value.slates, value.totalMm]);

describe('a stack measured', () => {
  it('whose height is odd is kept only once somebody says so, or as it was likely meant', async () => {
    const order = { supplier: '', stackOf100Mm: 660 };
    const asked = await extrasWith('100', '66', order);
    expect(asked.doubt?.likelyMm).toBe(660);
    expect(kept(asked)).toEqual([]);
    await asked.addLikely();
    expect(kept(asked)).toEqual([[100, 660]]);
    expect(asked.doubt).toBeUndefined();

    const sure = await extrasWith('100', '66', order);
    sure.stackTotal = '67';
    expect(sure.doubt).toBeUndefined(); // of another number nothing was asked
    await sure.addStack();
    expect(kept(sure)).toEqual([]);
    await sure.addStack(true);
    expect(kept(sure)).toEqual([[100, 67]]);
  });

  it.each(['1,000', '1 000', '1000'])('takes %s as a thousand slates', async (typed) => {
    const extras = await extrasWith(typed, '6400');
    expect(extras.wrong).toEqual([]);
    expect(kept(extras)).toEqual([[1000, 6400]]);
  });

  it('takes a thickness with a decimal comma', async () => {
    expect(kept(await extrasWith('100', '640,5'))).toEqual([[100, 640.5]]);
  });

  it.each([
    ['0', '640', ['slates']],
    ['1,001', '640', ['slates']],
    ['12.5', '640', ['slates']],
    // A thousand or one: nobody knows.
    ['100', '1,000', ['total']],
    ['100', '', ['total']],
    ['many', '0', ['slates', 'total']]
  ])(
    'keeps nothing of %s slates and %s mm, and says which is wrong',
    async (slates, total, wrong) => {
      const extras = await extrasWith(slates, total);
      expect(extras.wrong).toEqual(wrong);
      expect(kept(extras)).toEqual([]);
      expect([extras.stackSlates, extras.stackTotal]).toEqual([slates, total]);
    }
  );
});

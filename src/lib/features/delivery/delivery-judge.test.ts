import { describe, expect, it } from 'vitest';
import { type StoredEvent, foldAll, readEvent } from '$lib/journal';
import { drawInForce, offeredSlates } from '$lib/job/delivery-sample.ts';
import { judgeJob, planOfList } from './delivery-judge.ts';
import { fixedExample } from '../../../../tests/support/fixed-example.ts';

/** The example, its list of 100 places drawn with this acceptance number. */
function drawnWith(acceptAtMost: number) {
  const events = fixedExample().map((event) =>
    event.type === 'sampleDrawn'
      ? ({ ...event, body: { ...event.body, planSize: 100, acceptAtMost } } as StoredEvent)
      : event
  );
  const view = foldAll(events.map(readEvent));
  const draw = drawInForce(view);
  if (!draw) throw new Error('the example draws a list');
  const offered = offeredSlates(view);
  return { judgement: judgeJob(view, offered), plan: planOfList(view, draw, offered) };
}

describe('a list whose plan would accept anything', () => {
  it.each([100, 101, 5000])(
    'judges nothing with %i of 100 allowed outside, and says so',
    (most) => {
      const { judgement, plan } = drawnWith(most);
      expect(judgement).toEqual({ ok: false, reason: 'plan-accepts-all' });
      expect(plan).toBeUndefined();
    }
  );

  it('judges with the largest number that can still refuse', () => {
    const { judgement, plan } = drawnWith(99);
    expect(judgement.ok).toBe(true);
    expect(plan).toMatchObject({ sampleSize: 100, acceptAtMost: 99 });
  });
});

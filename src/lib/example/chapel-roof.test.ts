import { describe, expect, it } from 'vitest';
import { planCourses } from '$lib/engine/courses';
import { foldAll, EMPTY_VIEW, readEvent } from '$lib/journal';
import { planRequestOf, sizesOf, stockOf } from '$lib/job';
import { sizesLaidOut, viewOfSize } from '$lib/job/sizes';
import { chapelRoof } from './chapel-roof.ts';
import { exampleEvents } from './worked-example.ts';

const events = exampleEvents(
  {
    jobId: '018f0000-0000-7000-8000-00000000000a',
    deviceId: '018f0000-0000-7000-8000-00000000000b',
    endsAt: Date.UTC(2026, 2, 3, 16, 0),
    randomHex: () => '0123456789abcdef'
  },
  chapelRoof().acts
);
const view = foldAll(events.map(readEvent), EMPTY_VIEW);

describe('the chapel roof, the second worked example', () => {
  it('is the same every time, and all of it can be read', () => {
    expect(chapelRoof().acts).toEqual(chapelRoof().acts);
    expect(new Set(events.map((event) => readEvent(event).kind))).toEqual(new Set(['known']));
  });

  it('has three lengths in random widths, half of the pallets reclaimed', () => {
    expect(sizesOf(view).map(({ lengthMm, widthMm }) => [lengthMm, widthMm])).toEqual([
      [500, undefined],
      [400, undefined],
      [320, undefined]
    ]);
    const old = events.filter(
      ({ type, body }) => type === 'palletAdded' && String(body.label).endsWith('old')
    );
    expect(old).toHaveLength(3);
  });

  it('every length has courses, within its stock, and a plan', () => {
    const laid = sizesLaidOut(view);
    if (!laid.ok) throw new Error(laid.reason);
    expect(laid.lackingM2).toBe(0);
    for (const { set, courses, used, stock } of laid.sets) {
      expect(courses).toBeGreaterThan(1);
      expect(used).toBeLessThanOrEqual(stock);
      const ready = planRequestOf(viewOfSize(view, set.id));
      expect(ready.ok && planCourses(ready.request).status).toBe('optimal');
    }
  });

  it('many of the reclaimed slates are foretold to be set aside', () => {
    for (const { sizeId } of sizesOf(view)) {
      const { delivered, usable } = stockOf(viewOfSize(view, sizeId));
      expect(usable / delivered).toBeLessThan(0.93);
      expect(usable / delivered).toBeGreaterThan(0.7);
    }
  });
});

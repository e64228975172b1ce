import { describe, expect, it } from 'vitest';
import type { PlannedCourse } from '$lib/engine/courses';
import { createBySlope, createChanges } from './by-slope.ts';

const planned = (slopeId: string, course: number): PlannedCourse => ({
  ...{ slopeId, course, heightMm: course, parts: [], commonSlateAndAHalves: 0 },
  ...{ joints: 0, kickers: 0, per100Joints: 0 }
});

describe('the courses of a slope by number', () => {
  it('are the same map while that slope has the same courses, whatever another has', () => {
    const bySlope = createBySlope();
    const south = [planned('south', 1), planned('south', 2)];
    const first = bySlope([...south, planned('north', 1)])('south');
    expect([...first.keys()]).toEqual([1, 2]);
    expect(bySlope([planned('north', 1), ...south])('south')).toBe(first);
    const moved = planned('south', 2);
    const second = bySlope([south[0], moved])('south');
    expect(second).not.toBe(first);
    expect(second.get(2)).toBe(moved);
    expect(bySlope([south[0]])('south').size).toBe(1);
    expect(bySlope([south[0]])('north').size).toBe(0);
  });
});

describe('the changes of a slope', () => {
  it('are the same list while none has moved', () => {
    const changes = createChanges();
    const change = {
      ...{ slopeId: 'south', lower: 1, upper: 2 },
      ...{ upTo: 4, least: 1, most: 6, heightMm: 1000 }
    };
    const first = changes([change], 'south');
    expect(changes([{ ...change }], 'south')).toBe(first);
    expect(changes([{ ...change }], 'north')).not.toBe(first);
    expect(changes([{ ...change, upTo: 5 }], 'south')).toEqual([{ ...change, upTo: 5 }]);
  });
});

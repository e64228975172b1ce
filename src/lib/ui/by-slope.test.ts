import { describe, expect, it } from 'vitest';
import type { PlannedCourse } from '$lib/engine/courses';
import { createByCourse } from './by-slope.ts';

const planned = (slopeId: string, course: number): PlannedCourse => ({
  ...{ slopeId, course, heightMm: course, parts: [], commonSlateAndAHalves: 0 },
  ...{ joints: 0, kickers: 0, per100Joints: 0 }
});

describe('the courses of a slope by number', () => {
  it('are the same map while that slope has the same courses, whatever another has', () => {
    const byCourse = createByCourse();
    const south = [planned('south', 1), planned('south', 2)];
    const first = byCourse([...south, planned('north', 1)], 'south');
    expect([...first.keys()]).toEqual([1, 2]);
    expect(byCourse([planned('north', 1), ...south], 'south')).toBe(first);
    const moved = planned('south', 2);
    const second = byCourse([south[0], moved], 'south');
    expect(second).not.toBe(first);
    expect(second.get(2)).toBe(moved);
    expect(byCourse([south[0]], 'south').size).toBe(1);
  });
});

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawList, planCourses, type PalletStock } from '$lib/engine/courses';
import { largestRemainder } from '$lib/engine/grading';
import { planRequests } from './courses-cases.ts';

const requests = planRequests({
  slopes: 3,
  coursesPerSlope: 6,
  runsPerCourse: 2,
  slatesPerRun: 9,
  piles: 4
});

describe('draw lists of random plans', () => {
  it('sum exactly, never overdraw a pallet and blend three pallets wherever three have stock', () => {
    let blended = 0;
    const asked = fc.tuple(
      requests,
      fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 6 })
    );
    fc.assert(
      fc.property(asked, ([request, sizes]) => {
        const plan = planCourses(request);
        if (plan.status === 'short') return;
        const share = (count: number) => largestRemainder([1, ...sizes], count);
        const slates = request.piles.map((pile) => share(pile.slates));
        const wide = request.piles.map((pile) => share(pile.slateAndAHalves));
        const common = share(request.common?.slateAndAHalves ?? 0);
        const pallets: PalletStock[] = [1, ...sizes].map((_size, index) => ({
          palletId: `P${index}`,
          slates: slates.map((pile) => pile[index]),
          slateAndAHalves: wide.map((pile) => pile[index]),
          commonSlateAndAHalves: common[index]
        }));
        const list = drawList(plan, pallets);
        if (!list.ok) throw new Error('pallets hold the whole stock');
        for (const [index, course] of plan.courses.entries()) {
          const { draws } = list.courses[index];
          for (const part of course.parts) {
            const own = draws.filter((draw) => draw.pile === part.pile);
            expect(own.reduce((sum, draw) => sum + draw.slates, 0)).toBe(part.slates);
            expect(own.reduce((sum, draw) => sum + draw.slateAndAHalves, 0)).toBe(
              part.slateAndAHalves
            );
            const withStock = slates[part.pile - 1].filter((left) => left > 0).length;
            const touched = own.filter((draw) => draw.slates > 0).length;
            expect(touched).toBeGreaterThanOrEqual(Math.min(3, part.slates, withStock));
            if (touched >= 3) blended++;
            for (const draw of own) {
              const pallet = Number(draw.palletId.slice(1));
              slates[part.pile - 1][pallet] -= draw.slates;
              wide[part.pile - 1][pallet] -= draw.slateAndAHalves;
              expect(slates[part.pile - 1][pallet]).toBeGreaterThanOrEqual(0);
              expect(wide[part.pile - 1][pallet]).toBeGreaterThanOrEqual(0);
            }
          }
          for (const draw of draws.filter(({ pile }) => pile === undefined)) {
            common[Number(draw.palletId.slice(1))] -= draw.slateAndAHalves;
            expect(Math.min(...common)).toBeGreaterThanOrEqual(0);
          }
        }
      }),
      { seed: 3, numRuns: 500 }
    );
    expect(blended).toBeGreaterThan(300);
  });
});

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkPlan,
  layingProgress,
  planCourses,
  waysOut,
  type LayingEvent,
  type PileCount,
  type PlanRequest
} from '$lib/engine/courses';
import { rounds } from '../support/rounds.ts';
import { planRequests } from './courses-cases.ts';

const requests = planRequests({
  slopes: 2,
  coursesPerSlope: 4,
  runsPerCourse: 2,
  slatesPerRun: 8,
  piles: 4
});

/** Laid courses stand in the way of the rest only now and then. */
const oftenLaid = fc.oneof(
  requests,
  requests.filter(({ laid = [] }) => laid.length > 0)
);

describe('a short stock', () => {
  it('is mended by each way out: sound, optimal, and by no less', () => {
    const seen = {
      'narrow-reserve': 0,
      'order-slates': 0,
      'lay-part': 0,
      'let-slopes-differ': 0,
      'let-thickness-rise': 0
    };
    fc.assert(
      fc.property(oftenLaid, (request) => {
        const short = planCourses(request);
        if (short.status === 'optimal') return;
        for (const way of waysOut(request, short)) {
          if (way.way === 'move-threshold' || way.way === 'other-piles')
            throw new Error('nothing is known of thickness');
          seen[way.way]++;
          const mended = mendedRequest(request, way);
          expect(checkPlan(mended, way.plan)).toEqual([]);
          expect(planCourses(mended)).toEqual(way.plan);
          if (way.way !== 'order-slates' || way.order.length !== 1 || way.order[0].slates === 0)
            continue;
          const fewer = { ...way.order[0], slates: way.order[0].slates - 1 };
          const almost = mendedRequest(request, { ...way, order: [fewer] });
          expect(planCourses(almost).status).toBe('short');
        }
      }),
      { seed: 5, numRuns: rounds(900, 2400) }
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(rounds(2, 5));
  });
});

describe('a roof laid in part', () => {
  it('keeps the rest of its plan when all went as planned', () => {
    let checked = 0;
    const asked = fc.tuple(requests, fc.integer({ min: 0, max: 6 }));
    fc.assert(
      fc.property(asked, ([request, courses]) => {
        const plan = planCourses(request);
        if (plan.status === 'short') return;
        const events = plan.courses
          .slice(0, courses)
          .map(({ slopeId, course }): LayingEvent => ({ type: 'course-laid', slopeId, course }));
        const { remaining } = layingProgress(request, plan, events);
        const rest = planCourses(remaining);
        if (rest.status === 'short') throw new Error('the rest of the plan still fits');
        expect(checkPlan(remaining, rest)).toEqual([]);
        const kickersLeft = plan.courses
          .slice(events.length)
          .reduce((sum, course) => sum + course.kickers, 0);
        if (request.laidBinds === 'own-slope')
          expect(rest.objective / 1e9).toBeLessThanOrEqual(kickersLeft + 1e-6);
        else expect(rest.kickers).toBeCloseTo(kickersLeft, 6);
        checked++;
      }),
      { seed: 6, numRuns: rounds(300, 600) }
    );
    expect(checked).toBeGreaterThan(rounds(100, 200));
  });
});

function mendedRequest(request: PlanRequest, way: ReturnType<typeof waysOut>[number]): PlanRequest {
  const { common } = request;
  const countOf = (counts: readonly PileCount[], index: number) =>
    counts.find(({ pile }) => pile === index + 1) ?? { slates: 0, slateAndAHalves: 0 };
  switch (way.way) {
    case 'narrow-reserve':
      return {
        ...request,
        piles: request.piles.map((pile, index) => ({
          ...pile,
          reservedSlates: pile.reservedSlates - countOf(way.release, index).slates,
          reservedSlateAndAHalves:
            pile.reservedSlateAndAHalves - countOf(way.release, index).slateAndAHalves
        })),
        ...(common && {
          common: {
            ...common,
            reservedSlateAndAHalves:
              common.reservedSlateAndAHalves - way.releaseCommonSlateAndAHalves
          }
        })
      };
    case 'order-slates':
      return {
        ...request,
        piles: request.piles.map((pile, index) => ({
          ...pile,
          slates: pile.slates + countOf(way.order, index).slates,
          slateAndAHalves: pile.slateAndAHalves + countOf(way.order, index).slateAndAHalves
        })),
        ...(common && {
          common: {
            ...common,
            slateAndAHalves: common.slateAndAHalves + way.orderCommonSlateAndAHalves
          }
        })
      };
    case 'lay-part': {
      const kept = new Set(way.plan.courses.map(({ slopeId, course }) => `${slopeId} ${course}`));
      return {
        ...request,
        courses: request.courses.filter(({ slopeId, course }) => kept.has(`${slopeId} ${course}`))
      };
    }
    default:
      return way.way === 'let-slopes-differ'
        ? { ...request, laidBinds: 'own-slope' }
        : { ...request, laid: [] };
  }
}

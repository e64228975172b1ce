import type { Plan, PlanRequest } from './plan-types.ts';
import { planCourses } from './planner.ts';

/** The plan for a request, or nothing if it is short. Same cost and errors as the planner. */
export function planIfAny(request: PlanRequest): Plan | undefined {
  const result = planCourses(request);
  return result.status === 'optimal' ? result : undefined;
}

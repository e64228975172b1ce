import { type JobView, current, partOf } from '$lib/journal';
import { gradesOf, slopesOf, specOf, tallyPallets } from './queries.ts';
import { wantedOfEach, wantedOfPallet } from './sample-step.ts';
import { slatesSorted } from './slates-sorted.ts';
import { stockOf } from './stock.ts';

export type NextStep = 'pallets' | 'sample' | 'grades' | 'roof' | 'plan' | 'sort' | 'lay' | 'done';

/** Share of the stock sorted at which loading out can begin. Ours. */
const NEARLY_SORTED = 0.95;

/**
 * What the job needs next, in the order of the work.
 *
 * @param roofCourses how many courses the roof has as it is drawn now, where that is known; else
 *   those of the plan count
 */
export function nextStep(view: JobView, roofCourses?: number): NextStep {
  const pallets = tallyPallets(view);
  if (pallets.length === 0) return 'pallets';
  if (!gradesOf(view)) return toMeasure(view).length > 0 ? 'sample' : 'grades';
  if (slopesOf(view).length === 0 || !specOf(view)) return 'roof';
  const plan = current(partOf(view, 'plans').plans);
  if (!plan) return 'plan';
  const laid = Object.keys(partOf(view, 'laying').laid).length;
  if (laid >= (roofCourses ?? plan.courses.length)) return 'done';
  if (laid > 0) return 'lay';
  const stock = stockOf(view);
  return slatesSorted(view) < NEARLY_SORTED * stock.delivered ? 'sort' : 'lay';
}

/** How many slates of a pallet are still to be measured before grades. */
export interface ToMeasure {
  readonly label: string;
  readonly slates: number;
}

/**
 * What is still to be measured before grades are worth setting, by pallet; nothing once there is
 * enough of each. Slates measured count whether they are of a sample or were measured on Sort, and no more
 * of a pallet are asked for than lie on it.
 */
export function toMeasure(view: JobView): ToMeasure[] {
  const pallets = tallyPallets(view);
  const all = pallets.reduce((sum, { gauged }) => sum + gauged, 0);
  const ofEach = wantedOfEach(pallets.length, all);
  return pallets
    .map(({ label, slates, sorted, gauged }) => ({
      label,
      slates: wantedOfPallet(ofEach, slates, sorted) - gauged
    }))
    .filter(({ slates }) => slates > 0);
}

import {
  type JobView,
  current,
  gradesOf,
  partOf,
  roofLayoutOf,
  slopesOf,
  specOf,
  stockOf,
  tallyPallets
} from '$lib/journal';

export type NextStep = 'pallets' | 'sample' | 'grades' | 'roof' | 'plan' | 'sort' | 'lay' | 'done';

/** Readings from which grades are worth setting. Ours: about what shows a spread's shape. */
const ENOUGH_FOR_GRADES = 60;

/** Share of the stock sorted at which loading out can begin. Ours. */
const NEARLY_SORTED = 0.95;

/** What the job needs next, in the order of the work. */
export function nextStep(view: JobView): NextStep {
  const pallets = tallyPallets(view);
  if (pallets.length === 0) return 'pallets';
  const gauged = pallets.reduce((sum, pallet) => sum + pallet.gauged, 0);
  const grades = gradesOf(view);
  if (!grades && gauged < ENOUGH_FOR_GRADES) return 'sample';
  if (!grades) return 'grades';
  if (slopesOf(view).length === 0 || !specOf(view)) return 'roof';
  const plan = current(partOf(view, 'plans').plans);
  if (!plan) return 'plan';
  const laid = Object.keys(partOf(view, 'laying').laid).length;
  const roof = roofLayoutOf(view);
  if (laid >= (roof.ok ? roof.demand.length : plan.courses.length)) return 'done';
  if (laid > 0) return 'lay';
  const stock = stockOf(view);
  const sorted = pallets.reduce((sum, pallet) => sum + pallet.sorted, 0);
  return sorted < NEARLY_SORTED * stock.delivered ? 'sort' : 'lay';
}

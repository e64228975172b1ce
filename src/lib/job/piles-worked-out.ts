import type { KickChances } from '$lib/engine/courses';
import type { JobView } from '$lib/journal';
import { rememberKicks } from './plan-request.ts';
import { type RoofOfJob, rememberRoof } from './roof-of.ts';
import type { PilesAsSorted } from './sorted/piles-as-sorted.ts';
import { type Stock, rememberStock } from './stock.ts';

/** What of a plan's ground takes long to work out: plain data, so that a worker can do it. */
export interface PilesWorkedOut {
  readonly stock: Stock;
  readonly roof: RoofOfJob;
  readonly sorted: PilesAsSorted;
  readonly kicks: KickChances;
}

/** Takes over what a worker made of a view, so that the page asks for all of it at no cost. */
export function takeWorkedOut(view: JobView, { stock, roof, sorted, kicks }: PilesWorkedOut): void {
  rememberStock(view, stock);
  rememberRoof(view, roof);
  rememberKicks(view, sorted.bins, kicks);
}

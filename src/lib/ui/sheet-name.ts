import type { NumberWords } from '$lib/text';
import { type ShownUnit, lengthWriter } from './length-words.ts';

/** What the head of a sheet says of its job. */
interface NamedJob {
  readonly name: string;
  readonly sizes: readonly { readonly sizeId: string; readonly lengthMm: number }[];
  /** The size in hand. */
  readonly sizeId?: string;
  readonly settings: { readonly lengthUnit: ShownUnit };
}

/** A job's name on a printed sheet; of several lengths, with the one that the sheet is about. */
export function sheetName(job: NamedJob, numbers: NumberWords): string {
  const { name, sizes, sizeId } = job;
  const size = sizes.length > 1 ? sizes.find((one) => one.sizeId === sizeId) : undefined;
  return size ? `${name}, ${lengthWriter(job.settings.lengthUnit, numbers)(size.lengthMm)}` : name;
}

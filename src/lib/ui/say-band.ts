import type { ThicknessInterval } from '$lib/engine/thickness';
import type { NumberWords } from '$lib/text';

/** The words for a band of thickness. */
interface BandWords {
  readonly over: (mm: string) => string;
  readonly under: (mm: string) => string;
  readonly between: (low: string, high: string) => string;
}

/** A band of thickness in words: in tenths where its bounds stand at tenths, as a gauge is set. */
export function sayBand(
  { fromMm, toMm }: ThicknessInterval,
  text: BandWords,
  numbers: NumberWords
): string {
  const edge = (mm: number): string => numbers.decimal(mm, Math.round(mm * 100) % 10 === 0 ? 1 : 2);
  if (toMm === Infinity) return text.over(edge(fromMm));
  return fromMm === 0 ? text.under(edge(toMm)) : text.between(edge(fromMm), edge(toMm));
}

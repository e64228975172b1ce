import type { Catalogue, NumberWords } from '$lib/text';
import type { InputRefusal } from '$lib/app';

/** A refusal of the app's own: a reading that no pallet could take. */
export interface NoPallet {
  readonly ok: false;
  readonly reason: 'no-pallet';
  readonly text: string;
}

/** One sentence: what was wrong with a text, and what to do. */
export function sayRefusal(
  refusal: InputRefusal | NoPallet,
  { refused }: Catalogue['sort'],
  numbers: NumberWords
): string {
  const { text } = refusal;
  const mm = (value: number) => numbers.mm(value, 2);
  switch (refusal.reason) {
    case 'no-pallet':
      return refused.noPallet(text);
    case 'empty':
      return refused.empty;
    case 'not-a-number':
      return refused.notANumber(text);
    case 'several-numbers':
      return refused.severalNumbers(text);
    case 'several-decimals':
      return refused.severalDecimals(text);
    case 'unfinished':
      return refused.unfinished(text);
    case 'too-many-digits':
      return refused.tooManyDigits(text);
    case 'unknown-unit':
      return refused.unknownUnit(refusal.unitText);
    case 'cut-short':
      return refused.cutShort(text);
    case 'interrupted':
      return refused.interrupted(text);
    case 'zero':
      return refused.zero;
    case 'negative':
      return refused.negative(text);
    case 'too-thin':
      return refused.tooThin(mm(refusal.valueMm), mm(refusal.limitMm));
    case 'too-thick':
      return refused.tooThick(mm(refusal.valueMm), mm(refusal.limitMm));
    case 'looks-like-inches':
      return refused.looksLikeInches(text);
    case 'looks-like-mm':
      return refused.looksLikeMm(text);
    case 'missing-decimal':
      return refused.missingDecimal(text);
  }
}

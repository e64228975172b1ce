/** How the text of a field changed between two looks at it. */
export interface TextChange {
  /** Characters taken from the end of what the two texts do not share. */
  readonly erased: number;
  /** Characters put in their place. */
  readonly inserted: string;
}

/**
 * What was typed into a field, from its text before and after.
 *
 * Android keyboards report key 229 for every key, and their `input` events may carry the whole word
 * in composition rather than the new letter, so only the field's own text tells what was added.
 * A change in the middle counts as erasing back to it and typing the rest again.
 *
 * @example changeOfText('6', '6.4') // { erased: 0, inserted: '.4' }
 * @example changeOfText('6,4', '6.4') // { erased: 2, inserted: '.4' }
 */
export function changeOfText(before: string, after: string): TextChange {
  let shared = 0;
  while (shared < before.length && before[shared] === after[shared]) shared++;
  return { erased: before.length - shared, inserted: after.slice(shared) };
}

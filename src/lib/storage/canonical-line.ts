import { canonicalJson } from '$lib/journal';

/**
 * Whether a line is the canonical JSON of the value parsed from it: one value, one text. Where keys
 * stand in order already, the browser's own JSON is canonical, and it is many times as fast.
 *
 * @example isCanonicalLine({ a: 1, b: 2 }, '{"a":1,"b":2}') // true
 */
export function isCanonicalLine(value: unknown, text: string): boolean {
  return text === (keysRise(value) ? JSON.stringify(value) : canonicalJson(value));
}

/** Whether the keys of all objects in a parsed value stand in code-unit order. */
function keysRise(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return true;
  if (Array.isArray(value)) return value.every(keysRise);
  let before = '';
  for (const key of Object.keys(value)) {
    if (key < before || !keysRise((value as Record<string, unknown>)[key])) return false;
    before = key;
  }
  return true;
}

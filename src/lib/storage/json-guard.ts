/** No event nests deeper: the deepest, a plan, has five levels. */
const DEEPEST = 32;

/** Keys by which a hostile object could reach into JavaScript itself. */
const FORBIDDEN = ['__proto__', 'constructor', 'prototype'];

/**
 * Parses a line of JSON that may be hostile. Refuses what nests too deep (before parsing) and keys
 * that name parts of JavaScript, at any depth. Never throws.
 */
export function parseGuarded(
  text: string
):
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly detail: string } {
  if (depthOf(text) > DEEPEST) return { ok: false, detail: 'nested too deeply' };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { ok: false, detail: 'not JSON' };
  }
  const key = forbiddenKeyIn(value);
  return key === undefined ? { ok: true, value } : { ok: false, detail: `the key ${key}` };
}

const [QUOTE, BACKSLASH, BRACE, BRACE_END, BRACKET, BRACKET_END] = [...'"\\{}[]'].map((sign) =>
  sign.charCodeAt(0)
);

/** How deep brackets nest in a text, those inside strings left out; stops counting past the limit. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let isInString = false;
  for (let at = 0; at < text.length && deepest <= DEEPEST; at++) {
    const sign = text.charCodeAt(at);
    if (isInString) {
      if (sign === BACKSLASH) at++;
      else if (sign === QUOTE) isInString = false;
    } else if (sign === QUOTE) isInString = true;
    else if (sign === BRACE || sign === BRACKET) deepest = Math.max(deepest, ++depth);
    else if (sign === BRACE_END || sign === BRACKET_END) depth--;
  }
  return deepest;
}

function forbiddenKeyIn(value: unknown): string | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  for (const key of Object.keys(value)) {
    if (FORBIDDEN.includes(key)) return key;
    const inside = forbiddenKeyIn((value as Record<string, unknown>)[key]);
    if (inside !== undefined) return inside;
  }
  return undefined;
}

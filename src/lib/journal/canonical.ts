/**
 * JSON with object keys in code-unit order and no spaces: the same value always gives the same
 * bytes. Used for hashes and to compare views. Values must be plain JSON (no undefined items in
 * arrays, no NaN); fields that are undefined are left out, as in JSON.
 *
 * @example canonicalJson({ b: 1, a: [2] }) // '{"a":[2],"b":1}'
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (value !== null && typeof value === 'object') {
    const fields = Object.entries(value)
      .filter(([, field]) => field !== undefined)
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([name, field]) => `${JSON.stringify(name)}:${canonicalJson(field)}`);
    return `{${fields.join(',')}}`;
  }
  return JSON.stringify(value);
}

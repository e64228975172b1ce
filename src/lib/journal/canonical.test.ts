import { expect, it } from 'vitest';
import { canonicalJson } from './canonical.ts';

it.each([
  [{}, '{}'],
  [[], '[]'],
  [null, 'null'],
  [{ b: 1, a: [2, { d: 1, c: undefined }] }, '{"a":[2,{"d":1}],"b":1}'],
  [{ é: 1, e: 2, E: 3, 10: 4, 9: 5 }, '{"10":4,"9":5,"E":3,"e":2,"é":1}'],
  ['a "quote"\n', '"a \\"quote\\"\\n"'],
  [-0, '0'],
  [1e21, '1e+21']
])('J13: %j is written %s', (value, text) => {
  expect(canonicalJson(value)).toBe(text);
});

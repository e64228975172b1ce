import { describe, expect, it } from 'vitest';
import { canonicalJson } from '$lib/journal';
import { isCanonicalLine } from './canonical-line.ts';

describe('isCanonicalLine', () => {
  it.each([
    ['null', true],
    ['{}', true],
    ['{"a":1,"b":{"c":[{"d":2,"e":3}]}}', true],
    ['{"b":1,"a":2}', false],
    ['{"a":[{"c":1,"b":2}]}', false],
    ['{"a": 1}', false],
    ['{"a":1.0}', false],
    ['{"a":1,"a":1}', false],
    ['{"a":"\\u0061"}', false],
    // The language puts keys that are whole numbers first and by size, the canonical form does not.
    ['{"10":1,"9":2}', true],
    ['{"9":2,"10":1}', false],
    ['{"A":1,"9":2}', false],
    ['{"9":2,"A":1}', true]
  ])('J13: %s: %s', (text, isCanonical) => {
    expect(isCanonicalLine(JSON.parse(text), text)).toBe(isCanonical);
    expect(canonicalJson(JSON.parse(text)) === text).toBe(isCanonical);
  });
});

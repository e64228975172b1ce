import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { canonicalJson } from '../../src/lib/journal/canonical.ts';
import { fixedExample } from '../support/fixed-example.ts';

/**
 * Of the example's events in the release before a job could have several sizes, but for the order and
 * the sample: what is agreed and which places get the full check came into the example later.
 */
const BEFORE_SIZES = '847ebaca51f5f9d1e0c2ab24702616b6ccd9b060269893ba94432577adbf4c79';
const LATER = ['deliveryDeclared', 'sampleDrawn'];

it('J80 a job of one size has the bytes that it had before there were several', () => {
  const lines = fixedExample()
    .filter(({ type, body }) => !LATER.includes(type) && !('sample' in body))
    .map((event) => `${canonicalJson(event)}\n`);
  expect(lines).toHaveLength(1519);
  expect(createHash('sha256').update(lines.join('')).digest('hex')).toBe(BEFORE_SIZES);
});

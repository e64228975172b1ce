import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { canonicalJson } from '../../src/lib/journal/canonical.ts';
import { fixedExample } from '../support/fixed-example.ts';

/** Of the example's events in the release before a job could have several sizes. */
const BEFORE_SIZES = '46dad239c3e098705cd0abb6db56cf88edfb6419c892aec16d3dbd273fe37e54';

it('J80 a job of one size has the bytes that it had before there were several', () => {
  const lines = fixedExample().map((event) => `${canonicalJson(event)}\n`);
  expect(createHash('sha256').update(lines.join('')).digest('hex')).toBe(BEFORE_SIZES);
});

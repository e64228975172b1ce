import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { unsaidIn } from './public-functions.js';

it('finds a function without a comment, and one that throws without saying so', () => {
  const folder = mkdtempSync(join(tmpdir(), 'functions-'));
  const file = join(folder, 'a.ts');
  writeFileSync(
    file,
    `export function bare() {}
/** Says nothing. */
export function throwing() { throw new Error('no'); }
/** Says nothing. */
export function checking(x: number) { requireWhole(x, 0, 'x'); }
/** @throws Error always */
export function honest() { throw new Error('no'); }
function inner() { throw new Error('no'); }
`
  );
  const found = unsaidIn(folder);
  rmSync(folder, { recursive: true });
  expect(found).toEqual([
    `${file}: bare: no comment`,
    `${file}: throwing: no @throws`,
    `${file}: checking: no @throws`
  ]);
});

it('finds none in the engine', () => {
  expect(unsaidIn('src/lib/engine')).toEqual([]);
});

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { unusedWords } from './unused-words.js';

it('finds a word that nothing shows, and none that a screen names', () => {
  const folder = mkdtempSync(join(tmpdir(), 'words-'));
  const words = join(folder, 'text', 'en');
  mkdirSync(words, { recursive: true });
  writeFileSync(join(words, 'sort.ts'), "export const sort = { shown: 'A', lost: 'B' };\n");
  writeFileSync(join(folder, 'Sort.svelte'), '<p>{text.sort.shown}</p>\n');
  const found = unusedWords(words, folder);
  rmSync(folder, { recursive: true });
  expect(found).toEqual([`${join(words, 'sort.ts')}: lost`]);
});

it('finds none here', () => {
  expect(unusedWords('src/lib/text/en', 'src')).toEqual([]);
});

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { namesExportedTwice } from './exported-names.js';

it('finds a name that two modules declare, and none that one hands on', () => {
  const folder = mkdtempSync(join(tmpdir(), 'names-'));
  writeFileSync(join(folder, 'a.ts'), 'export interface Stack {}\nexport const once = 1;\n');
  writeFileSync(join(folder, 'b.ts'), 'export type Stack = string;\n');
  writeFileSync(join(folder, 'index.ts'), "export { once } from './a.ts';\n");
  const found = namesExportedTwice(folder);
  rmSync(folder, { recursive: true });
  expect(found).toEqual({ Stack: [join(folder, 'a.ts'), join(folder, 'b.ts')] });
});

it('finds none here', () => {
  expect(namesExportedTwice('src/lib')).toEqual({});
});

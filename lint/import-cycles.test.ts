import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { importCycles } from './import-cycles.js';

it('finds a circle of three files, a type on its way', () => {
  const folder = mkdtempSync(join(tmpdir(), 'circle-'));
  mkdirSync(join(folder, 'c'));
  writeFileSync(join(folder, 'a.ts'), "import { b } from './b.ts';\n");
  writeFileSync(join(folder, 'b.ts'), "import {\n  type C\n} from './c/index.ts';\n");
  writeFileSync(join(folder, 'c/index.ts'), "export { a } from '../a.ts';\n");
  writeFileSync(join(folder, 'd.ts'), "const later = () => import('./a.ts');\n");
  const names = importCycles([folder]).map((way) => way.map((file) => file.slice(folder.length)));
  rmSync(folder, { recursive: true });
  expect(names).toEqual([['/a.ts', '/b.ts', '/c/index.ts', '/a.ts']]);
});

it('finds none here', () => {
  expect(importCycles(['src', 'seeds', 'scripts', 'lint', 'tests'])).toEqual([]);
});

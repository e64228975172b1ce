/** npm run bench: every benchmark of tests/bench, one after the other. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, ensureInstalled } from './tools.js';

ensureInstalled();
const { runTypeScript } = await import('./run-ts.js');
const folder = join(ROOT, 'tests/bench');
const wanted = process.argv[2] ?? '';
for (const file of readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts'))
  .sort()) {
  if (!file.includes(wanted)) continue;
  console.log(`\n# ${file}`);
  const code = await runTypeScript(join('tests/bench', file));
  if (code !== 0) process.exitCode = code;
}

/**
 * npm test: installs what is missing, makes sure of a Chromium and a PostgreSQL, and runs every test: unit,
 * published figures, properties, then the browser tests on the built app.
 */
import { ensureChromium, ensureInstalled, ensurePostgres, fail, run } from './tools.js';

ensureInstalled();
const chromium = ensureChromium();
ensurePostgres();
const steps = /** @type {const} */ ([
  ['unit, published and property tests', ['run', '--silent', 'test:unit']],
  ['build', ['run', '--silent', 'build']],
  ['browser tests', ['run', '--silent', 'test:e2e']]
]);
for (const [what, args] of steps)
  if (!run('npm', [...args], { CHROMIUM_PATH: chromium })) fail(`Failed: ${what}.`);

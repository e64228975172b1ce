/**
 * npm run test:long: everything in its full size, to run before a release. Property and optimality
 * tests with all their rounds, every fault, the soak of a working day, updates. `npm test` runs the
 * same code in a short form and leaves out what needs minutes. Prints the figures of each run in
 * lines that begin with "long run:". Takes about an hour. With an argument it runs the browser tests
 * whose file name matches.
 */
import { ensureChromium, ensureInstalled, fail, run } from './tools.js';

ensureInstalled();
const environment = { CHROMIUM_PATH: ensureChromium(), LONG: '1' };
const wanted = process.argv[2];
if (!wanted && !run('npx', ['vitest', 'run'], environment)) fail('Failed: unit tests.');
if (!run('npm', ['run', '--silent', 'build'])) fail('Failed: build.');
const args = ['playwright', 'test', wanted ?? '(faults|contract|update|soak)'];
if (!run('npx', [...args, '--project', 'phone', '--workers', '1'], environment))
  fail('Failed: see the test above.');

/**
 * npm run faults: every fault and the soak in full, where npm test runs a short form. Prints the
 * figures of each run in lines that begin with "faults:". Takes about half an hour.
 */
import { ensureChromium, ensureInstalled, fail, run } from './tools.js';

ensureInstalled();
const environment = { CHROMIUM_PATH: ensureChromium(), FAULTS: 'full' };
if (!run('npm', ['run', '--silent', 'build'])) fail('Failed: build.');
const wanted = process.argv[2] ?? '(faults|contract|update|soak)';
const args = ['playwright', 'test', wanted, '--project', 'desktop', '--workers', '1'];
if (!run('npx', args, environment)) fail('Failed: see the test above.');

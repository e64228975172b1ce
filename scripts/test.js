/**
 * npm test: installs what is missing, makes sure of a Chromium and a PostgreSQL, builds the app once, and runs every
 * test: browser tests on the built app, and beside them unit tests, published figures and
 * properties, whose words are shown when they are done. `npm run test:long` has the full sizes.
 */
import { spawn } from 'node:child_process';
import {
  ROOT,
  ensureChromium,
  ensureInstalled,
  ensurePoppler,
  ensurePostgres,
  fail,
  run
} from './tools.js';

ensureInstalled();
const chromium = ensureChromium();
ensurePostgres();
ensurePoppler();
if (!run('npm', ['run', '--silent', 'build'])) fail('Failed: build.');
const units = runQuietly('npm', ['run', '--silent', 'test:unit', '--', '--maxWorkers=1']);
const browser = runAloud('npm', ['run', '--silent', 'test:e2e'], { CHROMIUM_PATH: chromium });
const [ofUnits, isBrowserRight] = await Promise.all([units, browser]);
console.log(ofUnits.words);
const failed = [
  ...(ofUnits.isRight ? [] : ['unit, published and property tests']),
  ...(isBrowserRight ? [] : ['browser tests'])
];
if (failed.length > 0) fail(`Failed: ${failed.join(', ')}.`);

/**
 * @param {string} command
 * @param {string[]} args
 * @param {Record<string, string>} env
 * @returns {Promise<boolean>}
 */
function runAloud(command, args, env) {
  const child = spawn(command, args, { ...options(env), stdio: 'inherit' });
  return new Promise((resolve) => child.on('close', (code) => resolve(code === 0)));
}

/**
 * @param {string} command
 * @param {string[]} args
 * @returns {Promise<{ isRight: boolean, words: string }>}
 */
function runQuietly(command, args) {
  const child = spawn(command, args, { ...options({}), stdio: ['ignore', 'pipe', 'pipe'] });
  let words = '';
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (piece) => (words += String(piece)));
  return new Promise((resolve) =>
    child.on('close', (code) => resolve({ isRight: code === 0, words }))
  );
}

/** @param {Record<string, string>} env */
function options(env) {
  return { cwd: ROOT, env: { ...process.env, ...env }, shell: process.platform === 'win32' };
}

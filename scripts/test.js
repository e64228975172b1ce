/**
 * npm test: installs what is missing, makes sure of a Chromium and a PostgreSQL, builds the app once, and runs every
 * test: browser tests on the built app, and beside them unit tests, published figures and
 * properties, whose words follow. What failed comes last, so that the end of a log tells it.
 * `npm run test:long` has the full sizes.
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

const UNIT_SUMMARY_LINES = 6;
const FAILURE_LINES = 150;

ensureInstalled();
const chromium = ensureChromium();
ensurePostgres();
ensurePoppler();
if (!run('npm', ['run', '--silent', 'build'])) fail('Failed: build.');
const units = runBeside('npm', ['run', '--silent', 'test:unit', '--', '--maxWorkers=1'], {
  isAloud: false
});
const browser = runBeside('npm', ['run', '--silent', 'test:e2e'], {
  env: { CHROMIUM_PATH: chromium },
  isAloud: true
});
const [ofUnits, ofBrowser] = await Promise.all([units, browser]);
console.log(ofUnits.isRight ? lastLines(ofUnits.words, UNIT_SUMMARY_LINES) : ofUnits.words);
if (!ofBrowser.isRight) console.log(lastLines(ofBrowser.words, FAILURE_LINES));
const failed = [
  ...(ofUnits.isRight ? [] : ['unit, published and property tests']),
  ...(ofBrowser.isRight ? [] : ['browser tests'])
];
if (failed.length > 0) fail(`Failed: ${failed.join(', ')}.`);

/**
 * Runs a command and keeps its words.
 * @param {string} command
 * @param {string[]} args
 * @param {{ env?: Record<string, string>, isAloud: boolean }} how aloud: shown as they come
 * @returns {Promise<{ isRight: boolean, words: string }>}
 */
function runBeside(command, args, { env = {}, isAloud }) {
  const child = spawn(command, args, {
    cwd: ROOT,
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
    stdio: ['ignore', 'pipe', 'pipe']
  });
  let words = '';
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (piece) => {
      words += String(piece);
      if (isAloud) process.stdout.write(piece);
    });
  return new Promise((resolve) =>
    child.on('close', (code) => resolve({ isRight: code === 0, words }))
  );
}

/**
 * @param {string} words
 * @param {number} count
 */
function lastLines(words, count) {
  return words.trimEnd().split('\n').slice(-count).join('\n');
}

/**
 * npm run licences: writes static/licences.txt, the licences of every package whose code users
 * receive. With --check it only says whether the file is up to date.
 */
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, fail } from './tools.js';

const FILE = join(ROOT, 'static/licences.txt');
/** Compiled into the app though it is installed for development only. */
const BUILT_IN = ['svelte', '@sveltejs/kit'];
/** Licences that ask no more than their text be kept with the code. */
const ALLOWED = [
  'MIT',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'BSL-1.0',
  'CC0-1.0',
  'OFL-1.1'
];

/** @typedef {{ version: string, license?: string, dev?: boolean, optional?: boolean }} Locked */
/** @type {Record<string, Locked>} */
const packages = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')).packages;
const shipped = Object.entries(packages).filter(([path, { dev }]) => {
  const name = path.split('node_modules/').pop() ?? '';
  return path && (!dev || BUILT_IN.includes(name));
});

/** @type {Map<string, string[]>} */
const byText = new Map();
for (const [path, { version }] of shipped) {
  const folder = join(ROOT, path);
  if (!existsSync(folder)) continue; // optional, and not for this system
  const { name, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  if (!isAllowed(String(license)))
    fail(`licences: ${name} ${version} has the licence ${license}; decide before it ships.`);
  const texts = readdirSync(folder)
    .filter((file) => /^(licen[cs]e|notice)/i.test(file))
    .sort();
  const text = texts.map((file) => readFileSync(join(folder, file), 'utf8').trim()).join('\n\n');
  const key = `${license}\n\n${text || 'The package brings no text of its licence.'}`;
  byText.set(key.replaceAll('\r\n', '\n'), [
    ...(byText.get(key.replaceAll('\r\n', '\n')) ?? []),
    `${name} ${version}`
  ]);
}

const sections = [...byText]
  .map(([text, names]) => `${names.sort().join('\n')}\n\n${text}\n`)
  .sort();
const count = [...byText.values()].flat().length;
const whole = `Licences of the ${count} packages in this app\n\n${sections.join(`\n${'-'.repeat(72)}\n\n`)}`;
if (process.argv.includes('--check')) {
  if (!existsSync(FILE) || readFileSync(FILE, 'utf8') !== whole)
    fail('licences: static/licences.txt is not up to date. Run "npm run licences".');
  console.log(`licences: ${count} packages, up to date.`);
} else {
  writeFileSync(FILE, whole);
  console.log(`licences: ${count} packages written.`);
}

/**
 * Whether an SPDX expression asks nothing that we do not keep.
 *
 * @param {string} expression
 */
function isAllowed(expression) {
  const all = expression.replace(/[()]/g, '').split(' AND ');
  return all.every((part) => part.split(' OR ').some((one) => ALLOWED.includes(one)));
}

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));

/**
 * Runs a command in the project's folder with its output shown.
 *
 * @param {string} command
 * @param {string[]} args
 * @param {Record<string, string>} [env]
 * @returns {boolean} whether it succeeded
 */
export function run(command, args, env = {}) {
  const shell = process.platform === 'win32';
  const options = { cwd: ROOT, stdio: /** @type {const} */ ('inherit'), shell };
  return spawnSync(command, args, { ...options, env: { ...process.env, ...env } }).status === 0;
}

/** Installs the packages in package-lock.json unless that very lock is installed already. */
export function ensureInstalled() {
  const wanted = join(ROOT, 'package-lock.json');
  const installed = join(ROOT, 'node_modules', '.package-lock.json');
  if (existsSync(installed) && sameLock(wanted, installed)) return;
  console.log('Installing packages…');
  if (!run('npm', ['ci', '--no-audit', '--no-fund'])) fail('npm ci failed: see its message above.');
}

/**
 * A Chromium to test with: CHROMIUM_PATH, one on the PATH, or Debian's package where we may install.
 *
 * @returns {string} its path
 */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  ensurePackages(['chromium']);
  const installed = findChromium();
  if (installed) return installed;
  return fail(
    'The browser tests need Chromium. Install it (on Debian or Ubuntu: sudo apt-get install chromium), ' +
      'or set CHROMIUM_PATH to a Chromium or Chrome program, and run npm test again.'
  );
}

/**
 * Debian's PostgreSQL where we may install it, for the tests of the hub. Where it is missing, those
 * tests say that they were not run; with REQUIRE_POSTGRES set they fail.
 */
export function ensurePostgres() {
  if (existsSync('/usr/lib/postgresql') || isThere('initdb')) return;
  ensurePackages(['postgresql']);
}

/** Poppler, by which the tests read printed pages back, where we may install it. */
export function ensurePoppler() {
  if (!isThere('pdftotext')) ensurePackages(['poppler-utils']);
}

/**
 * Installs packages of Debian where we may: as root, where there is apt-get.
 *
 * @param {string[]} names
 */
export function ensurePackages(names) {
  if (process.getuid?.() !== 0 || !isThere('apt-get')) return;
  console.log(`Installing Debian's ${names.join(', ')}…`);
  run('apt-get', ['update', '-qq']);
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...names], {
    DEBIAN_FRONTEND: 'noninteractive'
  });
}

/**
 * @param {string} message
 * @returns {never}
 */
export function fail(message) {
  console.error(message);
  process.exit(1);
}

function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) return existsSync(named) ? named : fail(`CHROMIUM_PATH is ${named}: no such file.`);
  for (const name of ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']) {
    const path = isThere(name);
    if (path) return path;
  }
  const mac = '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';
  return existsSync(mac) ? mac : undefined;
}

/**
 * @param {string} name
 * @returns {string | undefined} where a program of this name is
 */
export function isThere(name) {
  const [command, args] =
    process.platform === 'win32' ? ['where', [name]] : ['sh', ['-c', `command -v ${name}`]];
  const found = spawnSync(command, args, { encoding: 'utf8' });
  return found.status === 0 ? found.stdout.split(/\r?\n/)[0].trim() : undefined;
}

/**
 * Whether the installed tree was made from the wanted lock: every wanted package, same version.
 *
 * @param {string} wanted
 * @param {string} installed
 */
function sameLock(wanted, installed) {
  const here = JSON.parse(readFileSync(installed, 'utf8')).packages;
  const packages = Object.entries(JSON.parse(readFileSync(wanted, 'utf8')).packages);
  return packages.every(
    ([path, { version, optional }]) => !path || optional || here[path]?.version === version
  );
}

/**
 * npm run audit: asks the registry for known faults of the packages that users receive, and fails
 * on any that audit-decisions.json does not decide on, and on decisions that no longer match. Where
 * the registry does not answer it says so and passes: no answer is not a finding.
 *
 * A decision: { "advisory": "https://github.com/advisories/GHSA-…", "package": "…", "reason": "…" }
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, fail } from './tools.js';

/** @typedef {{ advisory: string, package: string, reason: string }} Decision */
/** @typedef {{ url: string, name: string, title: string, severity: string }} Advisory */

/** @type {Decision[]} */
const decisions = JSON.parse(readFileSync(join(ROOT, 'audit-decisions.json'), 'utf8'));
if (decisions.some(({ reason }) => !reason.trim()))
  fail('audit-decisions.json: every decision needs a reason.');

const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], {
  cwd: ROOT,
  encoding: 'utf8',
  timeout: 120_000,
  shell: process.platform === 'win32'
});
const report = parsed(stdout ?? '');
if (!report?.vulnerabilities) {
  const why = report?.message ?? 'no answer';
  console.log(
    `audit: NO AUDIT WAS MADE: the registry did not answer (${why}). Nothing is known either way of the packages in package-lock.json; run npm run audit where it answers, before a release.`
  );
  process.exit(0);
}

const found = advisoriesOf(report.vulnerabilities);
const decided = new Set(decisions.map(({ advisory }) => advisory));
const open = found.filter(({ url }) => !decided.has(url));
const stale = decisions.filter(({ advisory }) => !found.some(({ url }) => url === advisory));
for (const { name, severity, title, url } of open)
  console.error(`audit: ${severity} in ${name}: ${title} (${url})`);
for (const { advisory } of stale) console.error(`audit: decided but no longer found: ${advisory}`);
if (open.length + stale.length > 0)
  fail('audit: update the package, or decide in audit-decisions.json and give the reason.');
console.log(`audit: ${found.length} advisories, each decided.`);

/**
 * @param {string} text
 * @returns {{ message?: string, vulnerabilities?: Record<string, { via: (string | Advisory)[] }> } | undefined}
 */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/**
 * @param {Record<string, { via: (string | Advisory)[] }>} vulnerabilities
 * @returns {Advisory[]}
 */
function advisoriesOf(vulnerabilities) {
  const byUrl = new Map();
  for (const { via } of Object.values(vulnerabilities))
    for (const one of via) if (typeof one === 'object') byUrl.set(one.url, one);
  return [...byUrl.values()];
}

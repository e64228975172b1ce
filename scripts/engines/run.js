/**
 * npm run test:engines [firefox|webkit]: the main job on the built app in Firefox and in WebKitGTK.
 * On Debian as root it installs what is missing; elsewhere it says what was not run.
 */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { BUILD, serve } from '../serve.js';
import { ensureInstalled, ensurePackages, fail, isThere, run } from '../tools.js';
import { openFirefox } from './firefox.js';
import { mainJob } from './main-job.js';
import { openWebKit } from './webkit.js';

ensureInstalled();
if (!existsSync(BUILD) && !run('npm', ['run', '--silent', 'build'])) fail('Failed: build.');

const failures = [];
for (const [name, open] of Object.entries({ firefox, webkit })) {
  if (process.argv[2] && process.argv[2] !== name) continue;
  const page = await open();
  if (!page) continue;
  const site = await serve(0);
  try {
    console.log(`engines: ${name}: ${await mainJob(page, site)}`);
  } catch (error) {
    failures.push(name);
    console.error(`engines: ${name}: ${error instanceof Error ? error.message : error}`);
  } finally {
    site.close();
    await page.close();
  }
}
if (failures.length > 0) fail(`Failed: the main job in ${failures.join(' and ')}.`);
process.exit(0);

function firefox() {
  const find = () => isThere('firefox-esr') ?? isThere('firefox');
  if (!find()) ensurePackages(['firefox-esr']);
  const program = find();
  if (program) return openFirefox(program);
  console.log(
    'engines: NOT RUN in Firefox: there is none here (Debian: apt-get install firefox-esr).'
  );
}

function webkit() {
  const find = () => ({
    driver: isThere('WebKitWebDriver'),
    browser: miniBrowser(),
    screen: isThere('Xvfb')
  });
  if (Object.values(find()).some((program) => !program))
    ensurePackages(['webkit2gtk-driver', 'xvfb']);
  const { driver, browser, screen } = find();
  if (driver && browser && screen) return openWebKit({ driver, browser, screen });
  console.log(
    'engines: NOT RUN in WebKitGTK: its driver, its MiniBrowser or Xvfb is missing ' +
      '(Debian: apt-get install webkit2gtk-driver xvfb).'
  );
}

/** @returns {string | undefined} */
function miniBrowser() {
  for (const folder of [
    '/usr/lib/x86_64-linux-gnu',
    '/usr/lib/aarch64-linux-gnu',
    '/usr/libexec'
  ]) {
    if (!existsSync(folder)) continue;
    for (const name of readdirSync(folder).filter((one) => one.startsWith('webkit'))) {
      const program = join(folder, name, 'MiniBrowser');
      if (existsSync(program)) return program;
    }
  }
}

import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '../../scripts/serve.js';
import { expect, test } from './helpers.ts';

test.use({ serviceWorkers: 'allow' });

const SOURCES = [
  'src',
  'seeds',
  'static',
  'scripts',
  'package.json',
  'svelte.config.js',
  'vite.config.ts'
];

test.describe('in a folder of a site', () => {
  let place = '';
  test.beforeAll(() => {
    // Built in a place of its own, so that the app under test stays as it is.
    place = mkdtempSync(join(tmpdir(), 'evencourse-folder-'));
    for (const source of [...SOURCES, 'tsconfig.json'])
      cpSync(source, join(place, source), { recursive: true });
    symlinkSync(join(process.cwd(), 'node_modules'), join(place, 'node_modules'));
    const { status, stdout, stderr } = spawnSync(
      'node',
      ['node_modules/vite/bin/vite.js', 'build'],
      {
        cwd: place,
        env: { ...process.env, BASE_PATH: '/slates' },
        encoding: 'utf8'
      }
    );
    expect(status, `${stdout}\n${stderr}`).toBe(0);
  });
  test.afterAll(() => rmSync(place, { recursive: true, force: true }));

  test('the app starts, opens the example, and starts again without a network', async ({
    browser
  }) => {
    const { url, close } = await serve(0, { folder: join(place, 'build'), base: '/slates' });
    const context = await browser.newContext();
    const page = await context.newPage();
    const troubles: string[] = [];
    page.on('pageerror', (error) => troubles.push(String(error)));
    page.on('response', (response) => {
      const { pathname } = new URL(response.url());
      if (response.status() >= 400 || !/^\/slates(\/|$)/.test(pathname))
        troubles.push(`${response.status()} ${pathname}`);
    });
    await page.goto(url.replace(/\/$/, ''));
    expect(page.url(), 'the folder with its slash').toBe(url);
    await page.getByRole('button', { name: 'Open the worked example' }).click();
    await page.waitForURL(/\/slates\/job\//);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(/long barn/);
    const job = page.url();
    const manifest = await page.request.get(`${url}manifest.webmanifest`);
    const { start_url, scope } = (await manifest.json()) as Record<string, string>;
    expect(new URL(start_url, manifest.url()).href).toBe(url);
    expect(new URL(scope ?? '.', manifest.url()).href).toBe(url);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await page.goto(`${url}settings`);
    await expect(page.getByRole('row', { name: 'Starts without a network yes' })).toBeVisible();

    close();
    await context.setOffline(true);
    await page.goto(job);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(/long barn/);
    await page.reload();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(/long barn/);
    await page.goto(url);
    await expect(page.getByRole('heading', { name: 'Jobs' })).toBeVisible();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

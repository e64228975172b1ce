import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ownSite } from '../faults/own-site.ts';
import { JOB_SCREENS } from '../faults/screens.ts';
import { expect, openExampleByTap, test } from './helpers.ts';

test.use({ serviceWorkers: 'allow' });

test.describe('without a network', () => {
  let site: Awaited<ReturnType<typeof ownSite>>;
  test.beforeEach(async () => {
    site = await ownSite();
  });
  test.afterEach(() => site.remove());

  test('the app starts cold, opens every screen, sorts, and runs its worker', async ({
    browser
  }) => {
    const context = await browser.newContext({ baseURL: site.url });
    const first = await context.newPage();
    const job = await openExampleByTap(first);
    await first.evaluate(() => navigator.serviceWorker.ready);
    await first.goto('/settings');
    await expect(first.getByRole('row', { name: 'Starts without a network yes' })).toBeVisible();
    await first.close();

    // In flight mode, and the server is gone for good: whatever still comes, comes from the device.
    site.stop();
    await context.setOffline(true);
    const page = await context.newPage();
    const troubles: string[] = [];
    page.on('pageerror', (error) => troubles.push(String(error)));
    page.on('requestfailed', (request) => {
      const why = request.failure()?.errorText ?? '';
      // What a page had asked for when it was left is no trouble.
      if (why !== 'net::ERR_ABORTED') troubles.push(`${request.url()} ${why}`);
    });
    for (const screen of JOB_SCREENS) {
      await page.goto(`${job}${screen}`);
      await expect(page.locator('h1').first(), screen).toBeAttached();
      await expect(page.getByText('Offline, all works')).toBeVisible();
    }
    await page.goto('/');
    await expect(page.getByRole('heading', { name: 'Jobs' })).toBeVisible();
    await page.goto('/settings');
    await expect(page.getByText('A test entry was written and read back')).toBeVisible();

    await page.goto(`${job}/sort`);
    await page.locator('.piles button').first().click();
    await expect(page.locator('.verdict .status')).toHaveText('saved');
    await page.reload();
    await expect(page.getByText('Saved: slate piled')).toBeVisible();

    // The boundaries that suit the roof are worked out in the web worker.
    const worker = page.waitForEvent('worker');
    await page.goto(`${job}/grades`);
    expect((await worker).url()).toContain('/workers/');
    const way = page.locator('label', { has: page.getByRole('radio', { name: /suit the roof/i }) });
    await expect(way).toContainText(/\d\.\d/);
    expect(troubles).toEqual([]);
    await context.close();
  });

  test('a shell that came in part is fetched anew when the network is back', async ({
    browser
  }) => {
    const context = await browser.newContext({ baseURL: site.url });
    const page = await context.newPage();
    const list = join(site.folder, 'workers.json');
    const workers = readFileSync(list, 'utf8');
    writeFileSync(list, '["/not-there.js"]');
    const tried = page.waitForEvent('console', (message) => message.text() === 'tried');
    await page.addInitScript(() => {
      void navigator.serviceWorker.getRegistration().then(function look(found): unknown {
        if (found?.installing)
          found.installing.addEventListener('statechange', () => console.info('tried'));
        else return navigator.serviceWorker.getRegistration().then(look);
      });
    });
    await page.goto('/settings');
    await tried;
    await expect(page.getByRole('row', { name: /Starts without a network not yet/ })).toBeVisible();
    writeFileSync(list, workers);
    await context.setOffline(true);
    await context.setOffline(false);
    await expect(page.getByRole('row', { name: 'Starts without a network yes' })).toBeVisible();
    await context.close();
  });
});

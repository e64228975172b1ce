import { networkInterfaces } from 'node:os';
import { expect, test } from '@playwright/test';
import { BUILD, serve } from '../../scripts/serve.js';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';

// Secure Contexts (W3C): http is trusted from this machine's own address alone.
const address = Object.values(networkInterfaces())
  .flatMap((list) => list ?? [])
  .find(({ family, internal }) => family === 'IPv4' && !internal)?.address;

test.describe('over plain http from another machine', () => {
  let site: Awaited<ReturnType<typeof serve>>;
  test.beforeEach(async () => {
    const folder = process.env.SITE_FOLDER ?? BUILD;
    site = await serve(0, { folder, host: String(address) });
  });
  test.afterEach(() => site.close());

  test('Jobs says what is missing, readings are saved, and Copy says that it cannot', async ({
    browser
  }) => {
    const page = await browser.newPage({ baseURL: site.url });
    await page.goto('/');
    expect(await page.evaluate(() => isSecureContext)).toBe(false);
    await expect(page.getByText('Saving works. Offline start, scanning and sharing')).toBeVisible();
    await startSorting(page);
    await gaugeSlate(page, 510);
    await page.reload();
    await page.goto('/');
    await expect(page.getByRole('link', { name: /Long barn .*3 entries/ })).toBeVisible();
    await page.goto('/settings');
    await page.getByRole('button', { name: 'Copy' }).click();
    await expect(page.getByText('Mark the text and copy it by hand')).toBeVisible();
    await expect(page.getByRole('row', { name: /Starts without a network not yet/ })).toBeVisible();
    await page.close();
  });
});

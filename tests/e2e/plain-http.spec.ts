import { readFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { expect, test } from '@playwright/test';
import { BUILD, serve } from '../../scripts/serve.js';
import { openFolds } from './helpers.ts';
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
    // Crew and Join say it too; what a mate sends by hand is opened all the same.
    await page.goto('/');
    await page.getByRole('link', { name: /Long barn/ }).click();
    await page.waitForURL(/\/job\/[0-9a-f-]+$/);
    const job = page.url();
    await page.goto(`${job}/crew`);
    await expect(page.getByText('Sharing needs an https address; this one is')).toBeVisible();
    const part = await openFolds(page, 'Send to a mate');
    const saved = page.waitForEvent('download');
    await part.getByRole('button', { name: 'Save the file' }).click();
    const sent = readFileSync(await (await saved).path(), 'utf8');
    await page.goto('/join');
    await expect(page.getByText('Sharing needs an https address; this one is')).toBeVisible();
    await page.getByRole('button', { name: 'Scan a code' }).click();
    await expect(page.getByText('The camera needs an https address')).toBeVisible();
    const field = page.getByLabel('What you were sent');
    await field.fill('https://slates.example/join#1.AAAA');
    await page.getByRole('button', { name: 'Open it' }).click();
    await expect(page.getByText('Joining needs an https address')).toBeVisible();
    await field.fill(sent);
    await page.getByRole('button', { name: 'Open it' }).click();
    await expect(page.getByText(/^Taken in: /)).toBeVisible();
    await page.close();
  });
});

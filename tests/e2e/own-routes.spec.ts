import { expect, test } from '@playwright/test';
import { ownSite } from '../faults/own-site.ts';

// Service Workers (W3C): a worker at the top of a host sees every request under it.
test('another page on the same host is left alone, and none may show the app inside its own', async ({
  browser
}) => {
  const site = await ownSite([
    ({ url }, response) => {
      if (url !== '/shop' && url !== '/frame') return false;
      response.setHeader('Content-Type', 'text/html');
      response.end(url === '/shop' ? '<h1>Shop</h1>' : '<iframe src="/" id="app"></iframe>');
      return true;
    }
  ]);
  const context = await browser.newContext({ baseURL: site.url });
  const page = await context.newPage();
  await page.goto('/settings');
  await expect(page.getByRole('row', { name: /^Starts without a network yes/ })).toBeVisible();
  await page.reload();
  expect(await page.evaluate(() => !!navigator.serviceWorker.controller)).toBe(true);
  await page.goto('/shop');
  await expect(page.getByRole('heading', { name: 'Shop' })).toBeVisible();
  await page.goto('/frame');
  const frame = await (await page.waitForSelector('#app')).contentFrame();
  await frame?.waitForLoadState();
  expect(await frame?.locator('#starting, .app-root').count()).toBe(0);
  await context.close();
  site.remove();
});

import { expect, test } from './helpers.ts';

const PHONE =
  'Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Mobile/15E148 Safari/604.1';

test('a phone without an install button is told how to install', async ({ browser, baseURL }) => {
  const context = await browser.newContext({ userAgent: PHONE, baseURL });
  const page = await context.newPage();
  await page.goto('/');
  await expect(page.getByText(/tap Share, then Add to Home Screen/)).toBeVisible();
  await context.close();
});

test('other browsers are not told, and the manifest names icons that are there', async ({
  page,
  request
}) => {
  await page.goto('/');
  await expect(page.getByRole('button', { name: 'Open the worked example' })).toBeVisible();
  await expect(page.getByText(/Add to Home Screen/)).toHaveCount(0);
  const manifest = await (await request.get('/manifest.webmanifest')).json();
  expect(manifest.display).toBe('standalone');
  for (const { src, type } of manifest.icons) {
    const icon = await request.get(`/${src}`);
    expect(icon.ok(), src).toBe(true);
    expect(icon.headers()['content-type']).toContain(type);
  }
});

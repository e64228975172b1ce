import { rmSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { serve } from '../../scripts/serve.js';
import { bundlePage } from '../faults/bundle.ts';
import { report } from '../support/rounds.ts';

let folder: string;
let site: Awaited<ReturnType<typeof serve>>;

test.beforeAll(async () => {
  folder = await bundlePage('tests/faults/contract-page.ts');
  site = await serve(0, { folder });
});

test.afterAll(() => {
  site?.close();
  if (folder) rmSync(folder, { recursive: true, force: true });
});

test('J1 to J3, J5, J7, J8, J10, J14 to J16, J20, J22 to J30: every promise of the storage contract is kept in the IndexedDB of Chromium', async ({
  page
}) => {
  await page.goto(site.url);
  await page.waitForFunction(() => 'contractTitles' in window);
  const titles = await page.evaluate(() => window.contractTitles());
  expect(titles.length).toBeGreaterThan(15);
  for (const [index, title] of titles.entries())
    await test.step(title, () => page.evaluate((at) => window.keepPromise(at), index));
  report('contract in Chromium', { promises: titles.length, broken: 0 });
});

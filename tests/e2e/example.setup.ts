import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { EXAMPLE_FILE, openExampleByTap } from './helpers.ts';
import { test } from './helpers.ts';

test('the worked example is opened once and kept for the other tests', async ({ page }) => {
  const { pathname } = new URL(await openExampleByTap(page));
  const { origins } = await page.context().storageState({ indexedDB: true });
  mkdirSync(dirname(EXAMPLE_FILE), { recursive: true });
  writeFileSync(EXAMPLE_FILE, JSON.stringify({ pathname, origins }));
});

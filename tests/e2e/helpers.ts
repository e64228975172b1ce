import { test as base, expect, type Locator, type Page } from '@playwright/test';

/** A test that fails on any console error or warning, page error or request to another host. */
export const test = base.extend<{ quiet: void }>({
  quiet: [
    async ({ page, baseURL }, use) => {
      const noises: string[] = [];
      page.on('console', (message) => {
        if (['error', 'warning'].includes(message.type())) noises.push(message.text());
      });
      page.on('pageerror', (error) => noises.push(String(error)));
      page.on('request', (request) => {
        const url = request.url();
        if (/^https?:/.test(url) && !url.startsWith(baseURL ?? ''))
          noises.push(`request to ${url}`);
      });
      await use();
      expect(noises).toEqual([]);
    },
    { auto: true }
  ]
});

export { expect };

/** Opens a fresh copy of the worked example and gives its address. */
export async function openExample(page: Page): Promise<string> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Open the worked example' }).click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  return page.url();
}

/** Opens folds by their titles, outer ones first, and gives the last one. */
export async function openFolds(page: Page, ...titles: string[]): Promise<Locator> {
  let fold = page.locator('main');
  for (const title of titles) {
    const titled = page.locator('details', {
      has: page.locator(`:scope > summary h2:text-is(${JSON.stringify(title)})`)
    });
    fold = titled;
    await expect(titled).toBeVisible();
    // A fold may open by itself when its figures are there, just as it is tapped.
    await expect(async () => {
      if ((await titled.getAttribute('open')) === null)
        await titled.locator(':scope > summary').click();
      expect(await titled.getAttribute('open')).not.toBeNull();
    }).toPass();
  }
  return fold;
}

/** Starts a new job and gives its address. */
export async function startJob(page: Page, name: string): Promise<string> {
  await page.goto('/');
  await page.getByLabel('Name of the job').fill(name);
  await page.getByRole('button', { name: 'Start' }).click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  return page.url();
}

/** Takes readings in a file into a job. */
export async function takeIn(page: Page, job: string, csv: string): Promise<void> {
  await page.goto(`${job}/files`);
  await page
    .getByLabel('Choose a CSV file')
    .setInputFiles({ name: 'readings.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
  await expect(page.getByText(/^Taken in:/)).toBeVisible();
}

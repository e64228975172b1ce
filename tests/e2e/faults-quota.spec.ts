import { type CDPSession, expect, test } from '@playwright/test';
import { expectGapless, jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';
import { report } from '../support/rounds.ts';
import { gaugeSlate, startSorting, typeReading } from '../faults/sorting.ts';

/** Gives the site so many bytes of room, or as many as the browser likes. */
async function setRoom(browser: CDPSession, site: string, quotaSize?: number): Promise<void> {
  const { origin } = new URL(site);
  await browser.send('Storage.overrideQuotaForOrigin', { origin, quotaSize });
}

// The shell's files would fill the little room; this is about the journal's.
test.use({ serviceWorkers: 'block' });

test('J2, J21: on a full device the reading stays on screen, export works, and a retry saves it once', async ({
  page,
  baseURL
}) => {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  const browser = await page.context().newCDPSession(page);
  // Set before the first page: a browser keeps for a while what room it found.
  await setRoom(browser, String(baseURL), 120_000);
  await startSorting(page);
  const jobId = jobIdOf(page);
  for (const hundredths of [510, 520, 530]) await gaugeSlate(page, hundredths);
  const before = await jobOnDisk(page, jobId);
  let sent = 0;
  const strip = page.locator('.strip.failed');
  while ((await strip.count()) === 0) {
    sent++;
    expect(sent, 'the browser never said that it is full').toBeLessThan(400);
    await typeReading(page, 600 + sent);
    await page.locator('.status', { hasText: /^(saved|NOT SAVED)$/ }).waitFor();
  }
  // No room at all from here on: the browser tidies its files up and would find a little.
  await setRoom(browser, String(baseURL), 1);
  await expect(strip).toContainText('NOT SAVED');
  await expect(strip).toContainText('no room left');
  await expect(page.locator('.verdict')).toContainText(`${((600 + sent) / 100).toFixed(2)} mm`);
  await expect(page.locator('.verdict .status')).toHaveText('NOT SAVED');
  const full = await jobOnDisk(page, jobId);
  expect(full.events).toHaveLength(before.events.length + sent - 1);

  // A second reading waits behind the first; neither is lost.
  await typeReading(page, 777);
  await expect(page.getByText('2 entries wait to be saved')).toBeVisible();

  // Leaving the job asks; staying keeps both.
  page.once('dialog', (dialog) => void dialog.dismiss());
  await page.getByRole('link', { name: 'All jobs' }).first().click();
  await expect(page.getByText('2 entries wait to be saved')).toBeVisible();

  // The way out is open: within the job, to Files, and a backup of all that is saved.
  await page.getByRole('link', { name: 'Job', exact: true }).click();
  await page.getByRole('link', { name: 'Files and backup' }).click();
  await page.getByRole('button', { name: 'Make a backup file' }).click();
  const arriving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  const text = await textOf(await arriving);
  expect(JSON.parse(text.split('\n')[0])).toMatchObject({ jobId, events: full.events.length });

  await strip.getByRole('button', { name: 'Try again' }).click();
  await expect(strip).toContainText('NOT SAVED');

  await setRoom(browser, String(baseURL));
  await expect(async () => {
    // The browser may go on refusing for a while; once it saves, the button is gone under the tap.
    const again = strip.getByRole('button', { name: 'Try again' });
    await again.click({ timeout: 1000 }).catch(() => undefined);
    await expect(strip).toHaveCount(0, { timeout: 1000 });
  }).toPass();
  const { events } = await jobOnDisk(page, jobId);
  const readings = events.flatMap(({ type, body }) =>
    type === 'slateGauged' ? (body.points as number[]) : []
  );
  const onTheWay = Array.from({ length: sent }, (_reading, index) => 601 + index);
  expect(readings).toEqual([510, 520, 530, ...onTheWay, 777]);
  expectGapless(events);
  expect(errors).toEqual([]);
  report('device full', { 'readings refused and kept': 2, lost: 0, doubled: 0 });
});

async function textOf(download: {
  createReadStream(): Promise<NodeJS.ReadableStream>;
}): Promise<string> {
  let text = '';
  for await (const piece of await download.createReadStream()) text += String(piece);
  return text;
}

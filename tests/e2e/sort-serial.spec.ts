import type { Page } from '@playwright/test';
import { expect, test } from './helpers.ts';
import { eventsOf, seedJob, smallJob } from './seed-job.ts';

/** Puts an emulated port in the place of the browser's; `window.port` sends bytes and unplugs it. */
async function emulatePort(page: Page): Promise<void> {
  await page.addInitScript(() => {
    let source: ReadableStreamDefaultController<Uint8Array> | undefined;
    const port = {
      readable: null as ReadableStream<Uint8Array> | null,
      open: async () => {
        port.readable = new ReadableStream<Uint8Array>({ start: (made) => void (source = made) });
      },
      close: async () => void (port.readable = null)
    };
    Object.defineProperty(navigator, 'serial', { value: { requestPort: async () => port } });
    Object.assign(window, {
      port: {
        send: (text: string) => source?.enqueue(new TextEncoder().encode(text)),
        unplug: () => {
          const lost = source;
          port.readable = null;
          lost?.error(new DOMException('The device has been lost.', 'NetworkError'));
        }
      }
    });
  });
}

interface Port {
  send: (text: string) => void;
  unplug: () => void;
}

const send = (page: Page, text: string): Promise<void> =>
  page.evaluate((bytes) => (window as unknown as { port: Port }).port.send(bytes), text);

test('a gauge on a cable is learnt from its lines, read, and its noise left out', async ({
  page
}) => {
  await emulatePort(page);
  const jobId = await seedJob(page, smallJob([6, 5]));
  await page.clock.install();
  await page.goto(`/job/${jobId}/sort`);
  await page.getByRole('button', { name: 'Options' }).click();
  await page.getByRole('button', { name: 'Connect a gauge' }).click();
  await expect(page.getByText('Take 3 more trial readings')).toBeVisible();
  // What comes at once after opening may be the rest of a line.
  await page.clock.fastForward(300);
  await send(page, '01A+006.40\r\n01A+0');
  await send(page, '05.95\r\n01A+007.10\r\n');
  await expect(page.getByText('The gauge is learnt')).toBeVisible();
  await expect(page.locator('pre')).toContainText('01A+005.95');
  expect((await eventsOf(page, jobId)).filter(({ type }) => type === 'slateGauged')).toEqual([]);
  await send(page, '01A+006.45\r\n');
  await expect(page.locator('.verdict')).toContainText('6.45 mm');
  await send(page, '??x#\r\n');
  await expect(page.getByText('Not a reading, left out: ??x#')).toBeVisible();
  await send(page, '01A+005.20\r\n01A+005.20\r\n');
  await expect(page.locator('.verdict')).toContainText('5.20 mm');
  await page.evaluate(() => (window as unknown as { port: Port }).port.unplug());
  await expect(page.getByText('The gauge was unplugged')).toBeVisible();
  await expect
    .poll(async () =>
      (await eventsOf(page, jobId))
        .filter(({ type }) => type === 'slateGauged')
        .map(({ body }) => body.points)
    )
    .toEqual([[645], [520], [520]]);
});

test('where the browser has no serial ports, none is offered', async ({ page }) => {
  await page.addInitScript(() =>
    Object.defineProperty(Navigator.prototype, 'serial', { value: undefined })
  );
  const jobId = await seedJob(page, smallJob([6, 5]));
  await page.goto(`/job/${jobId}/sort`);
  await page.getByRole('button', { name: 'Options' }).click();
  await expect(page.getByLabel('Vibration')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Connect a gauge' })).toHaveCount(0);
});

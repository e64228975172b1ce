import { type Page, expect, test } from '@playwright/test';
import {
  expectGapless,
  expectSameWhenRebuilt,
  jobIdOf,
  jobOnDisk,
  lostOf
} from '../faults/journal-on-disk.ts';
import { report } from '../support/rounds.ts';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';

const READINGS = 600;

declare global {
  interface Window {
    /** Closes the app's connections as a phone does in the background; gives how many there were. */
    closeConnections: () => number;
    /** Makes the browser ask for the database in a newer version, then gives up. */
    askForNewer: () => Promise<number>;
  }
}

/** Gives the page two ways to lose its connection. */
async function letConnectionsFall(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const open = IDBFactory.prototype.open;
    let connections: IDBDatabase[] = [];
    IDBFactory.prototype.open = function (...given) {
      const request = open.apply(this, given);
      request.addEventListener('success', () => connections.push(request.result));
      return request;
    };
    window.closeConnections = () => {
      const fallen = connections;
      connections = [];
      for (const connection of fallen) connection.close();
      return fallen.length;
    };
    window.askForNewer = () =>
      new Promise((done) => {
        const request = open.call(indexedDB, 'evencourse', 9999);
        request.onupgradeneeded = () => request.transaction?.abort();
        request.onerror = (event) => {
          event.preventDefault();
          done(1);
        };
      });
  });
}

test('J1, J3, J6: a connection closed under the app loses and doubles nothing', async ({
  page
}) => {
  test.setTimeout(300_000 + READINGS * 2000);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  await letConnectionsFall(page);
  await startSorting(page);
  const jobId = jobIdOf(page);
  const acknowledged: number[] = [];
  let closed = 0;
  for (let reading = 0; reading < READINGS; reading++) {
    const hundredths = 400 + (reading % 500);
    const way = reading % 4;
    if (way === 1) {
      // Closed between two readings, while the app is idle.
      closed += await page.evaluate(() => window.closeConnections());
    } else if (way === 2) {
      // Another page asks for a newer database and gives up: the browser makes the app let go.
      closed += await page.evaluate(() => window.askForNewer());
    }
    if (way === 3) {
      // Closed while the reading is on its way.
      const saved = gaugeSlate(page, hundredths);
      closed += await page.evaluate(() => window.closeConnections());
      await saved;
    } else await gaugeSlate(page, hundredths);
    acknowledged.push(hundredths);
  }
  await expect(page.getByRole('alert')).toHaveCount(0);
  const { events } = await jobOnDisk(page, jobId);
  expect(lostOf(acknowledged, events)).toEqual([]);
  expect(events.filter(({ type }) => type === 'slateGauged')).toHaveLength(READINGS);
  expectGapless(events);
  expect(closed).toBeGreaterThan(READINGS / 2);
  expect(errors).toEqual([]);
  await expectSameWhenRebuilt(page, jobId);
  report('connection closed', {
    readings: READINGS,
    'connections closed': closed,
    lost: 0,
    doubled: 0
  });
});

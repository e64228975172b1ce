import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { sizeOfScreen } from './budget.ts';
import { expect, test } from './helpers.ts';
import { eventsOf } from './seed-job.ts';

/** Twenty slates of an invented delivery, mm: three heaps, thick, medium and thin. */
const READINGS = [
  '7.8',
  '7.4',
  '7.6',
  '7.2',
  '8.1',
  '7.9',
  '7.5',
  '6.4',
  '6.1',
  '6.3',
  '6.0',
  '6.5',
  '6.2',
  '5.9',
  '4.8',
  '4.6',
  '5.0',
  '4.9',
  '4.5',
  '4.7'
];

/** Taps so far, those of readings left out. */
let taps = 0;
async function tap(target: Locator): Promise<void> {
  taps++;
  await target.click();
}

const main = (page: Page) => page.locator('main');
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

async function gauge(page: Page, readings: readonly string[]): Promise<void> {
  for (const text of readings) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
}

/** From the list of jobs to the gauge, for a stock whose number of courses is known. */
async function openMeasuring(page: Page, slates = '1200', courses = '29'): Promise<void> {
  await page.goto('/');
  await tap(page.getByRole('link', { name: 'Quick split' }));
  await tap(page.getByLabel('How many slates?'));
  await page.keyboard.type(slates);
  await tap(page.getByLabel('Courses, eave to ridge'));
  await page.keyboard.type(courses);
  await tap(button(page, 'Measure 20 slates'));
}

async function expectFewWords(page: Page): Promise<void> {
  const { words, text } = await sizeOfScreen(page);
  expect(words, text).toBeLessThanOrEqual(60);
}

async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
}

test('twenty readings give the split in at most 12 taps and 60 words, and become a job', async ({
  page
}) => {
  taps = 0;
  await openMeasuring(page);
  await expect(page.locator('.verdict')).toContainText('0 of 20');
  await expectFewWords(page);
  await expectAccessible(page);
  await gauge(page, READINGS.slice(0, 12));
  await expect(page.locator('.verdict')).toContainText('6.50 mm · 12 of 20');
  await expectFewWords(page);
  // Nothing is lost where the page is left in the middle.
  await page.reload();
  await expect(page.locator('.verdict')).toContainText('12 of 20');
  await gauge(page, READINGS.slice(12));

  const lines = page.getByRole('list', { name: 'Where to split' }).getByRole('listitem');
  await expect(lines).toHaveText([
    /Thick\s*[67]\.\d+ and over\s*about \d+ courses/,
    /Medium\s*5\.\d+ to [67]\.\d+\s*\d+ courses/,
    /Thin\s*under 5\.\d+\s*\d+ courses/
  ]);
  const counts = (await lines.allTextContents()).map((line) =>
    Number(/(\d+) courses/.exec(line)?.[1])
  );
  expect(counts.reduce((sum, count) => sum + count, 0)).toBe(29);
  await expect(page.getByRole('img', { name: /The roof from eave to ridge/ })).toBeVisible();
  await expectFewWords(page);
  await expectAccessible(page);
  await page.reload();
  await expect(lines).toHaveCount(3);

  await tap(button(page, 'Keep as a job'));
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  expect(taps).toBeLessThanOrEqual(12);
  const events = await eventsOf(page, new URL(page.url()).pathname.split('/')[2]);
  const gauged = events.filter(({ type }) => type === 'slateGauged');
  expect(gauged.map(({ body }) => (body.points as number[])[0])).toEqual(
    READINGS.map((text) => Math.round(Number(text) * 100))
  );
  expect(events.find(({ type }) => type === 'palletAdded')?.body).toMatchObject({ slates: 1200 });
  expect(events.at(-1)).toMatchObject({ type: 'gradesSet', body: { sampleSlates: 20 } });
  // The draft went into the job: the next quick split begins empty.
  await page.goto('/quick');
  await expect(page.getByLabel('How many slates?')).toHaveValue('');
});

test('rafter, width and slate give the courses, and a job with its roof', async ({ page }) => {
  await page.goto('/quick');
  await page.getByLabel('How many slates?').fill('1400');
  await button(page, 'Rafter, width and slate').click();
  await page.getByLabel('Rafter length').fill('5000');
  await page.getByLabel('Width at the eave').fill('8000');
  await button(page, 'Measure 20 slates').click();
  await page.getByText('Paste a list').click();
  await page.getByLabel('Thicknesses in mm, one a line').fill(READINGS.join('\n'));
  await button(page, 'Take the list').click();
  await expect(page.getByRole('list', { name: 'Where to split' })).toContainText('courses');
  await expectFewWords(page);
  await button(page, 'Keep as a job').click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  const types = (await eventsOf(page, new URL(page.url()).pathname.split('/')[2])).map(
    ({ type }) => type
  );
  expect(types.slice(0, 4)).toEqual(['jobOpened', 'palletAdded', 'slateSpecSet', 'slopeSet']);
});

test('bad numbers and rubbish get one sentence each, and nothing is lost', async ({ page }) => {
  await openMeasuring(page, '0', 'many');
  await expect(page.getByText('a whole number from 1 to 100,000')).toBeVisible();
  await expect(page.getByText('a whole number from 1 to 300')).toBeVisible();
  await page.getByLabel('How many slates?').fill('20');
  await page.getByLabel('Courses, eave to ridge').fill('29');
  await button(page, 'Measure 20 slates').click();
  await expect(page.getByText('less than one slate a course')).toBeVisible();
  await page.getByLabel('How many slates?').fill('1200');
  await button(page, 'Measure 20 slates').click();

  await gauge(page, ['6.2']);
  await expect(page.locator('.verdict')).toContainText('1 of 20');
  await button(page, 'Show the split').click();
  await expect(page.getByRole('alert')).toHaveText(
    'One slate tells nothing yet: measure 6 or more, best 20.'
  );
  await button(page, 'Measure more').click();

  await page.getByText('Paste a list').click();
  const list = page.getByLabel('Thicknesses in mm, one a line');
  await list.fill('6.2 six 6.4');
  await button(page, 'Take the list').click();
  await expect(page.getByRole('alert')).toContainText('“six” is no thickness from 1.5 to 40 mm');
  await expect(list).toHaveValue('6.2 six 6.4');
  await expect(page.locator('.verdict')).toContainText('1 of 20');
  await list.fill('6.2 '.repeat(19));
  await button(page, 'Take the list').click();
  await expect(page.getByRole('alert')).toContainText(
    'All measure 6.20 mm: there is nothing to split'
  );
  await expect(button(page, 'Keep as a job')).toHaveCount(0);
  await button(page, 'Measure more').click();
  await expect(page.locator('.verdict')).toContainText('20 of 20');
  await button(page, 'Take back 6.20 mm').click();
  await expect(page.locator('.verdict')).toContainText('19 of 20');
  await expect(main(page)).not.toContainText('NaN');
});

test.describe('without a network', () => {
  test.use({ serviceWorkers: 'allow' });

  test('a quick split is made and kept', async ({ page, context }) => {
    await page.goto('/');
    await page.evaluate(() => navigator.serviceWorker.ready);
    await context.setOffline(true);
    await openMeasuring(page);
    await gauge(page, READINGS);
    await expect(page.getByRole('list', { name: 'Where to split' })).toContainText('courses');
    await page.reload();
    await button(page, 'Keep as a job').click();
    await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  });
});

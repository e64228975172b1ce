import type { Page } from '@playwright/test';
import { expect, openFolds, ownLetters, test } from './helpers.ts';
import { eventsOf, seedJob, smallJob } from './seed-job.ts';
import { gauge, verdict } from './sort-bench.ts';

test('a reading far from all the others is named, left out by one tap, and brought back', async ({
  page
}) => {
  const slate = (palletId: string, hundredths: number) => ({
    type: 'slateGauged',
    body: { palletId, points: [hundredths], gradesId: null, pile: null }
  });
  const jobId = await seedJob(page, [
    ...smallJob([]),
    ...[640, 610, 720, 1520].map((hundredths) => slate('pallet-A', hundredths)),
    ...['A', 'B', 'C'].flatMap((label) =>
      Array.from({ length: 20 }, (_, at) => slate(`pallet-${label}`, 560 + 8 * at))
    )
  ]);
  await page.goto(`/job/${jobId}/grades`);
  await expect(page.getByText('15.2 mm on pallet A is far from all the others.')).toBeVisible();
  await expect(page.getByText('rests on one reading')).toBeVisible();
  const before = await pileLines(page);
  const events = (await eventsOf(page, jobId)).length;
  await page.getByRole('button', { name: 'Leave it out' }).click();
  await expect(page.getByText('15.2 mm on pallet A is left out.')).toBeVisible();
  await expect(page.getByText('is far from all the others')).toHaveCount(0);
  await expect(page.getByText('rests on one reading')).toHaveCount(0);
  const after = await pileLines(page);
  expect(after).not.toEqual(before);
  expect(after[0]).not.toContain('about 11');
  expect((await eventsOf(page, jobId)).slice(events).map(({ type }) => type)).toEqual([
    'entryVoided'
  ]);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('15.2 mm on pallet A is far from all the others.')).toBeVisible();
  await expect.poll(() => pileLines(page)).toEqual(before);
});

/** What is said of each pile below the chart. */
async function pileLines(page: Page): Promise<string[]> {
  const lines = page.getByRole('list', { name: 'The piles' }).locator('li');
  await expect(lines.first()).toBeVisible();
  return (await lines.allInnerTexts()).map((text) => text.replace(/\s+/g, ' ').trim());
}

test('readings that wait for an answer are named on Job and on Grades, and lead to Sort', async ({
  page
}) => {
  const slate = (hundredths: number, type = 'slateGauged') => ({
    type,
    body: { palletId: 'pallet-A', points: [hundredths], gradesId: null, pile: null }
  });
  const usual = Array.from({ length: 40 }, (_, at) => slate(560 + 4 * at));
  const jobId = await seedJob(page, [
    ...smallJob([]),
    ...usual,
    // As if another device had read it: the seed's device is not this one.
    slate(1500, 'readingHeld')
  ]);
  const elsewhere =
    '1 reading waits for an answer on the device that took it and counts nowhere yet.';
  for (const screen of ['', '/grades']) {
    await page.goto(`/job/${jobId}${screen}`);
    await expect(page.getByText(elsewhere)).toBeVisible();
  }
  await page.goto(`/job/${jobId}/sort`);
  await page.getByRole('button', { name: 'Gauge', exact: true }).click();
  for (const text of ['15.2', '15.4']) await gauge(page, text);
  await expect(verdict(page)).toContainText(/15\.40 mm[^]*saved/);
  for (const screen of ['', '/grades']) {
    await page.goto(`/job/${jobId}${screen}`);
    await expect(
      page.getByText('2 readings wait for an answer on Sort and count nowhere yet.')
    ).toBeVisible();
    await expect(page.getByText(elsewhere)).toBeVisible();
  }
  await page.getByRole('link', { name: 'Answer on Sort' }).click();
  await expect(page.getByRole('button', { name: 'Measure again' })).toBeVisible();
});

test('of few readings answer and ways tell one figure, and the button is whole in the first view', async ({
  page
}) => {
  const jobId = await seedJob(page, [
    ...smallJob([]),
    ...['A', 'B', 'C'].flatMap((label, pallet) =>
      Array.from({ length: 20 }, (_, at) => ({
        type: 'slateGauged',
        body: {
          ...{ palletId: `pallet-${label}`, gradesId: null, pile: null },
          points: [400 + 31 * at - 60 * (pallet === 2 ? 1 : 0)]
        }
      }))
    )
  ]);
  await page.goto(`/job/${jobId}/grades`);
  await ownLetters(page);
  const answer = page.locator('.answer', { hasText: 'if sorted right, from 60 readings' });
  await expect(answer).toBeVisible();
  const per100 = Number(/About (\d+) joints? in 100/.exec(await answer.innerText())?.[1]);
  expect(per100).toBeGreaterThan(0);

  const button = await page.getByRole('button', { name: 'Use these grades' }).boundingBox();
  const bar = await page.getByRole('navigation').last().boundingBox();
  expect(button && button.y + button.height).toBeLessThanOrEqual(bar?.y ?? 0);

  await openFolds(page, 'How to split');
  const chosen = page.locator('label.chosen');
  await expect(chosen).toContainText('Split at the gaps');
  const listed = Number(/[\d.]+/.exec(await chosen.innerText())?.[0]);
  expect(Math.round(listed)).toBe(per100);
  await openFolds(page, 'How sure is this?');
  await expect(page.getByText(`In 100 joints ${listed} will show`)).toBeVisible();
  await expect(page.getByText('The answer above is tried on slates left out.')).toBeVisible();
  await expect(page.getByText('only 60 readings')).toHaveCount(0);
});

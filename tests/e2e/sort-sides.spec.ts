import { expect, openFolds, ownLetters, test } from './helpers.ts';
import { eventsOf, seedJob, smallJob } from './seed-job.ts';
import { expectAccessible, gauge, openBench, verdict } from './sort-bench.ts';

const OFFER = 'Next slate: measure left and right side';

test('every fifth slate of the sample may be measured left and right, and told to rock', async ({
  page
}) => {
  const jobId = await openBench(page, [], 'gauge');
  const offer = page.getByRole('button', { name: OFFER });
  for (const reading of ['5.90', '6.10', '6.30']) await gauge(page, reading);
  await expect(verdict(page)).toContainText('Measured: 6.30 mm');
  await expect(offer).toHaveCount(0);
  await gauge(page, '6.50');
  await expectAccessible(page);
  await offer.click();
  await expect(verdict(page)).toContainText('Measure its left side');
  await gauge(page, '6.00');
  await expect(verdict(page)).toContainText('Now its right side');
  await expect(page.getByText('does it rock by over 1.5 mm?')).toBeVisible();
  await expectAccessible(page);

  // the page is left and opened again: the left side is not lost
  await page.reload();
  await expect(verdict(page)).toContainText('Now its right side');
  const rocks = page.getByRole('button', { name: 'It rocks' });
  await rocks.click();
  await expect(rocks).toHaveAttribute('aria-pressed', 'true');
  await gauge(page, '6.40');
  await expect(verdict(page)).toContainText('Measured: 6.20 mm, taper 0.40 mm');
  await expect(offer).toHaveCount(0);

  // the tenth: one side is enough, and what was read of it counts
  for (const reading of ['5.90', '6.10', '6.30', '6.60']) await gauge(page, reading);
  await offer.click();
  await gauge(page, '5.50');
  await page.getByRole('button', { name: 'One side only' }).click();
  await expect(verdict(page)).toContainText('Measured: 5.50 mm');
  const bodies = (await eventsOf(page, jobId))
    .filter(({ type }) => type === 'slateGauged')
    .map(({ body }) => [body.points, body.rocks]);
  expect(bodies).toHaveLength(10);
  expect(bodies[4]).toEqual([[600, 640], true]);
  expect(bodies[9]).toEqual([[550], undefined]);
});

test('no key moves while slates are measured, whatever is offered and said', async ({ page }) => {
  await openBench(page, [], 'gauge');
  await ownLetters(page);
  const tops: (number | undefined)[] = [];
  for (let slate = 0; slate < 25; slate++) {
    await gauge(page, `${slate % 5 === 2 ? 11 : 6}.${10 + slate}`);
    await expect(verdict(page)).toContainText(/saved/);
    const key = await page.getByRole('button', { name: 'Take the number' }).boundingBox();
    tops.push(key?.y);
  }
  await expect(verdict(page)).toContainText('Pallet A: 25 measured. Take pallet B.');
  expect(new Set(tops).size).toBe(1);
});

test('nothing asks for left and right once there are grades', async ({ page }) => {
  await openBench(page, [6, 5], 'gauge');
  for (const reading of ['5.90', '6.10', '6.30', '6.50']) await gauge(page, reading);
  await expect(verdict(page)).toContainText('6.50 mm');
  await expect(page.getByRole('button', { name: OFFER })).toHaveCount(0);
});

for (const { slates, says } of [
  {
    slates: 7,
    says: [
      'Taper from left to right is taken as 0.30 mm, our figure: 7 of at least 8 slates measured on both sides.',
      '2 of 7 slates tried rock by over 1.5 mm on a flat board: 4 % to 71 % of all (95 % sure). Sorting by thickness does not cure twist.'
    ]
  },
  {
    slates: 10,
    says: [
      // 0.5 mm from left to right, less two readings of a gauge of 0.05 mm: 0.495 mm
      'Taper from left to right: 0.49 mm, from 10 slates measured on both sides. It is allowed for.',
      '2 of 10 slates tried rock by over 1.5 mm on a flat board: 3 % to 56 % of all (95 % sure). Sorting by thickness does not cure twist.'
    ]
  }
])
  test(`Grades says whose taper is allowed for, and that sorting cures no twist: ${slates} slates`, async ({
    page
  }) => {
    const sides = Array.from({ length: slates }, (_, at) => ({
      type: 'slateGauged',
      body: {
        palletId: 'pallet-A',
        points: [500 + 20 * at, 550 + 20 * at],
        gradesId: null,
        pile: null,
        rocks: at < 2
      }
    }));
    const jobId = await seedJob(page, [...smallJob([]), ...sides]);
    await page.goto(`/job/${jobId}/grades`);
    await openFolds(page, 'How sure is this?');
    for (const line of says) await expect(page.getByText(line)).toBeVisible();
  });

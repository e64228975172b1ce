import type { Locator } from '@playwright/test';
import { expect, openExample, openFolds, test } from './helpers.ts';
import { seedJob, smallJob } from './seed-job.ts';

const readNumber = (text: string | undefined): number => Number((text ?? '').replaceAll(',', ''));

test('the figures of the worked example can be followed from one to the next', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/grades`);
  await openFolds(page, 'How sure is this?');
  const basis = page.getByText(/^[\d,]+ readings \(/);
  await expect(basis).toContainText('sorted by eye, of');

  await test.step('readings are what was sampled, gauged before the grades, and sorted', async () => {
    const [, all, ...parts] =
      /^([\d,]+) readings \((\d+) in the sample, (\d+) before there were grades, (\d+) while sorting\)/.exec(
        await basis.innerText()
      ) ?? [];
    expect(parts.map(readNumber).reduce((sum, part) => sum + part, 0)).toBe(readNumber(all));
  });

  await test.step('the hand that is known has figures, though it is not known from before the grades', async () => {
    const section = await openFolds(page, 'Compare the splits', 'How much do gauge and eye cost?');
    const hand = section.getByRole('row', { name: /^Finch by eye, off by [\d.]+ mm/ });
    await expect(hand).toHaveCount(1);
    const kickers = async (row: Locator): Promise<number> =>
      Number(await row.locator('td').first().innerText());
    const ideal = section.getByRole('row', { name: /^Without error/ });
    expect(await kickers(hand)).toBeGreaterThan(await kickers(ideal));
  });

  await test.step('piles as cut add up to the stock, in every way', async () => {
    const [, stock] = /([\d,]+) usable of/.exec(await basis.innerText()) ?? [];
    const section = await openFolds(page, 'The four splits side by side');
    const rows = section.getByRole('row', { name: /^\d (Thick|Medium|Thin)/ });
    await expect(rows).toHaveCount(3);
    const cells = await Promise.all(
      (await rows.all()).map((row) => row.locator('td').allInnerTexts())
    );
    for (const way of [0, 1, 2, 3]) {
      const slates = cells.map((row) => readNumber(/([\d,]+) slates/.exec(row[way])?.[1]));
      expect(slates.reduce((sum, own) => sum + own, 0)).toBe(readNumber(stock));
    }
  });

  await test.step('the ways to cut are told on slates held out too, and as the hand sorts', async () => {
    const section = page
      .locator('details')
      .filter({ has: page.locator(':scope > summary h2:text-is("The four splits side by side")') });
    const held = section.getByRole('row', { name: /^Tried on slates left out/ }).locator('td');
    await expect(held.nth(0)).toHaveText(/^[\d.]+$/);
    const numbersOf = async (cells: Locator): Promise<number[]> =>
      (await cells.allInnerTexts()).slice(0, 3).map(Number);
    const [, suited, equal] = await numbersOf(held);
    expect(suited).toBeLessThan(equal);
    const byHand = await numbersOf(
      section.getByRole('row', { name: /^Sorted by eye by Finch/ }).locator('td')
    );
    const byGauge = await numbersOf(
      section.getByRole('row', { name: /^Sorted by gauge/ }).locator('td')
    );
    for (const [way, kickers] of byHand.entries()) expect(kickers).toBeGreaterThan(byGauge[way]);
  });

  await test.step('a further pile is compared with the best that these piles can do', async () => {
    const [, now] =
      /In 100 joints ([\d.]+) will show/.exec(await page.locator('main').innerText()) ?? [];
    const section = await openFolds(page, 'How many piles?');
    await expect(section).toContainText(`with the split above ${now}.`);
    const best = async (piles: number): Promise<string> => {
      const cells = await section
        .locator('tbody tr')
        .nth(piles - 1)
        .locator('td')
        .allInnerTexts();
      const value = (said: string): number => (said === '<0.01' ? 0 : Number(said));
      return cells.map((cell) => cell.trim()).sort((one, other) => value(one) - value(other))[0];
    };
    await expect(section).toContainText(
      `With 3 piles at their best ${await best(3)} joints in 100 will show`
    );
    await expect(section).toContainText(
      (await best(4)) === (await best(3))
        ? 'A fourth pile would save nothing.'
        : `A fourth pile would bring the best down to ${await best(4)}`
    );
  });

  await test.step('an odd pallet is told by its difference from those that are not odd', async () => {
    const section = await openFolds(
      page,
      'Pallets, gauge and eye',
      'Are the pallets alike? Measure more?'
    );
    await expect(section.getByText(/^Pallet .* is odd/)).toBeVisible();
    const rows = await section.locator('tbody tr').all();
    const pallets = await Promise.all(
      rows.map(async (row) => ({
        name: await row.locator('th').innerText(),
        meanMm: parseFloat(await row.locator('td').nth(2).innerText())
      }))
    );
    const usual = pallets.filter(({ name }) => !name.includes('odd'));
    const usualMm = usual.reduce((sum, { meanMm }) => sum + meanMm, 0) / usual.length;
    const odd = pallets.filter(({ name }) => name.includes('odd'));
    expect(odd.map(({ name }) => name)).toEqual(['C2, odd']);
    for (const { name, meanMm } of odd) {
      const words = section.getByText(`Pallet ${name.split(',')[0]} is odd`);
      const [, size, way] = /([\d.]+) mm (thicker|thinner)/.exec(await words.innerText()) ?? [];
      const differenceMm = way === 'thicker' ? Number(size) : -Number(size);
      // each shown mean is rounded to a hundredth of a millimetre
      expect(Math.abs(differenceMm - (meanMm - usualMm))).toBeLessThan(0.016);
    }
  });

  await test.step('that no pile falls short speaks of expected slates, and leads to the chances', async () => {
    const section = await openFolds(page, 'Is the stock still like the sample?');
    await expect(section).toContainText('By the slates expected on each pile');
    await expect(section).toContainText(/from [\d.]+ mm thinner to [\d.]+ mm thicker/);
    await section.getByRole('link', { name: 'See the chances on Courses' }).click();
    await expect(page.getByText('Will each pile last?')).toBeVisible();
  });
});

test('a bar that nobody saw a slate of is not told as empty for certain', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/grades`);
  const section = await openFolds(page, 'Compare the splits', 'Every bar as a table');
  const none = section.getByRole('row', { name: /none seen/ });
  await expect(none.first()).toBeVisible();
  await expect(none.first().locator('td').nth(1)).toHaveText('–');
  await expect(section.getByRole('cell', { name: '0 to 0', exact: true })).toHaveCount(0);
  await expect(section.getByText('None seen is not proof that there is none.')).toBeVisible();
});

test('few readings of one pallet of two say how little they tell', async ({ page }) => {
  const pallets = ['A', 'B'].map((label) => ({
    type: 'palletAdded',
    body: { palletId: label, label, slates: 600 }
  }));
  const gauged = Array.from({ length: 25 }, (_, n) => ({
    type: 'slateGauged',
    body: { palletId: 'A', points: [430 + 13 * n], gradesId: null, pile: null }
  }));
  const jobId = await seedJob(page, [
    { type: 'jobOpened', body: { name: 'Few' } },
    ...pallets,
    ...gauged
  ]);
  await page.goto(`/job/${jobId}/grades`);
  await openFolds(page, 'How sure is this?');
  const piles = page.getByRole('table', { name: 'What each pile will hold' });
  await expect(piles.locator('td.slates').first()).toContainText(
    'range not known: only one pallet of several was measured'
  );
  await expect(page.getByText(/^Only 25 readings/)).toBeVisible();
  await expect(page.getByText('From 25 readings these figures are too good').first()).toBeVisible();
  // With eight piles some are of one reading, which has no spread.
  await openFolds(page, 'How to split');
  for (let more = 0; more < 5; more++)
    await page.getByRole('button', { name: 'One pile more' }).click();
  await openFolds(page, 'Compare the splits');
  const section = await openFolds(page, 'How many piles?');
  await expect(section).toContainText('Eight piles are the most');
  const spreads = await piles.locator('td[data-label="Usual variation"]').allInnerTexts();
  expect(spreads.map((text) => text.trim())).not.toContain('0.00 mm');
});

for (const { spread, apart, says } of [
  // Piles about 1 mm wide: of slates left out some kick, by their taper.
  { spread: 'wide', apart: 7, says: 'Less than 1 joint in 100 will show if sorted right' },
  // All within 0.4 mm of each other: none left out kicks either, told as at best.
  { spread: 'narrow', apart: 1, says: 'Less than 1 joint in 1,000 will show at best' }
])
  test(`from few readings of a ${spread} spread the answer is the one from slates left out`, async ({
    page
  }) => {
    const gauged = Array.from({ length: 40 }, (_, at) => ({
      type: 'slateGauged',
      body: {
        palletId: at % 2 === 0 ? 'pallet-A' : 'pallet-B',
        points: [450 + apart * ((at * 29) % 40) + (at % apart)],
        gradesId: null,
        pile: null
      }
    }));
    const jobId = await seedJob(page, [...smallJob([], ['A', 'B']), ...gauged]);
    await page.goto(`/job/${jobId}/grades`);
    await expect(page.getByText(says)).toContainText('from 40 readings; unsorted');
  });

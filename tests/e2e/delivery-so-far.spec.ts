import type { Page } from '@playwright/test';
import { expect, openEveryFold, test } from './helpers.ts';
import { type SeedAct, seedJob } from './seed-job.ts';

const LIST = '01900000-0000-7000-8000-0000000000cc';

/** Two pallets of 600 slates, a list of 80 places, and so many of them measured as walked. */
function delivery(measured: number, { thick = 3, spare = {} } = {}): SeedAct[] {
  const places = ['A', 'B'].flatMap((label) =>
    Array.from({ length: 40 }, (_, index) => ({
      palletId: `pallet-${label}`,
      layer: 1 + Math.floor(index / 10),
      place: 1 + (index % 10)
    }))
  );
  return [
    { type: 'jobOpened', body: { name: 'Seeded' } },
    {
      type: 'deliveryDeclared',
      body: {
        supplier: 'Heron',
        lengthMm: 500,
        widthMm: 250,
        nominalThicknessMm: 5,
        tolerancePercent: 35,
        slatesOrdered: 1200,
        stackOf100Mm: 540
      }
    },
    { type: 'jobSettingsSet', body: { sortingRatePerHour: 30, sortingPacePerHour: 300 } },
    ...['A', 'B'].map((label) => ({
      type: 'palletAdded',
      body: { palletId: `pallet-${label}`, label, slates: 600, layers: 10, perLayer: 60 }
    })),
    {
      type: 'sampleDrawn',
      body: {
        seed: 1,
        plan: 'own',
        planSize: 80,
        acceptAtMost: 7,
        good: { share: 0.04, acceptance: 0.95 },
        poor: { share: 0.15, acceptance: 0.1 },
        positions: places
      }
    },
    ...places.slice(0, measured).map(({ palletId, layer, place }, index) => ({
      type: 'slateGauged',
      body: {
        palletId,
        points: [index < thick ? 900 : 450 + index],
        gradesId: null,
        pile: null,
        sample: { drawId: LIST, layer, place, ...(index === 0 && spare) }
      }
    }))
  ];
}

/** Seeds the job; the list gets the id that its slates name. */
async function seed(page: Page, acts: SeedAct[]): Promise<string> {
  const drawAt = acts.findIndex(({ type }) => type === 'sampleDrawn');
  const jobId = await seedJob(page, acts, 4, (index) => (index === drawAt ? LIST : undefined));
  return `/job/${jobId}`;
}

/** The words of the page, and the message where there is one. */
async function wordsOf(page: Page): Promise<string> {
  await expect(page.getByRole('heading', { name: 'What was found so far' })).toBeVisible();
  await openEveryFold(page);
  const message = page.getByLabel('Message to the supplier');
  const said = (await message.count()) > 0 ? await message.inputValue() : '';
  return `${await page.locator('main').innerText()}\n${said}`;
}

const OF_THE_WHOLE =
  /95 % confidence|In the whole delivery|[Uu]sable|It (would )?costs?\b|Hours of/;

for (const part of ['findings', 'sheet'])
  test(`${part}: 12 of 80 on one pallet tell nothing of the whole delivery`, async ({ page }) => {
    const job = await seed(page, delivery(12));
    await page.goto(`${job}/delivery/${part}`);
    const said = await wordsOf(page);
    const coverage =
      'The first 12 of 80 listed slates are measured, all of pallet A; nothing is known of pallet B yet.';
    expect(said).toContain(coverage);
    expect(said).toContain('3 of these 12 are outside the order.');
    expect(said).toContain('The plan is not decided yet.');
    expect(said).toContain(
      'To finish it, measure 28 slates of pallet A and 40 slates of pallet B.'
    );
    expect(said).toContain('Finishing the list: 12 of 80 are measured.');
    expect(said).not.toMatch(OF_THE_WHOLE);
    expect(said).not.toMatch(/accepts up to|accepts from/);
    await expect(page.getByRole('heading', { name: 'Verdict: Query' })).toBeVisible();
    if (part === 'findings') await expect(page.getByText('Finish the list first.')).toBeVisible();
    if (part === 'sheet') {
      const message = page.getByLabel('Message to the supplier');
      await expect(message).toHaveValue(
        new RegExp(coverage.replaceAll('.', '\\.') + '\\n3 of these 12 are outside the order\\.')
      );
      await expect(message).toHaveValue(/^We hold the delivery unfixed until our sample/m);
    }
  });

test('every pallet reached is not the end of the list; the end is', async ({ page }) => {
  const job = await seed(page, delivery(70));
  await page.goto(`${job}/delivery/findings`);
  expect(await wordsOf(page)).toContain(
    'The first 70 of 80 listed slates are measured, some of every pallet; 10 slates still to be measured.'
  );
  expect(await wordsOf(page)).not.toMatch(OF_THE_WHOLE);
  await page.getByRole('main').getByRole('link', { name: 'Measure' }).last().click();
  await expect(page.getByText('70 of 80 measured')).toBeVisible();
});

test('a plan that is decided before the end refuses, and says why the rest cannot turn it', async ({
  page
}) => {
  const job = await seed(page, delivery(20, { thick: 8 }));
  await page.goto(`${job}/delivery/sheet`);
  const said = await wordsOf(page);
  await expect(page.getByRole('heading', { name: 'Verdict: Refuse' })).toBeVisible();
  expect(said).toContain('The plan refuses, whatever the other 60 show.');
  expect(said).toMatch(/^We refuse the delivery and hold it unfixed\.$/m);
  expect(said).not.toMatch(OF_THE_WHOLE);
});

test('a finished list is judged as a whole; one dull slate marked alone tells no share', async ({
  page
}) => {
  const job = await seed(page, delivery(80, { spare: { ring: 'dull' } }));
  await page.goto(`${job}/delivery/findings`);
  await openEveryFold(page);
  await expect(page.getByText(/In the whole delivery: \d/).first()).toBeVisible();
  const ring = page
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: /^Ring/ }) });
  await expect(ring).toContainText('1, marked on 1 of 80');
  await expect(ring.getByRole('cell').last()).toHaveText('');
  await expect(
    page.getByText('Not marked on every slate: ring. So no range is given')
  ).toBeVisible();
  await expect(page.getByText(/A slate without a mark counts as sound here/)).toBeVisible();
});

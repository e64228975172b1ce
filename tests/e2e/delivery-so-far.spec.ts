import type { Page } from '@playwright/test';
import { expect, openEveryFold, test } from './helpers.ts';
import { delivery, seedDelivery as seed } from './delivery-job.ts';

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
    await page.goto(`${job}/delivery/${part}${part === 'sheet' ? '?paper=own' : ''}`);
    const said = await wordsOf(page);
    const coverage =
      'The first 12 of 80 listed slates are measured, all of pallet A; nothing is known of pallet B yet.';
    expect(said).toContain(coverage);
    expect(said).toContain('3 of these 12 are outside a limit of the order.');
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
        new RegExp(
          coverage.replaceAll('.', '\\.') +
            '\\n3 of 12 slates of the sample are outside a limit of the order:\\n– '
        )
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
  await page.goto(`${job}/delivery/sheet?paper=own`);
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
  await expect(page.locator('main details').first()).toBeVisible();
  await openEveryFold(page);
  await expect(page.getByText(/In the whole delivery: \d/).first()).toBeVisible();
  const ring = page
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: /^Ring/ }) });
  await expect(ring).toContainText('1, marked on 1 of 80');
  await expect(ring.getByRole('cell').last()).toHaveText('');
  await expect(
    page.getByText(/^Not looked at on every slate that chance picked for it: ring\. So no range/)
  ).toBeVisible();
  await expect(page.getByText(/A slate not looked at counts as sound here/)).toBeVisible();
});

/** Six slates measured on Sort, none of the list. */
const ON_SORT = Array.from({ length: 6 }, (_, at) => ({
  type: 'slateGauged',
  body: { palletId: 'pallet-A', points: [480 + at], gradesId: null, pile: null }
}));

test('Job and Delivery name what they count: for the grades, or of the sample list', async ({
  page
}) => {
  const job = await seed(page, [...delivery(0), ...ON_SORT]);
  await page.goto(job);
  await expect(page.locator('main')).toContainText(/Measured for grades\s*6 of 40/);
  await expect(page.locator('main')).toContainText(/Delivery\s*verdict not signed/);
  await page.goto(`${job}/delivery`);
  await expect(page.locator('main .answer')).toHaveText(
    '6 slates measured for grades, none for the check.'
  );
  await expect(page.locator('main')).toContainText(/Measure\s*0 of 80 listed/);
  await page.goto('/');
  await expect(page.getByText('6 of 40 measured for grades')).toBeVisible();
});

test('of a refused delivery Job and the list say so first, and not what to do next', async ({
  page
}) => {
  const signed = {
    type: 'verdictSigned',
    body: {
      ...{ verdict: 'refuse', signedBy: 'Wren', note: '' },
      ...{ journalSha256: '0'.repeat(64), events: 90 }
    }
  };
  const job = await seed(page, [...delivery(80), signed]);
  await page.goto(job);
  await expect(
    page.getByRole('heading', { name: 'Refused: do not sort, hole or fix' })
  ).toBeVisible();
  await expect(page.getByRole('heading', { name: /^Next:/ })).toHaveCount(0);
  await page.getByRole('link', { name: 'Open the claim' }).click();
  await expect(page.getByRole('heading', { name: 'Claim about a delivery' })).toBeVisible();
  await page.goto('/');
  await expect(page.getByText(/^Refused by Wren on /)).toBeVisible();
  await expect(page.getByText(/^Next:/)).toHaveCount(0);
});

test('once a query is signed Job says so, beside what is measured for the grades', async ({
  page
}) => {
  const signed = {
    type: 'verdictSigned',
    body: {
      ...{ verdict: 'query', signedBy: 'Wren', note: '' },
      ...{ journalSha256: '0'.repeat(64), events: 90 }
    }
  };
  const job = await seed(page, [...delivery(80), signed]);
  await page.goto(job);
  await expect(page.locator('main')).toContainText(/Delivery\s*Queried by Wren on /);
  await page.goto(`${job}/delivery`);
  await expect(page.locator('main .answer')).toContainText('Queried by Wren on ');
  await expect(page.locator('main')).toContainText(/Measure\s*80 of 80 listed/);
});

for (const fewLayers of [false, true])
  test(`layers that are alike are told ${fewLayers ? 'as a fact to the supplier, with advice to ourselves' : 'nobody where each slate was drawn by itself'}`, async ({
    page
  }) => {
    const acts = delivery(80).map((act) =>
      act.type === 'sampleDrawn' ? { ...act, body: { ...act.body, fewLayers } } : act
    );
    const job = await seed(page, acts);
    const told = page.getByText('picked one by one', { exact: false });
    const advice = page.getByText('To be surer, draw');
    const times = fewLayers ? 1 : 0;
    await page.goto(`${job}/delivery/sheet`);
    await expect(page.getByRole('heading', { name: 'Annex: limits' })).toBeVisible();
    await expect(told).toHaveCount(times);
    await expect(advice).toHaveCount(0);
    await page.getByRole('button', { name: 'Sheet for yourself' }).click();
    await expect(page.getByRole('heading', { name: 'Delivery sheet' })).toBeVisible();
    await expect(told).toHaveCount(times);
    await expect(advice).toHaveCount(times);
  });

test('slates looked over and never tried on a board are not told as tried', async ({ page }) => {
  const job = await seed(page, delivery(80, { spare: { ring: 'clear', defects: [] } }));
  for (const part of ['findings', 'sheet?paper=own', 'sheet']) {
    await page.goto(`${job}/delivery/${part}`);
    await expect(
      page
        .locator('main')
        .getByText(/outside a limit|outside;/)
        .first()
    ).toBeVisible();
    await openEveryFold(page);
    expect(await page.locator('main').textContent()).not.toMatch(/tried rock|on a flat board/);
  }
});

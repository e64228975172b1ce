import type { Page } from '@playwright/test';
import { expect, openEveryFold, openExample, openFolds, test } from './helpers.ts';
import { textOfPages } from './pdf-text.ts';

const withoutSpace = (text: string): string => text.replace(/\s/g, '');

/** Every row of every table of the page, each as the words of its cells. */
async function rowsOf(page: Page): Promise<string[][]> {
  const rows = await page
    .locator('article tbody tr')
    .evaluateAll((all) =>
      all.map((row) => [...row.children].map((cell) => cell.textContent ?? ''))
    );
  return rows.map((cells) => cells.map(withoutSpace).filter(Boolean));
}

/** Leaves a field of the order empty. */
async function leaveEmpty(page: Page, job: string, label: string): Promise<void> {
  await page.goto(`${job}/delivery/order`);
  await openFolds(page, 'What each answer costs');
  await page.getByLabel(label, { exact: true }).fill('');
  await page.getByRole('button', { name: 'Save the order' }).click();
  await expect(page.getByText('Saved.', { exact: true })).toBeVisible();
}

/** Waits for the findings and opens all their folds. */
async function openFindings(page: Page): Promise<void> {
  await expect(page.locator('.verdict')).toBeVisible();
  await openEveryFold(page);
}

/** The amounts that the page names for sorting, in the second finding and for each answer. */
async function sortingAmounts(page: Page): Promise<{ finding: string; answers: string[] }> {
  const amount = /(\d[\d,]*(?: to \d[\d,]*)? EUR)/;
  const words = (text: string): string => amount.exec(text.replace(/\s+/g, ' '))?.[1] ?? text;
  await expect(page.locator('#sorting .cost')).toBeVisible();
  const finding = words(await page.locator('#sorting .cost').innerText());
  const answers = page.locator('.costs .parts').filter({ hasText: 'sorting' });
  return { finding, answers: (await answers.allInnerTexts()).map(words) };
}

for (const part of ['findings', 'sheet'])
  test(`${part}: no amount contradicts another, whatever the order names`, async ({ page }) => {
    const job = await openExample(page);
    const open = async (): Promise<void> => {
      await page.goto(`${job}/delivery/${part}${part === 'sheet' ? '?paper=own' : ''}`);
      if (part === 'findings') await openFindings(page);
    };
    await open();
    const { finding, answers } = await sortingAmounts(page);
    expect(finding).toBe('215 to 235 EUR');
    expect(answers).toEqual([finding, finding]);
    await expect(page.locator('.costs').getByText(/not known|\benter\b/)).toHaveCount(0);

    await leaveEmpty(page, job, 'Joints in 100 that may show');
    await open();
    expect(await sortingAmounts(page)).toEqual({ finding, answers });
    const take = page.locator('.costs .choice').first();
    await expect(take).toContainText('0 to 320 EUR');
    await expect(take).toContainText(
      'if it is needed (the order does not say how many joints may show)'
    );
    await expect(page.getByText('Cost of sorting, if it is sorted: 215 to 235 EUR')).toBeVisible();

    await leaveEmpty(page, job, 'Price per thousand');
    await open();
    await expect(take).toContainText('0 to 235 EUR so far');
    await expect(take).toContainText('slates to make up: enter price per thousand');
    const enter = page.getByRole('link', { name: 'Enter what is missing in the order' });
    await expect(enter).toHaveCount(part === 'findings' ? 1 : 0);
  });

test('every figure that differs from another screen says what it rests on', async ({ page }) => {
  const job = await openExample(page);
  for (const part of ['findings', 'sheet']) {
    await page.goto(`${job}/delivery/${part}${part === 'sheet' ? '?paper=own' : ''}`);
    if (part === 'findings') await openFindings(page);
    await expect(
      page.getByText('These figures are from the 96 slates of the sample inside the order alone')
    ).toBeVisible();
    // The measured pace counts whole minutes, so it turns a little on the second the example began.
    await expect(
      page.getByText(/at 600 an hour as entered; measured on this job 3\d\d an hour: [\d.]+ to/)
    ).toBeVisible();
    await expect(
      page.getByText('A stack holds air between the slates, so it is not compared')
    ).toBeVisible();
    await expect(page.getByText(/Measured on pallets? [A-Z]\d/)).toBeVisible();
    const expected = page.getByText(/less than 1 (sorted into|in) 3 piles/);
    expect(await expected.count()).toBeGreaterThanOrEqual(2); // why, in full
    for (const words of await expected.allInnerTexts())
      expect(words).toMatch(/3 piles.*if every slate lies on its right pile/);
    await expect(
      page.getByText(
        'a delivery with 4.0 % outside is refused 4.5 % of the time. Buyer’s risk: a delivery with 11.5 % outside is still accepted 9.7 % of the time.'
      )
    ).toBeVisible();
    await expect(
      page.getByText(
        'With 7 % kept back for breakage and repairs at least 3,833 are wanted: 269 of them are the reserve.'
      )
    ).toBeVisible();
    await expect(page.getByText('25 slates with none outside still leave up to 574')).toBeVisible();
  }
  await page.goto(`${job}/delivery/compare`);
  await expect(page.getByText('expected from its sample alone')).toBeVisible();
});

test('what is missing is said on the findings and on the sheet, and holds the verdict up', async ({
  page
}) => {
  const job = await openExample(page);
  await leaveEmpty(page, job, 'Packed thickness of 100 slates');
  await leaveEmpty(page, job, 'Tolerance, plus or minus');
  await page.goto(`${job}/delivery/findings`);
  await expect(page.getByRole('heading', { name: 'Verdict: Query' })).toBeVisible();
  await expect(page.getByText('The label does not say how thick 100 slates pack.')).toBeVisible();
  await openFolds(page, 'Why, and what would change it?');
  await expect(page.getByText('reason to query: The label does not say how thick')).toBeVisible();
  await page.goto(`${job}/delivery/sheet?paper=own`);
  for (const item of [
    'No packed thickness of 100 slates from the label.',
    'No tolerance of thickness is agreed.',
    'No photos.',
    'No verdict is signed.'
  ])
    await expect(page.getByRole('listitem').filter({ hasText: item })).toBeVisible();
});

test('a laptop shows verdict, three findings and costs without scrolling @desktop', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/findings`);
  for (const part of [
    page.getByRole('heading', { name: 'Verdict: Query' }),
    page.getByText('The reserve may run short: 3,787 to 4,152 usable, 3,833 wanted.'),
    page.locator('.costs dl')
  ]) {
    await expect(part).toBeVisible();
    const box = await part.boundingBox();
    expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThanOrEqual(800);
  }
});

test('the sheet prints with its verdict on the first page, no page empty, no row cut', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/sheet?paper=own`);
  await expect(page.getByRole('heading', { name: 'Every reading that counts' })).toBeVisible();
  const pages = textOfPages(await page.pdf({ preferCSSPageSize: true }));
  expect(pages.length).toBeGreaterThan(2);
  for (const text of pages) expect(text.length).toBeGreaterThan(100);
  for (const words of [
    'Delivery sheet',
    'Verdict: Query',
    '1. Outside the order',
    '2. Sorting',
    '3. This roof'
  ])
    expect(pages[0]).toContain(withoutSpace(words));
  expect(pages[0]).not.toContain('?'); // every letter was read

  const rows = await rowsOf(page);
  expect(rows.length).toBeGreaterThan(110);
  const cut = rows.filter((cells) => !pages.some((text) => cells.every((c) => text.includes(c))));
  expect(cut).toEqual([]);
  const readings = pages.join('').match(/[ABC][12]\/[1-4]\/\d+/g) ?? [];
  expect(readings).toHaveLength(100);
});

test('the example: a signed sheet prints to PDF, and anyone can work its hash out again', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/findings`);
  await page.getByRole('button', { name: 'Sign the verdict' }).click();
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText('Write who signs')).toBeVisible();
  await page.getByLabel('Signed by').fill('Wren');
  await page.getByRole('button', { name: 'Take', exact: true }).click();
  await expect(page.getByText('The findings alone say: Query.')).toBeVisible();
  await expect(page.getByText('Taking it lets people hole and fix the slates')).toBeVisible();
  await expect(page.getByText('Do not hole or fix yet')).toBeVisible();
  await page.getByLabel('Why you decide otherwise').fill('the roof is smaller now');
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText(/^Take: signed by Wren/)).toBeVisible();
  await expect(page.getByText('Do not hole or fix yet')).toHaveCount(0);
  const panel = page.locator('.verdict');
  await expect(panel.getByRole('heading', { level: 2 })).toHaveText(/^Taken by Wren on \d/);
  await expect(panel.getByText('The findings alone say: Query.')).toBeVisible();
  await expect(page.getByText(/^Taken by Wren on .*: it may be holed and fixed\.$/)).toBeVisible();
  await expect(page.getByText('can end your right to claim').first()).toBeVisible();
  await page.goto(job);
  await page.getByRole('link', { name: /Taken by Wren on \d/ }).click();
  await expect(panel.getByRole('heading', { level: 2 })).toHaveText(/^Taken by Wren on \d/);

  await page.getByRole('link', { name: 'Sheet for the supplier' }).click();
  const hash = (await page.locator('.signature code').innerText()).trim();
  expect(hash).toMatch(/^[0-9a-f]{64}$/);
  const how = await page.getByText(/^It covers lines 2 to \d+ of the job file/).innerText();
  const events = Number(/lines 2 to (\d+)/.exec(how)?.[1]) - 1;
  await expect(page.getByLabel('Message to the supplier')).toHaveValue(new RegExp(hash));

  const pages = textOfPages(await page.pdf({ preferCSSPageSize: true }));
  expect(pages.join('')).toContain(hash);

  await page.getByRole('link', { name: 'All readings for a spreadsheet' }).click();
  await page.getByRole('button', { name: 'Make a backup file' }).click();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  const chunks: Buffer[] = [];
  for await (const chunk of await (await saving).createReadStream()) chunks.push(chunk as Buffer);
  const lines = Buffer.concat(chunks).toString('utf8').split('\n');
  const signed = lines.slice(1, 1 + events).map((line) => `${line}\n`);
  const { createHash } = await import('node:crypto');
  expect(createHash('sha256').update(signed.join('')).digest('hex')).toBe(hash);
});

test('whoever answers otherwise than the findings gives a reason, which message and sheet state', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/sheet?paper=own`);
  const message = page.getByLabel('Message to the supplier');
  await expect(message).toHaveValue(/^We query the delivery/m);

  await page.goto(`${job}/delivery/findings`);
  await page.getByRole('button', { name: 'Sign the verdict' }).click();
  await page.getByLabel('Signed by').fill('Wren');
  await page.getByRole('button', { name: 'Refuse', exact: true }).click();
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText('Write why: the findings alone do not say so.')).toBeVisible();
  await page.getByLabel('Why you decide otherwise').fill('the barn waits for no second look');
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText(/^Refuse: signed by Wren/)).toBeVisible();
  const decision =
    'By the findings alone this delivery would be queried; the buyer refuses it, because: the barn waits for no second look.';
  await expect(page.locator('.verdict').getByText(decision)).toBeVisible();
  await expect(page.locator('.verdict h2')).toHaveText(/^Refused by Wren on \d/);
  await expect(page.getByText('Refused: do not hole or fix')).toBeVisible();

  await page.getByRole('link', { name: 'Sheet for the supplier' }).click();
  await expect(page.locator('.answer').getByText(decision)).toBeVisible();
  await expect(page.locator('.signature').getByText(decision)).toBeVisible();
  const words = await message.inputValue();
  expect(words).toMatch(
    /^By the findings alone this delivery would be queried\.\nWe refuse it instead and hold it unfixed, because: the barn waits for no second look\.$/m
  );
  expect(words).not.toMatch(/\breserve\b|\broof\b/);
  expect(words).not.toContain('We query');
  const paper = textOfPages(await page.pdf({ preferCSSPageSize: true }));
  expect(paper[0]).toContain(withoutSpace(decision));
});

test('whoever takes it asks for nothing, unless he ticks what he asks for', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/order`);
  await openFolds(page, 'Papers of the delivery');
  await page.getByLabel('Replacement', { exact: true }).check();
  await page.getByRole('button', { name: 'Save the order' }).click();
  await expect(page.getByText('Saved.', { exact: true })).toBeVisible();
  const claim = page.locator('.claim');
  const message = page.getByLabel('Message to the supplier');
  const sign = async (button: string, credit: boolean): Promise<void> => {
    await page.goto(`${job}/delivery/findings`);
    await page.getByRole('button', { name: button }).click();
    await page.getByLabel('Signed by').fill('Wren');
    await page.getByRole('button', { name: 'Take', exact: true }).click();
    const nothing = page.getByText('Nothing ticked: message and claim ask for nothing.');
    await expect(nothing).toBeVisible();
    if (credit) await page.getByLabel('A credit').check();
    await expect(nothing).toHaveCount(credit ? 0 : 1);
    await page.getByLabel('Why you decide otherwise').fill('rain is coming');
    await page.getByRole('button', { name: 'Sign', exact: true }).click();
    await page.getByRole('link', { name: 'Sheet for the supplier' }).click();
    await expect(claim.locator('.answer')).toContainText('the buyer takes it');
  };
  await sign('Sign the verdict', false);
  for (const words of [await claim.innerText(), await message.inputValue()])
    expect(words).not.toMatch(/we ask for|replacement/i);
  await sign('Sign another verdict', true);
  await expect(claim.getByText('We take it and ask for a credit.')).toBeVisible();
  await expect(message).toHaveValue(/^We take it and ask for a credit\.$/m);
  for (const words of [await claim.innerText(), await message.inputValue()])
    expect(words).not.toMatch(/replacement/i);
});

test('the costs say which pace sorting is priced at', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/findings`);
  await openFindings(page);
  // The measured pace counts whole minutes, so it turns a little on the second the example began.
  await expect(page.locator('.costs')).toContainText(
    /Sorting is priced at the pace entered: 600 slates an hour; measured on this job: 3\d\d\./
  );
  await page.goto(`${job}/delivery/sheet?paper=own`);
  await expect(page.locator('.costs')).toContainText('Sorting is priced at the pace entered');
});

test('amounts without a currency say so, and ask for it beside them', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/findings`);
  await openFindings(page);
  await expect(page.getByText('Amounts marked (currency?)')).toHaveCount(0);
  await leaveEmpty(page, job, 'Currency');
  await page.goto(`${job}/delivery/findings`);
  await openFindings(page);
  await expect(page.locator('.costs .sum').first()).toHaveText(/\d\s\(currency\?\)$/);
  await expect(page.locator('#sorting .cost')).toContainText(/\d\s\(currency\?\)/);
  await expect(page.locator('.costs').getByText('Amounts marked (currency?)')).toBeVisible();
  await page.getByRole('link', { name: 'Enter the currency in the order' }).click();
  await expect(page.getByLabel('Currency', { exact: true })).toBeVisible();
});

test('the claim for the supplier shows no cost of the buyer and no note to self; their own sheet does', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/sheet`);
  await expect(page.getByRole('heading', { name: 'Claim about a delivery' })).toBeVisible();
  const paper = async (): Promise<string> =>
    textOfPages(await page.pdf({ preferCSSPageSize: true })).join('');
  const forSupplier = await paper();
  expect(forSupplier).toContain(withoutSpace('We query the delivery and hold it unfixed'));
  for (const words of [
    'EUR',
    'What each answer costs',
    'Cost of sorting',
    'What would change it',
    '2. Sorting',
    'kicker',
    'still missing'
  ])
    expect(forSupplier).not.toContain(withoutSpace(words));

  await page.getByRole('button', { name: 'Sheet for yourself' }).click();
  await expect(page.getByRole('heading', { name: 'Delivery sheet' })).toBeVisible();
  const forBuyer = await paper();
  for (const words of ['What each answer costs', 'Cost of sorting: ', 'What would change it'])
    expect(forBuyer).toContain(withoutSpace(words));
});

for (const format of ['A4', 'Letter'])
  test(`on ${format} the claim takes two pages, and its annex begins on a page of its own`, async ({
    page
  }) => {
    const job = await openExample(page);
    await page.goto(`${job}/delivery/sheet`);
    await expect(page.getByRole('heading', { name: 'Annex: limits' })).toBeVisible();
    const pages = textOfPages(await page.pdf({ format, preferCSSPageSize: format === 'A4' }));
    for (const text of pages) expect(text.length).toBeGreaterThan(100);
    const annexAt = pages.findIndex((text) => text.includes(withoutSpace('Annex: limits')));
    expect(annexAt).toBeGreaterThan(0);
    expect(annexAt).toBeLessThanOrEqual(2);
    // Above it stands the head of the page alone.
    const above = pages[annexAt].split(withoutSpace('Annex: limits'))[0];
    expect(above).toContain('Workedexample:thelongbarn·Claim');
    expect(above).toMatch(/page\dof\d·\d+\w+\d{4}·fingerprint[0-9a-f]{8}/);
    expect(above.length).toBeLessThan(90);
    expect(pages.slice(0, annexAt).join('')).toContain(withoutSpace('Name, date, signature'));
    for (const words of ['3.90 mm to 8.10 mm', 'order, line 2', 'Of 100 slates, 7 may be outside.'])
      expect(pages.slice(0, annexAt).join('')).toContain(withoutSpace(words));
    const readings =
      pages
        .slice(annexAt)
        .join('')
        .match(/[ABC][12]\/[1-4]\/\d+/g) ?? [];
    expect(readings).toHaveLength(100);
    const rows = await rowsOf(page);
    const cut = rows.filter((cells) => !pages.some((text) => cells.every((c) => text.includes(c))));
    expect(cut).toEqual([]);
  });

test('the sheet leaves the buttons and steps off the paper', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/sheet?paper=own`);
  await expect(page.getByRole('heading', { name: 'Delivery sheet' })).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('button', { name: 'Print, or keep as PDF' })).toBeHidden();
  await expect(page.getByRole('navigation').first()).toBeHidden();
  await expect(page.getByText('Name, date, signature')).toBeVisible();
  await expect(page.getByRole('img', { name: /lines mark what was ordered/ })).toBeVisible();
});

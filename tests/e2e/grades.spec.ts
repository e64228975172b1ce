import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { expect, openExample, openFolds, startJob, takeIn, test } from './helpers.ts';

const READINGS = 'seeds/readings.csv';

async function choosePiles(page: Page, piles: number): Promise<void> {
  await openFolds(page, 'How to split');
  const shown = page.getByRole('group', { name: 'Piles' }).locator('output');
  for (;;) {
    const now = Number(await shown.innerText());
    if (now === piles) return;
    const button = now < piles ? 'One pile more' : 'One pile fewer';
    await page.getByRole('button', { name: button }).click();
    await expect(shown).not.toHaveText(String(now));
  }
}

/** Cells of the pile table by pile, thickest first. */
async function pileCells(page: Page): Promise<string[][]> {
  await openFolds(page, 'How sure is this?');
  const rows = await page
    .getByRole('table', { name: 'What each pile will hold' })
    .locator('tbody tr')
    .all();
  return Promise.all(
    rows.map(async (row) =>
      (await row.locator('td').allInnerTexts()).map((cell) => cell.replace(/\s+/g, ' ').trim())
    )
  );
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

function readNumber(text: string): number {
  return Number(text.replaceAll(',', ''));
}

/** Opens every fold. They stand within folds, so each opened one may bring more. */
async function openAll(page: Page): Promise<void> {
  await openFolds(page, 'Compare the splits');
  await openFolds(page, 'Pallets, gauge and eye');
  await expect(async () => {
    const closed = await page.locator('main details:not([open])').evaluateAll((folds) => {
      for (const fold of folds as HTMLDetailsElement[]) fold.open = true;
      return folds.length;
    });
    expect(closed).toBe(0);
  }).toPass();
}

/** Ways to cut sorted values into runs, by the first value of every run but the first. */
function* cutsOf(length: number, piles: number, from = 1): Generator<number[]> {
  if (piles === 1) {
    yield [];
    return;
  }
  for (let cut = from; cut <= length - piles + 1; cut++)
    for (const rest of cutsOf(length, piles - 1, cut + 1)) yield [cut, ...rest];
}

const meanOf = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const squaresOf = (values: number[]) =>
  values.reduce((sum, value) => sum + (value - meanOf(values)) ** 2, 0);

/**
 * Share of pairs of different slates that kick, each pair by its chance. With a taper of 0.3 mm and a
 * gauge of 0.05 mm, as nobody measured either, and a slate of 500 mm with a headlap of 70 mm.
 */
function kickShare(values: number[], allowance: number): number {
  const leverage = (500 + 70) / (2 * 500);
  const variance = squaresOf(values) / Math.max(1, values.length - 1);
  const below = leverage ** 2 * (0.63 * variance + 0.4 * 0.3 ** 2);
  const s = Math.round(1000 * Math.sqrt(0.3 ** 2 / 2 + 2 * 0.05 ** 2 + below)) / 1000;
  let [kicks, pairs] = [0, 0];
  for (let one = 0; one < values.length; one++)
    for (let other = 0; other < one; other++) {
      pairs++;
      const step = values[one] - values[other];
      kicks += normalCdf((step - allowance) / s, 0, 1) + normalCdf((-step - allowance) / s, 0, 1);
    }
  return kicks / pairs;
}

test('shows for twelve slates the figures that brute force gives', async ({ page }) => {
  const slates = [4.1, 4.3, 4.4, 5.0, 5.2, 5.9, 6.1, 6.2, 7.4, 7.9, 8.3, 9.2];
  const job = await startJob(page, 'Twelve slates');
  const lines = slates.map((mm, index) => `${'AB'[index % 2]},${mm.toFixed(2)}`);
  await takeIn(page, job, `pallet,thickness_mm\n${lines.join('\n')}\n`);
  await page.goto(`${job}/grades`);

  let best = { within: Infinity, piles: [] as number[][] };
  for (const [one, two] of cutsOf(slates.length, 3)) {
    const piles = [slates.slice(0, one), slates.slice(one, two), slates.slice(two)];
    const within = piles.reduce((sum, pile) => sum + squaresOf(pile), 0);
    if (within < best.within) best = { within, piles };
  }
  const expected = best.piles.reverse().map((pile) => {
    const kickers = 100 * kickShare(pile, 1.5);
    const digits = kickers > 0.005 && kickers < 0.995 ? 2 : 1;
    return [
      `${pile.length} of 12 slates, every one measured`,
      `${meanOf(pile).toFixed(2)} mm`,
      `${pile[0].toFixed(2)} to ${pile[pile.length - 1].toFixed(2)} mm`,
      `${Math.sqrt(squaresOf(pile) / (pile.length - 1)).toFixed(2)} mm`,
      kickers < 0.01 ? '<0.01' : kickers.toFixed(digits),
      `${(pile[pile.length - 1] - pile[0]).toFixed(2)} mm`
    ];
  });
  await openFolds(page, 'How sure is this?');
  await expect(page.getByText('every one measured').first()).toBeVisible();
  expect(await pileCells(page)).toEqual(expected);

  const perHundred = best.piles.reduce(
    (sum, pile) => sum + (pile.length / slates.length) * 100 * kickShare(pile, 1.5),
    0
  );
  const unsorted = 100 * kickShare(slates, 1.5);
  await expect(
    page.getByText(`In 100 joints ${perHundred.toFixed(1)} will show with all`)
  ).toContainText(`Unsorted it would be ${unsorted.toFixed(1)}`);
});

test('sets grades by natural breaks, moves one by keyboard and sets them anew @desktop', async ({
  page
}) => {
  const job = await startJob(page, 'Mill yard');
  await page.goto(`${job}/files`);
  await page.getByLabel('Choose a CSV file').setInputFiles(READINGS);
  await expect(page.getByText('Taken in: 2,000 slates on 6 pallets.')).toBeVisible();

  await page.goto(`${job}/grades`);
  await openFolds(page, 'How to split');
  await expect(page.getByRole('radio', { name: /Split at the gaps/ })).toBeChecked();
  await expect(page.getByRole('radio', { name: /Best for this roof/ })).toBeVisible();
  await expect(page.getByText('Enter the roof first')).toBeVisible();
  const set = page.getByRole('button', { name: 'Use these grades' });
  await set.click();
  await expect(page.getByText('These grades are in use.')).toBeVisible();
  await expect(set).toHaveCount(0);

  const upper = page.getByRole('slider', { name: 'Boundary between 1 Thick and 2 Medium' });
  const before = Number(await upper.getAttribute('aria-valuenow'));
  const slates = await pileCells(page);
  await upper.focus();
  await page.keyboard.press('ArrowRight');
  await expect(upper).toHaveAttribute('aria-valuetext', `${(before + 0.05).toFixed(2)} mm`);
  await page.keyboard.press('PageUp');
  await expect(upper).toHaveAttribute('aria-valuetext', `${(before + 0.55).toFixed(2)} mm`);
  await page.keyboard.press('PageDown');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowDown');
  await expect(upper).toHaveAttribute('aria-valuetext', `${(before - 0.05).toFixed(2)} mm`);
  await expect(page.getByRole('radio', { name: /My own split/ })).toBeChecked();
  expect(await pileCells(page)).not.toEqual(slates);

  // A boundary stops at its neighbour.
  const lower = page.getByRole('slider', { name: 'Boundary between 2 Medium and 3 Thin' });
  await lower.focus();
  await page.keyboard.press('End');
  const highest = Number(await lower.getAttribute('aria-valuenow'));
  expect(highest).toBeCloseTo(before - 0.1, 9);
  await page.keyboard.press('PageDown');

  await set.click();
  await expect(page.getByText('These grades are in use.')).toBeVisible();
  const kept = await lower.getAttribute('aria-valuetext');
  await page.reload();
  await expect(page.getByText('These grades are in use.')).toBeVisible();
  await expect(lower).toHaveAttribute('aria-valuetext', String(kept));
});

test('a boundary follows the finger', async ({ page }) => {
  const job = await startJob(page, 'By thumb');
  await page.goto(`${job}/files`);
  await page.getByLabel('Choose a CSV file').setInputFiles(READINGS);
  await expect(page.getByText(/^Taken in:/)).toBeVisible();
  await page.goto(`${job}/grades`);
  const upper = page.getByRole('slider').first();
  const box = await upper.boundingBox();
  if (!box) throw new Error('the handle has no place on the screen');
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(48);
  const before = Number(await upper.getAttribute('aria-valuenow'));
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y, { steps: 5 });
  await page.mouse.up();
  const after = Number(await upper.getAttribute('aria-valuenow'));
  expect(after).toBeGreaterThan(before);
  expect(Math.round(after * 100) % 5).toBe(0);
});

test('tells what new grades mean for slates that are sorted', async ({ page }) => {
  const job = await startJob(page, 'Half sorted');
  await page.goto(`${job}/files`);
  await page.getByLabel('Choose a CSV file').setInputFiles(READINGS);
  await expect(page.getByText(/^Taken in:/)).toBeVisible();
  await page.goto(`${job}/grades`);
  await page.getByRole('button', { name: 'Use these grades' }).click();
  await expect(page.getByText('These grades are in use.')).toBeVisible();
  const upper = page.getByRole('slider', { name: 'Boundary between 1 Thick and 2 Medium' });
  const threshold = Number(await upper.getAttribute('aria-valuenow'));

  // Two slates just above the boundary and one far above it go on the thick pile.
  await page.goto(`${job}/sort`);
  await expect(page.getByRole('button', { name: /Thick/ })).toBeVisible();
  for (const mm of [threshold + 0.02, threshold + 0.03, threshold + 0.9]) {
    await page.keyboard.type(mm.toFixed(2));
    await page.keyboard.press('Enter');
    await expect(page.getByRole('main')).toContainText(`${mm.toFixed(2)} mm`);
    await expect(page.getByRole('main')).toContainText('saved');
  }

  await page.goto(`${job}/grades`);
  await upper.focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByText(/3 slates were sorted under the grades of/)).toBeVisible();
  await expect(page.getByText(/They keep the grades they were sorted under/)).toBeVisible();
  const again = page.getByRole('table', { name: 'Slates that must change pile' }).first();
  await expect(again.locator('tbody tr')).toHaveCount(1);
  await expect(again.locator('tbody tr')).toContainText('1 Thick → 2 Medium');
  await expect(again.locator('tbody td').nth(1)).toHaveText('2');
  await expect(again.locator('tbody td').nth(2)).toHaveText('3');
  await expect(
    page.getByText('feel or measure the 3 slates that lie on those piles').first()
  ).toBeVisible();

  await page.getByRole('button', { name: 'Use these grades' }).click();
  await expect(page.getByText('These grades are in use.')).toBeVisible();
  await expect(page.getByText(/3 slates were sorted under the grades of/)).toBeVisible();
});

test('every count told with taps lies in the interval told beside it, and so does the mean', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/grades`);
  await openFolds(page, 'How sure is this?');
  const counts = page.getByRole('table', { name: 'What each pile will hold' }).locator('td.slates');
  await expect(page.getByText(/sorted by eye, of/)).toBeVisible();
  const told = /^([\d,]+) between ([\d,]+) and ([\d,]+) of 4,\d+ slates$/;
  await expect(counts).toHaveText([told, told, told]);
  const numbersOf = (text: string): number[] => (told.exec(text) ?? []).slice(1).map(readNumber);
  const before = (await counts.allInnerTexts()).map(oneLine);
  for (const [slates, low, high] of before.map(numbersOf)) {
    expect(low).toBeLessThan(slates);
    expect(high).toBeGreaterThan(slates);
  }
  const basis = await page.getByText(/sorted by eye, of/).innerText();
  const [mean, low, high] = (
    /mean of the stock ([\d.]+) mm, between ([\d.]+) and ([\d.]+) mm with 95 % confidence/.exec(
      basis
    ) ?? []
  )
    .slice(1)
    .map(Number);
  expect(low).toBeLessThan(mean);
  expect(high).toBeGreaterThan(mean);

  // The intervals follow a boundary at once.
  const upper = page.getByRole('slider', { name: 'Boundary between 1 Thick and 2 Medium' });
  await upper.focus();
  await page.keyboard.press('PageUp');
  await expect(counts.first()).not.toHaveText(before[0]);
  await expect(counts).toHaveText([told, told, told]);

  // Without the taps the gauge tells alone, and says so.
  const withTaps = await counts.first().innerText();
  await openFolds(page, 'Pallets, gauge and eye', 'Sorted by eye: how good?');
  await page.getByRole('checkbox', { name: 'Count taps in the spread above' }).uncheck();
  await expect(counts.first()).not.toHaveText(withTaps);
  await expect(page.getByText(/sorted by eye, of/)).toHaveCount(0);
  await expect(counts).toHaveText([told, told, told]);
});

test('the four ways stand side by side, with the one that suits the roof', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/grades`);
  await openFolds(page, 'How to split');
  const suited = page.getByRole('radio', { name: /Best for this roof/ });
  await expect(suited).toHaveAccessibleName(/\d/);
  await openFolds(page, 'Compare the splits', 'The four splits side by side');
  const table = page
    .getByRole('region', { name: 'The four splits side by side' })
    .getByRole('table');
  await expect(table.locator('thead th')).toHaveText([
    'Figure',
    'Split at the gaps',
    'Best for this roof',
    'Same number in each',
    'My own split',
    'Unsorted',
    'All measured, laid in order'
  ]);
  const kickers = (await table.locator('tbody tr').first().locator('td').allInnerTexts()).map(
    (said) => (said.trim() === '<0.01' ? 0 : Number(said))
  );
  const [natural, suits, equal, , unsorted, perfect] = kickers;
  expect(suits).toBeLessThanOrEqual(natural);
  expect(suits).toBeLessThanOrEqual(equal);
  expect(perfect).toBeLessThanOrEqual(suits);
  expect(unsorted).toBeGreaterThan(natural);
});

test('says what to do without readings, with taps only, and with too few thicknesses', async ({
  page
}) => {
  const empty = await startJob(page, 'Empty');
  await page.goto(`${empty}/grades`);
  await expect(page.getByText('Nothing is measured yet')).toBeVisible();
  await expect(page.getByRole('link', { name: 'Measure slates' })).toHaveAttribute(
    'href',
    /\/sort$/
  );
  await expect(page.getByRole('link', { name: 'Load a file' })).toHaveAttribute('href', /\/files$/);

  const taps = await startJob(page, 'Taps only');
  await takeIn(page, taps, 'pallet,grade\nA,thick\nA,thin\nA,medium\n');
  await page.goto(`${taps}/grades`);
  await expect(page.getByText(/3 slates are sorted by eye and none is measured/)).toBeVisible();

  const one = await startJob(page, 'One thickness');
  await takeIn(page, one, 'pallet,thickness_mm\nA,6.00\nA,6.00\nB,6.00\n');
  await page.goto(`${one}/grades`);
  await expect(page.getByText('Every slate measured is 6.0 mm thick')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Use these/ })).toHaveCount(0);

  const few = await startJob(page, 'Three thicknesses');
  await takeIn(page, few, 'pallet,thickness_mm\nA,5.00\nA,6.00\nB,7.00\nB,7.00\n');
  await page.goto(`${few}/grades`);
  await choosePiles(page, 5);
  await expect(page.getByText('The slates measured have 3 different thicknesses')).toBeVisible();
  await choosePiles(page, 3);
  await expect(page.getByRole('button', { name: 'Use these grades' })).toBeEnabled();
  await expect(page.getByText(/^Only 4 readings/)).toBeVisible();
});

test('the kick allowance is kept for the job, and refused beside the field', async ({ page }) => {
  const job = await startJob(page, 'Allowance');
  await takeIn(page, job, 'pallet,thickness_mm\nA,5.00\nA,6.00\nB,7.00\nB,7.40\n');
  await page.goto(`${job}/grades`);
  await openFolds(page, 'What step do you accept?');
  const field = page.getByLabel('Biggest step you accept between neighbours');
  await field.fill('abc');
  await field.press('Tab');
  await expect(page.getByText('Type a step from 0 to 20 mm')).toBeVisible();
  await field.fill('0,5');
  await field.press('Tab');
  await expect(page.getByText(/^Saved: settings/)).toBeVisible();
  await page.reload();
  await expect(field).toHaveValue('0.5');
});

test('every part is accessible and nothing leaves a narrow screen', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/grades`);
  await expect(page.getByRole('slider').first()).toBeVisible();
  await choosePiles(page, 8);
  await page.getByRole('radio', { name: /Split at the gaps/ }).check();
  await openAll(page);
  await expect(page.getByRole('heading', { name: 'How many more slates?' })).toBeVisible();
  await expect(page.getByText(/Sorter: /).first()).toBeVisible();
  const found = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(found.violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => target)])).toEqual(
    []
  );
  for (const width of [320, 390, 844, 1280]) {
    await page.setViewportSize({ width, height: width === 844 ? 390 : 844 });
    const over = () =>
      page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth
      );
    await expect.poll(over, `at ${width} px`).toBeLessThanOrEqual(0);
  }
});

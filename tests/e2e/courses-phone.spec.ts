import { expect, openExample, openFolds, ownLetters, test } from './helpers.ts';

const whole = (text: string): number => Number(text.replace(/[^0-9]/g, '') || '0');

test('every pallet that gives a slate to a course is on screen with its number', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/courses`);
  await openFolds(page, 'Every course');
  const courses = page.locator('.scroll-x', { has: page.locator('tfoot') });
  await expect(courses).toHaveCount(2);
  const names = await courses.evaluateAll((places) =>
    places.map((place) => place.getAttribute('aria-label'))
  );
  expect(new Set(names).size, 'each slope has a name of its own').toBe(2);
  const list = await openFolds(page, 'Draw list');
  await expect(list.getByRole('row').filter({ hasText: /\d/ }).nth(4)).toBeVisible();
  await ownLetters(page);
  for (const cell of await list.locator('tbody tr').nth(4).locator('td.number:visible').all()) {
    const { x, width } = (await cell.boundingBox())!;
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x + width).toBeLessThanOrEqual(390);
    expect(whole(await cell.innerText())).toBeGreaterThan(0);
  }
});

test('on a phone each pile and each change is a block that names and shows its figures', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/courses`);
  const expectBlocks = async (table: string, first: string, labels: string[]): Promise<void> => {
    const row = page
      .locator('.scroll-x')
      .and(page.getByRole('region', { name: table }))
      .getByRole('row', { name: new RegExp(`^${first}`) });
    await expect(row).toBeVisible();
    const [head, ...lines] = await row.evaluate((line) =>
      [...line.children].map((cell) => {
        const { left, right, top } = cell.getBoundingClientRect();
        const label = getComputedStyle(cell, '::before').content.match(/^"(.+?) "/)?.[1];
        return { left, right, top, label, figure: cell.textContent ?? '' };
      })
    );
    expect(lines.map(({ label }) => label)).toEqual(labels);
    let above = head.top;
    for (const { left, right, top, figure } of lines) {
      expect(figure).toMatch(/\d/);
      expect(top).toBeGreaterThan(above);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(right).toBeLessThanOrEqual(390);
      above = top;
    }
  };
  await openFolds(page, 'Will each pile last?');
  await expectBlocks('Will each pile last?', '1 Thick', [
    'Slates',
    'Give or take (95 % confidence)',
    'Lays and breaks',
    'Chance that it runs out'
  ]);
  await openFolds(page, 'What if …?');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expectBlocks('What if', 'As set now', [
    'Joints that will show, in 100',
    'Joints that will show',
    'Changes of pile',
    'Left over'
  ]);
});

test('the lifts add up to the total that stands above them', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/courses`);
  await openFolds(page, 'Loading out');
  const said = await page.getByText(/kg in all/).innerText();
  const lifts = await page.locator('tr.lift td').allInnerTexts();
  expect(lifts.length).toBeGreaterThan(1);
  expect(whole(said.split(',').slice(1).join(',').split('kg')[0])).toBe(
    lifts.reduce((sum, mass) => sum + whole(mass), 0)
  );
});

test('Courses and Roof name the same undereave row, and its nails make up the whole roof', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/roof`);
  await openFolds(page, 'Undereave slates');
  await openFolds(page, 'Nails and mass by pile');
  await openFolds(page, 'What to order?');
  const wants = page.getByText(/^The roof takes \d+ undereave slates/);
  const row = (await wants.innerText()).match(/\d+ undereave slates.*/)![0];
  const [slates, wide] = row.match(/\d+/g)!.map(Number);
  const served = Number(
    (await page.getByText(/^At most \d+ of them/).innerText()).match(/\d+/)![0]
  );
  const more = whole(await page.getByText(/^The undereave row takes/).innerText());
  expect(more).toBe(2 * (slates + wide)); // two nails to a piece
  const byPile = page
    .locator('dl > div')
    .filter({ has: page.getByText('Nails by the plan', { exact: true }) })
    .locator('dd');
  const ofPiles = (await byPile.allInnerTexts()).reduce((sum, text) => sum + whole(text), 0);
  const ofRoof = page.getByRole('row', { name: /^Whole roof/ }).getByRole('cell');
  expect(ofPiles + more).toBe(whole(await ofRoof.last().innerText()));

  await page.goto(`${job}/courses`);
  await openFolds(page, 'Slate-and-a-halves and undereave');
  const sentence = page.getByText(/^The undereave row comes on top/);
  await expect(sentence).toContainText(`The undereave row comes on top: ${row}`);
  await expect(sentence).toContainText(`at most ${served}, marked for the undereave`);
  await expect(sentence).toContainText(`${slates - served} slates and ${wide} slate-and-a-halves.`);
});

import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openEveryFold, openFolds, ownLetters, startJob, test } from './helpers.ts';

/** Rules of WCAG 2.2, levels A and AA. */
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Opens the roof screen of a fresh job and gives the job's address. */
async function startRoof(page: Page): Promise<string> {
  const job = await startJob(page, 'Barn');
  await page.goto(`${job}/roof`);
  await expect(page.getByRole('heading', { name: 'Roof', level: 1 })).toBeVisible();
  return job;
}

const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });

async function type(page: Page, label: string, value: string): Promise<void> {
  await field(page, label).fill(value);
  await field(page, label).blur();
}

async function enterSlate(page: Page, length = '500', width = '250', headlap = '100') {
  await type(page, 'Length', length);
  await type(page, 'Width', width);
  await type(page, 'Headlap', headlap);
  await page.getByRole('button', { name: 'Save the slate' }).click();
  await expect(page.getByRole('button', { name: 'Change the slate' })).toBeVisible();
}

async function enterSlope(page: Page, rafter: string, width: string, pitch = '35') {
  await page.getByRole('button', { name: 'Add a slope' }).click();
  await type(page, 'Rafter length, eave to ridge', rafter);
  await type(page, 'Width along the eave', width);
  await type(page, 'Pitch', pitch);
}

/** What the screen says first of a roof that is saved. */
const WHOLE_ROOF = /^\d+ courses: [\d,]+ slates/;

/** The value beside a name in the figures. */
const figure = (page: Page, name: string) =>
  page
    .locator('dl > div')
    .filter({ has: page.locator('dt').getByText(name, { exact: true }) })
    .first()
    .locator('strong');

test('a rectangular slope typed in gives the figures worked out by hand', async ({ page }) => {
  await startRoof(page);
  await enterSlate(page);
  await enterSlope(page, '5500', '7900');
  // Fixing length 5500 − 25 − (500 − 50) = 5025; / 200 = 25.1, so 26 spaces of 193.27:
  // 27 full courses and the top one. Headlap 500 − 2 × 193.27 = 113.46; undereave 306.73.
  await expect(figure(page, 'Gauge')).toHaveText('193.3 mm');
  await expect(figure(page, 'Courses')).toHaveText('28');
  await expect(figure(page, 'Headlap')).toHaveText('113 mm');
  await expect(figure(page, 'Undereave slate')).toHaveText('307 mm');
  await expect(figure(page, 'Hole in a full slate')).toHaveText('317 mm');
  // Slated width 8000 = 30 × 250 + 375 + 30 joints of 4.17.
  await expect(figure(page, 'Slates per course')).toHaveText('31');
  await expect(figure(page, 'Joint')).toHaveText('4 mm');
  await expect(figure(page, 'Full slates')).toHaveText('840');
  await expect(figure(page, 'Slate-and-a-halves')).toHaveText('28');
  // Two nails to each of 28 × 31 pieces and 31 undereave pieces; 8000 × 5550 mm of slate.
  await expect(figure(page, 'Nails')).toHaveText('1,798');
  await expect(figure(page, 'Slated area')).toHaveText('44.4 m²');
  await expect(page.getByText('221.2 m of batten')).toBeVisible(); // 28 lines of 7.9 m

  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  await expect(page.getByText('28 courses: 840 slates and 28 slate-and-a-halves.')).toBeVisible();
  await expect(page.getByText(/^Gauge 193.3 mm evened out, headlap 113 mm/)).toBeVisible();
  await openFolds(page, 'What to order?');
  const total = page.getByRole('row', { name: /^Whole roof/ });
  await expect(total.getByRole('cell').nth(2)).toHaveText('840');
  await page.reload();
  await expect(total.getByRole('cell').nth(2)).toHaveText('840');
  await expect(page.getByText('500 mm × 250 mm, headlap 100 mm')).toBeVisible();
});

test('arrow keys and taps on the drawing show the figures of a course @desktop', async ({
  page
}) => {
  await startRoof(page);
  await enterSlate(page);
  await enterSlope(page, '5500', '7900');
  const drawing = page.getByRole('slider', { name: 'Courses of Slope 1' });
  await drawing.focus();
  await page.keyboard.press('ArrowUp');
  await expect(page.getByRole('heading', { name: 'Course 2 of 28' })).toBeVisible();
  await expect(drawing).toHaveAttribute('aria-valuetext', 'Course 2 of 28');
  await expect(figure(page, 'Bond')).toHaveText('B');
  // Batten 2: 450 + 193.27; bond B starts with a slate-and-a-half of 375 and a joint of 4.17.
  await expect(figure(page, 'Batten line from the eave')).toHaveText('643 mm');
  await expect(page.getByText(/^0 mm · 379 mm · 633 mm/)).toBeVisible();
  await page.keyboard.press('End');
  await expect(page.getByRole('heading', { name: 'Course 28 of 28' })).toBeVisible();
  await drawing.scrollIntoViewIfNeeded();
  const box = (await drawing.boundingBox())!;
  await drawing.click({ position: { x: box.width / 2, y: box.height / 2 } });
  await expect(page.getByRole('heading', { name: /^Course 1[3-6] of 28/ })).toBeVisible();
});

test('a headlap above a third, a reversed joint and a negative length are refused with what works', async ({
  page
}) => {
  await startRoof(page);
  await type(page, 'Length', '-500');
  await expect(page.getByText('A measure cannot be below zero')).toBeVisible();
  await type(page, 'Length', '2,600');
  await expect(page.getByText(/can be thousands or decimals/)).toBeVisible();
  await type(page, 'Length', 'long');
  await expect(page.getByText('This is not a length')).toBeVisible();
  await type(page, 'Length', '500');
  await type(page, 'Width', '250');
  await type(page, 'Headlap', '200');
  await expect(field(page, 'Headlap')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByText('more than a third of the slate')).toBeVisible();
  await page.getByRole('button', { name: 'Save the slate' }).click();
  await expect(field(page, 'Headlap')).toBeFocused();
  await page.getByRole('button', { name: 'Use 167 mm' }).click();
  await expect(field(page, 'Headlap')).toHaveValue('167');
  await page.getByText('Nailing, joints, overhangs, density').click();
  await type(page, 'Joint, to', '2');
  await expect(page.getByText('The widest joint is below the narrowest')).toBeVisible();
  await page.getByRole('button', { name: 'Use 3 mm' }).click();
  await page.getByRole('button', { name: 'Save the slate' }).click();
  await expect(page.getByText('500 mm × 250 mm, headlap 167 mm')).toBeVisible();
});

test('each bad slope is refused beside its field with the nearest value that works', async ({
  page
}) => {
  await startRoof(page);
  await enterSlate(page);
  await enterSlope(page, '300', '6000');
  await expect(page.getByText('Not one course fits on this rafter')).toBeVisible();
  await page.getByRole('button', { name: 'Use 475 mm' }).click();
  await expect(field(page, 'Rafter length, eave to ridge')).toHaveValue('475');

  await type(page, 'Rafter length, eave to ridge', '4000');
  await type(page, 'Width along the eave', '100');
  await expect(page.getByText('narrower than one slate')).toBeVisible();
  await page.getByRole('button', { name: 'Use 150 mm' }).click();
  await type(page, 'Width along the eave', '500000');
  await expect(page.getByText('Too large')).toBeVisible();
  await page.getByRole('button', { name: 'Use 100,000 mm' }).click();
  await type(page, 'Width along the eave', '6000');

  const left = page.getByRole('group', { name: 'Left edge' });
  await left.locator('summary').click();
  await left.getByLabel('Kind').selectOption('Hip');
  await left.getByLabel('Its line').selectOption('inwards at the top by …');
  await left.getByLabel('Inwards at the top by').fill('7000');
  await left.getByLabel('Inwards at the top by').blur();
  await expect(page.getByText('The edges meet before they reach the ridge')).toBeVisible();
  await page.getByRole('button', { name: 'Use 6,000 mm' }).click();
  await expect(left.getByLabel('Inwards at the top by')).toHaveValue('6000');
  await left.getByLabel('Inwards at the top by').fill('2000');
  await left.getByLabel('Inwards at the top by').blur();

  await page.getByRole('button', { name: 'Add a rooflight' }).click();
  const opening = page.getByRole('group', { name: 'Rooflight 1' });
  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  await expect(opening.getByText('Nothing is entered here').first()).toBeVisible();
  for (const [label, value] of [
    ['From the left end of the eave', '3000'],
    ['Width', '800'],
    ['From the eave up the rafter', '3500'],
    ['Length up the rafter', '1200']
  ]) {
    await opening.getByLabel(label, { exact: true }).fill(value);
    await opening.getByLabel(label, { exact: true }).blur();
  }
  await expect(opening.getByText('The opening lies outside the slope')).toBeVisible();
  await opening.getByRole('button', { name: 'Use 500 mm' }).click();
  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  await expect(page.getByText(WHOLE_ROOF)).toBeVisible();
});

test('a slate wider than a slope of the job is refused', async ({ page }) => {
  await startRoof(page);
  await enterSlate(page);
  await enterSlope(page, '4000', '200');
  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  await expect(page.getByText(WHOLE_ROOF)).toBeVisible();
  await page.getByRole('button', { name: 'Change the slate' }).click();
  await type(page, 'Width', '400');
  await expect(page.getByText('The slate is wider than a slope of this job')).toBeVisible();
  await page.getByRole('button', { name: 'Use 300 mm' }).click(); // 200 and two overhangs of 50
  await page.getByRole('button', { name: 'Save the slate' }).click();
  await expect(page.getByText('500 mm × 300 mm, headlap 100 mm')).toBeVisible();
});

test('a half-entered slate and slope are there after a reload', async ({ page }) => {
  await startRoof(page);
  await type(page, 'Length', '500');
  await page.getByRole('button', { name: 'Add a slope' }).click();
  await type(page, 'Name of the slope', 'South');
  await type(page, 'Rafter length, eave to ridge', '54');
  await page.getByRole('button', { name: 'Add a chimney' }).click();
  await page.reload();
  await expect(field(page, 'Length')).toHaveValue('500');
  await expect(field(page, 'Name of the slope')).toHaveValue('South');
  await expect(field(page, 'Rafter length, eave to ridge')).toHaveValue('54');
  await expect(page.getByRole('group', { name: 'Chimney 1' })).toBeVisible();
  await expect(page.getByText('Kept on this device').first()).toBeVisible();
});

test('feet and inches are understood, shown and change no length', async ({ page }) => {
  await startRoof(page);
  await enterSlate(page, '20 in', '10"', '3"');
  await enterSlope(page, '18 ft', '26′ 6″');
  const gauge = figure(page, 'Gauge');
  // Fixing length 5486.4 − 25 − (508 − 50) = 5003.4 at 215.9 at most: 24 spaces of 208.475.
  await expect(gauge).toHaveText('208.5 mm');
  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  await openFolds(page, 'Lengths in');
  await page.getByRole('button', { name: 'Feet and inches' }).click();
  await openFolds(page, 'Each slope');
  await expect(gauge).toHaveText('8 3/16″');
  await expect(page.getByText('1′ 8″ × 10″, headlap 3″')).toBeVisible();
  await page.getByRole('button', { name: 'Change Slope 1' }).click();
  await expect(field(page, 'Rafter length, eave to ridge')).toHaveValue('18′ 0″');
  await expect(page.getByText('Kept on this device')).toHaveCount(0);
  await expect(page.getByLabel('Top batten below the ridge line')).toBeHidden();
  await page.getByRole('button', { name: 'Millimetres' }).click();
  await expect(gauge).toHaveText('208.5 mm');
  await expect(field(page, 'Rafter length, eave to ridge')).toHaveValue('5486.4');
});

test('a removed slope can be brought back', async ({ page }) => {
  await startRoof(page);
  await enterSlate(page);
  await enterSlope(page, '5500', '7900');
  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  await openFolds(page, 'Each slope');
  await page.getByRole('button', { name: 'Change Slope 1' }).click();
  await page.getByRole('button', { name: 'Remove Slope 1' }).click();
  await expect(page.getByText('Slope 1 is removed.')).toBeVisible();
  await expect(page.getByText(WHOLE_ROOF)).toHaveCount(0);
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await expect(page.getByText(WHOLE_ROOF)).toBeVisible();
});

test('nothing overflows at 320 px and axe finds nothing, empty and filled', async ({ page }) => {
  await startRoof(page);
  const check = async () => {
    await page.setViewportSize({ width: 320, height: 640 });
    await ownLetters(page);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(320);
    // As tall as the page, so that the bar at the bottom covers no field while it is judged.
    await page.setViewportSize({ width: 320, height: 9000 });
    const { violations } = await new AxeBuilder({ page }).withTags(WCAG).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
  };
  await check();
  await page.getByRole('button', { name: /hipped/ }).click();
  await expect(page.getByText(WHOLE_ROOF)).toBeVisible();
  await openEveryFold(page);
  await check();
});

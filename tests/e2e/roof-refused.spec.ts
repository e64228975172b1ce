import type { Page } from '@playwright/test';
import { expect, openFolds, startJob, test } from './helpers.ts';

/** What a roof cannot be: refused beside the field, with what was typed still there, or laid right. */

const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });

async function type(page: Page, label: string, value: string): Promise<void> {
  await field(page, label).fill(value);
  await field(page, label).blur();
}

/** A job with a slate and a slope as typed. */
async function typeSlope(page: Page, rafter: string, width: string, pitch: string) {
  await startJob(page, 'Barn').then((job) => page.goto(`${job}/roof`));
  await type(page, 'Length', '500');
  await type(page, 'Width', '250');
  await type(page, 'Headlap', '100');
  await page.getByRole('button', { name: 'Save the slate' }).click();
  await addSlope(page, rafter, width, pitch);
}

async function addSlope(page: Page, rafter: string, width: string, pitch: string) {
  await page.getByRole('button', { name: 'Add a slope' }).first().click();
  await type(page, 'Rafter length, eave to ridge', rafter);
  await type(page, 'Width along the eave', width);
  await type(page, 'Pitch', pitch);
}

async function setEdge(page: Page, side: 'Left' | 'Right', kind: string, line: string, by: string) {
  const edge = page.getByRole('group', { name: `${side} edge` });
  await edge.locator('summary').click();
  await edge.getByLabel('Kind').selectOption(kind);
  await edge.getByLabel('Its line').selectOption(line);
  const measure = edge.getByLabel(/Inwards at the top by|Outwards at the top by|Angle to the eave/);
  await measure.fill(by);
  await measure.blur();
  return edge;
}

test('a pitch of 0 is refused beside its field, one of 90 is laid', async ({ page }) => {
  await typeSlope(page, '4000', '6000', '0');
  await expect(page.getByText('Too small: at least 1° works here.')).toBeVisible();
  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  await expect(field(page, 'Pitch')).toBeFocused();
  await expect(field(page, 'Pitch')).toHaveValue('0');
  await expect(field(page, 'Rafter length, eave to ridge')).toHaveValue('4000');
  await type(page, 'Pitch', '90');
  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  // 4000 − 25 − 450 = 3525 in 18 spaces of 195.8: 19 courses and the top one, upright as on any pitch
  await expect(page.getByText(/^20 courses: [\d,]+ slates/)).toBeVisible();
});

test('a valley inside out is refused, and turned by what works', async ({ page }) => {
  await typeSlope(page, '4000', '6000', '35');
  const edge = await setEdge(page, 'Right', 'Valley', 'outwards at the top by …', '-1200');
  await expect(edge.getByText(/A measure cannot be below zero/)).toBeVisible();
  await edge.getByRole('button', { name: 'Use 1,200 mm' }).click();
  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  await expect(page.getByText(/^20 courses: [\d,]+ slates/)).toBeVisible();
});

test('hips between slopes that cannot meet say so beside the edge, and meet once they can', async ({
  page
}) => {
  await typeSlope(page, '4000', '9000', '35');
  await setEdge(page, 'Right', 'Hip', 'at an angle on plan', '45');
  await page.getByRole('button', { name: 'Save Slope 1' }).click();
  await expect(page.getByText(/^20 courses/)).toBeVisible();
  await openFolds(page, 'Each slope');
  await addSlopeRound(page);
  const edge = page.getByRole('group', { name: 'Left edge' });
  await expect(edge.getByText('Meets Slope 1; courses meet.')).toBeVisible();
  // the hip of the first is √(4000² + 3277²) = 5171 mm long, that of a rafter of 3000 mm 3878
  await type(page, 'Rafter length, eave to ridge', '3000');
  await expect(edge.getByText(/^Meets no slope yet/)).toBeVisible();
  await type(page, 'Rafter length, eave to ridge', '4000');
  await page.getByText('Ridge, eave height, out of square').click();
  await type(page, 'Height above the lowest eave', '40');
  await expect(
    edge.getByText('Meets Slope 1; courses miss each other by up to 40 mm.')
  ).toBeVisible();
});

async function addSlopeRound(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Add the slope round the right hip of/ }).click();
}

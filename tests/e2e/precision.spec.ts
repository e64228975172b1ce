import type { Page } from '@playwright/test';
import { SLATE, readings } from './courses-job.ts';
import { expect, openEveryFold, test } from './helpers.ts';
import { type SeedAct, seedJob, smallJob } from './seed-job.ts';

/** A hipped roof with a rooflight, on which no length comes out round. */
function hipped(lengthUnit: 'mm' | 'ftIn'): SeedAct[] {
  const hip = { kind: 'hip', planAngleDegrees: 45 };
  const slope = (slopeId: string, eaveWidthMm: number, openings: object[] = []): SeedAct => ({
    type: 'slopeSet',
    body: {
      ...{ slopeId, name: slopeId, rafterLengthMm: 2807, eaveWidthMm, pitchDegrees: 36.5 },
      ...{ eaveHeightMm: 0, left: hip, right: hip, openings }
    }
  });
  const rooflight = { kind: 'rooflight', fromLeftMm: 2903, widthMm: 783 };
  return [
    ...smallJob([6.2, 5.2]),
    ...readings(),
    { type: 'jobSettingsSet', body: { lengthUnit, layingPacePerHour: 45 } },
    { ...SLATE, body: { ...SLATE.body, lengthMm: 503, widthMm: 251, headlapMm: 97 } },
    slope('South', 7011, [{ ...rooflight, fromEaveMm: 903, heightMm: 977 }]),
    slope('East', 4517),
    slope('North', 7011),
    slope('West', 4517)
  ];
}

/** Screens on which lengths of the roof stand. Thickness and what a gauge reads stay millimetres. */
const SCREENS = ['/roof', '/sheet', '/order', '/sizes', '/courses'] as const;

/** What main says, its folds open, as it is read and as it is printed; names of parts too. */
async function said(page: Page): Promise<string[]> {
  await openEveryFold(page);
  const read = (): Promise<string[]> =>
    page
      .locator('main')
      .evaluate((main) => [
        ...(main as HTMLElement).innerText.split('\n'),
        ...[...main.querySelectorAll('svg text, option')].map((part) => part.textContent ?? '')
      ]);
  const onScreen = await read();
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await expect(page.locator('main')).toBeVisible();
  const onPaper = await read();
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  await page.emulateMedia({ media: 'screen' });
  return [...onScreen, ...onPaper];
}

/** What a field takes may be said in any unit. */
const MAY_TYPE = /You can also type/;
const THICKNESS = /thick|thin|medium|taper/i;

/** Whether a line tells a thickness: in its own words or in the name above it. */
function isOfThickness(lines: readonly string[], at: number): boolean {
  return THICKNESS.test(lines[at]) || THICKNESS.test(lines[at - 1] ?? '');
}

test('on site whole millimetres are shown, tenths for thickness and the batten step alone', async ({
  page
}) => {
  const job = `/job/${await seedJob(page, hipped('mm'))}`;
  for (const screen of SCREENS) {
    await page.goto(`${job}${screen}`);
    await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached();
    await expect(page.locator('main[aria-busy="true"]')).toHaveCount(0);
    // Parts below the first view come in turns of their own.
    await expect.poll(async () => (await said(page)).length, screen).toBeGreaterThan(10);
    const lines = await said(page);
    for (const [at, line] of lines.entries()) {
      expect(line, screen).not.toMatch(/\d\.\d\d+ mm/);
      if (!isOfThickness(lines, at) && !isStep(line)) expect(line, screen).not.toMatch(/\d\.\d mm/);
    }
  }
});

/** A tabled step or gauge: the one figure of 503 mm slates at a headlap of 97 mm or more. */
function isStep(line: string): boolean {
  return [...line.matchAll(/(\d+\.\d) mm/g)].every(
    ([, mm]) => Number(mm) > 150 && Number(mm) <= 203
  );
}

test('where feet and inches are chosen no length of the roof is in metres or millimetres', async ({
  page
}) => {
  const job = `/job/${await seedJob(page, hipped('ftIn'))}`;
  for (const screen of SCREENS) {
    await page.goto(`${job}${screen}`);
    await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached();
    await expect(page.locator('main[aria-busy="true"]')).toHaveCount(0);
    const lines = await said(page);
    if (['/roof', '/sheet', '/order'].includes(screen))
      expect(lines.join('\n'), screen).toMatch(/\d+(\/\d+)?″/);
    for (const [at, line] of lines.entries()) {
      if (isOfThickness(lines, at) || MAY_TYPE.test(line)) continue;
      // The line that shows whether paper came out to scale is 100 mm long whatever is chosen.
      expect(line.replaceAll('100 mm', ''), screen).not.toMatch(/\d ?(mm|cm|m|m²)\b/);
      for (const [, least] of line.matchAll(/\d+\/(\d+)″/g))
        expect([2, 4, 8, 16], `${screen}: ${line}`).toContain(Number(least));
    }
  }
});

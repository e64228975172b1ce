import type { Page } from '@playwright/test';
import { usePlan } from './courses-job.ts';
import { expect, openFolds, test } from './helpers.ts';
import {
  PAPERS,
  type PaperPage,
  expectHeads,
  expectWellDivided,
  keepPrinterShut,
  printed,
  spaceless
} from './paper.ts';
import { seedJob } from './seed-job.ts';
import { LENGTHS, THREE_LENGTHS } from './sizes-job.ts';

test.beforeEach(({ page }) => keepPrinterShut(page));

/** One line of a sheet's courses as it is printed. */
interface PrintedCourse {
  readonly course: number;
  readonly isDrop: boolean;
  readonly battenMm: number;
}

const number = (text: string): number => Number(text.replaceAll(',', ''));

/** The courses with a batten of their own, as the lines of a slope's pages have them. */
function coursesOn(lines: readonly string[]): PrintedCourse[] {
  return lines.flatMap((line) => {
    const found = /^(\d+)( drop)?\s+([\d,]+)\s+([\d,]+)\s/.exec(line);
    return found
      ? [{ course: Number(found[1]), isDrop: Boolean(found[2]), battenMm: number(found[3]) }]
      : [];
  });
}

/** What a slope's pages say it is laid by. */
function saidOn(lines: readonly string[]): { gaugeMm: number; headlapMm: number } {
  const said = lines.join(' ');
  return {
    gaugeMm: number(/gauge ([\d,.]+) mm/.exec(said)?.[1] ?? ''),
    headlapMm: number(/headlap ([\d,.]+) mm/.exec(said)?.[1] ?? '')
  };
}

async function inHand(page: Page, job: string, name: string): Promise<void> {
  await page.goto(`${job}/courses`);
  const bar = page.getByRole('group', { name: 'Slates in hand' });
  await bar.getByRole('button', { name }).click();
}

test('the sheets of three lengths are printed for each: gauge, drop, headlap and side lap', async ({
  page
}) => {
  const job = `/job/${await seedJob(page, THREE_LENGTHS)}`;
  for (const { name } of LENGTHS) {
    await inHand(page, job, name);
    await usePlan(page, job);
  }
  for (const paper of PAPERS) {
    const north: (PrintedCourse & { gaugeMm: number })[] = [];
    for (const [index, { name, lengthMm }] of LENGTHS.entries()) {
      await inHand(page, job, name);
      await page.goto(`${job}/sheet`);
      await expect(page.locator('article')).toHaveCount(2);
      const pages = await printed(page, paper);
      expectHeads(pages, `Seeded, ${name}`, 'Setting out');
      const own = pages.filter(({ lines }) => lines[0].includes('North'));
      const lines = own.flatMap((one) => one.lines);
      const says = own.map((one) => one.says).join('');
      const { gaugeMm, headlapMm } = saidOn(lines);
      // The gauge rule, (length − headlap) / 2, by what the sheet itself says; rounded as printed.
      expect(headlapMm).toBeGreaterThanOrEqual(100);
      expect(Math.abs(gaugeMm - (lengthMm - headlapMm) / 2)).toBeLessThanOrEqual(0.3);
      const courses = coursesOn(lines);
      expect(courses.filter(({ isDrop }) => isDrop)).toHaveLength(index > 0 ? 1 : 0);
      if (index > 0) {
        // The drop rule: the shorter set's gauge less half the difference in length.
        const stepMm = gaugeMm - (LENGTHS[index - 1].lengthMm - lengthMm) / 2;
        const [drop] = courses;
        expect(drop.isDrop).toBe(true);
        expect(says).toContain(
          spaceless(
            `At batten ${drop.course} a shorter slate begins: its step is ${stepMm.toFixed(1)} mm`
          )
        );
        expect(says).toContain(
          spaceless(`Batten ${drop.course} lies ${stepMm.toFixed(1)} mm above the one below`)
        );
        expect(Math.abs(drop.battenMm - north.at(-1)!.battenMm - stepMm)).toBeLessThanOrEqual(1.1);
      }
      for (const [at, course] of courses.entries())
        if (at > 0)
          expect(
            Math.abs(course.battenMm - courses[at - 1].battenMm - gaugeMm)
          ).toBeLessThanOrEqual(1.1);
      north.push(...courses.map((course) => ({ ...course, gaugeMm })));

      // 5,000 mm and 50 mm over each verge; what is cut and where the joints come nobody knows.
      const isRandom = index > 0;
      for (const words of ['Width to fill', 'Slates, about', 'Random widths', 'Least side lap'])
        expect(says.includes(spaceless(words)), words).toBe(isRandom);
      for (const words of ['Waste end', 'Cut in full', 'Before you cut'])
        expect(says.includes(spaceless(words)), words).toBe(!isRandom);
      if (isRandom) {
        const narrowest = index === 1 ? 170 : 150;
        // Half bond of the narrowest slate less two joints of 5 mm; twice that and a joint of 3 mm.
        const sideLapMm = narrowest / 2 - 10;
        expect(says).toContain(spaceless(`Least side lap ${sideLapMm} mm, edge to edge.`));
        expect(says).toContain(spaceless(`Look for ${2 * sideLapMm + 3} mm and wider.`));
        for (const { course } of courses)
          expect(lines.find((line) => line.startsWith(`${course} `))).toContain(' 5,100 ');
        // Drawing and courses stand together: one page for each slope, and the whole roof before.
        expect(pages).toHaveLength(3);
        expect(pages[0].says).not.toContain('undereaveslates');
      }
    }
    // Every course of the slope once, over the sheets of all lengths.
    expect(north.map(({ course }) => course)).toEqual(north.map((_, at) => at + 1));
    expect(north.length).toBeGreaterThan(25);
  }
});

test('plan, draw list and loading out of each length say which it is, and count about', async ({
  page
}) => {
  const job = `/job/${await seedJob(page, THREE_LENGTHS)}`;
  for (const [index, { name }] of LENGTHS.entries()) {
    await inHand(page, job, name);
    await usePlan(page, job);
    const mean = ['', '220 mm', '200 mm'][index];
    const expectList = async (what: string, isAbout: boolean): Promise<void> => {
      await expectWellDivided(page);
      for (const paper of PAPERS) {
        const pages: PaperPage[] = await printed(page, paper);
        expectHeads(pages, `Seeded, ${name}`, what);
        const says = pages.map((one) => one.says).join('');
        expect(says.includes(spaceless(`counted at the mean, ${mean}`))).toBe(isAbout);
      }
    };
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await expectList('Courses', index > 0);
    await openFolds(page, 'Draw list');
    await page.getByRole('button', { name: 'Print the draw list', exact: true }).click();
    await expectList('Draw list', index > 0);
    await openFolds(page, 'Loading out');
    await page.getByRole('button', { name: 'Print the loading out', exact: true }).click();
    await expectList('Loading out', false);
    await page.goto(`${job}/tags`);
    await expect(page.locator('.paper').getByText(`Seeded, ${name}`).first()).toBeVisible();
  }
});

test('on the roof a course of random widths says what to fill and which widths to look for', async ({
  page
}) => {
  const job = `/job/${await seedJob(page, THREE_LENGTHS)}`;
  await inHand(page, job, '400 mm');
  await usePlan(page, job);
  await page.goto(`${job}/lay`);
  await expect(
    page.getByText('Fill 5,100 mm · side lap 75 mm or more · look for 153 mm and wider')
  ).toBeVisible();
  await expect(page.getByText(/^about \d+ slates$/)).toBeVisible();
});

import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { twoSlopes } from './courses-job.ts';
import { expect, test } from './helpers.ts';
import { PAPERS, printed, spaceless } from './paper.ts';
import { isTooWide } from './courses-job.ts';
import { type SeedAct, seedJob } from './seed-job.ts';

/** The numbers of a line of the order by their headings, as the screen shows them. */
async function lineOf(page: Page, item: string): Promise<Record<string, number>> {
  const table = page.getByRole('region', { name: 'Order' });
  const heads = await table.locator('thead th').allInnerTexts();
  const row: Locator = table.locator('tbody tr').filter({
    has: page.getByRole('rowheader', { name: item, exact: true })
  });
  await expect(row).toHaveCount(1);
  const cells = await row.locator('th, td').allTextContents();
  return Object.fromEntries(
    heads.map((head, at) => [head, Number(cells[at].replaceAll(',', ''))])
  ) as Record<string, number>;
}

async function rowsOf(page: Page): Promise<string[][]> {
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as CSV' }).click();
  const file = readFileSync(await (await saving).path(), 'utf8');
  return file
    .trim()
    .split('\r\n')
    .map((row) => row.split(','));
}

test('what a short stock lacks is on the order list: needed, there and to order', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopes(60));
  await page.goto(`/job/${jobId}/courses`);
  await expect(page.getByRole('heading', { name: 'The stock is short' })).toBeVisible();
  await page.getByRole('link', { name: 'Order list, with breakage and spares' }).click();
  await expect(
    page.getByText(/^Order [\d,]+ slates and \d+ .*\. 180 slates are there\.$/)
  ).toBeVisible();
  expect(await isTooWide(page)).toBe(false);
  const slates = await lineOf(page, 'Slates');
  expect(slates.There).toBe(180);
  expect(slates.Order).toBe(slates.Needed - 180);
  const under = await lineOf(page, 'Slates to cut for the undereave');
  expect(under).toMatchObject({ There: 0, Order: under.Needed });
  const wide = await lineOf(page, 'Slate-and-a-halves');
  expect(wide.Order).toBe(wide.Needed);
  const said = await page.getByText(/^Order [\d,]+ slates and/).innerText();
  expect(Number(/[\d,]+/.exec(said)![0].replace(',', ''))).toBe(slates.Order + under.Order);

  const [heads, ofSlates] = await rowsOf(page);
  expect(heads.join()).toBe('Item,Size,Roof takes,Breakage,Spares,Needed,There,Order,m');
  expect(ofSlates.slice(-5, -1).map(Number)).toEqual([
    Number(ofSlates.at(-5)),
    slates.Needed,
    180,
    slates.Order
  ]);
  for (const paper of PAPERS) {
    const pages = await printed(page, paper);
    expect(pages).toHaveLength(1);
    for (const words of ['Needed', 'There', `180 slates are there`])
      expect(pages[0].says).toContain(spaceless(words));
  }
});

test('slates beyond what the courses need serve the undereave row, and none is ordered below 0', async ({
  page
}) => {
  const aside: SeedAct = {
    type: 'slateSetAside',
    body: { palletId: 'pallet-A', reason: 'colour', use: 'undereave' }
  };
  const jobId = await seedJob(page, [...twoSlopes(400), aside, aside]);
  await page.goto(`/job/${jobId}/order`);
  await expect(
    page.getByText(/^Order \d+ slate-and-a-halves\. The [\d,]+ slates there are enough\.$/)
  ).toBeVisible();
  const [slates, under] = [
    await lineOf(page, 'Slates'),
    await lineOf(page, 'Slates to cut for the undereave')
  ];
  expect([slates.Order, under.Order]).toEqual([0, 0]);
  expect(under.There).toBe(under.Needed);
  // each of the 1,200 counts on one line alone, the two set aside on the undereave's
  expect(slates.There + under.There).toBe(1200);
});

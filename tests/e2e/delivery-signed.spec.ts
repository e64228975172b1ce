import type { Page } from '@playwright/test';
import { expect, openExample, test } from './helpers.ts';
import { textOfPages } from './pdf-text.ts';

const withoutSpace = (text: string): string => text.replace(/\s/g, '');

/** Signs a query, as the findings of the example say. */
async function signQuery(page: Page, job: string, button: string): Promise<void> {
  await page.goto(`${job}/delivery/findings`);
  await page.getByRole('button', { name: button }).click();
  await page.getByLabel('Signed by').fill('Wren');
  await page.getByRole('button', { name: 'Query', exact: true }).click();
  const reason = page.getByLabel('Why you decide otherwise');
  if (await reason.isVisible()) await reason.fill('the price may come down');
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText(/^Query: signed by Wren/)).toBeVisible();
}

/** Changes a figure of the order. */
async function changeOrder(page: Page, job: string, label: string, value: string): Promise<void> {
  await page.goto(`${job}/delivery/order`);
  await page.getByLabel(label, { exact: true }).fill(value);
  await page.getByRole('button', { name: 'Save the order' }).click();
  await expect(page.getByText('Saved.', { exact: true })).toBeVisible();
}

test('a signed sheet has one fingerprint, and the field says that the note is printed', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/findings`);
  await page.getByRole('button', { name: 'Sign the verdict' }).click();
  const note = page.getByLabel('Note', { exact: true });
  await expect(note).toHaveAccessibleDescription('Printed on the claim, under the signature.');
  await note.fill('as told on the telephone');
  await page.getByLabel('Signed by').fill('Wren');
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await page.getByRole('link', { name: 'Sheet for the supplier' }).click();
  await expect(page.locator('.signature')).toContainText('as told on the telephone');
  const sha = (await page.locator('.signature code').innerText()).trim();
  for (const paper of ['Claim for the supplier', 'Sheet for yourself']) {
    await page.getByRole('button', { name: paper }).click();
    const pages = textOfPages(await page.pdf({ preferCSSPageSize: true }));
    for (const text of pages) expect(text).toContain(`fingerprint${sha.slice(0, 8)}`);
  }
});

test('what changed after signing is not told as signed, until it is signed again', async ({
  page
}) => {
  const job = await openExample(page);
  await signQuery(page, job, 'Sign the verdict');
  await page.goto(`${job}/delivery/sheet`);
  const stale = page.getByText(/^Not signed as it stands: .* changed after Wren signed “Query” on/);
  const message = page.getByLabel('Message to the supplier');
  await expect(page.locator('.claim .answer')).toContainText('We query the delivery');
  await expect(stale).toHaveCount(0);
  await expect(message).toHaveValue(/Journal fingerprint/);

  // By a closer limit the findings now say: refuse. Nobody signed that.
  await changeOrder(page, job, 'Tolerance, plus or minus', '5');
  await page.goto(`${job}/delivery/sheet`);
  await expect(stale).toBeVisible();
  await expect(page.locator('.claim .answer')).toHaveText(
    'We refuse the delivery and hold it unfixed.'
  );
  await expect(page.locator('.signature')).toContainText('Query: signed by Wren');
  await expect(page.locator('.signature')).not.toContainText('would be refused');
  await expect(message).not.toHaveValue(/Journal fingerprint/);
  const [first] = textOfPages(await page.pdf({ preferCSSPageSize: true }));
  expect(first).toContain(withoutSpace('Not signed as it stands'));
  expect(first).not.toContain(withoutSpace('Sign again'));

  await page.getByRole('link', { name: 'Sign again' }).click();
  await expect(page.getByRole('heading', { name: 'Verdict: Refuse' })).toBeVisible();
  await signQuery(page, job, 'Sign again');
  await page.goto(`${job}/delivery/sheet`);
  await expect(page.locator('.claim .answer')).toContainText(
    'would be refused; the buyer queries it, because: the price may come down.'
  );
  await expect(stale).toHaveCount(0);
});

import { expect, test } from '@playwright/test';
import { CrewPhones, expectOnPiles, onPiles, tapPile } from './crew-phones.ts';

const phones = CrewPhones.ofEachTest();

test('piles, track and news move as a mate sorts, and what is being typed stays', async ({
  browser
}) => {
  const { keeper, mate, job } = await phones.two(browser);
  await mate.goto(`${job}/sort`);
  await keeper.goto(`${job}/sort`);
  await expect(mate.locator('.piles button .count').first()).toBeVisible();
  const start = await onPiles(keeper);
  // The job's track stands open on a second page of the same device.
  const track = await keeper.context().newPage();
  await track.goto(job);
  const sorted = track.getByRole('listitem').filter({ hasText: 'Sorted' });
  await expect(sorted).toContainText(/\d+ of [\d,]+/);
  const before = await sorted.innerText();

  // Half a reading stands in the gauge's field.
  await keeper.bringToFront();
  await keeper.keyboard.type('6');
  const typed = keeper.locator('.entry .value');
  await expect(typed).toHaveText('6');
  await expect(keeper.locator('.entry .take')).toBeVisible();
  const place = await keeper.locator('.verdict').boundingBox();

  for (let tap = 0; tap < 3; tap++) await tapPile(mate);
  const news = keeper.locator('.top small');
  await expect(news).toContainText(/^Robin: \d+ more sorted from pallet A1$/);
  await expect(news).toHaveAttribute('aria-live', 'polite');
  await expect(async () => expect(await sorted.innerText()).not.toBe(before)).toPass();
  // The first word comes at once; the rest is told a minute later, not now.
  await expect(track.locator('.top small')).toHaveText(await news.innerText());

  await expectOnPiles(keeper, start + 3);
  await expect(typed).toHaveText('6');
  await expect(keeper.locator('.entry input')).toBeFocused();
  expect(await keeper.locator('.verdict').boundingBox()).toEqual(place);
  await keeper.locator('.entry .take').click();
  await expect(keeper.locator('.verdict')).toContainText('6.00 mm');
  await expect(keeper.locator('.verdict .status', { hasText: /^saved$/ })).toBeVisible();
  await mate.bringToFront();
  await expectOnPiles(mate, start + 4);
});

test('a course that two people laid is one course, and both are told', async ({ browser }) => {
  const { keeper, mate, job } = await phones.two(browser);
  for (const page of [keeper, mate]) {
    await page.goto(`${job}/lay`);
    await expect(page.getByText('0 of 72 courses laid')).toBeVisible();
    await expect(page.getByText('Shared with the crew')).toBeVisible();
  }
  for (const page of [keeper, mate]) {
    await page.context().setOffline(true);
    await page.getByRole('button', { name: 'Course laid' }).click();
    await expect(page.getByText('1 of 72 courses laid')).toBeVisible();
  }
  for (const page of [keeper, mate]) await page.context().setOffline(false);
  await expect(keeper.locator('.top small')).toHaveText(
    /^Robin entered .*, course 1 too: it counts once$/
  );
  await expect(mate.locator('.top small')).toHaveText(
    /^Wren entered .*, course 1 too: it counts once$/
  );
  for (const page of [keeper, mate]) {
    await expect(page.getByText('1 of 72 courses laid')).toBeVisible();
    await expect(
      page.getByText(/Saved: .*course 1 laid, entered by two, counts once/)
    ).toBeVisible();
  }
  // Taken back by one, it is still the course that the other laid.
  await keeper.getByRole('button', { name: /^Undo/ }).click();
  await expect(keeper.getByText(/Last now: .*course 1 laid$/)).toBeVisible();
  await expect(mate.getByText(/Saved: .*course 1 laid$/)).toBeVisible();
  for (const page of [keeper, mate])
    await expect(page.getByText('1 of 72 courses laid')).toBeVisible();
});

import { expect, openExample, ownLetters, startJob, test } from './helpers.ts';

test('order, pallets, list and measuring go on by keyboard, and lose neither focus nor slate @desktop', async ({
  page
}) => {
  const job = await startJob(page, 'By keyboard');
  await page.goto(`${job}/delivery/order`);
  for (const [label, value] of [
    ['Length', '500'],
    ['Width', '250'],
    ['Nominal thickness', '6'],
    ['Slates ordered', '40']
  ])
    await page.getByLabel(label, { exact: true }).fill(value);
  await page.keyboard.press('Enter');
  const name = page.getByLabel('Name on the pallet');
  await expect(name).toBeFocused();

  await page.keyboard.press('Enter');
  await expect(page.getByText('Give the pallet a name, for example A.')).toBeVisible();
  await expect(name).toBeFocused();
  await page.keyboard.type('A');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Slates', { exact: true })).toBeFocused();
  for (const value of ['40', '4', '10']) {
    await page.keyboard.type(value);
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await expect(page.getByRole('rowheader', { name: 'A', exact: true })).toBeVisible();
  await expect(name).toBeFocused();
  await expect(name).toHaveValue('');
  await page.getByRole('button', { name: 'Change pallet A' }).press('Enter');
  await expect(name).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Change pallet A' })).toBeFocused();

  await page.goto(`${job}/delivery/sample`);
  await page.getByRole('radio', { name: /Own plan from two risks/ }).check();
  await page.getByLabel('Good delivery: share outside').fill('5');
  await page.getByLabel('Poor delivery: share outside').fill('50');
  // The plan of these risks stands.
  await expect(page.getByText('Empty: 7.')).toBeVisible();
  await page.getByRole('button', { name: 'Draw the list' }).press('Enter');
  await page.getByRole('link', { name: 'Measure them' }).press('Enter');
  const entry = page.getByRole('textbox', { name: 'Reading' });
  const title = page.locator('.verdict .title');
  await expect(page.getByText('0 of 7 measured')).toBeVisible();
  await expect(entry).toBeFocused();

  // A slate that gets the full check is saved once it is said that its sizes come later.
  const sizesLater = async (): Promise<void> => {
    const later = page.getByRole('button', { name: 'Save, sizes later' });
    if (!(await later.isVisible())) return;
    await endOfBurst();
    await later.press('Enter');
  };
  const endOfBurst = async (): Promise<void> => {
    const typedAt = await page.evaluate(() => performance.now());
    await page.waitForFunction((since) => performance.now() - since > 500, typedAt);
  };

  // The next reading saves the slate before it; so does Enter, once the gauge's own end is past.
  const type = async (thickness: string): Promise<void> => {
    await page.keyboard.type(thickness, { delay: 10 });
    await page.keyboard.press('Enter');
    const later = page.getByRole('button', { name: 'Save, sizes later' });
    await expect(later.or(title.getByText(`${thickness} mm`))).toBeVisible();
    await sizesLater();
    await expect(title).toHaveText(`${thickness} mm`);
  };
  await type('5.90');
  await type('6.10');
  await expect(page.getByText('1 of 7 measured')).toBeVisible();
  await endOfBurst();
  await page.keyboard.press('Enter');
  await sizesLater();
  await expect(page.getByText('2 of 7 measured')).toBeVisible();
  await expect(entry).toBeFocused();
  await expect(page.getByText('No number yet')).toHaveCount(0);

  // The slate in hand outlasts leaving the page.
  await type('6.30');
  await page.getByRole('button', { name: 'Dull', exact: true }).click();
  await page.goto(`${job}/delivery/order`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.goto(`${job}/delivery/measure`);
  await expect(title).toHaveText('6.30 mm');
  await expect(page.getByRole('button', { name: 'Dull', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true'
  );
  await page.getByRole('button', { name: 'Save slate' }).press('Enter');
  await sizesLater();
  await expect(page.getByText('3 of 7 measured')).toBeVisible();
  await expect(entry).toBeFocused();

  // On a phone the buttons below the keypad stand clear of the bar of steps.
  await page.setViewportSize({ width: 390, height: 844 });
  await page.evaluate(() => scrollTo(0, 0));
  await ownLetters(page);
  const steps = await page.getByRole('navigation', { name: 'Steps of the job' }).boundingBox();
  for (const name of ['Undo last slate', 'Later']) {
    const box = await page.getByRole('button', { name }).boundingBox();
    expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThanOrEqual(steps?.y ?? 0);
  }
});

test('signing by keyboard leads to the first wrong field, then to the sheet @desktop', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/findings`);
  await page.getByRole('button', { name: 'Sign the verdict' }).press('Enter');
  await expect(page.getByRole('button', { name: 'Query', exact: true })).toBeFocused();
  await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
  await expect(page.getByLabel('Signed by')).toBeFocused();
  await page.keyboard.type('Wren');
  await page.getByRole('button', { name: 'Refuse', exact: true }).press('Enter');
  await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
  await expect(page.getByLabel('Why you decide otherwise')).toBeFocused();
  await page.keyboard.type('no time for a second look');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('link', { name: 'Sheet for the supplier' })).toBeFocused();
  await page.getByRole('button', { name: 'Sign another verdict' }).press('Enter');
  await expect(page.getByRole('button', { name: 'Refuse', exact: true })).toBeFocused();
});

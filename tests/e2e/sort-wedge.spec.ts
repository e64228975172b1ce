import type { Page } from '@playwright/test';
import fc from 'fast-check';
import { burst } from './gauge-burst.ts';
import { expect, test } from './helpers.ts';
import { eventsOf } from './seed-job.ts';
import { openSortBench } from './sort-bench.ts';

const END_KEYS = {
  enter: ['Enter'],
  tab: ['Tab'],
  both: ['Tab', 'Enter'],
  crlf: ['Enter', 'Enter']
};

const readingsOf = async (page: Page, jobId: string): Promise<number[]> =>
  (await eventsOf(page, jobId))
    .filter(({ type }) => type === 'slateGauged')
    .map(({ body }) => (body.points as number[])[0]);

test('bursts of any gap, ending and decimal mark: each reading once, no button pressed', async ({
  page
}) => {
  const jobId = await openSortBench(page);
  const bursts = fc.sample(
    fc.record({
      hundredths: fc.integer({ min: 300, max: 999 }),
      mark: fc.constantFrom('.', ','),
      end: fc.constantFrom<keyof typeof END_KEYS>('enter', 'tab', 'both', 'crlf'),
      gapMs: fc.integer({ min: 0, max: 120 }),
      focus: fc.constantFrom('field', 'pile', 'undo', 'nothing')
    }),
    { numRuns: 24, seed: 20_260 }
  );
  const expected: number[] = [];
  for (const { hundredths, mark, end, gapMs, focus } of bursts) {
    if (focus === 'pile') await page.locator('.piles button').first().focus();
    if (focus === 'undo') await page.locator('.acts button').first().focus();
    if (focus === 'nothing')
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    const text = (hundredths / 100).toFixed(2).replace('.', mark);
    await burst(page, [...text, ...END_KEYS[end]], gapMs);
    expected.push(hundredths);
    await expect(page.locator('.verdict')).toContainText(`${(hundredths / 100).toFixed(2)} mm`);
  }
  await expect.poll(() => readingsOf(page, jobId)).toEqual(expected);
  const others = (await eventsOf(page, jobId)).filter(
    ({ type }) => type === 'slateTapped' || type === 'entryVoided' || type === 'slateSetAside'
  );
  expect(others).toEqual([]);
});

test('a gauge without terminator is learnt, and then a pause takes the reading', async ({
  page
}) => {
  const jobId = await openSortBench(page, { way: 'gauge' });
  for (const text of ['6.41', '5.32', '4.23']) {
    await burst(page, [...text], 10);
    await page.getByRole('button', { name: `Take ${text}` }).click();
    await expect(page.locator('.verdict')).toContainText(`${text} mm`);
  }
  await expect(page.getByText('Learnt: this gauge sends no Enter')).toBeVisible();
  await burst(page, [...'6.66'], 10);
  await expect(page.locator('.verdict')).toContainText('6.66 mm');
  await expect.poll(() => readingsOf(page, jobId)).toEqual([641, 532, 423, 666]);
});

test('text that comes as input events, as on Android, is read the same', async ({ page }) => {
  const jobId = await openSortBench(page);
  const expected: number[] = [];
  for (const hundredths of [640, 640, 531, 488]) {
    const text = (hundredths / 100).toFixed(2);
    await page.evaluate((typed) => {
      const field = document.querySelector<HTMLInputElement>('input.capture');
      if (!field) throw new Error('no field');
      field.focus();
      for (const letter of typed) {
        field.dispatchEvent(
          new KeyboardEvent('keydown', { key: 'Unidentified', keyCode: 229, bubbles: true })
        );
        field.value += letter;
        field.dispatchEvent(
          new InputEvent('input', { data: letter, inputType: 'insertText', bubbles: true })
        );
      }
      field.dispatchEvent(
        new InputEvent('beforeinput', {
          inputType: 'insertLineBreak',
          bubbles: true,
          cancelable: true
        })
      );
    }, text);
    expected.push(hundredths);
    await expect(page.locator('.verdict')).toContainText(`${text} mm`);
  }
  await expect.poll(() => readingsOf(page, jobId)).toEqual(expected);
});

test('500 readings in a row, equal ones among them: none lost, none doubled', async ({ page }) => {
  const jobId = await openSortBench(page);
  const readings = fc.sample(fc.integer({ min: 350, max: 950 }), { numRuns: 250, seed: 7 });
  const expected = readings.flatMap((hundredths) => [hundredths, hundredths]);
  // Key events made in the page: 500 bursts at the rate of a fast gauge take seconds, not minutes.
  await page.evaluate(async (list) => {
    const press = (key: string): void => {
      const code = /\d/.test(key) ? `Digit${key}` : key === '.' ? 'Period' : key;
      for (const type of ['keydown', 'keyup'])
        document.body.dispatchEvent(
          new KeyboardEvent(type, { key, code, bubbles: true, cancelable: true })
        );
    };
    for (const hundredths of list) {
      for (const letter of (hundredths / 100).toFixed(2)) press(letter);
      press('Enter');
      await new Promise((resume) => setTimeout(resume, 5));
    }
  }, expected);
  await expect.poll(async () => (await readingsOf(page, jobId)).length).toBe(500);
  expect(await readingsOf(page, jobId)).toEqual(expected);
  await expect(page.locator('.verdict')).toContainText('saved');
});

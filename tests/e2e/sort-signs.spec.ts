import type { Page } from '@playwright/test';
import { expect, test } from './helpers.ts';
import { IN_FORCE } from './seed-job.ts';
import { openSortBench } from './sort-bench.ts';

/** What the doubles of the device's senses were asked for, in order. */
interface Signs {
  vibrated: number[][];
  tonesHz: number[];
  said: string[];
  locks: { released: boolean }[];
}

/** Puts recording doubles in the place of vibration, sound, speech and the screen's wake lock. */
async function recordSigns(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const signs: Signs = { vibrated: [], tonesHz: [], said: [], locks: [] };
    const put = (on: object, name: string, value: unknown): void =>
      void Object.defineProperty(on, name, { value, configurable: true, writable: true });
    const chain = { connect: (next: unknown) => next };

    put(navigator, 'vibrate', (pattern: number[]) => signs.vibrated.push(pattern) > 0);
    put(
      window,
      'AudioContext',
      class {
        state = 'suspended';
        currentTime = 0;
        destination = {};
        resume(): Promise<void> {
          this.state = 'running';
          return Promise.resolve();
        }
        close(): Promise<void> {
          return Promise.resolve();
        }
        createOscillator() {
          const frequency = { value: 0 };
          const start = (): void => void signs.tonesHz.push(Math.round(frequency.value));
          return { ...chain, frequency, type: '', start, stop: () => undefined };
        }
        createGain() {
          const ramp = (): void => undefined;
          return { ...chain, gain: { setValueAtTime: ramp, exponentialRampToValueAtTime: ramp } };
        }
      }
    );
    put(
      window,
      'SpeechSynthesisUtterance',
      class {
        text: string;
        constructor(text: string) {
          this.text = text;
        }
      }
    );
    put(window, 'speechSynthesis', {
      getVoices: () => [{ name: 'Double', lang: 'en-GB', localService: true }],
      cancel: () => undefined,
      speak: ({ text }: { text: string }) => void signs.said.push(text)
    });
    put(navigator, 'wakeLock', {
      request: () => {
        const lock = {
          released: false,
          release: () => {
            lock.released = true;
            return Promise.resolve();
          }
        };
        signs.locks.push(lock);
        return Promise.resolve(lock);
      }
    });
    Object.assign(window, { signs });
  });
}

const signsOf = (page: Page): Promise<Signs> =>
  page.evaluate(() => {
    const { vibrated, tonesHz, said, locks } = (window as unknown as { signs: Signs }).signs;
    return { vibrated, tonesHz, said, locks: locks.map(({ released }) => ({ released })) };
  });

async function openSort(page: Page, preferences: object): Promise<void> {
  await recordSigns(page);
  await openSortBench(page, preferences);
}

const pile = (page: Page, number: number) => page.locator('.piles button').nth(number - 1);
const verdict = (page: Page) => page.locator('.verdict');

test('a pile is told by tone, pulses and word, each pile by its own', async ({ page }) => {
  await openSort(page, { way: 'hand', hasSound: true, hasVibration: true, hasSpeech: true });
  await pile(page, 1).click();
  await expect(verdict(page)).toContainText('saved');
  await expect.poll(async () => (await signsOf(page)).said[0]).toBe('1 Thick');
  const { vibrated, tonesHz } = await signsOf(page);
  expect(vibrated[0]).toEqual([70]);
  expect(tonesHz[0]).toBe(262);
});

test('a gauge reading tells its pile by the same signs', async ({ page }) => {
  await openSort(page, { way: 'gauge', hasSound: true, hasVibration: true, hasSpeech: true });
  await page.getByRole('button', { name: 'Seen' }).click();
  for (const reading of ['5.4', '4.2']) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
    await expect(verdict(page)).toContainText(`${reading}0 mm`);
  }
  await expect.poll(async () => (await signsOf(page)).said).toEqual(['2 Medium', '3 Thin']);
  const { vibrated, tonesHz } = await signsOf(page);
  // Two octaves from the thickest pile to the thinnest; as many pulses as the pile's number.
  expect(tonesHz).toEqual([524, 1048]);
  expect(vibrated).toEqual([
    [70, 80, 70],
    [70, 80, 70, 80, 70]
  ]);
});

test('what is switched off stays off, and speaks up as soon as it is switched on', async ({
  page
}) => {
  await openSort(page, { way: 'hand', hasSound: false, hasVibration: false, hasSpeech: false });
  await pile(page, 2).click();
  await expect(verdict(page)).toContainText('Medium');
  await expect(verdict(page)).toContainText('saved');

  await page.getByRole('button', { name: 'Options' }).click();
  await page.getByLabel('Tone for each pile').check();
  await page.getByLabel('Vibration').check();
  await page.getByLabel('Say the pile aloud').check();
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  await pile(page, 3).click();
  // One slate, one sign of each kind: those of the slate before would have come first.
  await expect.poll(async () => (await signsOf(page)).said).toEqual(['3 Thin']);
  const { vibrated, tonesHz } = await signsOf(page);
  expect(vibrated).toEqual([[70, 80, 70, 80, 70]]);
  expect(tonesHz).toEqual([1048]);
});

test('measured, set aside, undone and refused each sound, pulse and speak by their own', async ({
  page
}) => {
  await recordSigns(page);
  const senses = { hasSound: true, hasVibration: true, hasSpeech: true };
  await openSortBench(page, { way: 'gauge', hasSeenTail: true, ...senses }, []);
  await page.keyboard.type('6.4');
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toContainText(/Measured: 6\.40 mm.*saved/);
  await page.getByRole('button', { name: 'Set aside' }).click();
  await page.getByRole('button', { name: 'The one in hand' }).click();
  await page.getByRole('button', { name: 'Broken' }).click();
  await expect(verdict(page)).toContainText(/Set aside.*saved/);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(verdict(page)).toContainText(/Undone.*saved/);
  await page.keyboard.type('abc');
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toContainText('Not taken');
  await expect
    .poll(async () => (await signsOf(page)).said)
    .toEqual([
      '6.40 mm, Measured',
      'Set aside: Broken',
      'Undone: Set aside: Broken, pallet A',
      '“abc” is not a number. Type the thickness, for example 6.4.'
    ]);
  const { vibrated, tonesHz } = await signsOf(page);
  expect(vibrated).toEqual([[30], [220, 80, 220], [30, 40, 30, 40, 30, 40, 30], [500]]);
  expect(tonesHz).toEqual([1568, 392, 392, 784, 622, 494, 220, 147]);
});

/** Hides the page or shows it again, as the lock key of a phone does. */
async function setHidden(page: Page, isHidden: boolean): Promise<void> {
  await page.evaluate((hidden) => {
    const { locks } = (window as unknown as { signs: Signs }).signs;
    if (hidden) for (const lock of locks) lock.released = true;
    Object.defineProperty(document, 'visibilityState', {
      get: () => (hidden ? 'hidden' : 'visible'),
      configurable: true
    });
    document.dispatchEvent(new Event('visibilitychange'));
  }, isHidden);
}

test('the screen is kept on, asked for again when the page comes back, and let go at the end', async ({
  page
}) => {
  await openSort(page, { way: 'hand', keepsAwake: true });
  await expect.poll(async () => (await signsOf(page)).locks).toEqual([{ released: false }]);
  await setHidden(page, true);
  expect((await signsOf(page)).locks).toEqual([{ released: true }]);
  await setHidden(page, false);
  await expect
    .poll(async () => (await signsOf(page)).locks)
    .toEqual([{ released: true }, { released: false }]);
  // One lock is enough: coming back once more asks for none.
  await setHidden(page, false);
  expect((await signsOf(page)).locks).toHaveLength(2);
  await page.getByRole('link', { name: 'Job', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Seeded' })).toBeVisible();
  await expect.poll(async () => (await signsOf(page)).locks[1]).toEqual({ released: true });
});

test('a phone that may sleep is asked for no lock', async ({ page }) => {
  await openSort(page, { way: 'hand', keepsAwake: false });
  await pile(page, 1).click();
  await expect(verdict(page)).toContainText('saved');
  await setHidden(page, true);
  await setHidden(page, false);
  expect((await signsOf(page)).locks).toEqual([]);
});

test('the list of entries names each pallet, and says where its end is', async ({ page }) => {
  const sorted = Array.from({ length: 25 }, (_, at) => ({
    type: 'slateTapped',
    body: { palletId: 'pallet-B', pile: 1 + (at % 3), gradesId: IN_FORCE }
  }));
  await openSortBench(page, { way: 'hand' }, [6, 5], sorted);
  const piles = page.getByRole('group', { name: 'On the piles' }).getByRole('button');
  for (const pile of [0, 1]) await piles.nth(pile).click();
  await expect(verdict(page)).toContainText(/Medium.*saved/s);
  await page.getByRole('button', { name: 'Entries' }).click();
  const list = page.getByRole('listitem').filter({ hasText: 'by hand' });
  await expect(list).toHaveText([/^2 Medium, by hand, from pallet A/, /^1 Thick, by hand/]);
  const cut = page.getByText('Only the last 20 entries can be taken back here.');
  // Twenty-five older ones came from another device: they are at hand, and not this one's to undo.
  await expect(cut).toBeHidden();
  await page.getByRole('button', { name: 'Back' }).click();
  for (let slate = 0; slate < 42; slate++) {
    await piles.nth(slate % 3).click();
    await expect(verdict(page)).toContainText(/saved/);
  }
  for (let undone = 0; undone < 20; undone++) {
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect(verdict(page)).toContainText(/Undone.*saved/s);
  }
  await page.getByRole('button', { name: 'Entries' }).click();
  await expect(cut).toBeVisible();
  await expect(page.getByText('Nothing to undo.')).toHaveCount(0);
});

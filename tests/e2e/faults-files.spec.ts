import { backUp, restore } from '../faults/files.ts';
import { wholeDatabase } from '../faults/journal-on-disk.ts';
import { report, rounds } from '../support/rounds.ts';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';
import { randomlySpoilt, spoiltFiles } from '../faults/spoilt-files.ts';
import { expect, test } from './helpers.ts';

const RANDOM_FILES = rounds(12, 400);
const SEED = 77;

test('J15: torn and hostile job files are refused whole with the reason, and change nothing', async ({
  page
}) => {
  test.setTimeout(300_000 + RANDOM_FILES * 5000);
  const address = await startSorting(page);
  for (const hundredths of [510, 640, 700, 655]) await gaugeSlate(page, hundredths);
  const { text: good } = await backUp(page, address);
  await page.goto('/');
  const before = await wholeDatabase(page);

  const spoilt = spoiltFiles(good);
  for (const { what, text, reason } of spoilt) {
    const answer = await restore(page, text);
    expect(answer, what).toMatch(reason);
    expect(answer, what).toContain('Nothing was taken in and nothing changed.');
    expect(await wholeDatabase(page), what).toBe(before);
  }
  for (const [index, bytes] of randomlySpoilt(good, RANDOM_FILES, SEED).entries()) {
    const answer = await restore(page, bytes);
    expect(answer, `random file ${index} of seed ${SEED}`).toContain('Nothing was taken in');
    expect(await wholeDatabase(page), `random file ${index} of seed ${SEED}`).toBe(before);
  }
  expect(await restore(page, good)).toContain('were here already');
  expect(await page.evaluate(() => Object.keys(Object.prototype))).toEqual([]);
  report('spoilt job files', {
    'chosen by hand': spoilt.length,
    'by seeded chance': RANDOM_FILES,
    'taken in': 0
  });
});

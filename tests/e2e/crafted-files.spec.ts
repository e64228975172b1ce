import { craftedAddress, craftedFile } from '../faults/crafted-files.ts';
import { restore } from '../faults/files.ts';
import { SLATE, readings, slope } from './courses-job.ts';
import { expect, test } from './helpers.ts';
import { type SeedAct, smallJob } from './seed-job.ts';

const PLACE = { palletId: 'pallet-A', layer: 1, place: 1 };

/** Files that are whole, but hold an act that the app never writes. */
const REFUSED: readonly (readonly [what: string, act: SeedAct])[] = [
  ['rising thresholds', { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [5, 6] } }],
  ['equal thresholds', { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6, 6] } }],
  [
    'a sample place twice',
    { type: 'sampleDrawn', body: { seed: 1, plan: 'own', positions: [PLACE, PLACE] } }
  ],
  [
    'the 30th of February',
    { type: 'deliveryDeclared', body: { supplier: 'Reed', arrivedOn: '2026-02-30' } }
  ]
];

for (const [what, act] of REFUSED)
  test(`a whole job file with ${what} is refused with the line and what to do`, async ({
    page
  }) => {
    await page.goto('/');
    await expect(page.getByText('No job on this device yet.')).toBeVisible();
    const answer = await restore(page, craftedFile(1, 'Seeded', [...smallJob([]), act]));
    expect(answer).toContain('holds what this app never writes. Copy the file again');
    expect(answer).toContain('See line 6.');
    expect(answer).toContain('Nothing was taken in and nothing changed.');
    await page.reload();
    await expect(page.getByText('No job on this device yet.')).toBeVisible();
  });

/** Words that every object of JavaScript knows, as ids of a slope and of pallets. */
const HOSTILE = ['constructor', 'valueOf', 'hasOwnProperty'] as const;

test('ids that name parts of JavaScript: every screen opens and works', async ({ page }) => {
  const pallets = HOSTILE.map((palletId, at) => ({
    type: 'palletAdded',
    body: { palletId, label: 'ABC'[at], slates: 400 }
  }));
  const acts: SeedAct[] = [
    { type: 'jobOpened', body: { name: 'Seeded' } },
    ...pallets,
    ...readings().map(({ type, body }, at) => ({
      type,
      body: { ...body, palletId: HOSTILE[at % HOSTILE.length], gradesId: null, pile: null }
    })),
    { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6.2, 5.2] } },
    SLATE,
    ...HOSTILE.map((slopeId, at) => {
      const { type, body } = slope(`Slope ${at + 1}`, 4000);
      return { type, body: { ...body, slopeId } };
    }),
    {
      type: 'courseLaid',
      body: { slopeId: 'constructor', course: 1, piles: [{ pile: 1, pieces: 16 }] }
    },
    { type: 'slatesLost', body: { pile: 1, gradesId: null, slates: 1, reason: 'broken' } }
  ];
  await page.goto('/');
  expect(await restore(page, craftedFile(2, 'Seeded', acts))).toContain('Taken in:');
  for (const screen of [
    '',
    '/delivery',
    '/sort',
    '/grades',
    '/roof',
    '/sheet',
    '/courses',
    '/lay',
    '/tags',
    '/files'
  ]) {
    await page.goto(`${craftedAddress(2)}${screen}`);
    await expect(page.locator('main h1').first()).toBeAttached();
    await expect(page.getByText('Something went wrong on this screen')).toHaveCount(0);
  }
  await page.goto(`${craftedAddress(2)}/roof`);
  for (const name of ['Slope 1', 'Slope 2', 'Slope 3'])
    await expect(page.getByText(name).first()).toBeVisible();
});

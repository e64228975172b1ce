import { createHash } from 'node:crypto';
import { type CheckName, type ClaimFigures, claimFigures } from '../support/claim-figures.ts';
import { backupOf, dayFromNow, writeClaim } from './claim-job.ts';
import { expect, test } from './helpers.ts';
import { PAPERS, type PaperPage, expectHeads, printed, spaceless } from './paper.ts';

const whole = (value: number): string => value.toLocaleString('en-GB');
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const range = ([low, high]: readonly [number, number]): string => `${whole(low)} to ${whole(high)}`;
const day = (on: string): string =>
  new Date(on).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC'
  });
const fails = (count: number, one: string, more: string): string => (count === 1 ? one : more);

/** Every sentence of the claim that holds a figure, from what was entered and worked out anew. */
function sentencesOf(figures: ClaimFigures): string[] {
  const { sampled, delivered, ordered, certain, outside, acceptAtMost, byCheck } = figures;
  const { thickness, length, flatness, ring } = byCheck;
  const { bandMm, fullChecks } = figures;
  const band = `${bandMm[0].toFixed(2)} mm to ${bandMm[1].toFixed(2)} mm`;
  const inDelivery = (of: readonly [number, number]): string =>
    `In the whole delivery: ${range(of)} of the ${whole(delivered)} slates (95 % confidence).`;
  return [
    `${whole(ordered)} slates, 500 × 250 mm, 6.0 mm thick`,
    `Delivered ${whole(delivered)} slates`,
    `P-117, ${day(dayFromNow(-30))}`,
    'Slates 500 × 250',
    'DN-40',
    'B7 and B8',
    `Arrived ${day(dayFromNow(-2))}`,
    `Thickness ${band} order, line 2`,
    'Length 495 mm to 505 mm order, line 1',
    'No broken slate terms, clause 4',
    'width 245 mm to 255 mm (EN 12326-1',
    'squareness at most 5.0 mm (EN 12326-1',
    'edge at most 5.0 mm (EN 12326-1',
    'flatness below 7.5 mm (EN 12326-1',
    `We measured ${sampled} slates drawn by chance before sorting.`,
    `${certain} of ${sampled} slates of the sample are outside a limit of the order:`,
    `Thickness ${band}: ${thickness.failed} of ${thickness.measured} slates measured ${fails(thickness.failed, 'fails', 'fail')}; order, line 2`,
    `Length 495 mm to 505 mm: ${length.failed} of ${fullChecks} slates measured ${fails(length.failed, 'fails', 'fail')}; order, line 1`,
    'Broken: 1 slate; terms, clause 4',
    `${inDelivery(figures.rangeCertain)} ${acceptAtMost} of ${sampled} may be outside: the plan refuses.`,
    `Flatness below 7.5 mm: ${flatness.failed} of ${fullChecks} slates measured ${fails(flatness.failed, 'fails', 'fail')}; EN 12326-1`,
    `Ring: ${ring.failed} of ${ring.measured} slates tapped ${fails(ring.failed, 'is', 'are')} dull`,
    'Inclusion: 1 slate; common practice',
    `With those asked about, ${outside} of ${sampled} are outside: ${certain} by a limit of the order, ${outside - certain} only by one that it does not confirm.`,
    inDelivery(figures.rangeOutside),
    `Ordered ${whole(ordered)}, on the pallets ${whole(delivered)}. ${ordered - delivered} slates short.`,
    `We ask for a credit and collection of the slates, by ${day(dayFromNow(9))}.`,
    `Of ${sampled} slates, ${acceptAtMost} may be outside.`,
    `Seller’s risk: a delivery with 4.0 % outside is refused ${percent(figures.sellersRisk)} of the time.`,
    `Buyer’s risk: a delivery with 20.0 % outside is still accepted ${percent(figures.buyersRisk)} of the time.`,
    `Measured with gauge no. 3, step 0.01 mm, last checked on ${day(dayFromNow(-3))}, by Siskin.`,
    `${sampled} slates drawn by chance from 5 pallets, before sorting, on ${day(dayFromNow(0))}, `
  ];
}

/** Holds two pages to the sentences: each is there, and nothing else on them has a digit. */
function expectNoOtherFigure(pages: readonly PaperPage[], sentences: readonly string[]): void {
  let rest = pages.map(({ says }) => says).join('');
  const all = sentences.map(spaceless).sort((one, other) => other.length - one.length);
  for (const sentence of all) {
    expect(rest).toContain(sentence);
    rest = rest.replaceAll(sentence, '…');
  }
  const known = [
    /page\dof\d·\d+\w+\d{4}·fingerprint[0-9a-f]{8}/g,
    /seed\d+/g,
    /\d{2}:\d{2}/g, // when it was drawn, measured and signed
    new RegExp(spaceless(day(dayFromNow(0))), 'g'),
    /SHA-256\)ofthefirst\d+entries:[0-9a-f]{64}/g,
    /Itcoverslines2to\d+ofthejobfile/g,
    /thatworksoutSHA-256must/g
  ];
  for (const form of known) rest = rest.replace(form, '…');
  expect(rest.match(/.{0,40}\d.{0,20}/g)).toBeNull();
}

/** Every reading stands once, in the order of the pallets, and no row is alone on a page. */
function expectReadings(pages: readonly PaperPage[], figures: ClaimFigures): void {
  const rowsOf = ({ lines }: PaperPage): string[] =>
    lines.filter((line) => /^[A-E]\/\d+\/\d+ /.test(line));
  for (const count of pages.map((page) => rowsOf(page).length).filter((rows) => rows > 0))
    expect(count).toBeGreaterThan(1);
  const expected = figures.readings
    .toSorted((one, other) =>
      one.label === other.label
        ? one.layer - other.layer || one.place - other.place
        : one.label < other.label
          ? -1
          : 1
    )
    .map(
      ({ label, layer, place, thicknessMm }) =>
        `${label}/${layer}/${place} ${thicknessMm.toFixed(2)}`
    );
  const shown = pages.flatMap(rowsOf).map((line) => line.split(/\s+/).slice(0, 2).join(' '));
  expect(shown).toEqual(expected);
}

const CHECKS: readonly (readonly [CheckName, string])[] = [
  ['thickness', 'Thickness'],
  ['length', 'Length'],
  ['width', 'Width'],
  ['squareness', 'Squareness'],
  ['edge', 'Edge'],
  ['flatness', 'Flatness'],
  ['ring', 'Ring'],
  ['defects', 'Defects']
];

/** The table of checks: counts, and the range of the delivery by the slates that chance picked. */
function expectChecks(pages: readonly PaperPage[], { byCheck }: ClaimFigures): void {
  const holding = pages.filter(({ lines }) => lines.some((line) => /^Check, and where/.test(line)));
  expect(holding).toHaveLength(1); // in one piece
  for (const [check, name] of CHECKS) {
    const { failed, measured, range: of } = byCheck[check];
    const row = holding[0].lines.find((line) =>
      new RegExp(`^${name} .*\\d of \\d+ .* to `).test(line)
    );
    expect(row?.replace(/\s+/g, ' ')).toContain(` ${failed} of ${measured} ${range(of)}`);
  }
}

/** What the buyer's own sheet says besides, each figure worked out anew. */
function ownSentences(figures: ClaimFigures): string[] {
  const { sampled, certain, outside, acceptAtMost, delivered, inside, shareCertain } = figures;
  const mm = (value: number): string => `${value.toFixed(2)} mm`;
  return [
    `${certain} of ${sampled} sampled slates are outside a limit of the order; ${acceptAtMost} may be.`,
    `${figures.ordered - delivered} slates fewer than ordered.`,
    `outside a limit of the order: ${certain} now; the plan accepts up to ${acceptAtMost}.`,
    `With those to ask about: ${outside} now; the plan accepts up to ${acceptAtMost}.`,
    `Of all slates the supplier makes like this: ${percent(shareCertain[0])} to ${percent(shareCertain[1])}.`,
    `Slates inside the order: ${range([delivered - figures.rangeOutside[1], delivered - figures.rangeOutside[0]])} of the`,
    `They run from ${mm(inside.thinnestMm)} to ${mm(inside.thickestMm)}: ${mm(inside.meanMm)} on average, usual variation ${mm(inside.sdMm)} (standard deviation).`,
    `These figures are from the ${inside.slates} slates of the sample inside the order alone`,
    `Usable slates: ${range(figures.rangeUsable)} of the`,
    `${figures.fullChecks} slates with none outside still leave up to ${whole(figures.byCheck.edge.range[1])} possible.`,
    // 100 slates 622 mm, 610 on the label
    `the label says 610 mm, +${(100 * (622 / 610 - 1)).toFixed(1)} %.`,
    // 120 a thousand of 5,000; 3 days at 80; 10 days at 80 and 250 for the way back
    'less credit 600 EUR; delay 240 EUR',
    'delay 800 EUR; sending back 250 EUR',
    ...figures.byPallet.map(
      (pallet) => `${pallet.outside} of ${pallet.of} ${mm(pallet.meanMm)} ${mm(pallet.sdMm)}`
    )
  ];
}

test('a claim written from an empty job: two pages and an annex, and every figure worked out anew from the job file', async ({
  page
}) => {
  const job = await writeClaim(page);
  const file = await backupOf(page, job);
  const figures = claimFigures(file);
  // Where slates fall is up to chance, so what follows from the gauge alone is told here.
  expect(figures).toMatchObject({ ordered: 5020, delivered: 5000, sampled: 40, fullChecks: 10 });
  expect(figures.byCheck.thickness).toMatchObject({ failed: 5, measured: 40 });
  expect(figures.leastPlan).toEqual({ sampleSize: 32, acceptAtMost: 3 });
  // scipy 1.17: hypergeom(5000, 200, 40) above 4 is 0.0205, hypergeom(5000, 1000, 40) to 4 0.0751
  expect(figures.sellersRisk).toBeCloseTo(0.0205, 4);
  expect(figures.buyersRisk).toBeCloseTo(0.0751, 4);

  await page.goto(`${job}/delivery/sheet`);
  await expect(page.getByRole('heading', { name: 'Annex: limits' })).toBeVisible();
  await expect(page.getByRole('img', { name: 'The delivery: broken corner' })).toBeVisible();
  const message = await page.getByLabel('Message to the supplier').inputValue();
  const signed = Number(/lines 2 to (\d+)/.exec(await page.locator('.signature').innerText())?.[1]);
  const sha = createHash('sha256')
    .update(
      file
        .split('\n')
        .slice(1, signed)
        .map((line) => `${line}\n`)
        .join('')
    )
    .digest('hex');
  for (const paper of PAPERS) {
    const pages = await printed(page, paper);
    expectHeads(pages, 'North shed', 'Claim');
    const annexAt = pages.findIndex(({ says }) => says.includes('Annex:limits'));
    expect(annexAt).toBe(2);
    const [first, second] = pages;
    const annex = pages.slice(annexAt);
    for (const words of ['We refuse the delivery and hold it unfixed.', 'What was agreed'])
      expect(first.says).toContain(spaceless(words));
    for (const words of ['What we ask for', 'Refuse: signed by Wren', 'Name, date, signature', sha])
      expect(second.says).toContain(spaceless(words));
    expectNoOtherFigure([first, second], sentencesOf(figures));
    // The message says what the claim says, and nothing else.
    const told = message.split('\n').slice(1, -2);
    for (const line of told)
      expect(first.says + second.says).toContain(spaceless(line.replace(/^– /, '')));
    expect(message).toContain(sha);

    expect(annex[0].says).toMatch(/^.{0,120}Annex:limits/);
    expectChecks(annex, figures);
    const all = pages.map(({ says }) => says).join('');
    expect(all).toMatch(/Itcoverslines2to\d+ofthejobfile,eachtotheendofitsline/);
    expect(all).not.toMatch(/sha256sum|head-n/);
    expectReadings(annex, figures);
    const marked = annex.flatMap(({ lines }) =>
      lines.filter((line) => /^[A-E]\/\d+\/\d+ .*(?:None seen|Broken|Inclusion) +\S/.test(line))
    );
    expect(marked).toHaveLength(figures.outside);
    const last = annex.map(({ says }) => says).join('');
    const counts = ['A', 'B', 'C', 'D', 'E'].map(
      (label) => `${label} 1,000 (10 layers of up to 100)`
    );
    for (const words of [
      'broken corner',
      '6.90 mm, measured. Pallet A, layer',
      `Slates on the pallets: ${counts.join('; ')}. Together 5,000.`,
      'Stacks measured: several pallets, 100 slates, 622 mm.',
      'Within the 3 % either way that the order allows.'
    ])
      expect(last).toContain(spaceless(words));
  }

  await page.getByRole('button', { name: 'Sheet for yourself' }).click();
  await expect(page.getByRole('heading', { name: 'Delivery sheet' })).toBeVisible();
  for (const paper of PAPERS) {
    const pages = await printed(page, paper);
    expectHeads(pages, 'North shed', 'Delivery sheet');
    const words = pages.map(({ says }) => says).join('');
    for (const sentence of ownSentences(figures)) expect(words).toContain(spaceless(sentence));
    for (const part of ['Refused by Wren on', '1. Outside the order', '3. This roof'])
      expect(pages[0].says).toContain(spaceless(part));
    expect(words).toContain(sha);
    expectChecks(pages, figures);
    expectReadings(pages, figures);
  }
});

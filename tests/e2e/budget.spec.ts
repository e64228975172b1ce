import { halfMeasured, laidJob } from './budget-jobs.ts';
import { FORM_SCREENS, expectWithinBudget } from './budget.ts';
import { expect, openExample, openFolds, ownLetters, startJob, test } from './helpers.ts';
import { SLATE } from './courses-job.ts';
import { seedJob, smallJob } from './seed-job.ts';

/** Screens that say their answer first, with what shows that the answer is there. */
const SCREENS: readonly { path: string; answer: RegExp }[] = [
  { path: '', answer: /Next: Sort the slates/ },
  { path: '/sort', answer: /Tap the pile of each slate/ },
  { path: '/lay', answer: /course 1 of 36/ },
  { path: '/roof', answer: /^72 courses: [\d,]+ slates and/ },
  { path: '/order', answer: /^Order [\d,]+ slate-and-a-halves/ },
  { path: '/sizes', answer: /^One line for each length/ },
  { path: '/courses', answer: /^Thick 1–\d+ · Medium \d+–\d+ · Thin \d+–36$/ },
  { path: '/grades', answer: /joints? in 100 will show if sorted right/ },
  { path: '/delivery', answer: /Query: Ask the supplier/ },
  { path: '/delivery/findings', answer: /Verdict: Query/ },
  { path: '/delivery/order', answer: /Slates ordered/ }
];

for (const { path, answer } of SCREENS)
  test(`${path || 'the job'} says its answer in 120 words and 1.6 phone screens`, async ({
    page
  }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    const job = await openExample(page);
    await page.goto(`${job}${path}`);
    const said = page.getByText(answer).first();
    await expect(said).toBeVisible();
    await ownLetters(page);
    const box = await said.boundingBox();
    expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThan(844);
    await expectWithinBudget(page, path || '/job');
  });

const PHONE = { width: 390, height: 844 };

/** What the first view of a screen says in a job that is empty, half measured, or laid. */
const STATES: readonly { path: string; empty?: RegExp; half: RegExp; laid: RegExp }[] = [
  {
    path: '/roof',
    empty: /^Start with the slate/,
    half: /^24 courses: [\d,]+ slates/,
    laid: /^24 courses: [\d,]+ slates/
  },
  {
    path: '/courses',
    empty: /^No plan yet/,
    // twice the slates it takes: by the rule every pile is laid all the same
    half: /^Thick 1–\d+ · Medium \d+–\d+ · Thin \d+–12$/,
    laid: /All 24 courses are laid/
  }
];

for (const { path, empty, half, laid } of STATES) {
  if (empty)
    test(`${path} keeps its budget in an empty job`, async ({ page }) => {
      await page.setViewportSize(PHONE);
      const job = await startJob(page, 'Nothing yet');
      await page.goto(`${job}${path}`);
      await expect(page.getByText(empty)).toBeInViewport();
      await expectWithinBudget(page, path);
    });

  for (const [state, acts, says] of [
    ['half measured', halfMeasured(), half],
    ['laid', laidJob(), laid]
  ] as const)
    test(`${path} keeps its budget in a job that is ${state}`, async ({ page }) => {
      await page.setViewportSize(PHONE);
      await page.goto(`/job/${await seedJob(page, acts)}${path}`);
      await expect(page.getByText(says)).toBeInViewport();
      await expectWithinBudget(page, path);
    });
}

test('the form of a slope keeps its budget: the first, one more, and one that is changed', async ({
  page
}) => {
  await page.setViewportSize(PHONE);
  await page.goto(`/job/${await seedJob(page, [...smallJob([]), SLATE])}/roof`);
  await page.getByRole('button', { name: 'Add a slope' }).click();
  const save = (name: string) => page.getByRole('button', { name: `Save ${name}` });
  await expect(save('Slope 1')).toBeVisible();
  await expectWithinBudget(page, 'the form of the first slope', FORM_SCREENS);

  const job = await openExample(page);
  await page.goto(`${job}/roof`);
  await page.getByRole('button', { name: 'Add a slope' }).click();
  await expect(save('Slope 3')).toBeVisible();
  await expectWithinBudget(page, 'the form of one more slope', FORM_SCREENS);
  await page.getByRole('button', { name: 'Discard changes' }).click();

  await openFolds(page, 'Each slope');
  await page.getByRole('button', { name: 'Change Back slope' }).click();
  await expect(save('Back slope')).toBeVisible();
  await openFolds(page, 'Each slope').then((fold) => fold.locator(':scope > summary').click());
  await expectWithinBudget(page, 'the form of a slope that is changed', FORM_SCREENS);
  await page.getByRole('button', { name: 'Leave it' }).click();
  await expect(save('Back slope')).toHaveCount(0);
});

import type { Page } from '@playwright/test';
import { JOB_SCREENS } from '../faults/screens.ts';
import { expect, openEveryFold, openExample, openFolds, ownLetters, test } from './helpers.ts';

const PHONE = { width: 390, height: 844 };
/** The narrowest phone that pages must hold on: WCAG 2.2, 1.4.10, asks for 320 CSS px. */
const NARROWEST = { width: 320, height: 700 };

/** What may be wider than its place. */
const MAY_SCROLL: readonly { label: string; why: string }[] = [
  {
    label: 'Parts of the delivery screen',
    why: 'a strip of links and no figures: the part shown is brought into view by itself'
  }
];

/** A part that must be on a screen before it is measured. */
const SHOWS: Readonly<Record<string, string>> = {
  '/sort': 'Slates by pallet',
  '/sheet': 'Courses, eave to ridge',
  '/delivery/order': 'Pallets',
  '/delivery/compare': 'By supplier',
  '/delivery/sheet': 'Every reading that counts'
};

/** A heading that must be there before the folds are opened and the screen is measured. */
const HEADED: Readonly<Record<string, string>> = {
  '/courses': 'Every course',
  '/roof': 'Each slope'
};

/** Whatever holds more across than it shows and would have to be panned, and by how much. */
async function sideways(page: Page): Promise<string[]> {
  await ownLetters(page);
  const wide = await page.evaluate(async () => {
    // A new width is answered in the next frame.
    for (let frame = 0; frame < 3; frame++) await new Promise(requestAnimationFrame);
    const root = document.documentElement;
    return [root, ...document.body.querySelectorAll('*')]
      .filter((part) => {
        const scrolls = /auto|scroll/.test(getComputedStyle(part).overflowX);
        return (scrolls || part === root) && part.scrollWidth > part.clientWidth + 1;
      })
      .map((part) => ({
        label: part.getAttribute('aria-label') ?? part.tagName,
        size: `${part.scrollWidth} in ${part.clientWidth}`
      }));
  });
  return wide
    .filter(({ label }) => !MAY_SCROLL.some((part) => part.label === label))
    .map(({ label, size }) => `${label}: ${size}`);
}

/** Measures what is shown on a phone and on the narrowest one. */
async function expectNothingSideways(page: Page, what: string): Promise<void> {
  await openEveryFold(page);
  for (const size of [NARROWEST, PHONE]) {
    await page.setViewportSize(size);
    expect(await sideways(page), `${what} at ${size.width} px`).toEqual([]);
  }
}

async function visit(page: Page, job: string, screen: string): Promise<void> {
  await page.goto(`${job}${screen}`);
  const shows = SHOWS[screen];
  await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached();
  await expect(page.getByText('Opening…')).toHaveCount(0);
  if (screen === '/delivery/findings') await openFolds(page, 'Pallets compared');
  if (screen === '/delivery/order') await openFolds(page, 'Pallets');
  if (shows) await expect(page.getByRole('region', { name: shows }).first()).toBeVisible();
  const headed = HEADED[screen];
  if (headed) await expect(page.getByRole('heading', { name: headed })).toBeVisible();
}

test('no screen of a job holds a table or panel that must be panned on a phone', async ({
  page
}) => {
  const job = await openExample(page);
  const ofDelivery = ['order', 'sample', 'measure', 'findings', 'sheet', 'compare'];
  for (const screen of [...JOB_SCREENS, ...ofDelivery.map((part) => `/delivery/${part}`)]) {
    await visit(page, job, screen);
    await expectNothingSideways(page, screen);
  }
  for (const screen of ['/', '/settings']) {
    await visit(page, '', screen);
    await expectNothingSideways(page, screen);
  }
});

test('no fold of Courses, panel of Sort or sheet of tags must be panned on a phone', async ({
  page
}) => {
  const job = await openExample(page);
  const press = (name: string | RegExp): Promise<void> =>
    page.getByRole('button', { name, exact: true }).first().click();
  const region = (name: string) => page.getByRole('region', { name });

  await visit(page, job, '/courses');
  await openFolds(page, 'Will each pile last?');
  await expect(region('Will each pile last?').getByRole('table')).toBeVisible();
  await openFolds(page, 'Loading out');
  await expect(page.getByRole('rowheader', { name: 'Lift 1', exact: true })).toBeVisible();
  await openFolds(page, 'What if …?');
  await press('Work it out');
  await expect(region('What if').getByRole('table')).toBeVisible();
  await openFolds(page, 'Computer test');
  await press(/^Lay it/);
  await expect(page.getByRole('row', { name: /^As planned/ })).toBeVisible();
  await expect(page.getByText(/^± says how far/)).toContainText('slates on a wrong pile');
  await openFolds(page, 'Draw list');
  await expect(page.getByRole('columnheader', { name: 'Total' }).first()).toBeAttached();
  await expectNothingSideways(page, 'Courses');
  await page.getByRole('slider').first().press('Home');
  await expect(page.getByRole('heading', { name: /: course 1 of/ })).toBeVisible();
  await expectNothingSideways(page, 'A course of the drawing');

  await visit(page, job, '/sort');
  for (const [panel, back] of [
    ['Pallets', 'Back'],
    ['Set aside', 'Back'],
    ['Entries', 'Back'],
    ['The day', 'Back'],
    ['Options', 'Back'],
    ['Gauge', 'By hand']
  ]) {
    await press(panel);
    await expect(page.getByRole('button', { name: back, exact: true })).toBeVisible();
    await expectNothingSideways(page, panel);
    await press(back);
  }

  await visit(page, job, '/tags');
  for (const sheet of ['Pallet tags', 'Tally sheet', 'Go/no-go card']) {
    await press(sheet);
    await expectNothingSideways(page, sheet);
  }
});

test('the audit sees a table that must be panned and a page wider than the window', async ({
  page
}) => {
  await openExample(page);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const add = (className: string, label: string): Promise<void> =>
    page.evaluate(
      ([className, label]) => {
        const place = document.createElement('div');
        place.className = className;
        place.setAttribute('aria-label', label);
        const wide = document.createElement('div');
        wide.style.width = '500px';
        wide.textContent = label;
        place.append(wide);
        document.querySelector('main')?.append(place);
      },
      [className, label]
    );
  expect(await sideways(page)).toEqual([]);
  await add('scroll-x', 'Too wide');
  expect(await sideways(page)).toEqual([expect.stringMatching(/^Too wide: 500 in \d+$/)]);
  await add('', 'Wider than the window');
  expect((await sideways(page)).join()).toContain('HTML');
});

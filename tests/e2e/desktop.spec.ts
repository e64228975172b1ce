import { JOB_SCREENS } from '../faults/screens.ts';
import { expect, openExample, ownLetters, test } from './helpers.ts';

const DELIVERY = ['order', 'sample', 'measure', 'findings', 'sheet', 'compare'];

test('every screen fits a laptop and a tablet, with the steps in sight @desktop', async ({
  page
}) => {
  const job = await openExample(page);
  const steps = page.getByRole('navigation', { name: 'Steps of the job' });
  for (const screen of [...JOB_SCREENS, ...DELIVERY.map((part) => `/delivery/${part}`)]) {
    await page.goto(`${job}${screen}`);
    await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached();
    await expect(page.getByText('Opening…')).toHaveCount(0);
    await ownLetters(page);
    for (const size of [
      { width: 1280, height: 800 },
      { width: 820, height: 1180 }
    ]) {
      await page.setViewportSize(size);
      await expect(steps, screen).toBeInViewport({ ratio: 1 });
      const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(beyond, `${screen} at ${size.width} px`).toBeLessThanOrEqual(0);
    }
  }
});

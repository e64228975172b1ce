import {
  type Browser,
  type BrowserContextOptions,
  type Page,
  devices,
  expect,
  test
} from '@playwright/test';
import { type CrewSite, crewSite } from '../faults/crew-site.ts';

/** For tests: a site with a hub, and phones of its own for each test. */
export class CrewPhones {
  site!: CrewSite;
  readonly #contexts: { close(): Promise<void> }[] = [];

  /** Starts and ends with each test of the file that calls it. */
  static ofEachTest(): CrewPhones {
    const phones = new CrewPhones();
    test.beforeEach(async () => {
      phones.site = await crewSite();
    });
    test.afterEach(async () => {
      for (const context of phones.#contexts.splice(0)) await context.close();
      await phones.site.end();
    });
    return phones;
  }

  /** A device of its own, with nothing on it. */
  async fresh(
    browser: Browser,
    options: BrowserContextOptions = devices['Pixel 7']
  ): Promise<Page> {
    const context = await browser.newContext({
      locale: 'en-GB',
      timezoneId: 'UTC',
      ...options,
      baseURL: this.site.url
    });
    this.#contexts.push(context);
    return context.newPage();
  }

  /** Lets the device of a page start crews here. */
  async takeKey(page: Page): Promise<void> {
    await page.goto(this.site.keyLink);
    await expect(page.getByText('This device can start crews now.')).toBeVisible();
    expect(new URL(page.url()).hash).toBe('');
  }

  /** Starts a crew for the worked example, and gives the job's path. */
  async startCrew(page: Page): Promise<string> {
    await this.takeKey(page);
    const job = await openExample(page);
    await page.goto(`${job}/crew`);
    await page.getByLabel('Your name, as the crew sees it').fill('Wren');
    await page.getByRole('button', { name: 'Start a crew for this job' }).click();
    await expect(page.getByText('All your entries are with the crew.')).toBeVisible();
    return job;
  }

  /** Two phones on the worked example: Wren's, which started the crew, and Robin's. */
  async two(browser: Browser): Promise<{ keeper: Page; mate: Page; job: string }> {
    const keeper = await this.fresh(browser);
    const job = await this.startCrew(keeper);
    const link = await invite(keeper);
    const mate = await this.fresh(browser);
    await join(mate, link, 'Robin');
    await mate.waitForURL(new RegExp(`${job}$`));
    return { keeper, mate, job };
  }
}

export async function openExample(page: Page): Promise<string> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Open the worked example' }).click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  return new URL(page.url()).pathname;
}

/** Makes an invitation on the Crew screen, and gives its link. */
export async function invite(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Invite somebody', exact: true }).click();
  await expect(page.getByRole('img', { name: 'The invitation as a QR code' })).toBeVisible();
  return page.locator('.url').innerText();
}

export async function join(page: Page, link: string, name: string): Promise<void> {
  await page.goto(link);
  await page.getByLabel('Your name, as the crew sees it').fill(name);
  await page.getByRole('button', { name: 'Join', exact: true }).click();
}

/** Slates on the piles of the pallet in use, as Sort shows them. */
export async function onPiles(page: Page): Promise<number> {
  const said = await page.locator('.piles button .count').allInnerTexts();
  return said.reduce((sum, one) => sum + Number(one.replace(/\D/g, '')), 0);
}

export function expectOnPiles(page: Page, slates: number): Promise<void> {
  return expect(async () => expect(await onPiles(page)).toBe(slates)).toPass();
}

/** Taps a pile: another than before, since the same one twice at once is a bounce of one tap. */
export async function tapPile(page: Page): Promise<void> {
  await expect(page.locator('.piles button .count').first()).toBeVisible();
  const before = await onPiles(page);
  await page
    .locator('.piles button')
    .nth(before % 3)
    .click();
  await expectOnPiles(page, before + 1);
  await expect(page.locator('.verdict .status')).toContainText('saved');
}

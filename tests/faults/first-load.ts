import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from '@playwright/test';

/** Most gzipped JavaScript that may come before a person can do anything, bytes. */
export const MOST_BYTES = 118_000;

/** Scripts fetched while a page opens, and their size as a server would send it. */
export interface FirstLoad {
  readonly files: number;
  readonly bytes: number;
  readonly gzipped: number;
}

/**
 * Opens a page with an empty cache and counts the scripts that came until it asked for no more.
 *
 * @param folder where the built app is, to gzip its files as a server does
 */
export async function firstLoad(page: Page, address: string, folder: string): Promise<FirstLoad> {
  const paths = new Set<string>();
  let [asked, answered] = [0, 0];
  const note = (request: { url(): string; resourceType(): string }): void => {
    asked++;
    const { pathname } = new URL(request.url());
    if (pathname.endsWith('.js') && request.resourceType() === 'script') paths.add(pathname);
  };
  const done = (): void => void answered++;
  page.on('request', note);
  page.on('requestfinished', done);
  page.on('requestfailed', done);
  await page.goto(address);
  await page.locator('main h1').first().waitFor();
  // Until the page is idle with nothing asked for that has not come, twice in a row.
  for (let quiet = 0; quiet < 2;) {
    const before = asked;
    await page.evaluate(() => new Promise((resume) => requestIdleCallback(resume)));
    quiet = asked === before && answered === asked ? quiet + 1 : 0;
  }
  page.off('request', note);
  page.off('requestfinished', done);
  page.off('requestfailed', done);
  const contents = [...paths].map((path) => readFileSync(join(folder, path)));
  return {
    files: contents.length,
    bytes: contents.reduce((sum, content) => sum + content.length, 0),
    gzipped: contents.reduce((sum, content) => sum + gzipSync(content, { level: 9 }).length, 0)
  };
}

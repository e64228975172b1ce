import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect } from './helpers.ts';

/** The papers a printer may hold, in points: ISO 216 A4 and ANSI/ASME Y14.1 Letter. */
export const PAPERS = [
  { format: 'A4', widthPt: 595.3, heightPt: 841.9 },
  { format: 'Letter', widthPt: 612, heightPt: 792 }
] as const;

/** One printed page: its words as they were drawn, and as they lie, in lines. */
export interface PaperPage {
  /** All words without white space, since bold letters lose theirs. */
  readonly says: string;
  readonly lines: readonly string[];
}

/** Keeps the printer's own window from opening: what it would get is read from the PDF. */
export async function keepPrinterShut(page: Page): Promise<void> {
  await page.addInitScript(() => (window.print = () => undefined));
}

/** Words as `says` has them. */
export function spaceless(words: string): string {
  return words.normalize('NFKC').replace(/\s/g, '');
}

/**
 * Prints what the page shows and reads it back with poppler (Debian: poppler-utils), a reader of PDF
 * that is not the browser's own. Holds every page to the paper's size.
 */
export async function printed(page: Page, paper: (typeof PAPERS)[number]): Promise<PaperPage[]> {
  const pdf = await page.pdf({ format: paper.format, preferCSSPageSize: true });
  const folder = mkdtempSync(join(tmpdir(), 'evencourse-paper-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, pdf);
    const info = execFileSync('pdfinfo', ['-f', '1', '-l', '999', file], { encoding: 'utf8' });
    const sizes = [...info.matchAll(/^Page\s+\d+ size:\s+([\d.]+) x ([\d.]+)/gm)];
    expect(sizes.length).toBeGreaterThan(0);
    for (const [, width, height] of sizes) {
      expect(Math.abs(Number(width) - paper.widthPt)).toBeLessThan(1.1);
      expect(Math.abs(Number(height) - paper.heightPt)).toBeLessThan(1.1);
    }
    const read = (order: '-raw' | '-layout'): string[] =>
      execFileSync('pdftotext', [order, file, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
    const [drawn, laidOut] = [read('-raw'), read('-layout')];
    expect(laidOut.length).toBe(sizes.length);
    return laidOut.map((own, index) => ({
      says: spaceless(drawn[index]),
      lines: own
        .normalize('NFKC')
        .split('\n')
        .map((line) => line.trim())
        .filter(Boolean)
    }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * Holds every page to its running head: job, what it is, "page n of m" with the number it really has,
 * the date, and one fingerprint for all of them. A head at the foot of another page, a page too many or
 * one cut in two would break the count.
 */
export function expectHeads(pages: readonly PaperPage[], job: string, what: string): void {
  const marks = new Set<string>();
  for (const [index, { says, lines }] of pages.entries()) {
    const head = lines.slice(0, 3).join(' ');
    expect(head).toContain(job);
    expect(head).toContain(what);
    expect(head).toContain(`page ${index + 1} of ${pages.length}`);
    expect(head).toMatch(/\d{1,2} \w{3,4} \d{4}/);
    marks.add(/fingerprint ([0-9a-f]{8})/.exec(head)?.[1] ?? 'none');
    expect(says.match(/page\d+of\d+/g)).toHaveLength(1);
  }
  expect(marks.size).toBe(1);
  expect([...marks][0]).toMatch(/^[0-9a-f]{8}$/);
}

/** Width of A4 within the margins of a sheet, 14 mm either side, in CSS pixels: 96 an inch by definition. */
const PAPER_PX = Math.floor(((210 - 28) * 96) / 25.4);

/** Shows main as it is printed on A4, for what is measured on it; `back` shows the screen again. */
export async function asPrinted(page: Page): Promise<() => Promise<void>> {
  const screen = page.viewportSize() ?? { width: 390, height: 844 };
  await page.setViewportSize({ width: PAPER_PX, height: 1000 });
  await page.emulateMedia({ media: 'print' });
  return async () => {
    await page.emulateMedia({ media: null });
    await page.setViewportSize(screen);
  };
}

/** Smallest letters that main shows, in points; a drawing's are measured as they come out. */
export async function smallestLetters(page: Page): Promise<{ pt: number; text: string }> {
  return page.evaluate(() => {
    const sizes: { pt: number; text: string }[] = [];
    const walker = document.createTreeWalker(document.querySelector('main')!, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const parent = node.parentElement!;
      const text = (node.textContent ?? '').trim();
      if (!text || parent.getClientRects().length === 0) continue;
      const scale =
        parent instanceof SVGGraphicsElement
          ? Math.hypot(parent.getScreenCTM()!.a, parent.getScreenCTM()!.b)
          : 1;
      sizes.push({ pt: (parseFloat(getComputedStyle(parent).fontSize) * scale * 72) / 96, text });
    }
    return sizes.toSorted((one, other) => one.pt - other.pt)[0];
  });
}

/**
 * Holds a printed list to its pages, as they stand while it is printed: letters of 11 pt, no heading
 * without rows, no row alone where its table has more, no page but the last under half full.
 */
export async function expectWellDivided(page: Page): Promise<void> {
  const back = await asPrinted(page);
  await expect(page.locator('.print-page').first()).toBeVisible();
  const smallest = await smallestLetters(page);
  expect(smallest.pt, smallest.text).toBeGreaterThanOrEqual(11 - 0.1);
  const pages = await page.locator('.print-page').evaluateAll((all) =>
    all.map((one) => ({
      heightMm: (one.getBoundingClientRect().height * 25.4) / 96,
      wide: one.scrollWidth - one.clientWidth,
      rows: [...one.querySelectorAll('tbody')].map((body) => body.rows.length),
      lone: [...one.querySelectorAll('h2')].filter((head) => !head.nextElementSibling).length
    }))
  );
  for (const [index, { heightMm, wide, rows, lone }] of pages.entries()) {
    expect(wide, `page ${index + 1} is too wide`).toBeLessThanOrEqual(1);
    expect(lone, `stranded headings of page ${index + 1}`).toBe(0);
    for (const count of rows) expect(count, `rows on page ${index + 1}`).toBeGreaterThan(1);
    // 255 mm are what Letter has within margins of 12 mm
    expect(heightMm, `page ${index + 1} is overfull`).toBeLessThanOrEqual(255);
    if (index < pages.length - 1)
      expect(heightMm, `page ${index + 1} is half empty`).toBeGreaterThan(255 / 2);
  }
  await back();
}

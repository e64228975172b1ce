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

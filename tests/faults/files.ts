import { readFileSync } from 'node:fs';
import { type Download, type Page, expect } from '@playwright/test';

export interface SavedFile {
  readonly name: string;
  readonly text: string;
}

/** Makes a backup on the Files screen of the job that a page shows, and saves it. */
export async function backUp(page: Page, job: string): Promise<SavedFile> {
  await page.goto(`${job.replace(/(\/job\/[0-9a-f-]+).*/, '$1')}/files`);
  await page.getByRole('button', { name: 'Make a backup file' }).click();
  const file = await saved(page, () => page.getByRole('button', { name: 'Save the file' }).click());
  await expect(page.getByText('Noted as backed up.')).toBeVisible();
  return file;
}

/** What the browser downloads upon an act. */
export async function saved(page: Page, act: () => Promise<void>): Promise<SavedFile> {
  const arriving = page.waitForEvent('download');
  await act();
  return read(await arriving);
}

async function read(download: Download): Promise<SavedFile> {
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

/** Chooses a job file in the restore picker of the job list, and gives what the app answers. */
export async function restore(page: Page, content: string | Buffer): Promise<string> {
  const answer = page.locator('[role="status"] .notice');
  const buffer = typeof content === 'string' ? Buffer.from(content) : content;
  const input = page.locator('input[type="file"]');
  await input.setInputFiles({ name: 'job.jsonl', mimeType: 'application/x-ndjson', buffer });
  // Taken up at once, the picker opens again when the answer is there.
  await expect(input).toBeEnabled();
  return answer.innerText();
}

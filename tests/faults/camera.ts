import { type Locator, type Page, expect } from '@playwright/test';

/** For tests: gives a page a camera that sees what {@link lookAt} holds before it. */
export async function giveCamera(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const seen = document.createElement('canvas');
    seen.width = seen.height = 1000;
    const pen = seen.getContext('2d');
    Object.assign(globalThis, {
      async holdBefore(picture: string) {
        const image = new Image();
        image.src = picture;
        await image.decode();
        pen?.drawImage(image, 0, 0, seen.width, seen.height);
      }
    });
    navigator.mediaDevices.getUserMedia = () => Promise.resolve(seen.captureStream(30));
  });
}

/** Holds what another screen shows before the camera of a page, again and again until it is done. */
export async function lookAt(page: Page, shown: Locator, isDone: Locator): Promise<void> {
  await expect(async () => {
    const picture = (await shown.screenshot()).toString('base64');
    await page.evaluate(
      (url) =>
        (globalThis as unknown as { holdBefore(url: string): Promise<void> }).holdBefore(url),
      `data:image/png;base64,${picture}`
    );
    await expect(isDone).toBeVisible({ timeout: 100 });
  }).toPass({ timeout: 240_000, intervals: [20] });
}

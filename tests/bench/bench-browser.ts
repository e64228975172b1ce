import { type Browser, chromium } from '@playwright/test';

/** A Chromium without a window, that asks no other host for anything. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--disable-background-networking']
  });
}

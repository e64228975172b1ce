import { defineConfig, devices } from '@playwright/test';

const site = process.env.BASE_URL;
const port = process.env.E2E_PORT ?? '4273';
const executablePath = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';

export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results',
  // Generous, for a slow or busy machine: tests wait for the work and fail by what they see.
  timeout: 300_000,
  expect: { timeout: 60_000 },
  fullyParallel: false,
  workers: 2,
  retries: 0,
  forbidOnly: true,
  reporter: [['list']],
  use: {
    baseURL: site ?? `http://127.0.0.1:${port}/`,
    launchOptions: {
      executablePath,
      args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--disable-background-networking']
    },
    locale: 'en-GB',
    timezoneId: 'UTC'
  },
  projects: [
    {
      name: 'phone',
      // What tries the storage and not the layout runs once, on the desktop.
      testIgnore:
        /(faults-|contract|offline|security|backup|update|health|first-load|soak|files|restore|host|not-started|persist|plain-http|own-routes)/,
      use: { ...devices['Pixel 7'], viewport: { width: 390, height: 844 }, hasTouch: true }
    },
    {
      name: 'desktop',
      // What sets the size of the window itself, or tries keys and touch, runs once, on the phone.
      testIgnore: /(access-targets|no-sideways|courses-phone|sort-touch|sort-wedge|sort-serial)/,
      use: { viewport: { width: 1280, height: 800 } }
    }
  ],
  webServer: site
    ? undefined
    : {
        command: `node scripts/serve.js ${port}`,
        url: `http://127.0.0.1:${port}/`,
        reuseExistingServer: false
      }
});

import { defineConfig, devices } from '@playwright/test';
import { isLong } from './tests/support/rounds.ts';

/** What takes long even in a short form: `npm run test:long` runs it, before a release. */
const LONG_RUNS = /\/(soak|faults-killed|faults-quota|faults-connection|update)\.spec\.ts/;

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
    { name: 'start', testMatch: 'example.setup.ts' },
    {
      // How the app behaves is tried once, on a phone.
      name: 'phone',
      dependencies: ['start'],
      grepInvert: /@desktop/,
      testIgnore: isLong ? undefined : LONG_RUNS,
      use: { ...devices['Pixel 7'], viewport: { width: 390, height: 844 } }
    },
    {
      // What is about a wide window, a mouse or a keyboard, and nothing else.
      name: 'desktop',
      dependencies: ['start'],
      grep: /@desktop/,
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

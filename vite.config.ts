import { sveltekit } from '@sveltejs/kit/vite';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/**
 * Lists the web worker's scripts in workers.json, because Kit's own list for the service worker
 * leaves them out and the app must start without a network.
 */
function listWorkers(): Plugin {
  return {
    name: 'evencourse-list-workers',
    apply: 'build',
    generateBundle(_options, bundle) {
      if (this.environment.name !== 'client') return;
      const scripts = Object.keys(bundle).filter((file) => file.includes('/workers/'));
      const source = JSON.stringify(scripts.map((file) => `/${file}`));
      this.emitFile({ type: 'asset', fileName: 'workers.json', source });
    }
  };
}

const PURE_FOLDERS = ['engine', 'journal', 'job', 'text', 'gauge'].map(
  (room) => `src/lib/${room}/**/*.test.ts`
);
const PURE = [...PURE_FOLDERS, 'tests/published/**/*.test.ts', 'tests/properties/**/*.test.ts'];
/** They need a database, or names of the browser. */
const NOT_PURE = ['tests/properties/storage*.test.ts', 'tests/properties/job-file*.test.ts'];

export default defineConfig({
  plugins: [sveltekit(), listWorkers()],
  worker: { format: 'es' },
  build: {
    chunkSizeWarningLimit: 700,
    // A slow machine is no fault of the build.
    rolldownOptions: { checks: { bundlerTimings: false } }
  },
  test: {
    testTimeout: 120_000,
    restoreMocks: true,
    projects: [
      {
        // Pure: nothing that a test leaves behind, so the files of a worker share their modules.
        extends: true,
        test: { name: 'pure', include: PURE, exclude: NOT_PURE, isolate: false }
      },
      {
        extends: true,
        test: {
          name: 'rest',
          include: ['src/**/*.test.ts', 'lint/**/*.test.ts', ...NOT_PURE],
          exclude: PURE_FOLDERS
        }
      }
    ]
  }
});

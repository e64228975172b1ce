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

export default defineConfig({
  plugins: [sveltekit(), listWorkers()],
  worker: { format: 'es' },
  build: {
    chunkSizeWarningLimit: 700,
    // A slow machine is no fault of the build.
    rolldownOptions: { checks: { bundlerTimings: false } }
  },
  test: {
    include: [
      'src/**/*.test.ts',
      'tests/published/**/*.test.ts',
      'tests/properties/**/*.test.ts',
      'lint/**/*.test.ts'
    ],
    testTimeout: 30_000,
    restoreMocks: true
  }
});

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

/** Modules that no page does without. */
const EVERY_PAGE = new RegExp(
  [
    'node_modules/(svelte|@sveltejs/kit|esm-env|clsx|dexie|valibot)/',
    'src/lib/journal/(bodies[-a-z]*|body-fields|faults|effects|view|register|ids|undo|events|fold|draft|canonical|upcasters)\\.ts',
    'src/lib/storage/(dexie-(store|journal)|database|event-tables|job-row|fold-batch|reconnect)\\.ts',
    'src/lib/storage/(stamp|identity|photo|probe|store|number-run|missing|removed)\\.ts',
    'src/lib/app/(store|start-check|updates|language|preferences|new-job|own-letters)[.a-z]*\\.ts',
    'src/lib/text/(words|numbers|plural|index|en/common|en/index)[.a-z]*\\.ts',
    'src/lib/engine/(errors|slate-checks|units)\\.ts',
    'src/lib/ui/(Field|FilePicker|Notice|Slab)\\.svelte',
    'src/lib/ui/(pile-colour|into-view)\\.ts',
    'src/(app|icons)\\.css',
    'src/routes/\\+layout\\.(svelte|ts)',
    'src/lib/engine/thickness/bins\\.ts',
    'preload-helper'
  ].join('|')
);

export default defineConfig({
  plugins: [sveltekit(), listWorkers()],
  worker: { format: 'es' },
  build: {
    chunkSizeWarningLimit: 700,
    // A screen's scripts are asked for by those that import them: to ask for all of them at once keeps
    // a slow phone busy for up to half a second. Its styles are, so that nothing shows without them.
    modulePreload: {
      resolveDependencies: (_file, parts, { hostType }) =>
        hostType === 'js' ? parts.filter((part) => part.endsWith('.css')) : parts
    },
    // A slow machine is no fault of the build.
    rolldownOptions: {
      checks: { bundlerTimings: false },
      output: {
        // What every page needs comes in one file: a slow line pays for each of them by itself.
        codeSplitting: {
          groups: [{ name: 'every-page', test: EVERY_PAGE }]
        }
      }
    }
  },
  test: {
    testTimeout: 120_000,
    hookTimeout: 120_000,
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

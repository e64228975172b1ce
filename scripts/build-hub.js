/** npm run build:hub: bundles the hub for plain Node into build-hub/. */
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { build } from 'vite';
import { ROOT } from './tools.js';

export const HUB_BUILD = join(ROOT, 'build-hub');

/**
 * @param {string} [folder] where to
 * @returns {Promise<string>} the path of the program
 */
export async function buildHub(folder = HUB_BUILD) {
  await build({
    configFile: false,
    root: ROOT,
    logLevel: 'warn',
    publicDir: false,
    resolve: { alias: { $lib: join(ROOT, 'src/lib') } },
    build: {
      ssr: join(ROOT, 'src/hub/index.ts'),
      outDir: folder,
      emptyOutDir: true,
      target: 'node20',
      rolldownOptions: { output: { entryFileNames: 'hub.mjs' } }
    }
  });
  return join(folder, 'hub.mjs');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildHub();

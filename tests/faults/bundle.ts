import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';

/** Tests and benches start in the project's folder. */
const ROOT = process.cwd();

/**
 * Builds one module for a page of its own, apart from the product, and gives the folder with
 * `index.html` and `page.js`.
 */
export async function bundlePage(entry: string): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'evencourse-page-'));
  await build({
    configFile: false,
    root: ROOT,
    logLevel: 'warn',
    resolve: { alias: { $lib: join(ROOT, 'src/lib') } },
    build: {
      outDir: folder,
      emptyOutDir: false,
      copyPublicDir: false,
      lib: { entry: join(ROOT, entry), formats: ['es'], fileName: () => 'page.js' }
    }
  });
  const html = '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">';
  writeFileSync(
    join(folder, 'index.html'),
    `${html}<title>page</title><script type="module" src="page.js"></script>`
  );
  return folder;
}

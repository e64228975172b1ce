/**
 * Runs a TypeScript program of this project with plain Node: bundles it with the project's own
 * Vite into a temporary folder and starts the result. Usage: node scripts/run-ts.js FILE [args…]
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * @param {string} file the program, relative to the project
 * @param {string[]} args passed on
 * @returns {Promise<number>} the program's exit code
 */
export async function runTypeScript(file, args = []) {
  const folder = mkdtempSync(join(tmpdir(), 'evencourse-'));
  try {
    await build({
      configFile: false,
      root,
      logLevel: 'warn',
      resolve: { alias: { $lib: join(root, 'src/lib') } },
      build: {
        ssr: resolve(root, file),
        outDir: folder,
        emptyOutDir: false,
        target: 'node20',
        rollupOptions: { output: { entryFileNames: '[name].js' } }
      }
    });
    writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'dir');
    const program = join(folder, basename(file).replace(/\.ts$/, '.js'));
    const flags = ['--expose-gc', program, ...args];
    return spawnSync(process.execPath, flags, { cwd: root, stdio: 'inherit' }).status ?? 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [file, ...args] = process.argv.slice(2);
  process.exitCode = await runTypeScript(file, args);
}

import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

/** `import … from`, `export … from` and `import '…'`, but not `import()`, which waits its turn. */
const IMPORT = /^\s*(?:import|export)\s(?:[^'";]*?\sfrom\s+)?'([^']+)'/gm;

/** @param {string} folder @returns {string[]} */
function codeIn(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return codeIn(path);
    return /\.(ts|js|svelte)$/.test(name) ? [path] : [];
  });
}

/** @param {string} file @param {string} source */
function fileOf(file, source) {
  if (!/^(\.|\$lib)/.test(source)) return undefined;
  const path = source.startsWith('$lib')
    ? join('src/lib', source.slice(5))
    : join(dirname(file), source);
  return [path, `${path}.ts`, join(path, 'index.ts')].map(normalize).find(isFile);
}

/** @param {string} path */
const isFile = (path) => existsSync(path) && statSync(path).isFile();

/**
 * Circles of files that import each other, types included: each as the files on its way round.
 *
 * @param {string[]} folders
 */
export function importCycles(folders) {
  const files = folders.flatMap(codeIn);
  /** @type {Map<string, 'open' | 'done'>} */
  const seen = new Map();
  /** @type {string[]} */
  const way = [];
  /** @type {string[][]} */
  const cycles = [];
  /** @param {string} file */
  const visit = (file) => {
    if (seen.get(file) === 'done') return;
    if (seen.get(file) === 'open') {
      cycles.push([...way.slice(way.indexOf(file)), file]);
      return;
    }
    seen.set(file, 'open');
    way.push(file);
    for (const [, source] of readFileSync(file, 'utf8').matchAll(IMPORT)) {
      const next = fileOf(file, source);
      if (next) visit(next);
    }
    way.pop();
    seen.set(file, 'done');
  };
  files.forEach(visit);
  return cycles;
}

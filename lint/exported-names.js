import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const DECLARED =
  /^export (?:declare |abstract |async )*(?:type|interface|class|function\*?|const|let|enum) ([\w$]+)/gm;

/** @param {string} folder @returns {string[]} */
function modulesIn(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return modulesIn(path);
    return /\.ts$/.test(name) && !/\.test\.ts$/.test(name) ? [path] : [];
  });
}

/**
 * Names that more than one module declares and exports, each with its modules: a reader who meets
 * one of them would have to ask which. Sections of words are left out, since a section has the same
 * name in every language.
 *
 * @param {string} folder
 * @returns {Record<string, string[]>}
 */
export function namesExportedTwice(folder) {
  /** @type {Map<string, string[]>} */
  const modules = new Map();
  for (const file of modulesIn(folder)) {
    if (/\/text\/[a-z]{2}\//.test(file)) continue;
    for (const [, name] of readFileSync(file, 'utf8').matchAll(DECLARED))
      modules.set(name, [...(modules.get(name) ?? []), file]);
  }
  return Object.fromEntries([...modules].filter(([, files]) => files.length > 1));
}

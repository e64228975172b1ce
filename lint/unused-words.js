import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

const NAME = /[A-Za-z_$][\w$]*/g;
const QUOTED = /'([\w -]+)'/g;

/** @param {string} folder @returns {string[]} */
function sourcesIn(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return sourcesIn(path);
    return /\.(ts|svelte)$/.test(name) && !/\.test\.ts$/.test(name) ? [path] : [];
  });
}

/**
 * Keys of the English words that no other source names: nothing can show them. A key counts as named
 * where its name stands anywhere in the code, so that a word is never called unused wrongly.
 *
 * @param {string} words folder of the English words
 * @param {string} code folder of all sources
 * @returns {string[]} each as "file: key"
 */
export function unusedWords(words, code) {
  /** @type {Set<string>} */
  const named = new Set();
  for (const file of sourcesIn(code)) {
    if (/\/text\/[a-z]{2}\//.test(file)) continue;
    const source = readFileSync(file, 'utf8');
    for (const [name] of source.matchAll(NAME)) named.add(name);
    for (const [, name] of source.matchAll(QUOTED)) named.add(name ?? '');
  }
  return sourcesIn(words).flatMap((file) => {
    const source = readFileSync(file, 'utf8');
    return keysOf(file, source)
      .filter((key) => !named.has(key) && !source.includes(`.${key}`))
      .map((key) => `${file}: ${key}`);
  });
}

/** @param {string} file @param {string} source */
function keysOf(file, source) {
  /** @type {string[]} */
  const keys = [];
  /** @param {ts.Node} node */
  const visit = (node) => {
    if (ts.isPropertyAssignment(node) && 'text' in node.name) keys.push(node.name.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, source, ts.ScriptTarget.Latest));
  return keys;
}

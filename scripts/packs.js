import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

const HASHED = '_app/immutable';
const PACKS = `${HASHED}/packs`;
/** What a pack may hold before it is compressed, bytes; below 100 kB once it is. */
const MOST_BYTES = 250_000;
/** Parts that a pack has at least: the app's worker fetches fewer by themselves. */
const FEWEST_PARTS = 4;

/**
 * Joins the scripts and styles of a built app into packs, so that a poor line pays for some ten
 * requests and not for two hundred when the app's worker fetches the app. `packs.json` names each
 * pack with its SHA-256 and the parts in it. What the first page fetches by itself is in no pack:
 * it lies in the browser's cache already, and `packs.json` gives its SHA-256 alone.
 *
 * @param {string} folder the built app, where `packs.json` and the packs are written
 * @param {string} firstPage its HTML
 */
export function writePacks(folder, firstPage) {
  rmSync(join(folder, PACKS), { recursive: true, force: true });
  mkdirSync(join(folder, PACKS));
  const texts = new Map(
    partsIn(folder).map((path) => [path, readFileSync(join(folder, path), 'utf8')])
  );
  const isFirst = (/** @type {string} */ path) => firstPage.includes(`/${path}"`);
  const [first, rest] = [
    [...texts].filter(([path]) => isFirst(path)),
    [...texts].filter(([path]) => !isFirst(path))
  ];
  const packs = filled(rest).map((parts) => {
    const content = JSON.stringify(Object.fromEntries(parts));
    const sha256 = sha256Of(content);
    const path = `${PACKS}/${sha256.slice(0, 12)}.json`;
    writeFileSync(join(folder, path), content);
    return { path, sha256, parts: parts.map(([part]) => part) };
  });
  const known = first.map(([path, text]) => ({ path, sha256: sha256Of(text) }));
  writeFileSync(join(folder, 'packs.json'), JSON.stringify({ packs, first: known }));
}

/**
 * Every hashed script and style.
 *
 * @param {string} folder
 */
function partsIn(folder) {
  return readdirSync(join(folder, HASHED), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(js|css)$/.test(entry.name))
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/**
 * Fills packs in order. A part larger than a pack is in none, nor are the few that are
 * left over: they come by themselves.
 *
 * @param {[path: string, text: string][]} parts
 */
function filled(parts) {
  /** @type {[path: string, text: string][][]} */
  const packs = [];
  let room = 0;
  for (const part of parts) {
    const { length } = part[1];
    if (length > MOST_BYTES) continue;
    if (length > room) {
      packs.push([]);
      room = MOST_BYTES;
    }
    packs[packs.length - 1].push(part);
    room -= length;
  }
  return packs.filter((pack) => pack.length >= FEWEST_PARTS);
}

/** @param {string} text */
function sha256Of(text) {
  return createHash('sha256').update(text).digest('hex');
}

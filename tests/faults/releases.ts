import { createHash } from 'node:crypto';
import {
  existsSync,
  readFileSync,
  readdirSync,
  renameSync,
  statSync,
  writeFileSync
} from 'node:fs';
import { basename, join } from 'node:path';
import { writePacks } from '../../scripts/packs.js';
import type { Handler } from '../../scripts/serve.js';
import type { OwnSite } from './own-site.ts';

const PAGES = ['index.html', 'fallback.html', 'settings.html'];
const TYPES: Record<string, string> = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  json: 'application/json',
  svg: 'image/svg+xml'
};

/**
 * Makes the served app a later release: another version, a mark in its pages, and other names for
 * all scripts and styles, as when every file changed. Those of the release before are gone.
 */
export function release({ folder }: OwnSite, name: string): void {
  const version = versionOf(folder);
  const worker = join(folder, 'service-worker.js');
  // The app and its worker name their version to each other.
  for (const file of [worker, ...filesIn(join(folder, '_app/immutable'))])
    if (file.endsWith('.js'))
      rewrite(file, (text) => text.replaceAll(version, `${version}-${name}`));
  for (const page of PAGES)
    rewrite(join(folder, page), (text) =>
      text.replace(
        /<head>(<meta name="release"[^>]*>)?/,
        `<head><meta name="release" content="${name}">`
      )
    );
  const hashed = filesIn(join(folder, '_app/immutable')).filter((path) => /\.(js|css)$/.test(path));
  const names = new Map(
    hashed.map((path) => [basename(path), basename(path).replace(/(\.\w+)$/, `${name}$1`)])
  );
  const anyName = new RegExp(
    [...names.keys()].map((known) => known.replaceAll('.', '\\.')).join('|'),
    'g'
  );
  for (const path of filesIn(folder).filter((path) => /\.(js|css|html|json)$/.test(path)))
    rewrite(path, (text) => text.replace(anyName, (known) => names.get(known) ?? known));
  for (const path of hashed)
    renameSync(path, path.replace(basename(path), names.get(basename(path))!));
  // The policy allows the page's own script by the hash of its text, which has changed.
  for (const page of PAGES)
    rewrite(join(folder, page), (text) => {
      const script = /<script>([^]*?)<\/script>/.exec(text)?.[1] ?? '';
      const hash = createHash('sha256').update(script).digest('base64');
      return text.replace(/(script-src 'self' 'sha256-)[^']*/, `$1${hash}`);
    });
  writePacks(folder, readFileSync(join(folder, 'index.html'), 'utf8'));
}

/** A host with caching of its own: pages and scripts go out with the headers given, no others. */
export function hostWith(
  site: () => OwnSite,
  headersFor: (path: string) => Record<string, string>
): Handler {
  return ({ url }, response) => {
    const path = new URL(url ?? '/', 'http://host').pathname;
    const tries = [path, `${path}.html`, `${path}index.html`, '/fallback.html'];
    const found = tries
      .map((name) => join(site().folder, name))
      .find((file) => existsSync(file) && statSync(file).isFile());
    if (!found || (found.endsWith('fallback.html') && /\.\w+$/.test(path))) return false;
    const type = TYPES[found.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
    response.writeHead(200, { 'Content-Type': type, ...headersFor(path) });
    response.end(readFileSync(found));
    return true;
  };
}

function versionOf(folder: string): string {
  const { version } = JSON.parse(readFileSync(join(folder, '_app/version.json'), 'utf8')) as {
    version: string;
  };
  const marked = new RegExp(`${version}(?:-\\w+)*`);
  return marked.exec(readFileSync(join(folder, 'service-worker.js'), 'utf8'))?.[0] ?? version;
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

function rewrite(path: string, change: (text: string) => string): void {
  const before = readFileSync(path, 'utf8');
  const after = change(before);
  if (after !== before) writeFileSync(path, after);
}

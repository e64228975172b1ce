/// <reference types="@sveltejs/kit" />
/// <reference lib="webworker" />
import { base, build, files, prerendered, version } from '$service-worker';
import { NO_PACKS, type Pack, fetchKnown, fetchPack, fetchPackList } from './packs.ts';

/**
 * Keeps the app's shell on the device, so that it starts without a network. It never sees a
 * reading: those are in the journal. A new version waits until the person accepts it.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;

// The path is part of the name: two copies of the app on one host share the caches' names.
const OWN = `evencourse${base}-`;
const CACHE = `${OWN}${version}`;
const IMMUTABLE = `${base}/_app/immutable/`;
// Kit's lists name neither the fallback page, which serves every job's pages, nor worker scripts.
const FALLBACK = `${base}/fallback.html`;
const WORKERS = `${base}/workers.json`;
const JOBS = `${base}/job/`;
const PAGES = new Set([...prerendered, FALLBACK]);
const PARTS = new Set([...build, ...files, ...PAGES, WORKERS]);
/** Few at once, so that the first taps do not wait behind them on a slow line. */
const AT_ONCE = 3;
/** So few parts of a pack come faster by themselves than with all the others of it. */
const FEW = 3;

worker.addEventListener('install', (event) => {
  event.waitUntil(install());
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(dropEarlier(2).then(() => worker.clients.claim()));
});

worker.addEventListener('message', (event) => {
  if (event.data === 'accept-update') void worker.skipWaiting();
  if (event.data === `started ${version}`) event.waitUntil(afterStart());
  if (event.data === 'look') event.waitUntil(look(event.ports[0]));
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== worker.location.origin) return;
  const isJob = request.mode === 'navigate' && url.pathname.startsWith(JOBS);
  const path = isJob ? FALLBACK : url.pathname;
  // Whatever else is on this host is none of the app's business.
  if (!PARTS.has(path) && !path.startsWith(IMMUTABLE)) return;
  // Never inside the page of another.
  const isFramed = request.mode === 'navigate' && request.destination !== 'document';
  event.respondWith(isFramed ? Response.error() : answer(request, path));
});

async function answer(request: Request, path: string): Promise<Response> {
  const kept = await (await caches.open(CACHE)).match(path);
  return kept ?? (await keptEarlier(path)) ?? fetch(request);
}

/** A part that an open page of an earlier version may still ask for; hashed, so always the same. */
async function keptEarlier(path: string): Promise<Response | undefined> {
  if (!path.startsWith(IMMUTABLE)) return undefined;
  for (const name of (await ownCaches()).reverse()) {
    const kept = await (await caches.open(name)).match(path);
    if (kept && isRight(path, kept)) return kept;
  }
  return undefined;
}

/** Of a first try that was cut off, only what is hashed may stay. */
async function install(): Promise<void> {
  await dropUnhashed(await caches.open(CACHE));
  await fill();
}

async function dropUnhashed(cache: Cache): Promise<void> {
  for (const request of await cache.keys())
    if (!new URL(request.url).pathname.startsWith(IMMUTABLE)) await cache.delete(request);
}

/**
 * Stores every part that the cache lacks. Fails unless each came, is of its kind, and every script
 * and style that a stored page names is stored too: a page of another release is none of ours.
 *
 * @returns how many were lacking
 */
async function fill(): Promise<number> {
  const cache = await caches.open(CACHE);
  const list = (await cache.match(WORKERS)) ?? (await fetchNew(WORKERS));
  const workers: string[] = await list.json();
  const parts = [...new Set([...PARTS, ...workers.map((path) => base + path)])];
  const held = new Set((await cache.keys()).map(({ url }) => new URL(url).pathname));
  const lacking = parts.filter((path) => !held.has(path));
  try {
    await fetchAll(cache, await copyEarlier(cache, lacking));
    await checkPages(cache, new Set(parts));
  } catch (error) {
    // What is hashed may stay for the next try; a page may be of another release by then.
    for (const path of lacking) if (!path.startsWith(IMMUTABLE)) await cache.delete(path);
    throw error;
  }
  return lacking.length;
}

/** Copies what earlier versions hold of the paths. Gives those that nobody holds. */
async function copyEarlier(cache: Cache, paths: readonly string[]): Promise<string[]> {
  if ((await ownCaches()).length === 0) return [...paths];
  const missing: string[] = [];
  for (const path of paths) {
    const kept = await keptEarlier(path);
    if (kept) await cache.put(path, kept);
    else missing.push(path);
  }
  return missing;
}

/** Fetches and stores every path, in packs where that is quicker. Fails unless each came. */
async function fetchAll(cache: Cache, paths: readonly string[]): Promise<void> {
  const missing = new Set(paths);
  const list = missing.size > FEW ? await fetchPackList(base) : NO_PACKS;
  const packs = list.packs.filter(
    ({ parts }) => parts.filter((path) => missing.has(path)).length > FEW
  );
  const packed = new Set(packs.flatMap(({ parts }) => parts));
  const queue: (Pack | string)[] = [...packs, ...paths.filter((path) => !packed.has(path))];

  async function storePack(pack: Pack): Promise<void> {
    const parts = await fetchPack(pack).catch(() => undefined);
    // A pack that did not come whole: its parts by themselves.
    if (!parts) queue.push(...pack.parts.filter((path) => missing.has(path)));
    for (const [path, part] of parts ?? []) if (missing.has(path)) await cache.put(path, part);
  }

  // The large ones come one after the other, while the small ones, which mostly wait, come beside.
  const lane = async (_: unknown, index: number): Promise<void> => {
    const take = (): Pack | string | undefined => (index === 0 ? queue.shift() : queue.pop());
    for (let next = take(); next !== undefined; next = take())
      if (typeof next !== 'string') await storePack(next);
      else await cache.put(next, await fetchPart(next, list.first.get(next)));
  };
  const ends = await Promise.allSettled(Array.from({ length: AT_ONCE }, lane));
  for (const end of ends) if (end.status === 'rejected') throw end.reason;
}

/** Fetches a part, if need be past the browser's own cache. */
async function fetchPart(path: string, sha256?: string): Promise<Response> {
  const known = sha256 === undefined ? undefined : await fetchKnown(path, sha256);
  return known ?? fetchNew(path);
}

/** Fetches past the browser's own cache, which may hold that of an earlier release. */
async function fetchNew(path: string): Promise<Response> {
  const response = await fetch(path, { cache: 'reload', priority: 'low' });
  if (!response.ok || !isRight(path, response)) throw new Error(`${path} did not come`);
  // A browser refuses a redirected answer to a page that it opens.
  return response.redirected ? new Response(response.body, response) : response;
}

/** Whether an answer is of the kind its path says: some hosts send a page for a missing script. */
function isRight(path: string, { headers }: Response): boolean {
  const type = headers.get('content-type') ?? '';
  const isPage = PAGES.has(path) || path.endsWith('.html');
  if (path.endsWith('.js')) return type.includes('javascript');
  return type.includes('html') === isPage;
}

/** Fails when a stored page names a script or style that is not stored. */
async function checkPages(cache: Cache, stored: ReadonlySet<string>): Promise<void> {
  for (const page of PAGES) {
    const html = await (await cache.match(page))?.text();
    const named = html?.matchAll(/(?:(?:src|href)=|import\()"([^"]+\.(?:js|css))"/g) ?? [];
    for (const [, name] of named) {
      const { pathname } = new URL(name, new URL(page, worker.location.origin));
      if (!stored.has(pathname)) throw new Error(`${page} names ${name}, which is not stored`);
    }
  }
}

/** Tells a page whether every part is there, after fetching what was lacking. */
async function look(port: MessagePort): Promise<void> {
  const answered = await fill().then(
    (lacking) => ({ isWhole: true, lacking }),
    () => ({ isWhole: false, lacking: 0 })
  );
  port.postMessage(answered);
}

/** This version has started: the earlier ones are for open pages of theirs only. */
async function afterStart(): Promise<void> {
  const pages = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  await dropEarlier(pages.length > 1 ? 2 : 0);
}

/** Names of the caches of earlier versions, oldest first. */
async function ownCaches(): Promise<string[]> {
  return (await caches.keys()).filter((name) => name.startsWith(OWN) && name !== CACHE);
}

/** Drops the earlier caches but the newest few. */
async function dropEarlier(kept: number): Promise<void> {
  const earlier = await ownCaches();
  for (const name of earlier.slice(0, earlier.length - kept)) await caches.delete(name);
}

/// <reference types="@sveltejs/kit" />
/// <reference lib="webworker" />
import { base, build, files, prerendered, version } from '$service-worker';

/**
 * Keeps the app's shell on the device, so that it starts without a network. It never sees a
 * reading: those are in the journal. A new version waits until the person accepts it.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;

const CACHE = `evencourse-${version}`;
// Kit's lists name neither the fallback page, which serves every job's pages, nor worker scripts.
const FALLBACK = `${base}/fallback.html`;
const WORKERS = `${base}/workers.json`;

worker.addEventListener('install', (event) => {
  event.waitUntil(precache());
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(dropOldCaches());
});

worker.addEventListener('message', (event) => {
  if (event.data === 'accept-update') void worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== worker.location.origin) return;
  event.respondWith(answer(event.request, url));
});

async function precache(): Promise<void> {
  const cache = await caches.open(CACHE);
  const workers: string[] = await (await fetch(WORKERS, { cache: 'reload' })).json();
  const paths = [...build, ...files, ...prerendered, FALLBACK, ...workers.map((w) => base + w)];
  await cache.addAll([...new Set(paths)]);
}

/**
 * A page that an earlier version opened may still ask for parts of that version: while any page is
 * open, the two newest of the earlier caches stay.
 */
async function dropOldCaches(): Promise<void> {
  const pages = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  const earlier = (await caches.keys()).filter((name) => name !== CACHE);
  const dropped = pages.length > 0 ? earlier.slice(0, -2) : earlier;
  for (const name of dropped) await caches.delete(name);
  await worker.clients.claim();
}

async function answer(request: Request, url: URL): Promise<Response> {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(url.pathname);
  if (kept) return kept;
  if (request.mode === 'navigate') return (await cache.match(FALLBACK)) ?? fetch(request);
  return (await caches.match(url.pathname)) ?? fetch(request);
}

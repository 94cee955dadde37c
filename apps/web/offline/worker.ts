/*
 * Keeps one page and all that belongs to it (the one whose address is the scope that it is registered for), so that it opens with no network. It never answers for the API: what is
 * entered waits in the page's own store, and what is read is read anew.
 */

/** Of one page. */
interface Precache {
  /** Made of the contents of the files. */
  readonly name: string;
  readonly files: readonly string[];
}

interface Waiting {
  waitUntil(what: Promise<unknown>): void;
}

interface Fetching {
  readonly request: Request;
  respondWith(what: Promise<Response>): void;
}

/** The part of the worker's global that is used here. */
interface Worker {
  readonly location: Location;
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: Waiting) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void;
}

const worker = globalThis as unknown as Worker;
/** Written in by the build. */
declare const __PRECACHE__: Readonly<Record<string, Precache>>;
const PAGE = new URL(worker.registration.scope).pathname;
const list = __PRECACHE__[PAGE] ?? { name: 'nothing', files: [] };
const PREFIX = `sectorline${PAGE.replace('/', '-')}-`;
const current = PREFIX + list.name;

worker.addEventListener('install', (event) => {
  event.waitUntil(keepAll());
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(dropOld());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== worker.location.origin) return;
  if (request.mode === 'navigate' && url.pathname === PAGE) event.respondWith(kept(PAGE, request));
  else if (list.files.includes(url.pathname)) event.respondWith(kept(url.pathname, request));
});

async function keepAll(): Promise<void> {
  const cache = await caches.open(current);
  await cache.addAll(list.files.map((file) => new Request(file, { cache: 'reload' })));
  // The page loads all of its code at once, so it goes on undisturbed while a new build takes over.
  await worker.skipWaiting();
}

async function dropOld(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(PREFIX) && name !== current).map((name) => caches.delete(name)),
  );
  await worker.clients.claim();
}

async function kept(path: string, request: Request): Promise<Response> {
  const cache = await caches.open(current);
  return (await cache.match(path)) ?? fetch(request);
}

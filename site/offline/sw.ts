/**
 * The service worker: keeps one whole version of the page on the machine and serves it from there. A newer version is
 * fetched beside it, every file checked against the digest that was built into this script; only when all of it has
 * arrived does it count as installed, and it takes over only when the page says so or is closed. A server that changes
 * or is lost in the midst of that leaves the old version as it was.
 *
 * The build puts `built` on the first line.
 */
declare const self: ServiceWorkerGlobalScope;
/** Paths relative to the page, and the digest of each file; the page itself goes by the empty path. */
declare const built: { readonly version: string; readonly files: Readonly<Record<string, string>> };

const scope = new URL(self.registration.scope);
// Several copies of the page may live on one host, each under its own path.
const family = `drywright ${scope.pathname} `;
const own = family + built.version;

const addressOf = (path: string): string => new URL(path, scope).href;
/** Under which a file is kept: with its digest, so that a later version finds what has not changed. */
const keyOf = (path: string): string => `${addressOf(path)}?${encodeURIComponent(built.files[path] ?? '')}`;

/** One file that a version lacks: from a version that is here already, else from the server. */
async function bring(path: string): Promise<Response> {
  const held = await caches.match(keyOf(path));
  if (held) return held;
  const integrity = built.files[path] ?? '';
  return fetch(addressOf(path), { integrity, cache: 'no-cache', credentials: 'same-origin' });
}

async function install(): Promise<void> {
  const cache = await caches.open(own);
  await Promise.all(
    Object.keys(built.files).map(async (path) => {
      const response = await bring(path);
      if (!response.ok) throw new Error(`${path}: ${response.status}`);
      await cache.put(keyOf(path), response);
    }),
  );
}

/** Lets go of older versions, and of newer ones that never became whole. */
async function clear(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((n) => n.startsWith(family) && n !== own).map((n) => caches.delete(n)));
}

/** The path of a kept file that a request is for, or null. */
function pathOf(request: Request): string | null {
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== scope.origin || !pathname.startsWith(scope.pathname))
    return null;
  const path = pathname.slice(scope.pathname.length).replace(/^index\.html$/, '');
  return path in built.files ? path : null;
}

async function serve(request: Request, path: string): Promise<Response> {
  const cache = await caches.open(own);
  return (await cache.match(keyOf(path))) ?? fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => event.waitUntil(clear()));
self.addEventListener('fetch', (event) => {
  const path = pathOf(event.request);
  if (path !== null) event.respondWith(serve(event.request, path));
});
self.addEventListener('message', (event) => {
  if (event.data === 'take over') void self.skipWaiting();
});

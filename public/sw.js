// Keeps Duckboard working without a signal.
//
// One cache holds one build, whole or not at all: every file is checked against the
// digest that the build wrote below, so that two builds can never mix. A new build
// waits until the page asks for it: nobody is reloaded in the middle of a reading.
// `cargo xtask dist` fills in the two quoted names.

const BUILD = '__BUILD__';
const FILES = '__FILES__'; // [{ url, integrity }, …], relative to this file

// The scope is in the name because another copy, on another path of the same
// origin, shares the cache storage and must keep its caches.
const OURS = `duckboard ${self.registration.scope} `;
const CACHE = OURS + BUILD;
const SHELL = new URL('./', self.location).href;
const KEPT = new Set(FILES.map(file => new URL(file.url, self.location).href));

self.addEventListener('install', event => event.waitUntil(keepBuild()));
self.addEventListener('activate', event => event.waitUntil(takeOver()));

self.addEventListener('message', event => {
  if (event.data?.type === 'activate') self.skipWaiting();
});

self.addEventListener('fetch', event => {
  const url = keptUrlFor(event.request);
  if (url) event.respondWith(answer(url, event.request));
});

// `addAll` stores every file or none; `reload` goes past the browser's own cache.
async function keepBuild() {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map(({ url, integrity }) =>
    new Request(url, { cache: 'reload', integrity })));
}

async function takeOver() {
  const names = await caches.keys();
  const old = names.filter(name => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(old.map(name => caches.delete(name)));
  await self.clients.claim();
}

// The address under which we hold the answer, if we do: the part after `#` and `?`
// never chooses a file, and every unknown page inside the scope is the app itself.
function keptUrlFor(request) {
  if (request.method !== 'GET') return undefined;
  const url = new URL(request.url);
  url.hash = '';
  url.search = '';
  if (KEPT.has(url.href)) return url.href;
  return request.mode === 'navigate' ? SHELL : undefined;
}

// A phone may have thrown the cache away: then the network is the only hope.
async function answer(url, request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(url, { ignoreVary: true })) ?? fetch(request);
}

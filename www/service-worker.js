// Keeps the page on this device, so that it opens without a network. `downbeam pack --site` writes in the
// files and a version, which is a digest of them all. Never part of a package for a learning platform.

const VERSION = '';
const FILES = [];

const PREFIX = 'downbeam-';
const CACHE = PREFIX + VERSION;
const own = (path) => new URL(path, self.registration.scope).href;

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(forgetOthers()));

/** All or nothing: a version of which a file is missing is no version. */
async function keepAll() {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map((path) => new Request(own(path), { cache: 'no-cache' })));
}

async function forgetOthers() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
  await self.clients.claim();
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(self.registration.scope)) return;
  event.respondWith(answer(request));
});

/** From this version's files; whatever is not among them comes from the network. */
async function answer(request) {
  const url = new URL(request.url);
  const bare = url.origin + url.pathname;
  const cache = await caches.open(CACHE);
  const kept = await cache.match(bare === own('') ? own('index.html') : bare);
  return kept ?? fetch(request);
}

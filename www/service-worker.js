// Keeps the page on this device, so that it opens without a network. `downbeam pack --site` writes in the
// files and a version, which is a digest of them all. Never part of a package for a learning platform.

const VERSION = '';
/** @type {string[]} */
const FILES = [];

const PREFIX = 'downbeam-';
const CACHE = PREFIX + VERSION;
/**
 * Of the scope that a service worker runs in, what is used here.
 * @typedef {Event & { waitUntil: (work: Promise<unknown>) => void }} LastingEvent
 * @typedef {Event & { request: Request, respondWith: (response: Promise<Response>) => void }} FetchEvent
 * @typedef {object} WorkerScope
 * @property {ServiceWorkerRegistration} registration
 * @property {{ claim: () => Promise<void> }} clients
 * @property {(type: 'install' | 'activate', act: (event: LastingEvent) => void) => void} addEventListener
 */
const worker = /** @type {WorkerScope & { addEventListener: (type: 'fetch', act: (event: FetchEvent) => void) => void }} */ (/** @type {unknown} */ (self));
const own = (/** @type {string} */ path) => new URL(path, worker.registration.scope).href;

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));
worker.addEventListener('activate', (event) => event.waitUntil(forgetOthers()));

/** All or nothing: a version of which a file is missing is no version. */
async function keepAll() {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map((path) => new Request(own(path), { cache: 'no-cache' })));
}

async function forgetOthers() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
  await worker.clients.claim();
}

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(worker.registration.scope)) return;
  event.respondWith(answer(request));
});

/**
 * From this version's files; whatever is not among them comes from the network.
 * @param {Request} request
 */
async function answer(request) {
  const url = new URL(request.url);
  const bare = url.origin + url.pathname;
  const cache = await caches.open(CACHE);
  const kept = await cache.match(bare === own('') ? own('index.html') : bare);
  return kept ?? fetch(request);
}

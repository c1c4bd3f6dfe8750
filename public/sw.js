// Keeps this version's files on the device, so that Layshaft opens without a network.
// The build writes the version and the list of files. A new version waits until the page says `take-over` or every tab is closed.

const CACHE = "layshaft-{{version}}";
const FILES = {{files}};

/** A name that carries a hash never stands for anything else: what the page has fetched already is not fetched again. */
const neverChanges = (file) => /\.[0-9a-f]{16}\.\w+$/.test(file);

/** Takes every file of this version, all or none; those that may change past the browser's own cache. */
async function fill() {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map((file) => new Request(file, { cache: neverChanges(file) ? "default" : "no-cache" })));
}

/** Drops what earlier versions kept, then serves the pages that are open. */
async function settle() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith("layshaft-") && name !== CACHE).map((name) => caches.delete(name)));
  await clients.claim();
}

/** The kept copy, or the network where there is none. Every navigation is the one page, whatever its query. */
async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request.mode === "navigate" ? "./" : request, { ignoreVary: true });
  return kept ?? fetch(request);
}

addEventListener("install", (event) => event.waitUntil(fill()));
addEventListener("activate", (event) => event.waitUntil(settle()));
addEventListener("message", (event) => event.data?.type === "take-over" && skipWaiting());
addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && new URL(request.url).origin === location.origin) event.respondWith(answer(request));
});

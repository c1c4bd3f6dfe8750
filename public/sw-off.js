// Development builds serve this as sw.js: it removes a service worker that a release build left on the same address.

/** Forgets every kept version and lets the open pages load from the server again. */
async function leave() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith("layshaft-")).map((name) => caches.delete(name)));
  await registration.unregister();
  for (const page of await clients.matchAll({ type: "window" })) page.navigate(page.url);
}

addEventListener("install", () => skipWaiting());
addEventListener("activate", (event) => event.waitUntil(leave()));

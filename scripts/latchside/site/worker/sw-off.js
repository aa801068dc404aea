/*
 * The switch. Served in the place of `sw.js`, it takes the saved copy off every device that comes by: the pages go,
 * the worker goes, and from the next page on everything comes from the site. Visits are not touched.
 */
"use strict";

const SCOPE = new URL(self.registration.scope);

self.addEventListener("install", () => self.skipWaiting());

/* A page that did not hear it, or took this worker back before it was gone, is told when it asks. */
self.addEventListener("message", (event) => {
  event.source?.postMessage({ say: "off" });
  event.ports[0]?.postMessage({ done: false, why: "saving is switched off for this site" });
  event.waitUntil(self.registration.unregister());
});

async function clear() {
  for (const name of await caches.keys()) if (name.startsWith(`latchside ${SCOPE.pathname} `)) await caches.delete(name);
}

/* The worker that this one replaces may end a moment later, and write until then: that goes too. */
const MOMENT = 1000;

self.addEventListener("activate", (event) => {
  const work = async () => {
    await clear();
    for (const page of await self.clients.matchAll({ type: "window", includeUncontrolled: true })) page.postMessage({ say: "off" });
    await new Promise((done) => setTimeout(done, MOMENT));
    await clear();
    await self.registration.unregister();
  };
  event.waitUntil(work());
});

// Withdraws a bad release: deployed in the place of sw.js (`make withdraw`), it takes over at once, deletes the
// files that Bandwright kept for this address, and steps aside, so that the next load comes from the network.
// Records, drafts and preferences (IndexedDB, localStorage) are not touched, and no open page is reloaded.
const OURS = `bandwright ${new URL(self.registration.scope).pathname} `;

self.addEventListener("install", (event) => event.waitUntil(self.skipWaiting()));
self.addEventListener("activate", (event) => event.waitUntil(withdraw()));

async function withdraw() {
  for (const name of await caches.keys()) if (name.startsWith(OURS)) await caches.delete(name);
  await self.registration.unregister();
}

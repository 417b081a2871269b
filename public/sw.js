// Keeps the whole app on the phone. public/build/seal.mjs fills in the two constants from the built files.
//
// INVARIANTS
// - All or nothing: a new version is kept only when every file came with status 200, the expected type and the
//   expected hash. A fair's log-in page can never become part of the app.
// - It waits: a new version takes over when the person says so, or when no page of the old one is open.
// - Caches of older versions go only once the new one is active. Storage of records is never touched.
// - A kept response is handed on as it is, so that the browser may keep its compiled code with it.
// - Nothing is fetched from another origin.
const VERSION = "";
const FILES = []; // [address relative to the scope, kind, SHA-256 in base64]

const SCOPE = self.registration.scope;
const OURS = `bandwright ${new URL(SCOPE).pathname} `;
const CACHE = OURS + VERSION;
const ADDRESSES = new Set(FILES.map(([file]) => new URL(file, SCOPE).href));
const TYPES = {
  html: ["text/html"],
  css: ["text/css"],
  js: ["text/javascript", "application/javascript", "application/x-javascript"],
  wasm: ["application/wasm"],
  svg: ["image/svg+xml"],
  png: ["image/png"],
  webmanifest: ["application/manifest+json", "application/json", "application/octet-stream", "text/plain"],
};

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  if (event.data === "SKIP_WAITING") event.waitUntil(self.skipWaiting());
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (address.origin !== location.origin) return event.respondWith(Response.error());
  if (request.method !== "GET") return;
  address.hash = "";
  if (request.mode === "navigate") {
    address.search = "";
    return event.respondWith(navigate(address.href));
  }
  if (ADDRESSES.has(address.href)) event.respondWith(kept(address.href, request));
});

async function install() {
  const responses = await Promise.all(FILES.map(fetchChecked));
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(FILES.map(([file], i) => cache.put(new URL(file, SCOPE).href, responses[i])));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function fetchChecked([file, kind, hash]) {
  const response = await fetch(new URL(file, SCOPE), { cache: "reload", credentials: "same-origin", redirect: "error" });
  const type = (response.headers.get("content-type") ?? "").split(";")[0].trim().toLowerCase();
  if (response.status !== 200 || response.type !== "basic") throw new Error(`${file}: status ${response.status}`);
  if (!TYPES[kind].includes(type)) throw new Error(`${file}: type ${type}`);
  const digest = await crypto.subtle.digest("SHA-256", await response.clone().arrayBuffer());
  if (btoa(String.fromCharCode(...new Uint8Array(digest))) !== hash) throw new Error(`${file}: not the file of this version`);
  return response;
}

async function activate() {
  for (const name of await caches.keys()) if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
  await self.clients.claim();
}

// The app itself, a kept file, or (whatever else was asked for) the way back to the app.
async function navigate(address) {
  const home = new URL("index.html", SCOPE).href;
  if (address === SCOPE || address === home) return kept(SCOPE, SCOPE);
  if (ADDRESSES.has(address)) return kept(address, address);
  return Response.redirect(SCOPE);
}

// Should the browser have thrown the cache away, the network still serves.
async function kept(address, request) {
  return (await caches.match(address, { cacheName: CACHE })) ?? fetch(request);
}

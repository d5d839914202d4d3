// Keeps the whole page on the phone, so that it opens in a hall without a network.
//
// It never changes the version under an open page by itself. A new version is fetched whole,
// then waits; the page may send { type: "take-over" } when nothing is being played. The page is
// told { type: "ready-offline" } once everything is kept and answered from here.

// The build writes both lines: each file with the hash that its bytes must have, and a hash
// over all of them.
const VERSION = "unbuilt";
const FILES = [];

// Two copies of the page in two folders of one host share the host's caches; the scope tells
// them apart.
const OURS = `dutystand ${registration.scope} `;
const CACHE = OURS + VERSION;

addEventListener("install", (event) => {
  event.waitUntil(keepEverything());
});

addEventListener("activate", (event) => {
  event.waitUntil(takeOffice());
});

addEventListener("message", (event) => {
  if (event.data?.type === "take-over") skipWaiting();
});

addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) return;
  event.respondWith(answer(request));
});

/** All files or none: one that is missing or holds other bytes fails the installation. */
async function keepEverything() {
  const cache = await caches.open(CACHE);
  const requests = FILES.map(([path, integrity]) =>
    new Request(new URL(path, registration.scope), { cache: "reload", integrity }));
  try {
    await cache.addAll(requests);
  } catch (trouble) {
    await caches.delete(CACHE);
    throw trouble;
  }
}

/** Clears what earlier versions kept. */
async function takeOffice() {
  const earlier = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(earlier.map((name) => caches.delete(name)));
  // Nobody was here before: the page that is open came over the network and may be answered
  // from here at once, since both are the same version.
  if (earlier.length === 0) await clients.claim();
  for (const client of await clients.matchAll({ type: "window" })) {
    client.postMessage({ type: "ready-offline" });
  }
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  const found = await cache.match(request.mode === "navigate" ? page(request) : request);
  // Some hosts lead from desk.html to desk; a browser takes no answer for a page that came that way.
  if (found?.redirected) return new Response(found.body, { headers: found.headers });
  return found ?? fetch(request);
}

/** The desk has a page of its own; every other address below the folder is the same one. */
function page(request) {
  const desk = new URL("./desk.html", registration.scope);
  // What stands behind # never gets here.
  return new URL(request.url).pathname === desk.pathname ? desk : new URL("./", registration.scope);
}

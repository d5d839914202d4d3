// Keeps the whole page on the phone, so that it opens in a hall without a network.
//
// The version that answers is not simply that of this worker: a browser starts a newer worker by
// itself once the last tab is closed or killed. So the version that answers is written down, and it
// changes only while no match runs on this phone. A page says which matches run, { type: "runs" },
// "over" and "running"; it asks for the newer version with { type: "take-over" }. It is told
// { type: "release" } which of the two it has, and { type: "held" } where a match keeps the older one.

// The build writes both lines: each file with the hash that its bytes must have, and a hash
// over all of them.
const VERSION = "unbuilt";
const FILES = [];

// Two copies of the page in two folders of one host share the host's caches; the scope tells
// them apart.
const OURS = `dutystand ${registration.scope} `;
const CACHE = OURS + VERSION;
// The one page; what stands behind # never gets here.
const PAGE = new URL("./", registration.scope);
// Holds one small record: the version that answers, and until when each running match holds it.
const RELEASE = OURS + "release";
const RECORD = new URL("./release.json", registration.scope);

addEventListener("install", (event) => {
  event.waitUntil(keepEverything());
});

addEventListener("activate", (event) => {
  event.waitUntil(inTurn(takeOffice));
});

addEventListener("message", (event) => {
  const { data, source } = event;
  const act = {
    look: () => look(source),
    "take-over": () => takeOver(source),
    runs: () => change(({ holds }) => { holds[data.id] = data.until; }),
    over: () => change(({ holds }) => { delete holds[data.id]; }),
    running: () => change((release) => {
      release.holds = Object.fromEntries(
        Object.entries(release.holds).filter(([id]) => data.ids.includes(id)));
    }),
  }[data?.type];
  if (act) event.waitUntil(inTurn(act));
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

// ---- The version that answers.

// One after the other: each reads the record and writes it back.
let queue = Promise.resolve();
function inTurn(act) {
  queue = queue.then(act, act);
  return queue;
}

/** The record; a phone that has none yet answers with this worker's version. */
async function readRelease() {
  const kept = await (await caches.open(RELEASE)).match(RECORD);
  const release = kept ? await kept.json() : { version: VERSION, holds: {} };
  // A browser that is short of room may have dropped the version, and the record stayed.
  if (release.version !== VERSION && !(await caches.has(OURS + release.version))) release.version = VERSION;
  return release;
}

async function writeRelease(release) {
  await (await caches.open(RELEASE)).put(RECORD, new Response(JSON.stringify(release)));
  answering = release.version;
}

async function change(how) {
  const release = await readRelease();
  how(release);
  await writeRelease(release);
}

// What the record says, read once in the life of a worker.
let answering;
async function answeringVersion() {
  answering ??= (await readRelease()).version;
  return answering;
}

function isHeld(release) {
  return Object.values(release.holds).some((until) => until > Date.now());
}

/** The version that answers stays as long as a match runs; otherwise this worker's is taken. */
async function takeOffice() {
  const isFirst = !(await (await caches.open(RELEASE)).match(RECORD));
  const release = await readRelease();
  if (!isHeld(release)) release.version = VERSION;
  await writeRelease(release);
  await clearAway(release);
  // Nobody was here before: the page that is open came over the network and may be answered
  // from here at once, since both are the same version.
  if (isFirst) await clients.claim();
  for (const client of await clients.matchAll({ type: "window" })) tell(client, release);
}

/** Somebody wants the newer version. The page asks only while no match runs; this is the guard. */
async function takeOver(client) {
  const release = await readRelease();
  if (isHeld(release)) return client.postMessage({ type: "held" });
  release.version = VERSION;
  await writeRelease(release);
  // Where this worker waits, the browser says so to all pages; where it is in office already, they
  // are told here.
  skipWaiting();
  tell(client, release);
}

/** A page has started, and wants to know which version it has. */
async function look(client) {
  const release = await readRelease();
  await clearAway(release);
  tell(client, release);
}

function tell(client, release) {
  client.postMessage({ type: "release", newer: release.version !== VERSION });
}

/** Clears what no page can ask for any more. Another tab may still load parts of its own version. */
async function clearAway(release) {
  const pages = await clients.matchAll({ type: "window", includeUncontrolled: true });
  if (pages.length > 1) return;
  const wanted = [RELEASE, CACHE, OURS + release.version];
  const gone = (await caches.keys()).filter((name) => name.startsWith(OURS) && !wanted.includes(name));
  // A version that is on its way or waits has its files here already.
  if (registration.installing || registration.waiting) return;
  await Promise.all(gone.map((name) => caches.delete(name)));
}

// ---- Answers.

async function answer(request) {
  // Somewhere below the folder the page would look for its files in the wrong place.
  const { pathname } = new URL(request.url);
  const isPage = [PAGE.pathname, `${PAGE.pathname}index.html`].includes(pathname);
  if (request.mode === "navigate" && !isPage) return Response.redirect(PAGE.href);
  const cache = await caches.open(OURS + (await answeringVersion()));
  // Names carry the hash of what they hold, so a page of another version finds its own parts.
  const found = request.mode === "navigate"
    ? await cache.match(PAGE)
    : (await cache.match(request)) ?? (await caches.match(request));
  return found ?? fetch(request);
}

/*
 * The worker behind the saved copy. The build writes it to the root of the site with the digest of `offline.json`,
 * which lists every file with its own digest. Files are kept under path and digest, so versions share what has not
 * changed. Which version is in use is one small note, written only when every file of that version is there.
 *
 * The notes, as JSON in the cache of state: `current` and `next` (a list with `saved`, the time, and `everything`),
 * `trouble` (why saving stopped), `contact` (what the site had when last asked), `fresh` (when it last had what is
 * saved), `known` (the safety corrections there were at first). Pages read them; only this worker writes them.
 */
"use strict";

const STAMP = "{{stamp}}";
const SCOPE = new URL(self.registration.scope);
const FILES = `latchside ${SCOPE.pathname} files`;
const STATE = `latchside ${SCOPE.pathname} state`;
const AT_ONCE = 6;
const PATIENCE = 12000;
const DAY = 86400000;

const at = (path) => new URL(path, SCOPE).href;
const note = (name) => at(`__latchside/${name}`);
const key = (path, digest) => at(`${path}?is=${digest}`);

/* Reading makes no cache: while the switch takes all of them away, pages may still ask this worker. */
async function read(name) {
  const stored = await caches.match(note(name), { cacheName: STATE });
  return stored ? stored.json() : null;
}

/* A worker that was replaced, perhaps by the switch, makes no cache: it would come back after all were taken away. */
function stillInPlace() {
  if (self.serviceWorker?.state === "redundant") throw new Error("another worker has taken the place of this one");
}

/** A cache to write to. The one that replaces this worker may come between, and then takes it away in vain. */
async function writable(name) {
  stillInPlace();
  const cache = await caches.open(name);
  try {
    stillInPlace();
  } catch (error) {
    await caches.delete(name);
    throw error;
  }
  return cache;
}

async function write(name, value) {
  const state = await writable(STATE);
  if (value === null) await state.delete(note(name));
  else await state.put(note(name), new Response(JSON.stringify(value), { headers: { "Content-Type": "application/json" } }));
}

async function digest(bytes) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Every open page of this site. */
async function pages() {
  const all = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  return all.filter((page) => page.url.startsWith(SCOPE.href));
}

async function tell(message) {
  for (const page of await pages()) page.postMessage(message);
}

/* Saving ------------------------------------------------------------------------------------------------ */

async function brought(path) {
  const response = await fetch(at(path.replace(/(^|\/)index\.html$/, "$1")), { cache: "no-cache" });
  if (!response.ok) throw new Error(`the site answered ${response.status} for ${path}`);
  return { bytes: await response.arrayBuffer(), type: response.headers.get("Content-Type") || "" };
}

async function bring(files, path, listed) {
  const { bytes, type } = await brought(path);
  if (!(await digest(bytes)).startsWith(listed)) throw new Error(`${path} is not the file that the list names`);
  await files.put(key(path, listed), new Response(bytes, { headers: { "Content-Type": type } }));
}

/** Bring what is missing of a list, a few at once; what came stays, so that another try goes on from there. */
async function fill(list) {
  const files = await writable(FILES);
  const kept = new Set((await files.keys()).map((request) => request.url));
  const wanted = Object.entries(list).filter(([path, listed]) => !kept.has(key(path, listed)));
  const of = wanted.length;
  let fault = null;
  let told = 0;
  const one = async () => {
    while (wanted.length && !fault) {
      const [path, listed] = wanted.shift();
      await bring(files, path, listed).catch((error) => (fault ??= error));
      if (fault || Date.now() - told < 400) continue; // each word is work for every open page
      told = Date.now();
      tell({ say: "saving", left: wanted.length, of });
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
  if (fault) throw fault;
}

async function save(everything) {
  const { bytes } = await brought("offline.json");
  if ((await digest(bytes)) !== STAMP) {
    self.registration.update().catch(() => {});
    throw new Error("the site is being changed just now");
  }
  const list = JSON.parse(new TextDecoder().decode(bytes));
  const current = await read("current");
  const all = everything || Boolean(current?.everything);
  const planner = (await used(current?.planner)) ? list.planner : {};
  await fill({ ...list.first, ...(all ? list.rest : {}), ...planner });
  const saved = { ...list, everything: all, saved: Date.now() };
  const other = Boolean(current) && current.id !== list.id;
  if (!current) await write("known", list.corrections.map((correction) => correction.key));
  await write(other ? "next" : "current", saved);
  if (!other) await write("next", null);
  await write("trouble", null);
}

/** Whether something of the planner is kept: then it was used here, and comes along with the next version. */
async function used(planner) {
  for (const [path, listed] of Object.entries(planner || {}))
    if (await caches.match(key(path, listed), { cacheName: FILES })) return true;
  return false;
}

/** Ask the site what it has now. */
async function contact() {
  const list = JSON.parse(new TextDecoder().decode((await brought("offline.json")).bytes));
  const current = await read("current");
  if (list.off || !current) return self.registration.update();
  await write("contact", { id: list.id, version: list.version, date: list.date, corrections: list.corrections });
  if (list.id === current.id) await write("fresh", { at: Date.now() });
  else if (list.id !== (await read("next"))?.id) await self.registration.update();
}

let saving = Promise.resolve();

/** One at a time; the fault is kept for the pages to say, and thrown on. */
function saveInTurn(everything) {
  const mine = saving.catch(() => {}).then(() => save(everything));
  saving = mine.catch(async (error) => {
    const full = error.name === "QuotaExceededError";
    await write("trouble", full ? "the storage of this browser is full" : String(error.message)).catch(() => {});
  });
  return mine.finally(() => saving.then(() => tell({ say: "look" })));
}

self.addEventListener("install", (event) => {
  const work = async () => {
    await saveInTurn(false);
    if (!(await read("next"))) await self.skipWaiting(); // the first one of all: nothing is swapped
  };
  event.waitUntil(work());
});

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

/* Changing to the next version --------------------------------------------------------------------------- */

/** All entries of visits on this device; none where there is no such store. It is never made here. */
function entries() {
  return new Promise((resolve) => {
    const request = indexedDB.open("latchside");
    request.onupgradeneeded = () => request.transaction.abort();
    request.onerror = () => resolve([]);
    request.onsuccess = () => {
      const db = request.result;
      const end = (found) => {
        db.close();
        resolve(found);
      };
      if (!db.objectStoreNames.contains("entries")) return end([]);
      const all = db.transaction("entries").objectStore("entries").getAll();
      all.onerror = () => end([]);
      all.onsuccess = () => end(all.result);
    };
  });
}

/** Whether a list stands unfinished, or a visit that is open was written to within a day. */
async function inProgress() {
  const undone = new Set();
  const settled = new Map(); // a visit → its state; a run → complete
  const named = new Set();
  const lately = new Set();
  for (const entry of (await entries()).sort((a, b) => b.n - a.n)) {
    const { id, kind, visit } = entry;
    if (undone.has(id)) continue;
    const run = `${visit} ${entry.checklist} ${entry.opening}`;
    if (!(Date.parse(entry.at) < Date.now() - DAY)) lately.add(visit);
    if (kind === "undo") for (const one of entry.undoes || []) undone.add(one);
    if (kind === "visit") named.add(visit);
    if (kind === "state" && !settled.has(visit)) settled.set(visit, entry.state);
    if (settled.get(visit) === "archived") continue;
    if (kind === "complete") settled.set(run, "complete");
    if (kind === "item" && !settled.has(run)) return true;
  }
  return [...named].some((visit) => lately.has(visit) && settled.get(visit) !== "archived");
}

async function change(next) {
  await write("current", next);
  await write("next", null);
  inUse = null;
  const files = await caches.open(FILES);
  const wanted = new Set(Object.entries({ ...next.first, ...next.rest, ...next.planner }).map(([path, listed]) => key(path, listed)));
  for (const request of await files.keys()) if (!wanted.has(request.url)) await files.delete(request);
}

/** A page asks for the next version. Unless it is sure, a list in progress or another open page holds it back. */
async function use(asking, sure) {
  const next = await read("next");
  if (!next) return { done: false };
  const others = (await pages()).filter((page) => page.id !== asking);
  if (!sure && (await inProgress().catch(() => true))) return { done: false, held: "list" };
  if (!sure && others.length) return { done: false, held: "pages" };
  await change(next);
  await self.skipWaiting();
  return { done: true };
}

/** At a start, with no page open yet and no list in progress, the next version takes its place. */
async function startAnew(event) {
  const next = await read("next");
  if (!next) return;
  const open = (await pages()).filter((page) => page.id !== event.resultingClientId);
  if (!open.length && !(await inProgress().catch(() => true))) await change(next);
}

self.addEventListener("message", (event) => {
  const work = async () => {
    const { ask, everything, sure } = event.data || {};
    try {
      if (ask === "save") await saveInTurn(Boolean(everything));
      if (ask === "contact") await contact();
      const answer = ask === "use" ? await use(event.source?.id, Boolean(sure)) : { done: true };
      event.ports[0]?.postMessage(answer);
    } catch (error) {
      event.ports[0]?.postMessage({ done: false, why: String(error.message) });
    }
  };
  event.waitUntil(work());
});

/** A file of the planner: kept from the first time on, so that plans are made without a network too. */
async function keeping(request, path, listed) {
  const stored = await caches.match(key(path, listed), { cacheName: FILES });
  if (stored) return stored;
  try {
    const files = await writable(FILES);
    await bring(files, path, listed);
    return (await files.match(key(path, listed))) || fetch(request);
  } catch {
    return fetch(request); // the site has another version by now, or the storage is full
  }
}

/* Answering ---------------------------------------------------------------------------------------------- */

let inUse = null;

async function answer(event, path) {
  const { request } = event;
  const opening = request.mode === "navigate";
  if (opening) await startAnew(event);
  if (opening || !inUse) inUse = await read("current");
  const listed = (name) => inUse && (inUse.first[name] || inUse.rest[name]);
  const name = path === "" || path.endsWith("/") ? `${path}index.html` : path;
  if (listed(name)) {
    const stored = await caches.match(key(name, listed(name)), { cacheName: FILES });
    if (stored) return stored;
  } else if (opening && listed(`${path}/index.html`)) {
    return Response.redirect(at(`${path}/${new URL(request.url).search}`));
  } else if (inUse?.planner?.[name]) {
    return keeping(request, name, inUse.planner[name]);
  }
  if (!opening || !inUse) return fetch(request);
  return Promise.race([fetch(request), new Promise((_, reject) => setTimeout(reject, PATIENCE))]).catch(() =>
    Response.redirect(at(`offline/?wanted=${encodeURIComponent(path)}`)),
  );
}

self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  const { origin, pathname } = new URL(url);
  if (method !== "GET" || origin !== SCOPE.origin || !pathname.startsWith(SCOPE.pathname)) return;
  const path = decodeURI(pathname.slice(SCOPE.pathname.length));
  if (path === "offline.json" || path === "sw.js" || path === "sw-off.js") return;
  event.respondWith(answer(event, path));
});

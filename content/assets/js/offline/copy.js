/** The saved copy: registers the worker, knows how things stand, and says it in words. */
import { root } from "../core/place.js";
import { copy as message } from "../messages/offline.js";

const DAY = 86_400_000;
const OLD = 90;
const FIRST = 1000;
const cacheName = (/** @type {string} */ what) => `latchside ${root.pathname} ${what}`;

/**
 * @typedef {{key: string, address: string, name: string, text: string}} Correction
 * @typedef {Record<string, string>} Files the digest of each file, by its path
 * @typedef {Object} List what is saved, as `offline.json` says it and the worker keeps it
 * @property {string} id
 * @property {string} version
 * @property {string} date
 * @property {string[]} groups
 * @property {{first: number, rest: number}} size
 * @property {Correction[]} corrections
 * @property {Files} first
 * @property {Files} rest
 * @property {boolean} everything
 * @property {number} saved when
 * @typedef {Object} Notes what the worker has noted
 * @property {List | null} current
 * @property {List | null} next
 * @property {string | null} trouble
 * @property {List | null} contact
 * @property {{at: number} | null} fresh
 * @property {string[] | null} known
 * @typedef {Object} Standing
 * @property {"saved" | "ready" | "saving" | "none"} state
 * @property {string} words
 * @property {number | null} age
 * @property {List | null} list
 * @property {List | null} next
 * @property {string} trouble
 * @property {Correction[]} corrections
 * @typedef {{done: boolean, why?: string, held?: "list" | "pages"}} Answer of the worker
 */

let progress = "";
let off = false;
/** @type {Set<() => void>} */
const listeners = new Set();
const changed = () => {
  for (const tell of listeners) tell();
};

/** Be told when something changed. @param {() => void} tell */
export const onChange = (tell) => void listeners.add(tell);

/** Why nothing can be saved here, or nothing. */
export function hindrance() {
  if (!isSecureContext) return message.notSecure();
  if (!navigator.serviceWorker || !globalThis.caches) {
    return message.cannot();
  }
  return off ? message.switchedOff() : "";
}

/**
 * What the worker has noted.
 * @template {keyof Notes} Name
 * @param {Name} name
 * @returns {Promise<Notes[Name]>}
 */
async function note(name) {
  const stored = await caches.match(new URL(`__latchside/${name}`, root).href, { cacheName: cacheName("state") });
  return stored ? stored.json() : null;
}

/** Whether every file of a list is there: a browser may have cleared some. @param {List} list */
async function complete(list) {
  if (!(await caches.has(cacheName("files")))) return false;
  const kept = new Set((await (await caches.open(cacheName("files"))).keys()).map((request) => request.url));
  const wanted = Object.entries(list.everything ? { ...list.first, ...list.rest } : list.first);
  return wanted.every(([path, digest]) => kept.has(new URL(`${path}?is=${digest}`, root).href));
}

/** How things stand now. @returns {Promise<Standing>} */
export async function look() {
  const why = hindrance();
  /** @type {Standing} */
  const none = {
    state: "none",
    words: why ? message.notSaved({ why }) : message.notYet(),
    age: null,
    list: null,
    next: null,
    trouble: why,
    corrections: [],
  };
  if (why) return none;
  const [list, next, trouble, contact, fresh, known] = await Promise.all([
    note("current"),
    note("next"),
    note("trouble"),
    note("contact"),
    note("fresh"),
    note("known"),
  ]);
  const told = new Map([list, next, contact].flatMap((one) => one?.corrections ?? []).map((one) => [one.key, one]));
  const corrections = [...told.values()].filter((one) => !(known ?? []).includes(one.key));
  if (!list || !(await complete(list))) {
    const reason = trouble ? message.notSaved({ why: trouble }) : message.notYet();
    const words = progress ? message.saving({ progress }) : reason;
    return { ...none, state: progress ? "saving" : "none", words, trouble: trouble ?? "", corrections, next };
  }
  const days = Math.floor((Date.now() - Math.max(list.saved, fresh?.at ?? 0)) / DAY);
  const age = days < -1 ? null : Math.max(0, days);
  const { version, date } = list;
  const old = age !== null && age > OLD;
  const stamp = old ? message.stampOld({ version, date, age }) : message.stamp({ version, date });
  const ready = next && next.id !== list.id;
  const words = progress ? message.savingMore({ progress, stamp }) : message.saved({ stamp });
  const common = { age, list, trouble: trouble ?? "", corrections };
  if (ready) return { state: "ready", words: message.ready({ stamp }), next, ...common };
  return { state: "saved", words, next: null, ...common };
}

/** Whether a copy of this age should be warned of. @param {number | null} age */
export const isOld = (age) => age !== null && age > OLD;

/** Ask the worker; where a new one waits, that one. @param {object} asked @returns {Promise<Answer>} */
export async function ask(asked) {
  const registration = await navigator.serviceWorker.getRegistration(root.href);
  const worker = registration?.waiting ?? registration?.active;
  if (!worker) return { done: false, why: message.noWorker() };
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = (event) => resolve(event.data);
    worker.addEventListener("statechange", () => {
      if (worker.state === "redundant") resolve({ done: false, why: message.replaced() });
    });
    worker.postMessage(asked, [port2]);
  });
}

/** Save, or go on saving where it broke off. @param {boolean} [everything] */
export async function save(everything = false) {
  progress = message.starting();
  changed();
  const registration = await navigator.serviceWorker.getRegistration(root.href);
  const answer = registration?.active ? await ask({ ask: "save", everything }) : await register();
  if (registration?.active) progress = "";
  changed();
  return answer;
}

/** @returns {Promise<Answer>} */
async function register() {
  const address = new URL("sw.js", root);
  const registration = await navigator.serviceWorker.register(address, { scope: root.href, updateViaCache: "none" });
  watch(registration);
  registration?.addEventListener("updatefound", () => watch(registration));
  // One that was just taken away may come back as it was, with nothing to install: then it has to be asked.
  return registration?.active && !registration.installing ? ask({ ask: "contact" }) : { done: Boolean(registration) };
}

/**
 * A worker that comes up says at the end whether it could save.
 * @param {ServiceWorkerRegistration | undefined} registration
 */
function watch(registration) {
  const worker = registration?.installing;
  worker?.addEventListener("statechange", () => {
    if (worker.state === "installing") return;
    progress = "";
    settle();
  });
}

/** Say how things stand now; where no copy is there any more, see whether the site has switched saving off. */
async function settle() {
  if (!(await note("current").catch(() => null))) await askSwitch();
  changed();
}

/** Whether saving is switched off: whether the worker that the site serves now is the switch. No answer: as it was. */
async function askSwitch() {
  const answer = await fetch(new URL("sw.js", root), { cache: "no-cache" }).catch(() => null);
  const script = answer?.ok ? await answer.text().catch(() => "") : "";
  if (answer?.status === 404 || script.includes('say: "off"')) await switchedOff();
  else if (script) off = false;
}

/** Saving is switched off here. What a worker that was just ending still wrote goes too. */
async function switchedOff() {
  off = true;
  for (const name of await caches.keys()) if (name.startsWith(cacheName(""))) await caches.delete(name);
}

/** @param {MessageEvent} event */
function heard({ data }) {
  if (data?.say === "off") switchedOff().then(changed);
  if (data?.say === "saving") progress = message.files({ done: data.of - data.left, all: data.of });
  if (data?.say === "look") progress = "";
  changed();
}

/** Begin: once the page itself has loaded, see that the copy is there, whole and compared with the site. */
export async function begin() {
  navigator.serviceWorker?.addEventListener("message", heard);
  if (document.readyState !== "complete") await new Promise((done) => addEventListener("load", done, { once: true }));
  if (hindrance()) return changed();
  navigator.serviceWorker.startMessages();
  addEventListener("online", () => contact());
  await contact();
}

async function contact() {
  try {
    const registration = await navigator.serviceWorker.getRegistration(root.href);
    if (!registration?.active) {
      await new Promise((done) => setTimeout(done, FIRST)); // the page itself comes first: saving is much to fetch
      await askSwitch();
      if (!off) await register();
    } else {
      watch(registration);
      registration.addEventListener("updatefound", () => watch(registration));
      const list = await note("current");
      if (!list || !(await complete(list))) await save(Boolean(list?.everything));
      else if (navigator.onLine) await ask({ ask: "contact" });
    }
  } catch {
    progress = ""; // refused by the browser, or no network: the words say that nothing is saved
  }
  await settle();
}

/**
 * Where entries are kept: IndexedDB, one transaction a change, on disk before it counts. Where the browser refuses
 * it, entries live in memory and the page says so. A damaged record is put aside and hurts nothing else.
 *
 * @typedef {import("./entries.js").Entry} Entry
 */
import { Database } from "./database.js";
import { canonical, order } from "./entries.js";

const NAME = "latchside";
const STORES = ["entries", "meta", "aside", "locked"];

/** Set once the browser has refused: everything by store, for as long as the page is open. @type {Map<string, Map<any, any>> | null} */
export let memory = null;
let refusal = "";
/** @type {Set<(visit: string | null, made?: Entry[]) => void>} */
const listeners = new Set();
const channel = typeof BroadcastChannel === "function" ? new BroadcastChannel(NAME) : null;
channel?.addEventListener("message", (event) => listeners.forEach((tell) => tell(event.data)));

const database = new Database(
  NAME,
  (db) => {
    db.createObjectStore("entries", { keyPath: "id" }).createIndex("visit", ["visit", "n"]);
    db.createObjectStore("meta", { keyPath: "key" });
    db.createObjectStore("aside", { autoIncrement: true });
    db.createObjectStore("locked", { keyPath: "visit" });
  },
  () => listeners.forEach((tell) => tell(null)),
);

/** One transaction. @type {Database["transaction"]} */
export const transaction = (names, mode, work) => database.transaction(names, mode, work);

/** Open the store. @returns {Promise<{kept: boolean, why: string}>} whether changes are kept, and if not, why */
export async function open() {
  try {
    if (!memory) await database.connect();
  } catch (error) {
    memory = new Map(STORES.map((name) => [name, new Map()]));
    refusal = error instanceof Error || error instanceof DOMException ? error.name : "refused";
  }
  return { kept: !memory, why: refusal };
}

/** What went wrong, for the technician. @param {any} error */
export function inWords(error) {
  if (error?.name === "QuotaExceededError") {
    return "Not stored: the storage of this browser is full. Save visits as files, wipe old ones on the page Visits, then try again.";
  }
  return `Not stored: the browser refused to store it (${error?.name ?? "unknown"}). Write it on paper, or try again.`;
}

/** @param {string | null} visit @param {Entry[]} [made] what was added, where that is all that changed */
export function announce(visit, made) {
  channel?.postMessage(visit);
  listeners.forEach((tell) => tell(visit, made));
}

/** Be told which visit changed, here or in another tab. @param {(visit: string | null, made?: Entry[]) => void} tell */
export const onChange = (tell) => void listeners.add(tell);

/** A short sum over what an entry says: damage that still reads like an entry does not fit it. @param {object} entry */
function sumOf(entry) {
  let sum = 0x811c9dc5;
  const text = canonical(entry);
  for (let at = 0; at < text.length; at += 1) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193);
  return sum >>> 0;
}

/** An entry as it is stored: with its sum. @param {Entry} entry */
export const sealed = (entry) => ({ ...entry, sum: sumOf(entry) });

/** Whether a stored row still reads as it was written; its sum is taken off. @param {any} row */
export function intact(row) {
  const { sum } = row;
  delete row.sum;
  return sum === undefined || sum === sumOf(row);
}

const ofVisit = (/** @type {string} */ visit) => IDBKeyRange.bound([visit, 0], [visit, 100000]);

/**
 * Add entries to a visit. The counter of each is set here, in the same transaction, above all that is there.
 * @param {string} visit
 * @param {object[]} drafts entries without n
 * @returns {Promise<Entry[]>} as stored
 */
export async function add(visit, drafts) {
  const number = (/** @type {number} */ top) => drafts.map((draft, index) => /** @type {Entry} */ ({ ...draft, n: top + 1 + index }));
  if (memory) {
    const held = [...table("entries").values()].filter((entry) => entry.visit === visit);
    const made = number(Math.max(0, ...held.map((entry) => entry.n)));
    for (const entry of made) table("entries").set(entry.id, entry);
    announce(visit, made);
    return made;
  }
  const made = await transaction(["entries"], "readwrite", ({ entries }, done) => {
    const top = entries.index("visit").openKeyCursor(ofVisit(visit), "prev");
    top.onsuccess = () => {
      const key = /** @type {any[] | undefined} */ (top.result?.key);
      const numbered = number(key ? Math.floor(key[1]) : 0);
      for (const entry of numbered) entries.add(sealed(entry));
      done(numbered);
    };
  });
  announce(visit, made);
  return made;
}

/** The sound entries of one visit, in order. @param {string} visit @returns {Promise<Entry[]>} */
export async function entriesOf(visit) {
  const rows = await rowsOf(visit);
  if (!rows.every((row) => plausible(row) && intact(row))) return (await import("./store-visits.js")).soundEntries(visit);
  return rows.sort(order);
}

/** The rows of one visit as they are stored. @param {string} visit @returns {Promise<any[]>} */
export async function rowsOf(visit) {
  if (memory) return [...table("entries").values()].filter((entry) => entry.visit === visit);
  return transaction(["entries"], "readonly", ({ entries }, done) => {
    const request = entries.index("visit").getAll(IDBKeyRange.bound([visit], [visit, []]));
    request.onsuccess = () => done(request.result);
  });
}

const TEXTS = {
  visit: ["site", "date", "who"], opening: ["opening", "name"], item: ["checklist", "list_name", "item", "words", "outcome"],
  complete: ["checklist", "list_name", "words"], note: ["note"], state: ["state"], undo: ["reason"],
};

/** Whether a row can be shown; a row that cannot is looked at closely by shape.js. @param {any} row */
function plausible(row) {
  const texts = Object.hasOwn(TEXTS, row.kind) ? TEXTS[/** @type {keyof TEXTS} */ (row.kind)] : ["missing"];
  const lists = ["after", "undoes"].every((key) => row[key] === undefined || Array.isArray(row[key]));
  const judged = !row.expected || (Array.isArray(row.expected.ranges) && row.reading);
  return lists && judged && Number.isInteger(row.n) && ["id", "visit", "at", "by", ...texts].every((key) => typeof row[key] === "string");
}

/** A small fact of this device: the name of who uses it, the visit last used. @param {string} key */
export async function recall(key) {
  return (await recallAll([key]))[0];
}

/** Several such facts, in one reading. @param {string[]} keys @returns {Promise<any[]>} */
export async function recallAll(keys) {
  if (memory) return keys.map((key) => table("meta").get(key)?.value);
  return transaction(["meta"], "readonly", ({ meta }, done) => {
    /** @type {any[]} */
    const found = keys.map(() => undefined);
    keys.forEach((key, at) => {
      const request = meta.get(key);
      request.onsuccess = () => (found[at] = request.result?.value);
    });
    done(found);
  });
}

/**
 * What is remembered under a key, or `value` from now on: two tabs get the same. Nothing is written where it is
 * there, for a page may be left at any moment, and one engine then holds a store that was being written to.
 * @param {string} key
 * @param {any} value
 */
export async function once(key, value) {
  const known = await recall(key);
  if (known !== undefined) return known;
  if (memory) {
    table("meta").set(key, { key, value });
    return value;
  }
  return transaction(["meta"], "readwrite", ({ meta }, done) => {
    const request = meta.get(key);
    request.onsuccess = () => {
      if (!request.result) meta.put({ key, value });
      done(request.result?.value ?? value);
    };
  });
}

/** @param {string} key @param {any} value */
export async function remember(key, value) {
  if (memory) table("meta").set(key, { key, value });
  else await transaction(["meta"], "readwrite", ({ meta }) => void meta.put({ key, value }));
}

/** What this tab alone remembers across a reload; nothing where the browser refuses. @param {string} key @param {string} [value] */
export function tab(key, value) {
  try {
    if (value !== undefined) sessionStorage.setItem(key, value);
    return sessionStorage.getItem(key) ?? "";
  } catch {
    return "";
  }
}

/** @param {string} name @returns {Map<any, any>} */
export const table = (name) => /** @type {Map<any, any>} */ (memory?.get(name));

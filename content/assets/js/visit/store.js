/**
 * Where entries are kept: IndexedDB, one transaction a change, on disk before it counts. Where the browser refuses
 * it, entries live in memory and the page says so. A damaged record is put aside and hurts nothing else.
 *
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {Without<Entry, "n">} Draft an entry not counted yet
 * @typedef {Without<Entry, keyof Common>} Said what an entry says
 * @typedef {import("./entries.js").Common} Common
 * @typedef {{kept: boolean, why: string}} Standing whether changes are kept, and if not, why
 * @typedef {Entry & {sum?: number}} Row an entry as it is stored
 * @typedef {{at: string, ids: string[]}} Exported when which entries went into a file
 * @typedef {{visit: string, date: string, at: string, rounds: number} & Cipher} Locked a visit locked away
 * @typedef {{salt: Uint8Array<ArrayBuffer>, iv: Uint8Array<ArrayBuffer>, data: ArrayBuffer}} Cipher
 * @typedef {{raw: unknown, why: string, at?: string}} Damaged
 * @typedef {{key: string, value: unknown}} Fact
 * @typedef {import("../photo/store.js").Photograph} Photograph
 * @typedef {import("../photo/store.js").Large | import("../photo/sealed.js").Sealed} Picture
 * @typedef {{entries: Row, meta: Fact, aside: Damaged, locked: Locked}} KeptOfRecord
 * @typedef {KeptOfRecord & {photographs: Photograph, pictures: Picture}} Kept what each store holds
 * @typedef {(visit: string | null, made?: Entry[]) => void} Tell which visit changed, null for all; what was added
 */
import { Database } from "../core/database.js";
import { store as message } from "../messages/visit.js";
import { canonical, order } from "./entries.js";

/**
 * Each of several types without some of its fields.
 * @template Types, Fields
 * @typedef {Types extends unknown ? Omit<Types, Fields & keyof Types> : never} Without
 */

const NAME = "latchside";

/**
 * Set once the browser has refused: everything by store, for as long as the page is open.
 * @type {{[Store in keyof Kept]: Map<string, Kept[Store]>} | null}
 */
export let memory = null;
let refusal = "";
/** @type {Set<Tell>} */
const listeners = new Set();
/** @type {Tell} */
const tellAll = (visit, made) => {
  for (const tell of listeners) tell(visit, made);
};
const channel = typeof BroadcastChannel === "function" ? new BroadcastChannel(NAME) : null;
channel?.addEventListener("message", (event) => tellAll(event.data));

const database = new Database(
  NAME,
  (db, before) => {
    if (!before) {
      db.createObjectStore("entries", { keyPath: "id" }).createIndex("visit", ["visit", "n"]);
      db.createObjectStore("meta", { keyPath: "key" });
      db.createObjectStore("aside", { autoIncrement: true });
      db.createObjectStore("locked", { keyPath: "visit" });
    }
    db.createObjectStore("photographs", { keyPath: "id" }).createIndex("visit", ["visit", "opening", "number"]);
    db.createObjectStore("pictures", { keyPath: "id" }).createIndex("visit", ["visit"]);
  },
  () => tellAll(null),
  2,
);

/** One transaction. @type {Database["transaction"]} */
export const transaction = (names, mode, work) => database.transaction(names, mode, work);

/** Open the store. @returns {Promise<Standing>} */
export async function open() {
  try {
    if (!memory) await database.connect();
  } catch (error) {
    memory = {
      entries: new Map(),
      meta: new Map(),
      aside: new Map(),
      locked: new Map(),
      photographs: new Map(),
      pictures: new Map(),
    };
    refusal = nameOf(error);
  }
  return { kept: !memory, why: refusal };
}

/** What an error is called. @param {unknown} error */
export const nameOf = (error) => (error instanceof Error || error instanceof DOMException ? error.name : "unknown");

/** What went wrong, for the technician. @param {unknown} error */
export function inWords(error) {
  const name = nameOf(error);
  return name === "QuotaExceededError" ? message.full() : message.refused({ why: name });
}

/** @param {string | null} visit @param {Entry[]} [made] what was added, where that is all that changed */
export function announce(visit, made) {
  channel?.postMessage(visit);
  tellAll(visit, made);
}

/** Be told which visit changed, here or in another tab. @param {Tell} tell */
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

/** Whether a stored row still reads as it was written; its sum is taken off. @param {Row} row */
export function intact(row) {
  const { sum } = row;
  delete row.sum;
  return sum === undefined || sum === sumOf(row);
}

const ofVisit = (/** @type {string} */ visit) => IDBKeyRange.bound([visit, 0], [visit, 100000]);

/**
 * Add entries to a visit. The counter of each is set here, in the same transaction, above all that is there.
 * @param {string} visit
 * @param {Draft[]} drafts
 * @returns {Promise<Entry[]>} as stored
 */
export async function add(visit, drafts) {
  const number = (/** @type {number} */ top) =>
    drafts.map((draft, index) => /** @type {Entry} */ ({ ...draft, n: top + 1 + index }));
  const made = memory ? addToMemory(visit, number) : await addToDatabase(visit, number);
  announce(visit, made);
  return made;
}

/**
 * Add entries to a visit, and say `said`, or why they could not be stored; what is not stored is not shown.
 * @param {string} visit
 * @param {Draft[]} drafts
 * @param {string} said
 * @param {(words: string, refused?: boolean) => void} say
 */
export async function addAndSay(visit, drafts, said, say) {
  try {
    await add(visit, drafts);
    say(said);
    return true;
  } catch (error) {
    say(inWords(error), true);
    return false;
  }
}

/** @param {string} visit @param {(top: number) => Entry[]} number */
function addToMemory(visit, number) {
  const held = [...table("entries").values()].filter((entry) => entry.visit === visit);
  const made = number(Math.max(0, ...held.map((entry) => entry.n)));
  for (const entry of made) table("entries").set(entry.id, entry);
  return made;
}

/** @param {string} visit @param {(top: number) => Entry[]} number @returns {Promise<Entry[]>} */
const addToDatabase = (visit, number) =>
  transaction(["entries"], "readwrite", ({ entries }, done) => {
    const top = entries.index("visit").openKeyCursor(ofVisit(visit), "prev");
    top.onsuccess = () => {
      const key = /** @type {[visit: string, n: number] | undefined} */ (top.result?.key);
      const numbered = number(key ? Math.floor(key[1]) : 0);
      for (const entry of numbered) entries.add(sealed(entry));
      done(numbered);
    };
  });

/** The sound entries of one visit, in order. @param {string} visit @returns {Promise<Entry[]>} */
export async function entriesOf(visit) {
  const rows = await rowsOf(visit);
  if (rows.every((row) => plausible(row) && intact(row))) return rows.sort(order);
  const { soundEntries } = await import("./store-visits.js");
  return soundEntries(visit);
}

/** The rows of one visit as they are stored. @param {string} visit @returns {Promise<Row[]>} */
export async function rowsOf(visit) {
  if (memory) return [...table("entries").values()].filter((entry) => entry.visit === visit);
  return transaction(["entries"], "readonly", ({ entries }, done) => {
    const request = entries.index("visit").getAll(IDBKeyRange.bound([visit], [visit, []]));
    request.onsuccess = () => done(request.result);
  });
}

/** @type {Record<string, string[]>} */
const TEXTS = {
  visit: ["site", "date", "who"],
  opening: ["opening", "name"],
  item: ["checklist", "list_name", "item", "words", "outcome"],
  complete: ["checklist", "list_name", "words"],
  note: ["note"],
  state: ["state"],
  undo: ["reason"],
};

/**
 * Whether a row can be shown; a row that cannot is looked at closely by shape.js.
 * @param {object} row as it lies there: damage may have taken anything
 */
function plausible(row) {
  const fields = /** @type {Record<string, unknown>} */ (row);
  const { kind, n, expected, reading } = fields;
  const texts = typeof kind === "string" && Object.hasOwn(TEXTS, kind) ? TEXTS[kind] : ["missing"];
  const lists = ["after", "undoes"].every((key) => fields[key] === undefined || Array.isArray(fields[key]));
  const judged = !expected || (hasRanges(expected) && reading);
  const told = ["id", "visit", "at", "by", ...texts].every((key) => typeof fields[key] === "string");
  return lists && judged && told && Number.isInteger(n);
}

/** @param {unknown} expected */
const hasRanges = (expected) => Array.isArray(/** @type {{ranges?: unknown}} */ (expected).ranges);

/**
 * A small fact of this device: the name of who uses it, the visit last used.
 * @template T
 * @param {string} key
 * @returns {Promise<T | undefined>} as it was remembered under this key
 */
export async function recall(key) {
  return /** @type {T | undefined} */ ((await recallAll([key]))[0]);
}

/** When which entries of a visit went into a file. @param {string} visit @returns {Promise<Exported | undefined>} */
export const exported = (visit) => recall(`exported ${visit}`);

/** Several such facts, in one reading. @param {string[]} keys @returns {Promise<unknown[]>} */
export async function recallAll(keys) {
  if (memory) return keys.map((key) => table("meta").get(key)?.value);
  return transaction(["meta"], "readonly", ({ meta }, done) => {
    /** @type {unknown[]} */
    const found = keys.map(() => undefined);
    for (const [at, key] of keys.entries()) {
      const request = meta.get(key);
      request.onsuccess = () => {
        found[at] = request.result?.value;
      };
    }
    done(found);
  });
}

/**
 * What is remembered under a key, or `value` from now on: two tabs get the same. Nothing is written where it is
 * there, for a page may be left at any moment, and one engine then holds a store that was being written to.
 * @param {string} key
 * @param {string} value
 * @returns {Promise<string>}
 */
export async function once(key, value) {
  /** @type {string | undefined} */
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

/** @param {string} key @param {unknown} value */
export async function remember(key, value) {
  if (memory) table("meta").set(key, { key, value });
  else await transaction(["meta"], "readwrite", ({ meta }) => void meta.put({ key, value }));
}

/**
 * What this tab alone remembers across a reload; nothing where the browser refuses.
 * @param {string} key @param {string} [value]
 */
export function tab(key, value) {
  try {
    if (value !== undefined) sessionStorage.setItem(key, value);
    return sessionStorage.getItem(key) ?? "";
  } catch {
    return "";
  }
}

/**
 * A store in memory.
 * @template {keyof Kept} Store
 * @param {Store} name
 */
export function table(name) {
  if (!memory) throw new Error("not in memory");
  return memory[name];
}

/**
 * The store as the page of visits needs it: everything at once, records brought in, visits taken away, damage put
 * aside.
 */

import { storeVisits as message } from "../messages/visit.js";
import { order } from "./entries.js";
import { entryFault } from "./shape.js";
import { announce, intact, memory, rowsOf, sealed, table, transaction } from "./store.js";

/**
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {import("./store.js").Row} Row
 * @typedef {import("./store.js").Damaged} Damaged
 * @typedef {import("./store.js").Locked} Locked
 */

const PHOTOGRAPHS = ["photographs", "pictures"];

/** All that an index by visit has of one, or of an opening of it. @param {string} visit @param {...string} opening at most one */
export const allOf = (visit, ...opening) => IDBKeyRange.bound([visit, ...opening], [visit, ...opening, []]);

/**
 * All rows of a store.
 * @template {keyof import("./store.js").Kept} Store
 * @param {Store} name
 * @returns {Promise<import("./store.js").Kept[Store][]>}
 */
export async function everything(name) {
  if (memory) return [...table(name).values()];
  return transaction([name], "readonly", (stores, done) => {
    const request = stores[name].getAll();
    request.onsuccess = () => done(request.result);
  });
}

/**
 * Entries as they came from elsewhere, all or none; those that are here already are left.
 * @param {Entry[]} incoming
 * @param {string} [unlocked] the visit, where it comes out of its locked copy
 * @param {import("../photo/store.js").Whole[]} [with_] the photographs that were locked with it
 */
export async function addAll(incoming, unlocked = "", with_ = []) {
  if (memory) {
    for (const entry of incoming) table("entries").set(entry.id, entry);
    for (const { photograph, large } of with_) {
      table("photographs").set(photograph.id, photograph);
      table("pictures").set(large.id, large);
    }
    table("locked").delete(unlocked);
  } else {
    await transaction(["entries", "locked", ...PHOTOGRAPHS], "readwrite", (stores) => {
      for (const entry of incoming) stores.entries.add(sealed(entry));
      for (const { photograph, large } of with_) {
        stores.photographs.put(photograph);
        stores.pictures.put(large); // in the place of the enciphered one
      }
      if (unlocked) stores.locked.delete(unlocked);
    });
  }
  announce(incoming[0]?.visit ?? null);
}

/**
 * The ids of photographs by visit, without the pictures: of one visit, or of all.
 * @param {string} [visit]
 * @returns {Promise<Map<string, string[]>>}
 */
export async function photographIds(visit) {
  /** @type {Map<string, string[]>} */
  const found = new Map();
  const note = (/** @type {string} */ of, /** @type {string} */ id) => found.set(of, [...(found.get(of) ?? []), id]);
  if (memory) for (const one of table("photographs").values()) note(one.visit, one.id);
  else {
    await transaction(["photographs"], "readonly", ({ photographs }, done) => {
      const request = photographs.index("visit").openKeyCursor(visit === undefined ? null : allOf(visit));
      request.onsuccess = () => {
        const { result } = request;
        if (!result) return done(undefined);
        note(/** @type {string[]} */ (result.key)[0], String(result.primaryKey));
        result.continue();
      };
    });
  }
  return found;
}

/** The sound entries of a visit, each looked at closely; in order. @param {string} visit @returns {Promise<Entry[]>} */
export const soundEntries = async (visit) => (await keep(await rowsOf(visit))).sort(order);

/** The sound entries of all visits. @returns {Promise<Map<string, Entry[]>>} */
export async function allEntries() {
  /** @type {Map<string, Entry[]>} */
  const visits = new Map();
  for (const entry of await keep(await everything("entries"))) {
    const list = visits.get(entry.visit);
    if (list) list.push(entry);
    else visits.set(entry.visit, [entry]);
  }
  for (const list of visits.values()) list.sort(order);
  return visits;
}

/** @param {Row[]} rows @param {(Damaged & {raw: Row})[]} damaged */
function sound(rows, damaged) {
  return rows.filter((row) => {
    const whole = intact(row);
    const fault = entryFault(row) ?? (whole ? null : message.altered());
    if (fault) damaged.push({ raw: row, why: fault });
    return !fault;
  });
}

/** Put damaged rows aside, give back the rest. @param {Row[]} rows @returns {Promise<Entry[]>} */
async function keep(rows) {
  /** @type {(Damaged & {raw: Row})[]} */
  const damaged = [];
  const good = sound(rows, damaged);
  if (damaged.length && !memory) {
    await transaction(["entries", "aside"], "readwrite", ({ entries, aside }) => {
      for (const one of damaged) {
        const there = entries.get(one.raw.id); // another tab may have put it aside already
        there.onsuccess = () => {
          if (!there.result) return;
          aside.add({ ...one, at: new Date().toISOString() });
          entries.delete(one.raw.id);
        };
      }
    }).catch(() => {}); // storage full: they stay where they are, and are passed over all the same
  }
  return good;
}

/**
 * Take a visit off this device with its photographs, and put a locked copy in its place where one is given. Refused
 * where entries or photographs were added meanwhile.
 * @param {string} visit @param {Set<string>} known ids of what may go
 * @param {Locked} [locked] @param {import("../photo/sealed.js").Sealed[]} [pictures] enciphered with it
 */
export async function takeAway(visit, known, locked, pictures = []) {
  if (memory) {
    await takeFromMemory(visit);
    for (const picture of pictures) table("pictures").set(picture.id, picture);
    if (locked) table("locked").set(visit, locked);
    else table("locked").delete(visit);
  } else {
    await transaction(["entries", "locked", "meta", ...PHOTOGRAPHS], "readwrite", (stores, _, fail) => {
      const held = ["entries", ...PHOTOGRAPHS].map((name) => keysOf(stores[name], visit));
      held[2].onsuccess = () => {
        const [entries, photographs, large] = held.map((request) => request.result);
        if ([...entries, ...photographs].some((id) => !known.has(String(id))))
          return fail(new Error("changed meanwhile"));
        for (const id of entries) stores.entries.delete(id);
        for (const id of photographs) stores.photographs.delete(id);
        for (const id of large) stores.pictures.delete(id);
        for (const picture of pictures) stores.pictures.put(picture);
        if (locked) stores.locked.put(locked);
        else stores.locked.delete(visit);
        stores.meta.delete(`exported ${visit}`);
      };
    });
  }
  announce(visit);
}

/** @param {IDBObjectStore} store @param {string} visit */
const keysOf = (store, visit) => store.index("visit").getAllKeys(allOf(visit));

/** @param {string} visit */
async function takeFromMemory(visit) {
  for (const entry of await rowsOf(visit)) table("entries").delete(entry.id);
  for (const id of (await photographIds(visit)).get(visit) ?? []) {
    table("photographs").delete(id);
    table("pictures").delete(id);
  }
}

/** Forget what was put aside, once it is saved as a file. */
export async function clearAside() {
  if (memory) return;
  await transaction(["aside"], "readwrite", ({ aside }) => void aside.clear());
  announce(null);
}

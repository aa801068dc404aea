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

/** Entries as they came from elsewhere, all or none; those that are here already are left. @param {Entry[]} incoming */
export async function addAll(incoming, unlocked = "") {
  if (memory) for (const entry of incoming) table("entries").set(entry.id, entry);
  else {
    await transaction(["entries", "locked"], "readwrite", ({ entries, locked }) => {
      for (const entry of incoming) entries.add(sealed(entry));
      if (unlocked) locked.delete(unlocked);
    });
  }
  announce(incoming[0]?.visit ?? null);
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
 * Take a visit off this device, and put a locked copy in its place where one is given. Refused where entries were
 * added meanwhile.
 * @param {string} visit @param {Set<string>} known ids that may go @param {Locked} [locked]
 */
export async function takeAway(visit, known, locked) {
  if (memory) {
    for (const entry of await rowsOf(visit)) table("entries").delete(entry.id);
  } else {
    await transaction(["entries", "locked", "meta"], "readwrite", (stores, _, fail) => {
      const keys = stores.entries.index("visit").getAllKeys(IDBKeyRange.bound([visit], [visit, []]));
      keys.onsuccess = () => {
        if (keys.result.some((id) => !known.has(String(id)))) return fail(new Error("changed meanwhile"));
        for (const id of keys.result) stores.entries.delete(id);
        if (locked) stores.locked.put(locked);
        else stores.locked.delete(visit);
        stores.meta.delete(`exported ${visit}`);
      };
    });
  }
  announce(visit);
}

/** Forget what was put aside, once it is saved as a file. */
export async function clearAside() {
  if (memory) return;
  await transaction(["aside"], "readwrite", ({ aside }) => void aside.clear());
  announce(null);
}

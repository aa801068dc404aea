/**
 * Photographs as they are kept, beside the entries of their visit: of each one what it shows with a small picture in
 * one store, and its large picture in another, which is read only where it is wanted.
 *
 * @typedef {"place" | "loop" | "label"} What
 * @typedef {{id: string, visit: string, opening: string, what: What, at: string, by: string}} Taken
 * @typedef {Taken & {number: number, size: number, small: string}} Photograph `size` in bytes, of both pictures
 * @typedef {{id: string, visit: string, bytes: ArrayBuffer}} Large
 * @typedef {{photograph: Photograph, large: Large}} Whole both of one
 */
import { announce, memory, table, transaction } from "../visit/store.js";
import { allOf } from "../visit/store-visits.js";

/** The visit was put away while its photograph was taken. */
export class VisitGone extends Error {}

/** @type {What[]} */
export const WHATS = ["place", "loop", "label"];
const SMALL = /^data:image\/jpeg;base64,[A-Za-z0-9+/=]+$/;

/** Whether a row can be shown; damage may have taken anything. @param {Photograph} row */
export const isWhole = ({ id, opening, what, at, by, number, small }) =>
  [id, opening, at, by].every((text) => typeof text === "string") &&
  WHATS.includes(what) &&
  Number.isInteger(number) &&
  SMALL.test(small);

/** The photographs of a visit that can be shown, by opening and number. @param {string} visit */
export const photographsOf = async (visit) => (await rowsOf(visit)).filter(isWhole);

/** The photographs of a visit as they are stored. @param {string} visit */
export const rowsOf = async (visit) => (memory ? inMemory(visit) : fromDatabase(visit));

/** @param {string} visit */
const inMemory = (visit) => [...table("photographs").values()].filter((row) => row.visit === visit);

/** @param {string} visit @returns {Promise<Photograph[]>} */
const fromDatabase = (visit) =>
  transaction(["photographs"], "readonly", ({ photographs }, done) => {
    const request = photographs.index("visit").getAll(allOf(visit));
    request.onsuccess = () => done(request.result);
  });

/** The large picture, empty where it is not there any more. @param {Photograph} photograph @returns {Promise<Large>} */
export async function largeOf({ id, visit }) {
  const none = { id, visit, bytes: new ArrayBuffer() };
  if (memory) return /** @type {Large | undefined} */ (table("pictures").get(id)) ?? none;
  return transaction(["pictures"], "readonly", ({ pictures }, done) => {
    const request = pictures.get(id);
    request.onsuccess = () => done(request.result ?? none);
  });
}

/**
 * Keep a photograph. Its number is set here, in the same transaction, above all that its opening has; where the visit
 * was put away meanwhile, nothing of it is left behind.
 * @param {Taken} taken @param {import("./picture.js").Picture} picture
 */
export async function add(taken, { bytes, small }) {
  const { id, visit, opening } = taken;
  const row = (/** @type {number} */ top) => ({
    ...taken,
    small,
    number: top + 1,
    size: bytes.byteLength + small.length,
  });
  if (memory) {
    const numbers = inMemory(visit).map((one) => (one.opening === opening ? one.number : 0));
    table("photographs").set(id, row(Math.max(0, ...numbers)));
    table("pictures").set(id, { id, visit, bytes });
  } else {
    await transaction(["entries", "photographs", "pictures"], "readwrite", (stores, _, fail) => {
      const entries = stores.entries.index("visit").count(allOf(visit));
      const top = stores.photographs.index("visit").openKeyCursor(allOf(visit, opening), "prev");
      top.onsuccess = () => {
        if (!entries.result) return fail(new VisitGone());
        const key = /** @type {[visit: string, opening: string, number: number] | undefined} */ (top.result?.key);
        stores.photographs.add(row(key?.[2] ?? 0));
        stores.pictures.add({ id, visit, bytes });
      };
    });
  }
  announce(visit);
}

/** Take a photograph off the device. @param {Photograph} photograph */
export async function remove({ id, visit }) {
  if (memory) {
    table("photographs").delete(id);
    table("pictures").delete(id);
  } else {
    await transaction(["photographs", "pictures"], "readwrite", ({ photographs, pictures }) => {
      photographs.delete(id);
      pictures.delete(id);
    });
  }
  announce(visit);
}

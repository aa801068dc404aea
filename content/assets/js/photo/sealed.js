/**
 * The photographs of a visit that is locked away: each enciphered under the key of its visit, row and large picture,
 * and kept where the large pictures are.
 *
 * @typedef {{iv: Uint8Array<ArrayBuffer>, data: ArrayBuffer}} Ciphered
 * @typedef {{id: string, visit: string, row: Ciphered, picture: Ciphered}} Sealed
 * @typedef {import("./store.js").Photograph} Photograph
 * @typedef {import("./store.js").Whole} Whole
 */
import { memory, table, transaction } from "../visit/store.js";
import { largeOf, rowsOf } from "./store.js";

/** @param {string} visit @param {CryptoKey} key @returns {Promise<Sealed[]>} */
export async function sealAll(visit, key) {
  const sealed = [];
  for (const photograph of await rowsOf(visit)) {
    const row = new TextEncoder().encode(JSON.stringify(photograph));
    const { bytes } = await largeOf(photograph);
    const ciphered = { row: await encipher(row, key), picture: await encipher(bytes, key) };
    sealed.push({ id: photograph.id, visit, ...ciphered });
  }
  return sealed;
}

/**
 * The photographs of a locked visit. One that was damaged stays as it is, and goes when the visit is wiped.
 * @param {string} visit @param {CryptoKey} key @returns {Promise<Whole[]>}
 */
export async function openAll(visit, key) {
  const opened = await Promise.all((await sealedOf(visit)).map((one) => open(one, key).catch(() => null)));
  return opened.filter((one) => one !== null);
}

/** @param {string} visit @returns {Promise<Sealed[]>} */
async function sealedOf(visit) {
  if (memory) return /** @type {any[]} */ ([...table("pictures").values()]).filter((one) => one.visit === visit);
  return transaction(["pictures"], "readonly", ({ pictures }, done) => {
    const request = pictures.index("visit").getAll([visit]);
    request.onsuccess = () => done(request.result);
  });
}

/** @param {Sealed} sealed @param {CryptoKey} key @returns {Promise<Whole>} */
async function open({ id, visit, row, picture }, key) {
  /** @type {Photograph} */
  const photograph = JSON.parse(new TextDecoder().decode(await decipher(row, key)));
  return { photograph, large: { id, visit, bytes: await decipher(picture, key) } };
}

/** @param {BufferSource} plain @param {CryptoKey} key @returns {Promise<Ciphered>} */
async function encipher(plain, key) {
  const iv = crypto.getRandomValues(new Uint8Array(12));
  return { iv, data: await crypto.subtle.encrypt({ name: "AES-GCM", iv }, key, plain) };
}

/** @param {Ciphered} ciphered @param {CryptoKey} key */
const decipher = ({ iv, data }, key) => crypto.subtle.decrypt({ name: "AES-GCM", iv }, key, data);

/** A visit locked away: its entries enciphered under a passphrase (AES-GCM, key by PBKDF2), the plain ones removed. */
import { field, h, now } from "./dom.js";
import { entryFault } from "./shape.js";
import * as more from "./store-visits.js";
import * as store from "./store.js";

const ROUNDS = 600_000;

/** @param {string} passphrase @param {Uint8Array} salt @param {number} rounds */
async function key(passphrase, salt, rounds) {
  const base = await crypto.subtle.importKey("raw", new TextEncoder().encode(passphrase.normalize("NFC")), "PBKDF2", false, ["deriveKey"]);
  return crypto.subtle.deriveKey(
    { name: "PBKDF2", hash: "SHA-256", salt: /** @type {any} */ (salt), iterations: rounds }, base, { name: "AES-GCM", length: 256 }, false, ["encrypt", "decrypt"],
  );
}

/** Whether this browser can do it here: only where the page is served securely. */
export const canLock = () => Boolean(globalThis.crypto?.subtle);

/** @param {string} visit @param {import("./entries.js").Entry[]} entries @param {string} date @param {string} passphrase */
export async function lockAway(visit, entries, date, passphrase) {
  const salt = crypto.getRandomValues(new Uint8Array(16));
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const plain = new TextEncoder().encode(JSON.stringify(entries));
  const data = await crypto.subtle.encrypt({ name: "AES-GCM", iv }, await key(passphrase, salt, ROUNDS), plain);
  await more.takeAway(visit, new Set(entries.map((entry) => entry.id)), { visit, date, at: now(), rounds: ROUNDS, salt, iv, data });
}

/** @param {any} row @param {string} passphrase @returns {Promise<boolean>} whether the passphrase was the right one */
export async function unlock(row, passphrase) {
  let plain;
  try {
    plain = await crypto.subtle.decrypt({ name: "AES-GCM", iv: row.iv }, await key(passphrase, row.salt, row.rounds), row.data);
  } catch {
    return false;
  }
  const entries = JSON.parse(new TextDecoder().decode(plain)).filter((/** @type {any} */ entry) => !entryFault(entry));
  await more.addAll(entries, row.visit);
  await store.remember(`exported ${row.visit}`, { at: row.at, ids: entries.map((/** @type {any} */ entry) => entry.id) }); // it was saved before it was locked
  return true;
}

/**
 * A form that asks for a passphrase.
 * @param {string} words @param {string} press @param {boolean} fresh whether it is a new one
 * @param {(passphrase: string) => Promise<string>} act gives back what to say, or nothing
 */
export function passphraseForm(words, press, fresh, act) {
  const input = h("input", { type: "password", autocomplete: "off", minlength: fresh ? 10 : null });
  const again = h("input", { type: "password", autocomplete: "off" });
  const said = h("p", { class: "ls-warn", role: "alert" });
  const submit = async (/** @type {Event} */ event) => {
    event.preventDefault();
    if (fresh && (input.value.length < 10 || /^[\d\s-]+$/.test(input.value))) said.textContent = "Use at least ten characters, not digits alone, and never a code of the control unit.";
    else if (fresh && input.value !== again.value) said.textContent = "The two do not read alike.";
    else {
      const words = input.value;
      input.value = again.value = ""; // it stands nowhere longer than it has to
      said.textContent = "Working…";
      said.textContent = await act(words).catch((error) => store.inWords(error));
    }
  };
  return h("form", { class: "ls-ask", submit }, field(words, input), fresh && field("The same again", again), said, h("button", { type: "submit", class: "ls-button" }, press));
}

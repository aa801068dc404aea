/** A visit locked away: its entries enciphered under a passphrase (AES-GCM, key by PBKDF2), the plain ones removed. */
import { field, form, h, now } from "../core/dom.js";
import { lock as message } from "../messages/visit.js";
import { isEntry } from "./shape.js";
import * as store from "./store.js";
import * as more from "./store-visits.js";

const ROUNDS = 600_000;
const LEAST = 10;

/** @param {string} passphrase @param {Uint8Array<ArrayBuffer>} salt @param {number} rounds */
async function key(passphrase, salt, rounds) {
  const plain = new TextEncoder().encode(passphrase.normalize("NFC"));
  const base = await crypto.subtle.importKey("raw", plain, "PBKDF2", false, ["deriveKey"]);
  const derived = { name: "PBKDF2", hash: "SHA-256", salt, iterations: rounds };
  return crypto.subtle.deriveKey(derived, base, { name: "AES-GCM", length: 256 }, false, ["encrypt", "decrypt"]);
}

/** Whether this browser can do it here: only where the page is served securely. */
export const canLock = () => Boolean(globalThis.crypto?.subtle);

/**
 * @param {string} visit @param {import("./entries.js").Entry[]} entries @param {string} date @param {string} passphrase
 */
export async function lockAway(visit, entries, date, passphrase) {
  const salt = crypto.getRandomValues(new Uint8Array(16));
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const plain = new TextEncoder().encode(JSON.stringify(entries));
  const secret = await key(passphrase, salt, ROUNDS);
  const data = await crypto.subtle.encrypt({ name: "AES-GCM", iv }, secret, plain);
  const locked = { visit, date, at: now(), rounds: ROUNDS, salt, iv, data };
  const sealed = (await hasPhotographs(visit)) ? await (await import("../photo/sealed.js")).sealAll(visit, secret) : [];
  const known = [...entries, ...sealed].map(({ id }) => id);
  await more.takeAway(visit, new Set(known), locked, sealed);
}

/** @param {string} visit */
const hasPhotographs = async (visit) => (await more.photographIds(visit)).size > 0;

/**
 * Bring a locked visit back.
 * @param {import("./store.js").Locked} row
 * @param {string} passphrase
 * @returns {Promise<boolean>} whether the passphrase was the right one
 */
export async function unlock({ visit, at, rounds, salt, iv, data }, passphrase) {
  const secret = await key(passphrase, salt, rounds);
  let plain;
  try {
    plain = await crypto.subtle.decrypt({ name: "AES-GCM", iv }, secret, data);
  } catch {
    return false;
  }
  /** @type {unknown[]} */
  const held = JSON.parse(new TextDecoder().decode(plain));
  const entries = held.filter(isEntry);
  const photographs = await (await import("../photo/sealed.js")).openAll(visit, secret);
  await more.addAll(entries, visit, photographs);
  // It was saved before it was locked.
  const saved = [...entries, ...photographs.map(({ photograph }) => photograph)];
  await store.remember(`exported ${visit}`, { at, ids: saved.map(({ id }) => id) });
  return true;
}

/** What is wrong with a new passphrase, or nothing. @param {string} passphrase @param {string} again */
function weakness(passphrase, again) {
  if (passphrase.length < LEAST || /^[\d\s-]+$/.test(passphrase)) {
    return message.weak();
  }
  return passphrase === again ? "" : message.differ();
}

/**
 * A form that asks for a passphrase.
 * @param {string} words @param {string} press @param {boolean} fresh whether it is a new one
 * @param {(passphrase: string) => Promise<string>} act gives back what to say, or nothing
 */
export function passphraseForm(words, press, fresh, act) {
  const input = h("input", { type: "password", autocomplete: "off", minlength: fresh ? LEAST : null });
  const again = h("input", { type: "password", autocomplete: "off" });
  const said = h("p", { class: "ls-warn", role: "alert" });
  const submit = async () => {
    said.textContent = fresh ? weakness(input.value, again.value) : "";
    if (said.textContent) return;
    const passphrase = input.value;
    input.value = ""; // it stands nowhere longer than it has to
    again.value = "";
    said.textContent = message.working();
    said.textContent = await act(passphrase).catch((error) => store.inWords(error));
  };
  const send = h("button", { type: "submit", class: "ls-button" }, press);
  return form("ls-ask", submit, field(words, input), fresh && field(message.again(), again), said, send);
}

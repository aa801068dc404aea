/** Making elements. Text goes in as text; nothing here ever reads a string as markup. */

/**
 * An element. Attributes that are functions become listeners (`click: () => …`); true and false set and leave out.
 * @param {string} name
 * @param {Record<string, any>} [attributes]
 * @param {...(Node | string | null | undefined | false)} children
 * @returns {any}
 */
export function h(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(key, value);
    else if (value === true) element.setAttribute(key, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(key, String(value));
  }
  element.append(...children.filter((child) => child !== null && child !== undefined && child !== false));
  return element;
}

/** A button. @param {string} words @param {(event: Event) => void} click @param {Record<string, any>} [attributes] */
export const button = (words, click, attributes = {}) => h("button", { type: "button", class: "ls-button", click, ...attributes }, words);

let fields = 0;

/** A labelled control. @param {string} words @param {HTMLElement} control @param {string} [help] */
export function field(words, control, help) {
  control.id ||= `ls-field-${(fields += 1)}`;
  if (help) control.setAttribute("aria-describedby", `${control.id}-help`);
  return h("div", { class: "ls-field" }, h("label", { for: control.id }, words), control, help && h("small", { id: `${control.id}-help` }, help));
}

/**
 * A choice from a list.
 * @param {[string, string][]} choices value and words
 * @param {string} chosen
 * @param {(value: string) => void} change
 */
export function select(choices, chosen, change) {
  const made = h("select", { change: (/** @type {any} */ event) => change(event.target.value) });
  for (const [value, words] of choices) made.append(h("option", { value, selected: value === chosen }, words));
  return made;
}

/** So many of a thing, in words. @param {number} number @param {string} one @param {string} [many] */
export const count = (number, one, many = `${one}s`) => `${number} ${number === 1 ? one : many}`;

/** Put new children into a place; words already there stay as they are. @param {Element} place @param {...any} children */
export function fill(place, ...children) {
  const kept = children.filter((child) => child !== null && child !== undefined && child !== false);
  if (kept.length === 1 && typeof kept[0] === "string" && place.textContent === kept[0]) return;
  place.replaceChildren(...kept);
}

/** Put new children into a place, unless something typed there would be lost. @param {Element} place @param {...any} children */
export function refill(place, ...children) {
  const typed = [...place.querySelectorAll("input")].some((input) => ["text", "password"].includes(input.type) && input.value !== input.defaultValue);
  if (!typed) fill(place, ...children);
}

/** Time of an entry for the reader: as it stood on the clock where it was made. @param {string} at */
export const clock = (at) => (at.slice(0, 10) === now().slice(0, 10) ? at.slice(11, 16) : `${at.slice(0, 10)} ${at.slice(11, 16)}`);

/** This moment, by the clock of this device, with its offset. */
export function now() {
  const date = new Date();
  const offset = -date.getTimezoneOffset();
  const two = (/** @type {number} */ value) => String(Math.floor(value)).padStart(2, "0");
  const local = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, -1);
  return `${local}${offset < 0 ? "-" : "+"}${two(Math.abs(offset) / 60)}:${two(Math.abs(offset) % 60)}`;
}

/** A random id. */
export function uuid() {
  if (crypto.randomUUID) return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16)); // where the page is not served securely
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

/** Hand a text over as a file. @param {string} text @param {string} name @param {string} type */
export function download(text, name, type) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = h("a", { href: address, download: name, hidden: true });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

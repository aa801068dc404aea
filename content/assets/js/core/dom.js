/** Making elements. Text goes in as text; nothing here ever reads a string as markup. */

/**
 * @typedef {{on(event: Event): unknown}["on"]} Listener one that takes some kind of event
 * @typedef {string | number | boolean | URL | null | undefined | Listener} Attribute
 * @typedef {Node | string | null | undefined | false} Child what is nothing is left out
 */

const there = (/** @type {Child} */ child) => child !== null && child !== undefined && child !== false;

/** The children that are there. @param {Child[]} children */
const present = (children) => /** @type {(Node | string)[]} */ (children.filter(there));

/**
 * An element. Attributes that are functions become listeners (`click: () => …`); true and false set and leave out.
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} name
 * @param {Record<string, Attribute>} [attributes]
 * @param {...Child} children
 * @returns {HTMLElementTagNameMap[Tag]}
 */
export function h(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(key, value);
    else if (value === true) element.setAttribute(key, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(key, String(value));
  }
  element.append(...present(children));
  return element;
}

/** A button. @param {string} words @param {Listener} click @param {Record<string, Attribute>} [attributes] */
export const button = (words, click, attributes = {}) =>
  h("button", { type: "button", class: "ls-button", click, ...attributes }, words);

/**
 * A figure in the reader's system of units, the other on a tap, as `pages/regional.py` writes it.
 * @param {[metric: string, imperial: string]} figure
 */
export const inBoth = ([metric, imperial]) =>
  h(
    "span",
    { class: "ls-both" },
    h("span", { class: "ls-sys", "data-of": "metric" }, metric),
    h("span", { class: "ls-or" }, " ("),
    h("span", { class: "ls-sys", "data-of": "imperial" }, imperial),
    h("span", { class: "ls-or" }, ")"),
  );

let fields = 0;

/** A labelled control. @param {string} words @param {HTMLElement} control @param {string} [help] */
export function field(words, control, help) {
  if (!control.id) {
    fields += 1;
    control.id = `ls-field-${fields}`;
  }
  if (help) control.setAttribute("aria-describedby", `${control.id}-help`);
  const label = h("label", { for: control.id }, words);
  return h("div", { class: "ls-field" }, label, control, help && h("small", { id: `${control.id}-help` }, help));
}

/**
 * A form that does its work without leaving the page.
 * @param {string} kind its class @param {() => unknown} submit @param {...Child} children
 */
export function form(kind, submit, ...children) {
  const stay = (/** @type {Event} */ event) => {
    event.preventDefault();
    submit();
  };
  return h("form", { class: kind, submit: stay }, ...children);
}

/**
 * A choice from a list.
 * @param {[value: string, words: string][]} choices
 * @param {string} chosen
 * @param {(value: string) => void} change
 */
export function select(choices, chosen, change) {
  /** @type {HTMLSelectElement} */
  const made = h("select", { change: () => change(made.value) });
  for (const [value, words] of choices) made.append(h("option", { value, selected: value === chosen }, words));
  return made;
}

/**
 * Put new children into a place; words already there stay as they are.
 * @param {Element} place @param {...Child} children
 */
export function fill(place, ...children) {
  const kept = present(children);
  if (kept.length === 1 && typeof kept[0] === "string" && place.textContent === kept[0]) return;
  place.replaceChildren(...kept);
}

/** Time of an entry for the reader: as it stood on the clock where it was made. @param {string} at */
export const clock = (at) =>
  at.slice(0, 10) === now().slice(0, 10) ? at.slice(11, 16) : `${at.slice(0, 10)} ${at.slice(11, 16)}`;

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

/** Hand something over as a file. @param {BlobPart} content @param {string} name @param {string} type */
export function download(content, name, type) {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = h("a", { href: address, download: name, hidden: true });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

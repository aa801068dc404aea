/** Parts of pages as templates: a page shows what a function makes of its state. */
import { html, nothing } from "../vendor/lit-html.js";

/**
 * @typedef {import("../vendor/lit-html.js").TemplateResult | typeof nothing} Part
 * @typedef {Node | Part | string | null | undefined | Child[]} Child
 */

/** A button. @param {string} words @param {() => unknown} press @param {string} [kind] classes */
export const button = (words, press, kind = "") =>
  html`<button type="button" class="ls-button ${kind}" @click=${press}>${words}</button>`;

/** A button that is not the first thing to press. @param {string} words @param {() => unknown} press */
export const quiet = (words, press) => button(words, press, "ls-quiet");

/** Tools side by side. @param {...Child} tools */
export const tools = (...tools) => html`<div class="ls-tools">${tools}</div>`;

/**
 * A labelled control.
 * @param {string} id of the control @param {string} words @param {Child} control @param {string} [help]
 */
export const labelled = (id, words, control, help) => {
  const small = help ? html`<small id="${id}-help">${help}</small>` : nothing;
  return html`<div class="ls-field"><label for=${id}>${words}</label>${control}${small}</div>`;
};

/**
 * A labelled choice from a list.
 * @param {string} id
 * @param {string} words
 * @param {[value: string, words: string][]} choices
 * @param {string} chosen
 * @param {(value: string) => unknown} change
 * @param {boolean} [off]
 */
export function choice(id, words, choices, chosen, change, off = false) {
  const take = (/** @type {Event} */ event) => change(/** @type {HTMLSelectElement} */ (event.target).value);
  const options = choices.map(
    ([value, shown]) => html`<option value=${value} .selected=${value === chosen}>${shown}</option>`,
  );
  return labelled(id, words, html`<select id=${id} ?disabled=${off} @change=${take}>${options}</select>`);
}

/** A list of rows under a title; nothing where there are none. @param {Child} title @param {Child[]} rows */
export const rowsUnder = (title, rows) => (rows.length ? html`${title}<ul class="ls-rows">${rows}</ul>` : nothing);

/** A row that leads on. @param {string | URL} href @param {string} name @param {Child} under */
export const linkRow = (href, name, under) =>
  html`<li><a href=${String(href)}><strong>${name}</strong><span>${under}</span></a></li>`;

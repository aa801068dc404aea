/** The field above a list, and what it says of what was typed: a function of its state. */
import { labelled } from "../core/parts.js";
import { root } from "../core/place.js";
import { view as message } from "../messages/entries.js";
import { html, nothing } from "../vendor/lit-html.js";

/**
 * @typedef {{typed: string, shown: number, all: number}} State
 * @param {State} state @param {(typed: string) => unknown} change
 */
export function view({ typed, shown, all }, change) {
  const take = (/** @type {Event} */ event) => change(/** @type {HTMLInputElement} */ (event.target).value);
  const field = html`<input type="search" id="ls-narrow" autocomplete="off" autocapitalize="off" spellcheck="false"
    maxlength="60" .value=${typed} @input=${take}>`;
  const said = shown ? message.found({ shown, all }) : message.none({ typed: typed.trim() });
  const finder = new URL(`?find=${encodeURIComponent(typed.trim())}`, root).href;
  return html`
    ${labelled("ls-narrow", message.filter(), field)}
    <p role="status">${typed.trim() ? said : nothing}</p>
    ${shown ? nothing : html`<p><a class="ls-way" href=${finder}>${message.finder()}</a></p>`}
  `;
}

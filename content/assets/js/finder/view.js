/** What the finder shows: a function of its state. A combobox with a list below it, as the ARIA practices have it. */
import { root } from "../core/place.js";
import { view as message } from "../messages/finder.js";
import { html, nothing } from "../vendor/lit-html.js";

/**
 * @typedef {{text: string, hit: boolean}} Piece
 * @typedef {{address: string, name: Piece[], kind: string, line: Piece[]}} Answer
 * @typedef {Object} State
 * @property {string} id what the ids of its elements begin with
 * @property {string} said how many were found, or what to try
 * @property {string} [hint]
 * @property {Answer[]} answers
 * @property {number} at the answer that Enter opens, counted from 0; -1 for the first, unmarked
 * @property {boolean} closes whether it can be closed
 *
 * @typedef {Object} Acts
 * @property {() => unknown} typed
 * @property {(event: KeyboardEvent) => unknown} key
 * @property {() => unknown} left
 * @property {() => unknown} close
 * @property {() => unknown} chosen
 */

/** @param {State} state @param {Acts} acts */
export function view({ id, said, hint, answers, at, closes }, acts) {
  const list = `${id}-list`;
  return html`
    <label for=${id}>${message.ask()}</label>
    <div class="ls-finder-line">
      <input type="search" id=${id} role="combobox" aria-autocomplete="list" aria-controls=${list}
        aria-expanded=${answers.length > 0} aria-activedescendant=${at < 0 ? nothing : `${list}-${at}`}
        autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="go" maxlength="200"
        @input=${acts.typed} @keydown=${acts.key} @focus=${acts.typed} @blur=${acts.left}>
      ${closes ? html`<button type="button" class="ls-button ls-quiet" @click=${acts.close}>${message.close()}</button>` : nothing}
    </div>
    <p role="status">${said}</p>
    ${hint ? html`<p class="ls-finder-hint">${hint}</p>` : nothing}
    <div id=${list} role="listbox" aria-label=${message.answers()} class="ls-hits" ?hidden=${!answers.length}
      @mousedown=${stay} @click=${acts.chosen}>
      ${answers.map((answer, place) => option(answer, `${list}-${place}`, place === at))}
    </div>
  `;
}

/** The reader stays in the field while pointing. @param {Event} event */
const stay = (event) => event.preventDefault();

/** @param {Answer} answer @param {string} id @param {boolean} active */
const option = ({ address, name, kind, line }, id, active) => html`
  <a role="option" id=${id} tabindex="-1" aria-selected=${active} href=${new URL(address, root).href}>
    <span class="ls-hit-kind">${kind}</span> <strong>${pieces(name)}</strong>
    ${line.length ? html`<span class="ls-hit-line">${pieces(line)}</span>` : nothing}
  </a>
`;

/** @param {Piece[]} list */
const pieces = (list) => list.map(({ text, hit }) => (hit ? html`<mark>${text}</mark>` : text));

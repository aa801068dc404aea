/** The part of a page that tells of an error: a function of its state. */
import { button, labelled, quiet, tools } from "../core/parts.js";
import { looksLikeCode } from "../core/words.js";
import { view as message } from "../messages/report.js";
import { html, nothing } from "../vendor/lit-html.js";
import { letter, report } from "./text.js";

/**
 * @typedef {import("./text.js").Facts} Facts
 * @typedef {{facts: Facts, own: string, to: string, shares: boolean, copied: boolean | null}} State
 * @typedef {{typed(own: string): unknown, copy(): unknown, share(): unknown}} Acts
 * @param {State} state @param {Acts} acts
 */
export function view({ facts, own, to, shares, copied }, { typed, copy, share }) {
  const take = (/** @type {Event} */ event) => typed(/** @type {HTMLTextAreaElement} */ (event.target).value);
  const field = html`<textarea id="ls-tell" rows="4" maxlength="1000" .value=${own} @input=${take}></textarea>`;
  const mail = html`<a class="ls-button ls-quiet" href=${letter(to, facts, own)}>${message.mail()}</a>`;
  const done = copied ? message.copied() : message.notCopied();
  return html`
    <p class="ls-note">${message.warning()}</p>
    ${labelled("ls-tell", message.ask(), field)}
    ${looksLikeCode(own) ? html`<p class="ls-error" role="alert">${message.code()}</p>` : nothing}
    <pre class="ls-report" tabindex="0" aria-label=${message.text()}>${report(facts, own)}</pre>
    ${tools(button(message.copy(), copy), shares ? quiet(message.share(), share) : null, to ? mail : null)}
    <p role="status">${copied === null ? nothing : done}</p>
  `;
}

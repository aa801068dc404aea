/** What a visit found otherwise than its survey: before and after of each, to be kept or left out. */
import { around } from "../core/message.js";
import { button, quiet, tools } from "../core/parts.js";
import { root } from "../core/place.js";
import { takingView as message } from "../messages/job.js";
import { html, nothing } from "../vendor/lit-html.js";

/**
 * @typedef {import("./taking.js").State} State
 * @typedef {import("./taking.js").Taking} Acts
 * @typedef {import("./differences.js").Difference} Difference
 * @typedef {{id: string, name: string}[]} Devices
 */

const WHAT = { device: message.device, gap: message.gap, contact: message.contact, defect: message.defect };
const ANSWERS = { yes: message.yes, no: message.no };

/** @param {State} state @param {Acts} acts @param {Devices} devices */
export function takingView({ survey, found, open, left, said, warns }, acts, devices) {
  if (!survey) return nothing;
  const there = html`<a href=${new URL(`survey/#s=${survey.survey.key}`, root).href}>${message.survey()}</a>`;
  const kept = found.filter(({ id }) => !left.has(id)).length;
  const none = open && !found.length ? html`<p>${message.same()}</p>` : nothing;
  return html`
    <section class="ls-job" aria-label=${message.title()}>
      <h3>${message.title()}</h3>
      <p>${around(message.from, { survey: there })}</p>
      ${open && found.length ? choices(found, left, kept, acts, devices) : tools(button(message.take(), () => acts.open()))}
      <div role="status">${none}${said ? html`<p class=${warns ? "ls-warn" : ""}>${said}</p>` : nothing}</div>
    </section>
  `;
}

/** @param {Difference[]} found @param {ReadonlySet<string>} left @param {number} kept @param {Acts} acts @param {Devices} devices */
const choices = (found, left, kept, acts, devices) => html`
  <p>${message.look()}</p>
  <ul class="ls-choices">${found.map((one) => rowView(one, !left.has(one.id), acts, devices))}</ul>
  ${tools(
    html`<button type="button" class="ls-button ls-main" ?disabled=${!kept} @click=${() => acts.take()}>${message.takeKept({ changes: kept })}</button>`,
    quiet(message.leave(), () => acts.leave()),
  )}
`;

/** @param {Difference} one @param {boolean} kept @param {Acts} acts @param {Devices} devices */
function rowView(one, kept, acts, devices) {
  const { opening, sort, before, after, id } = one;
  const side = (/** @type {string} */ value) => shown(sort, value, devices) || message.none();
  const keep = (/** @type {Event} */ event) => acts.keep(id, /** @type {HTMLInputElement} */ (event.target).checked);
  return html`
    <li><label class="ls-item ls-choice"><input type="checkbox" .checked=${kept} @change=${keep}><span class="ls-item-words">
      <strong>${message.at({ opening, what: WHAT[sort]() })}</strong>
      <span>${message.before({ before: side(before) })}</span>
      <span>${message.after({ after: side(after) })}</span>
    </span></label></li>
  `;
}

/** @param {Difference["sort"]} sort @param {string} value @param {Devices} devices */
function shown(sort, value, devices) {
  if (sort === "device") return devices.find(({ id }) => id === value)?.name ?? value;
  return sort === "contact" ? ANSWERS[/** @type {keyof typeof ANSWERS} */ (value)]() : value;
}

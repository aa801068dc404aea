/** A trial of other answers: what they change, side by side with what is stored, and the ways out of it. */
import { around } from "../core/message.js";
import { button, quiet, tools } from "../core/parts.js";
import { trialView as message } from "../messages/plan.js";
import { openingFields } from "../survey/model.js";
import { openingName } from "../survey/naming.js";
import { html, nothing } from "../vendor/lit-html.js";
import { differences } from "./differences.js";

/**
 * @typedef {import("../survey/state.js").State} State
 * @typedef {import("../survey/survey.js").Surveys} Acts
 * @typedef {import("./differences.js").Difference} Difference
 */

const NAMES = {
  device: message.device,
  problem: message.problem,
  positions: message.positions,
  minutes: message.hours,
  days: message.days,
};

/** What stands over the questions of the opening that is tried. @param {State} state @param {import("./trying.js").Trial} trial @param {Acts} acts */
export const trialView = (state, trial, acts) => html`
  <section class="ls-plan ls-trying" aria-label=${message.trial()}>
    <h3>${message.trial()}</h3>
    <p>${message.how()}</p>
    ${tools(trialTools(acts)) /* before what comes and goes, so that they stay where a finger aims */}
    <div role="status">${comparedView(state.plan, trial)}</div>
  </section>
`;

/** The ways out of a trial. @param {Acts} acts */
export const trialTools = ({ trying }) => [
  quiet(message.drop(), () => trying.drop()),
  button(message.keep(), () => trying.keep(), "ls-main"),
];

/** The offer to try other answers; or where they are tried already. @param {State} state @param {Acts} acts */
export function tryView({ trial, plan, fields, survey }, acts) {
  if (!plan.glance) return nothing;
  if (!trial || !survey) return tools(quiet(message.begin(), () => acts.trying.begin()));
  return trialNote({ trial, fields, survey });
}

/** Where a trial is open. @param {Pick<State, "trial" | "fields" | "survey">} state */
export function trialNote({ trial, fields, survey }) {
  const index = survey?.openings.findIndex(({ key }) => key === trial?.row.key) ?? -1;
  if (!trial || index < 0) return nothing;
  const name = openingName(openingFields(fields), trial.from.data, index);
  const opening = html`<a href="#s=${trial.survey}&o=${trial.row.key}">${name}</a>`;
  return html`<p class="ls-trial-note">${around(message.open, { opening })}</p>`;
}

/** @param {State["plan"]} plan as it is stored @param {import("./trying.js").Trial} trial */
function comparedView({ glance: before, at }, { glance, told, row, from }) {
  if (told) return html`<p class="ls-warn">${message.failed({ told })}</p>`;
  if (!before || !glance) return html`<p class="ls-warn">${message.lacking()}</p>`;
  const found = differences(before, glance);
  if (!found.length) return html`<p>${row === from ? message.untried() : message.same()}</p>`;
  const own = at.get(row.key)?.id ?? "";
  const first = found.filter((one) => one.id === own || ["minutes", "days"].includes(one.sort));
  const rest = found.filter((one) => !first.includes(one));
  return html`
    ${tableView(first, own)}
    ${rest.length ? html`<details class="ls-part"><summary><strong>${message.rest()}</strong> <span>${message.differences({ count: rest.length })}</span></summary>${tableView(rest, own)}</details>` : nothing}
  `;
}

/** @param {Difference[]} found @param {string} own id of the opening that is tried */
const tableView = (found, own) =>
  found.length
    ? html`
      <div class="ls-table"><table class="ls-cards ls-compared">
        <thead><tr><th scope="col">${message.what()}</th><th scope="col">${message.now()}</th><th scope="col">${message.tried()}</th></tr></thead>
        <tbody>${found.map((one) => rowView(one, own))}</tbody>
      </table></div>
    `
    : nothing;

/** @param {Difference} difference @param {string} own as above */
function rowView({ id, spoken, sort, what, before, after }, own) {
  const name = sort === "figure" || sort === "item" ? what : NAMES[sort]();
  const side = (/** @type {string} */ text) => (sort === "minutes" ? hours(text) : text) || message.none();
  return html`
    <tr>
      <th scope="row">${id && id !== own ? message.at({ opening: spoken, what: name }) : name}</th>
      <td data-label=${message.now()}>${side(before)}</td>
      <td data-label=${message.tried()}>${side(after)}</td>
    </tr>
  `;
}

/** @param {string} minutes */
const hours = (minutes) => message.time({ hours: (Number(minutes) / 60).toFixed(1) });

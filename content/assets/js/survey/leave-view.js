/** How a survey leaves the device: what it lacks to be planned, what stays out of the file, and the ways to take it. */
import { around } from "../core/message.js";
import { button, quiet, tools } from "../core/parts.js";
import { leaveView as message } from "../messages/survey.js";
import { packView } from "../plan/pack-view.js";
import { html, nothing } from "../vendor/lit-html.js";
import { notStored, unread } from "./file.js";
import { ofKind } from "./findings.js";
import { sharing } from "./traffic.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./model.js").Survey} Survey
 * @typedef {import("./survey.js").Surveys} Acts
 */

/** @param {State} state @param {Survey} survey @param {Acts} acts */
export function leaveView(state, survey, acts) {
  const missing = ofKind(state.findings, "hindrance");
  const typed = unread(state.fields, survey);
  const waiting = notStored(state.fields, survey, state.edits);
  const whole = survey.survey.filed === survey.survey.changed;
  return html`
    <section class="ls-file" aria-label=${message.take()}>
      <h3>${message.take()}</h3>
      <p class=${whole ? "" : "ls-warn"}>${whole ? message.inFile() : message.onlyHere()}</p>
      ${missing.length ? hindered(survey.survey.key, missing) : nothing}
      ${typed.length ? html`<p>${message.unread({ answers: typed.length, typed: typed.join("; ") })}</p>` : nothing}
      ${waiting.length ? html`<p class="ls-warn">${message.notStored({ answers: waiting.length, typed: waiting.join("; ") })}</p>` : nothing}
      ${tools(
        ways(acts),
        quiet(message.print(), () => acts.print()),
      )}
      <p role="status">${toldView(state, acts)}</p>
    </section>
    ${packView(state, survey, !missing.length, acts)}
  `;
}

/** @param {string} key of the survey @param {{about: string, words: string}[]} missing */
function hindered(key, missing) {
  const rows = missing.map(({ about, words }) => {
    const fault = about ? html`<a href="#s=${key}&o=${about}">${words}</a>` : html`${words}`;
    return html`<li>${around(message.hindrance, { fault })}</li>`;
  });
  return html`<p>${message.hindered()}</p><ul>${rows}</ul>`;
}

/** @param {Acts} acts @returns {import("../core/parts.js").Part[]} */
const ways = ({ traffic }) => [
  button(message.save(), () => traffic.save(), "ls-main"),
  sharing() ? button(message.share(), () => traffic.share()) : nothing,
];

/** What came of handing the file over. @param {State} state @param {Acts} acts */
function toldView({ handed, told }, acts) {
  if (!handed) return told;
  return html`${told ? html`${told} ` : nothing}${message.look({ file: handed.file })} ${button(message.there(), () => acts.noteFiled())}`;
}

/** The surveys of this device, and the ways to one more: begun by name, or brought in from a file. */
import { listed } from "../core/message.js";
import { button, labelled, linkRow, quiet, rowsUnder, tools } from "../core/parts.js";
import { listView as message } from "../messages/survey.js";
import { html, nothing } from "../vendor/lit-html.js";
import { houseView } from "./house-view.js";
import { openInAll } from "./model.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./model.js").Survey} Survey
 * @typedef {import("./survey.js").Surveys} Acts
 */

/** So many fields that a file has and the form does not know are named. */
const MOST = 10;

/** @param {State} state @param {Acts} acts */
export const listView = (state, acts) => html`
  <div>${rowsView(state)}</div>
  <div class="ls-start">
    ${newForm(state, acts)}
    ${importView(state, acts)}
    ${houseView(state, acts.house)}
    ${keptView(state)}
    ${quiet(message.printBlank(), () => acts.print())}
  </div>
`;

/** @param {State} state */
function rowsView({ fields, all }) {
  if (!all.length) return html`<p class="ls-none">${message.none()}</p>`;
  const rows = [...all].sort(lastFirst).map((whole) => {
    const { data, filed, changed, key } = whole.survey;
    const words = [
      data.surveyed,
      message.openings({ openings: whole.openings.length }),
      message.open({ questions: openInAll(fields, whole) }),
      filed === changed ? message.inFile() : message.onlyHere(),
    ];
    return linkRow(`#s=${key}`, data.name || message.noName(), words.filter(Boolean).join(" · "));
  });
  return rowsUnder(html`<h2>${message.surveys()}</h2>`, rows);
}

/** @param {Survey} a @param {Survey} b */
const lastFirst = ({ survey: a }, { survey: b }) =>
  (b.data.surveyed ?? "9").localeCompare(a.data.surveyed ?? "9") || (a.key < b.key ? -1 : 1);

/** @param {State} state @param {Acts} acts */
function newForm({ fields, start }, { traffic }) {
  const field = /** @type {import("./check.js").Field} */ (fields.find((one) => one.name === "name"));
  const begin = (/** @type {SubmitEvent} */ event) => {
    event.preventDefault();
    const input = /** @type {HTMLFormElement} */ (event.target).querySelector("input");
    return input && traffic.begin(input, field.low ?? 1);
  };
  const type = (/** @type {Event} */ event) => traffic.name(/** @type {HTMLInputElement} */ (event.target).value);
  const name = html`
    <input type="text" id="ls-site" maxlength=${field.high ?? nothing} required autocomplete="off"
      aria-describedby="ls-site-help" .value=${start.name} @input=${type}>
  `;
  return html`
    <form class="ls-new" @submit=${begin}>
      <h2>${message.start()}</h2>
      ${labelled("ls-site", field.label, name, field.help)}
      <p class="ls-warn" role="alert">${start.warning}</p>
      <button type="submit" class="ls-button ls-main">${message.startSurvey()}</button>
    </form>
  `;
}

/** @param {State} state @param {Acts} acts */
function importView({ brought }, { traffic }) {
  const look = (/** @type {Event} */ event) => {
    const input = /** @type {HTMLInputElement} */ (event.target);
    const [file] = input.files ?? [];
    if (file) traffic.look(file);
    input.value = "";
  };
  const choose = html`
    <input type="file" id="ls-file" accept=".json,.txt,application/json,text/plain" aria-describedby="ls-file-help"
      @change=${look}>
  `;
  return html`
    <div class="ls-import">
      ${labelled("ls-file", message.bring(), choose, message.bringHelp())}
      <div class="ls-said" role="status">${brought ? broughtView(brought, traffic) : nothing}</div>
    </div>
  `;
}

const warning = (/** @type {string} */ words) => html`<p class="ls-warn">${words}</p>`;

/** A file that was looked at. @param {import("./state.js").Brought} brought @param {Acts["traffic"]} traffic */
function broughtView({ file, fault, data, openings = [], aside = [], twin, suspect = [] }, traffic) {
  if (fault !== undefined) return warning(message.unchanged({ file, fault }));
  return html`
    <p>${message.found({ site: data.name, openings: openings.length })}</p>
    ${twin ? html`<p>${message.twin()}</p>` : nothing}
    ${aside.length ? warning(unknown(aside)) : nothing}
    ${suspect.length ? warning(message.codeIn({ fields: listed(suspect, "unit") })) : nothing}
    ${tools(
      button(message.bringIn(), () => traffic.bringIn(), "ls-main"),
      quiet(message.leave(), () => traffic.leave()),
    )}
  `;
}

/** What of a file the form leaves out: the first of them, and how many more. @param {string[]} aside */
function unknown(aside) {
  const fields = aside.slice(0, MOST).join("; ");
  const more = aside.length - MOST;
  return more > 0 ? message.unknownMore({ fields, more }) : message.unknown({ fields });
}

/** Where surveys are kept, and whether the browser promised to keep them. @param {State} state */
function keptView({ kept: { kept, why, firm } }) {
  if (!kept) return warning(message.refused({ why }));
  return html`<p class="ls-kept">${firm ? message.keptPromised() : message.keptNotPromised()}</p>`;
}

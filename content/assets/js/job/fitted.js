/** The papers that stay with the site: what was fitted against what was planned, and a certificate to fill in by hand. */
import { fitted as message } from "../messages/job.js";
import { html, nothing, render } from "../vendor/lit-html.js";
import { deviations, nameOf, readingOf } from "./deviations.js";
import { answersAt, jobOf, plannedOf } from "./job.js";

/**
 * @typedef {import("../visit/entries.js").View} View
 * @typedef {import("../visit/entries.js").Opening} Opening
 * @typedef {import("../visit/entries.js").OpeningEntry} OpeningEntry
 * @typedef {import("../visit/sheet.js").Known} Known
 */

/** @param {View} seen @param {Known} data @param {Node[]} photographs by opening @param {boolean} certificate */
export function fittedPaper(seen, data, photographs, certificate) {
  const paper = document.createElement("section");
  paper.className = "ls-sheet";
  render(html`${fittedView(seen, data, photographs)}${certificate ? certificateView(seen) : nothing}`, paper);
  return paper;
}

/** @param {View} seen @param {Known} data @param {Node[]} photographs */
function fittedView(seen, data, photographs) {
  const { visit, openings } = seen;
  const planned = plannedOf(seen);
  const rows = [...openings.values()].filter(({ removed }) => !removed);
  const said = deviations(seen, data);
  const none = jobOf(seen) ? message.noDeviation() : message.noPlan();
  const untouched = rows.filter((one) => !isRecorded(seen, one, planned.get(one.opening))).length;
  return html`
    <h2>${message.title({ site: visit?.site ?? "" })}</h2>
    <p>${[visit?.date, visit?.who].filter(Boolean).join(" · ")}</p>
    <table>
      <thead><tr>${[message.opening(), message.zone(), message.fitted(), message.readings()].map((words) => html`<th scope="col">${words}</th>`)}</tr></thead>
      <tbody>${rows.map((one) => rowView(seen, data, one, planned.get(one.opening)))}</tbody>
    </table>
    ${untouched ? html`<p><strong>${message.notComplete({ openings: untouched })}</strong></p>` : nothing}
    <h3>${message.deviations()}</h3>
    ${said.length ? html`<ul>${said.map((words) => html`<li>${words}</li>`)}</ul>` : html`<p>${none}</p>`}
    ${photographs}
    <p class="ls-sign-line">${message.signature()}</p>
    <p>${message.library({ library: data.library, when: new Date().toLocaleString() })}</p>
  `;
}

/** Whether anything was recorded at an opening since it was planned. @param {View} seen @param {Opening} one @param {OpeningEntry | undefined} planned */
const isRecorded = (seen, one, planned) =>
  !planned || planned.device !== one.device || answersAt(seen, one.opening).length > 0;

/** @param {View} seen @param {Known} data @param {Opening} one @param {OpeningEntry | undefined} planned */
function rowView(seen, data, one, planned) {
  const readings = answersAt(seen, one.opening).filter(({ reading }) => reading);
  return html`
    <tr>
      <td>${one.name}</td>
      <td>${planned?.job?.zone ?? ""}</td>
      <td>${isRecorded(seen, one, planned) ? nameOf(data, one.device) : message.plannedOnly({ device: nameOf(data, one.device) })}</td>
      <td>${readings.map((entry) => html`<div>${readingOf(entry)}</div>`)}</td>
    </tr>
  `;
}

/** A form of empty lines: what it says, whoever signs it says. @param {View} seen */
function certificateView({ visit }) {
  const lines = [message.system(), message.grade(), message.standard()];
  const fields = [message.results(), message.deviationsHere()];
  const signed = [message.name(), message.signed(), message.date()];
  const row =
    (kind = "") =>
    (/** @type {string} */ words) =>
      html`<tr class=${kind}><th scope="row">${words}</th><td></td></tr>`;
  return html`
    <div class="ls-certificate">
      <h2>${message.certificate()}</h2>
      <p><strong>${message.claim()}</strong> ${message.rules()}</p>
      <p>${message.site({ site: visit?.site ?? "" })}</p>
      <table><tbody>${lines.map(row())}${fields.map(row("ls-tall"))}${signed.map(row())}</tbody></table>
    </div>
  `;
}

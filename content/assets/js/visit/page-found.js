/** What a visit found, for its page: problems, readings, and the faults that were looked for. */
import { clock } from "../core/dom.js";
import { pageFound as message } from "../messages/visit.js";
import { html, nothing } from "../vendor/lit-html.js";
import { shown as figure, judge } from "./entries.js";
import { findingsOf } from "./sheet.js";

/**
 * @typedef {import("./entries.js").View} View
 * @typedef {import("./entries.js").Run} Run
 * @typedef {import("./entries.js").ItemEntry} ItemEntry
 */

/** The name of an opening before what was found there. @param {View} seen @param {string | null} id */
export function openingName({ openings }, id) {
  const opening = openings.get(id ?? "");
  return opening ? `${message.at({ opening: opening.name })} ` : "";
}

/** When and by whom. @param {{at: string, by: string}} entry */
export const signed = ({ at, by }) => html`<small>${clock(at)} ${by}</small>`;

/** Every answer of a run that stands. @param {Run} run */
const answers = (run) => [...run.items.values()].flatMap((outcome) => outcome.heads);

/**
 * The answers that are wanted, under a title.
 * @param {View} seen @param {string} title @param {(entry: ItemEntry) => boolean} wanted
 */
export function found(seen, title, wanted) {
  const entries = [...seen.runs.values()].flatMap(answers).filter(wanted);
  if (!entries.length) return nothing;
  return html`<h3>${title}</h3><ul>${entries.map((entry) => answerRow(seen, entry))}</ul>`;
}

/** @param {View} seen @param {ItemEntry} entry */
function answerRow(seen, entry) {
  const { reading, expected, words, opening } = entry;
  const outside = reading && judge(reading, expected) === "outside";
  const findings = findingsOf(entry) || (reading ? figure(reading) : "");
  const line = message.found({ item: words, findings });
  const where = openingName(seen, opening);
  return html`<li class=${outside ? "ls-is-outside" : ""}><strong>${where}</strong>${line} ${signed(entry)}</li>`;
}

/**
 * The faults that were looked for: each check and remedy in the order in which it was done, and how it ended.
 * @param {View} seen
 */
export function faultRuns(seen) {
  const runs = [...seen.runs].filter(([key, run]) => key.startsWith("fault-run-") && answers(run).length);
  return runs.length ? html`<h3>${message.faults()}</h3>${runs.map(([, run]) => faultRun(seen, run))}` : nothing;
}

/** @param {View} seen @param {Run} run */
function faultRun(seen, run) {
  const entries = answers(run).sort((a, b) => a.n - b.n);
  const steps = entries.map((entry) => {
    const findings = findingsOf(entry);
    const line = findings ? message.found({ item: entry.words, findings }) : entry.words;
    return html`<li>${line} ${signed(entry)}</li>`;
  });
  const ends = run.complete.map((entry) => html`<p><strong>${entry.words}</strong></p>`);
  const [{ opening, list_name }] = entries;
  return html`
    <h4>${openingName(seen, opening)}${list_name}</h4>
    <ol>${steps}</ol>
    ${ends.length ? ends : html`<p>${message.notEnded()}</p>`}
  `;
}

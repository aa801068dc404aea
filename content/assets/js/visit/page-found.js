/** What a visit found, for its page: problems, readings, and the faults that were looked for. */
import { clock, h } from "../core/dom.js";
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
  return opening ? `${opening.name}: ` : "";
}

/** When and by whom. @param {{at: string, by: string}} entry */
export const signed = ({ at, by }) => h("small", {}, `${clock(at)} ${by}`);

/** Every answer of a run that stands. @param {Run} run */
const answers = (run) => [...run.items.values()].flatMap((outcome) => outcome.heads);

/**
 * The answers that are wanted, under a title.
 * @param {View} seen @param {string} title @param {(entry: ItemEntry) => boolean} wanted
 */
export function found(seen, title, wanted) {
  const entries = [...seen.runs.values()].flatMap(answers).filter(wanted);
  if (!entries.length) return [];
  return [h("h3", {}, title), h("ul", {}, ...entries.map((entry) => answerRow(seen, entry)))];
}

/** @param {View} seen @param {ItemEntry} entry */
function answerRow(seen, entry) {
  const { reading, expected, words, opening } = entry;
  const outside = reading && judge(reading, expected) === "outside";
  const said = findingsOf(entry) || (reading && figure(reading));
  const where = h("strong", {}, openingName(seen, opening));
  return h("li", { class: outside ? "ls-is-outside" : "" }, where, `${words}: `, said, " ", signed(entry));
}

/**
 * The faults that were looked for: each check and remedy in the order in which it was done, and how it ended.
 * @param {View} seen
 */
export function faultRuns(seen) {
  const runs = [...seen.runs].filter(([key]) => key.startsWith("fault-run-")).flatMap(([, run]) => faultRun(seen, run));
  return runs.length ? [h("h3", {}, "Faults looked for"), ...runs] : [];
}

/** @param {View} seen @param {Run} run */
function faultRun(seen, run) {
  const entries = answers(run).sort((a, b) => a.n - b.n);
  if (!entries.length) return [];
  const steps = entries.map((entry) => {
    const findings = findingsOf(entry);
    return h("li", {}, `${entry.words}${findings ? `: ${findings}` : ""} `, signed(entry));
  });
  const ends = run.complete.map((entry) => h("p", {}, h("strong", {}, entry.words)));
  const [{ opening, list_name }] = entries;
  return [
    h("h4", {}, openingName(seen, opening), list_name),
    h("ol", {}, ...steps),
    ...(ends.length ? ends : [h("p", {}, "Not ended yet.")]),
  ];
}

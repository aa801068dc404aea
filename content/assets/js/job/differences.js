/**
 * What a visit found otherwise than its survey says: the device fitted, the gap measured, a contact that is not sound,
 * a defect. Pure.
 *
 * @typedef {import("../visit/entries.js").View} View
 * @typedef {import("../visit/entries.js").Entry} Entry
 * @typedef {import("../visit/entries.js").ItemEntry} ItemEntry
 * @typedef {import("../visit/entries.js").OpeningEntry} OpeningEntry
 * @typedef {import("../visit/entries.js").Opening} Opening
 * @typedef {import("../visit/sheet.js").Known} Known
 * @typedef {import("../survey/model.js").Survey} Survey
 * @typedef {import("../survey/model.js").OpeningRow} OpeningRow
 * @typedef {"device" | "gap" | "contact" | "defect"} Sort
 * @typedef {Object} Difference
 * @property {string} id the same as long as it is the same difference
 * @property {string} row key of the opening in the survey
 * @property {string} opening its name
 * @property {Sort} sort
 * @property {string} before as it stands in the survey, or in its plan; empty: nothing stands there
 * @property {string} after as the visit has it
 * @property {string} date of the visit
 */
import { length, millimetres } from "../core/lengths.js";
import { clean, looksLikeCode, masked } from "../core/words.js";
import { differences as message } from "../messages/job.js";
import { answered } from "../survey/model.js";
import { ids } from "../survey/naming.js";
import { order } from "../visit/entries.js";
import { findingsOf } from "../visit/sheet.js";
import { answersAt, plannedOf } from "./job.js";

/** Lengths that differ by less are one length, in millimetres. */
const SAME = 0.05;
const MOST_NOTES = 1200;
const MOST_DEFECT = 240;
const GAP = ["fit-gap"];
const LOOP = ["loop-shut", "loop-open"];

/** @param {View} seen @param {Survey} survey @param {Known} known @returns {Difference[]} */
export function differences(seen, survey, known) {
  const measures = measuresOf(known);
  const at = ids(survey);
  return survey.openings.flatMap((row) => {
    const id = at.get(row.key);
    const contacts = [...plannedOf(seen).values()].filter(({ job }) => job?.opening === id);
    const held = contacts.map((one) => /** @type {Opening} */ (seen.openings.get(one.opening))).filter(Boolean);
    if (!held.length) return [];
    const imperial = survey.survey.data.units === "imperial";
    const found = contacts.flatMap(({ opening }) => answersAt(seen, opening)).sort(order);
    const about = { row: row.key, opening: contacts[0].name, date: seen.visit?.date ?? "" };
    const first = found.filter(({ opening }) => opening === contacts[0].opening);
    return [
      ...deviceOf(row, contacts[0], held[0], seen),
      ...gapOf(row, first.filter(measured(measures, GAP)), imperial ? "in" : "mm"),
      ...contactOf(row, found.filter(measured(measures, LOOP))),
      ...found.flatMap((entry) => defectOf(row, entry, about.date)),
    ].map((one) => ({ ...about, ...one, id: `${row.key} ${one.sort} ${one.after}` }));
  });
}

/** @typedef {Pick<Difference, "sort" | "before" | "after">} Found */

/** The value that each item is judged by, by list and item. @param {Known} known @returns {Map<string, string>} */
const measuresOf = ({ checklists }) =>
  new Map(
    checklists.flatMap(({ id, items }) =>
      items.flatMap((item) => (item.measure ? [[`${id} ${item.id}`, item.measure]] : [])),
    ),
  );

/** @param {Map<string, string>} measures @param {string[]} wanted */
const measured =
  (measures, wanted) =>
  (/** @type {ItemEntry} */ { checklist, item }) =>
    wanted.includes(measures.get(`${checklist} ${item}`) ?? "");

/**
 * A class that somebody chose on the visit; what nobody touched there is as planned, whatever the lead chose since.
 * @param {OpeningRow} row @param {OpeningEntry} planned @param {Opening} now @param {View} seen @returns {Found[]}
 */
function deviceOf({ data }, planned, { device, removed }, { ordered }) {
  const before = data.device?.class ?? planned.device ?? "";
  const isOther = (/** @type {Entry} */ one) =>
    one.kind === "opening" && one.opening === planned.opening && one.device !== planned.device;
  if (removed || !device || device === before || !ordered.some(isOther)) return [];
  return [{ sort: "device", before, after: device }];
}

/** By the last reading. @param {OpeningRow} row @param {ItemEntry[]} found @param {string} unit of a bare number @returns {Found[]} */
function gapOf({ data }, found, unit) {
  const { reading } = found.findLast((entry) => entry.reading?.value !== undefined) ?? {};
  const after = reading ? length(String(reading.value), reading.unit) : null;
  const measured = after === null ? null : millimetres(after, unit);
  if (after === null || measured === null) return [];
  const before = data.gap === undefined ? "" : String(data.gap);
  const stood = millimetres(before, unit);
  if (stood !== null && Math.abs(stood - measured) <= SAME) return [];
  return [{ sort: "gap", before, after }];
}

/** A contact in place that was taken for sound, and whose loop does not read so. @param {OpeningRow} row @param {ItemEntry[]} found @returns {Found[]} */
const contactOf = ({ data }, found) =>
  data.old_contact === "yes" && found.some(({ outcome }) => outcome === "problem")
    ? [{ sort: "contact", before: "yes", after: "no" }]
    : [];

/** A problem, as a note of the opening that has room for it. @param {OpeningRow} row @param {ItemEntry} entry @param {string} date @returns {Found[]} */
function defectOf({ data }, entry, date) {
  if (entry.outcome !== "problem") return [];
  const before = data.notes ?? "";
  const words = clean(message.defect({ date, item: entry.words, found: findingsOf(entry) }), MOST_DEFECT);
  const after = looksLikeCode(words) ? masked(words) : words;
  return before.includes(after) || before.length + after.length >= MOST_NOTES
    ? []
    : [{ sort: "defect", before, after }];
}

/**
 * The opening with what a difference says; as it is where it says something else meanwhile.
 * @param {OpeningRow} row @param {Difference} difference @returns {OpeningRow}
 */
export function taken(row, { sort, before, after, date }) {
  const { device, gap, old_contact, notes = "" } = row.data;
  if (sort === "defect")
    return notes.includes(after) ? row : answered(row, ["notes"], [notes, after].filter(Boolean).join(" "));
  if (sort === "gap") return String(gap ?? "") === before ? answered(row, ["gap"], after) : row;
  if (sort === "contact") return old_contact === before ? answered(row, ["old_contact"], after) : row;
  if (device && device.class !== before) return row;
  return answered(row, ["device"], { class: after, reason: message.fitted({ date }) });
}

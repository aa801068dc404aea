/**
 * What there is to tell of each opening of a survey, and of the survey as a whole. Pure. The form's own check makes
 * it; whatever else looks at a survey adds to it in the same shape, and the views show what stands here.
 *
 * @typedef {Object} Finding
 * @property {"open" | "alike" | "hindrance"} kind `hindrance`: nothing is planned from the survey before it is put right
 * @property {string} words
 * @typedef {ReadonlyMap<string, Finding[]>} Findings by the key of the opening; "" for the survey as a whole
 *
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Survey} Survey
 * @typedef {import("./model.js").OpeningRow} OpeningRow
 */
import { listed } from "../core/message.js";
import { findings as message } from "../messages/survey.js";
import { Misfit, take } from "./check.js";
import { fileOf } from "./file.js";
import { openIn, openingFields } from "./model.js";
import { openingName } from "./naming.js";

/** So many open questions are told by their names. */
const FEW = 3;

/** What the form itself finds. @param {Field[]} fields @param {Survey} survey @returns {Findings} */
export function findingsOf(fields, survey) {
  const inner = openingFields(fields);
  const twins = alike(survey.openings);
  /** @type {Map<string, Finding[]>} */
  const found = new Map([["", []]]);
  for (const row of survey.openings) {
    found.set(row.key, [{ kind: "open", words: openNames(inner, row) }]);
    if (twins.has(row.key)) found.get(row.key)?.push({ kind: "alike", words: message.alike() });
  }
  for (const { about, words } of hindrances(fields, survey)) found.get(about)?.push({ kind: "hindrance", words });
  return found;
}

/** The findings of a kind, each with what it is about. @param {Findings} findings @param {Finding["kind"]} kind */
export const ofKind = (findings, kind) =>
  [...findings].flatMap(([about, all]) =>
    all.filter((one) => one.kind === kind).map(({ words }) => ({ about, words })),
  );

/** How many questions an opening leaves open, and which, where they are few. @param {Field[]} fields @param {OpeningRow} row */
function openNames(fields, row) {
  const left = openIn(fields, row);
  const open = message.open({ questions: left.length });
  if (!left.length || left.length > FEW) return open;
  return message.questions({
    open,
    questions: listed(
      left.map(({ field }) => field.label.toLowerCase()),
      "unit",
    ),
  });
}

/** Openings that share place, side and kind, so that nobody could tell their zones apart. @param {OpeningRow[]} openings */
export function alike(openings) {
  const names = openings.map(({ data }) => data.spoken || [data.place, data.side, data.kind].join("|").toLowerCase());
  const counts = new Map();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return new Set(
    openings.filter(({ data }, index) => data.place && counts.get(names[index]) > 1).map(({ key }) => key),
  );
}

/**
 * What keeps a survey from being planned, each with the key of the opening that it is about.
 * @param {Field[]} fields @param {Survey} survey
 * @returns {{words: string, about: string}[]}
 */
function hindrances(fields, survey) {
  const file = fileOf(fields, survey);
  const inner = openingFields(fields);
  const item = /** @type {Field} */ ({ name: "opening", label: "", help: "", ask: "group", fields: inner });
  const faults = survey.openings.flatMap(({ key, data }, index) =>
    misfits(item, file.openings[index], openingName(inner, data, index), key),
  );
  if (!survey.openings.length) faults.push({ words: message.noOpening(), about: "" });
  const head = fields.map((field) =>
    field.name === "openings" ? { ...field, item: { ...item, fields: [] }, least: 0 } : field,
  );
  return [...faults, ...misfits({ ...item, fields: head }, file, "", ""), ...sameId(file.openings, survey.openings)];
}

/** @param {Field} field @param {any} value @param {string} way in words @param {string} about */
function misfits(field, value, way, about) {
  try {
    take(field, value, way, []);
    return [];
  } catch (error) {
    if (error instanceof Misfit) return [{ words: error.message, about }];
    throw error;
  }
}

/** @param {{id: string}[]} inFile @param {OpeningRow[]} openings */
function sameId(inFile, openings) {
  const seen = new Set();
  const all = inFile.map((one) => one.id);
  const twice = all.find((id) => seen.size === seen.add(id).size);
  return twice === undefined
    ? []
    : [{ words: message.sameId({ id: twice }), about: openings[all.lastIndexOf(twice)].key }];
}

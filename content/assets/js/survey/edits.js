/**
 * What was typed or chosen and is not stored yet, and the row that it makes. Pure.
 *
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Path} Path
 * @typedef {import("./model.js").Row} Row
 * @typedef {Object} Question where an answer goes
 * @property {string} survey its key
 * @property {string | null} opening its key; null: the site
 * @property {Field} field
 * @property {Path} path
 * @typedef {Object} Input
 * @property {string} [text] what stands in the box; none where an answer was chosen
 * @property {string} [unit] the unit beside the box
 * @property {any} [value] the answer that was chosen
 * @property {boolean} [isNoCode] somebody said that the text is no code
 * @property {"new" | "storing" | "stored" | "code" | "failed"} state `stored`: the reader is still in the box, which
 *   shows what was typed and not yet how it was read; `code`: it looks as if it held a code, and waits for a word
 * @property {string} [fault] why it could not be stored
 * @typedef {Question & Input} Edit
 * @typedef {ReadonlyMap<string, Edit>} Edits by the id of their question
 */
import { read } from "./check.js";
import { isNoCode, isSuspect, noted } from "./codes.js";
import { answered, at, wayOf, wayWithout } from "./model.js";

/** What tells a question from all others. @param {Pick<Question, "survey" | "opening" | "path">} question */
export const idOf = ({ survey, opening, path }) => `${survey} ${opening ?? ""} ${wayOf(path)}`;

/** @param {Edits} edits @param {Edit} edit @returns {Edits} */
export const withEdit = (edits, edit) => new Map(edits).set(idOf(edit), edit);

/** @param {Edits} edits @param {string} id @returns {Edits} */
export const withoutEdit = (edits, id) => new Map([...edits].filter(([one]) => one !== id));

/** What is not stored. @param {Edits} edits */
export const unstored = (edits) => [...edits.values()].filter((edit) => edit.state !== "stored");

/**
 * The edits once one is taken out of a list: those of later ones move up.
 * @param {Edits} edits @param {Pick<Question, "survey" | "opening" | "path">} list @param {number} index
 * @returns {Edits}
 */
export function withoutItem(edits, list, index) {
  const left = [...edits.values()].flatMap((edit) => {
    if (edit.survey !== list.survey || edit.opening !== list.opening) return [edit];
    const way = wayWithout(wayOf(edit.path), list.path, index);
    if (way === null) return [];
    const place = way.split(".")[list.path.length];
    return way === wayOf(edit.path)
      ? [edit]
      : [{ ...edit, path: edit.path.map((part, depth) => (depth === list.path.length ? Number(place) : part)) }];
  });
  return new Map(left.map((edit) => [idOf(edit), edit]));
}

/** The answer of an edit, and what was typed where it does not read. @param {Edit} edit @returns {{value?: any, typed?: string}} */
function outcome({ field, text, unit, value }) {
  if (text === undefined) return { value };
  const result = read(field, text, unit);
  return { value: result.value, typed: result.fault === undefined ? undefined : text };
}

/** Whether an edit looks as if it held a code, and nobody said that it holds none. @param {Edit} edit @param {Row} row */
export function needsWord(edit, row) {
  const { value } = outcome(edit);
  const known = at(row.data, edit.path) === value && isNoCode(row.data, edit.path);
  return isSuspect(edit.field, value) && !edit.isNoCode && !known;
}

/** The row with an edit in it. @template {Row} R @param {R} row @param {Edit} edit @returns {R} */
export function applied(row, edit) {
  const { field, path } = edit;
  const { value, typed } = outcome(edit);
  const made = answered(row, path, value, typed);
  if (field.ask !== "text") return made;
  return { ...made, data: noted(made.data, path, Boolean(edit.isNoCode) && isSuspect(field, value)) };
}

/**
 * The survey as it will stand once everything is stored; what looks like a code is left out.
 * @param {import("./model.js").Survey} whole @param {Edits} edits
 * @returns {import("./model.js").Survey}
 */
export function withEdits(whole, edits) {
  const key = whole.survey.key;
  const open = unstored(edits).filter((edit) => edit.survey === key && edit.state !== "code");
  /** @template {Row} R @param {R} row @param {string | null} opening @returns {R} */
  const changed = (row, opening) => open.filter((edit) => edit.opening === opening).reduce(applied, row);
  return {
    ...whole,
    survey: changed(whole.survey, null),
    openings: whole.openings.map((row) => changed(row, row.key)),
  };
}

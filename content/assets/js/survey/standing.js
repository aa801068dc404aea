/** How a question stands: what its control shows, whether it is open, and what is wrong. Pure. */
import { standing as message } from "../messages/survey.js";
import { box, finding, read } from "./check.js";
import { isNoCode, isSuspect } from "./codes.js";
import { idOf } from "./edits.js";
import { at, wayOf } from "./model.js";
import { shown } from "./naming.js";

/**
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Path} Path
 * @typedef {Object} Form what the questions of a row are shown from
 * @property {string} survey its key
 * @property {string | null} opening its key; null: the site
 * @property {import("./model.js").Row} row
 * @property {import("./edits.js").Edits} edits
 * @property {Readonly<Record<string, string>>} units units chosen beside boxes, by the id of the question
 * @property {boolean} imperial
 *
 * @typedef {Object} Standing
 * @property {any} value the answer that is stored
 * @property {any} chosen the answer that the control shows, stored or not
 * @property {string} text what stands in the box
 * @property {string} unit beside the box
 * @property {string} mark that the question is open; empty where it is answered or need not be
 * @property {string} fault
 * @property {string} suspect the text that looks as if it held a code, where somebody has to say whether it does
 */

/** @param {Form} form @param {Field} field @param {Path} path @returns {Standing} */
export function standingOf(form, field, path) {
  const { survey, opening, row } = form;
  const way = wayOf(path);
  const id = idOf({ survey, opening, path });
  const edit = form.edits.get(id);
  const value = at(row.data, path);
  const typed = Object.hasOwn(row.typed, way) ? row.typed[way] : undefined;
  const open = value === undefined || typed !== undefined;
  const inBox = boxOf(form, field, value, form.units[id]);
  const unit = edit?.unit ?? inBox.unit;
  return {
    value,
    chosen: edit && edit.text === undefined ? edit.value : value,
    text: edit ? (edit.text ?? "") : (typed ?? inBox.text),
    unit,
    mark: open && !field.extra ? markOf(field) : "",
    ...wrong(form, field, path, { edit, value, typed, unit }),
  };
}

/** @param {Field} field that is not answered */
const markOf = ({ required }) => (required ? message.needed() : message.open());

/** What a stored answer is in the box, and the unit beside it. @param {Form} form @param {Field} field @param {any} value @param {string | undefined} picked */
function boxOf({ imperial }, field, value, picked) {
  const { units = [], choices = [] } = field;
  const usual = picked ?? units[imperial ? Math.ceil(units.length / 2) : 0] ?? "";
  if (field.ask === "length") return box(field, value, usual);
  const word = choices.some(([one]) => one === value);
  return { text: value === undefined || word ? "" : String(value), unit: usual };
}

/**
 * @param {Form} form @param {Field} field @param {Path} path
 * @param {{edit: import("./edits.js").Edit | undefined, value: any, typed: string | undefined, unit: string}} state
 */
function wrong({ row }, field, path, { edit, value, typed, unit }) {
  if (edit?.state === "failed")
    return { fault: message.notStored({ answer: edit.text ?? shown(field, edit.value) }), suspect: "" };
  if (edit?.state === "code") return { fault: message.codeNotStored(), suspect: edit.text ?? "" };
  if (typed !== undefined) return { fault: read(field, typed, unit).fault ?? "", suspect: "" };
  const fault = value === undefined ? "" : finding(field, value);
  if (fault || !isSuspect(field, value) || isNoCode(row.data, path)) return { fault, suspect: "" };
  return { fault: message.codeKeptOut(), suspect: value };
}

/** A part of the form: its questions under a name, some parts folded away. */
import { partView as message } from "../messages/survey.js";
import { html } from "../vendor/lit-html.js";
import { foldKey } from "./form-acts.js";
import { at, concerns, unanswered } from "./model.js";
import { question } from "./question-view.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./layout.js").Part} Part
 * @typedef {import("./model.js").Row} Row
 * @typedef {import("./form-acts.js").FormActs} FormActs
 */

/**
 * The parts of the form for a row.
 * @param {State} state @param {Part[]} parts @param {Row} row @param {FormActs} acts
 */
export function partsView(state, parts, row, acts) {
  const { key, opening, edits, units, survey } = state;
  const imperial = survey?.survey.data.units === "imperial";
  const form = { survey: key, opening: opening || null, row, edits, units, imperial };
  const reach = (/** @type {Event} */ event) => {
    const way = /** @type {HTMLElement} */ (event.target).closest("[data-way]")?.getAttribute("data-way");
    if (way) acts.reach(way);
  };
  return html`<div @focusin=${reach}>${parts.map((part) => partView(state, form, part, acts))}</div>`;
}

/** @param {State} state @param {import("./standing.js").Form} form @param {Part} part @param {FormActs} acts */
function partView({ folds, opening }, form, { name, fields, path, folded }, acts) {
  const { row } = form;
  const asked = fields.filter((field) => concerns(field, row.data));
  const told = fields.filter((field) => at(row.data, [...path, field.name]) !== undefined).length;
  const questions = () => asked.map((field) => question(form, acts, field, [...path, field.name]));
  if (!folded) return html`<section class="ls-part"><h3>${name}</h3>${questions()}</section>`;
  const extra = fields.every((field) => field.extra);
  // What need not be told is shown where it was told; what was folded or unfolded by hand stays so.
  const open = folds[foldKey(opening, name)] ?? (extra && Boolean(opening) && told > 0);
  const left = extra
    ? message.answers({ answers: told })
    : message.open({ questions: unanswered(fields, row, path).length });
  const turn = (/** @type {Event} */ event) => acts.fold(name, /** @type {HTMLDetailsElement} */ (event.target).open);
  return html`
    <details class="ls-part" ?open=${open} @toggle=${turn}>
      <summary><strong>${name}</strong> <span>${left}</span></summary>
      ${questions()}
    </details>
  `;
}

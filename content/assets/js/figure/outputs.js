/** What a figure gives, as a template; `latchside.pages.figure_outputs` writes the same in the worked examples. */
import { outputs as message } from "../messages/figure.js";
import { html, nothing } from "../vendor/lit-html.js";
import { inOther, inParts, shown } from "./number.js";

/**
 * @typedef {import("./figures.js").Output} Output
 * @typedef {import("./figures.js").Value} Value
 * @typedef {import("../core/parts.js").Part | string} Piece
 * @typedef {Piece | Piece[]} Shown
 */

/** An output. @param {Output} one @param {Value} value @returns {Shown} */
export function output(one, value) {
  if (value === null) return one.empty ?? message.none();
  if (typeof value === "boolean") return value ? message.yes() : message.no();
  if (typeof value === "string") return one.words[value] ?? value;
  if (typeof value === "number") return number(one, value);
  if (one.columns.length) return rows(one, value);
  return several(one, Object.values(value));
}

/** A number in both systems of units, the reader's alone in view. @param {Output} one @param {number} value */
function number({ sign, others }, value) {
  const own = figure(value, sign);
  if (!others.length) return own;
  const other = figure(inOther(value, others), others[0] ?? "");
  return html`<span class="ls-both"><span class="ls-sys" data-of="metric">${own}</span><span class="ls-or"> (</span><span class="ls-sys" data-of="imperial">${other}</span><span class="ls-or">)</span></span>`;
}

/** @param {number} value @param {string} sign */
function figure(value, sign) {
  const [digits, unit] = inParts(value, sign);
  return html`<b>${digits}</b>${unit}`;
}

/** @param {Output} one @param {Value[]} values @returns {Piece | Piece[]} */
function several(one, values) {
  if (!values.length) return message.none();
  const within = Array.isArray(values[0]) ? "; " : ", ";
  return values.flatMap((value, at) => /** @type {Piece[]} */ ([at ? within : "", output(one, value)].flat()));
}

/** The name of a column, with its unit where both systems have the same. @param {Output} column */
const head = ({ label, sign, others }) => (sign && !others.length ? `${label} ${sign}` : label);

/** @param {Output} column @param {Value} value */
const cell = (column, value) =>
  typeof value === "number" && !column.others.length ? html`<b>${shown(value)}</b>` : output(column, value);

/**
 * Rows of figures; they have names where they are given by name.
 * @param {Output} one @param {Exclude<Value, null | string | number | boolean>} value
 */
function rows(one, value) {
  const named = !Array.isArray(value);
  const pairs = Object.entries(value);
  if (!pairs.length) return message.none();
  const row = (/** @type {[string, Value]} */ [name, given]) => {
    const cells = /** @type {Record<string, Value>} */ (given);
    const first = named ? html`<th scope="row">${one.words[name] ?? name}</th>` : nothing;
    return html`<tr>${first}${one.columns.map((column) => html`<td>${cell(column, cells[column.name])}</td>`)}</tr>`;
  };
  const corner = named ? html`<td></td>` : nothing;
  return html`<div class="ls-table" role="region" aria-label=${one.label} tabindex="0"><table class="ls-out-rows">
    <thead><tr>${corner}${one.columns.map((column) => html`<th scope="col">${head(column)}</th>`)}</tr></thead>
    <tbody>${pairs.map(row)}</tbody>
  </table></div>`;
}

/** The controls of the form: a box, a box with units or words beside it, buttons to press, a list that opens. */
import { controlView as message } from "../messages/survey.js";
import { html, nothing } from "../vendor/lit-html.js";

/**
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("../core/parts.js").Part} Part
 * @typedef {Object} Asked a question as its control shows it
 * @property {Field} field
 * @property {import("./model.js").Path} path
 * @property {string} id of the control
 * @property {import("./standing.js").Standing} standing
 * @property {import("./form-acts.js").FormActs} acts
 */

/** A choice of more words than this is a list that opens. */
const FEW = 7;

/** Whether a question has one control, which its name labels. @param {Field} field */
export const isSingle = ({ ask, choices = [] }) => (ask === "choice" ? choices.length > FEW : ask !== "answer");

/** @param {Asked} asked */
export function control(asked) {
  const { ask, choices = [] } = asked.field;
  if (ask === "choice" && choices.length > FEW) return list(asked);
  if (ask === "answer" || ask === "choice") return picks(asked, true);
  if (ask === "length") return withUnits(asked);
  if (choices.length) return html`<div class="ls-q-typed">${typing(asked)}${picks(asked, false)}</div>`;
  const { unit } = asked.field;
  if (!unit) return typing(asked);
  return html`<div class="ls-q-typed">${typing(asked)}<span class="ls-unit">${unit}</span>${minus(asked)}</div>`;
}

/** A button of an answer. @param {string} words @param {boolean} pressed @param {() => unknown} press @param {string} [kind] */
export const pick = (words, pressed, press, kind = "") => html`
  <button type="button" class="ls-button ls-pick ${kind}" aria-pressed=${String(pressed)} @click=${press}>${words}</button>
`;

/** A choice of many. @param {Asked} asked */
function list({ field, path, id, standing, acts }) {
  const take = (/** @type {Event} */ event) =>
    acts.choose(field, path, /** @type {HTMLSelectElement} */ (event.target).value || undefined);
  const options = /** @type {[string, string][]} */ ([["", message.choose()], ...(field.choices ?? [])]).map(
    ([word, words]) => html`<option value=${word} .selected=${word === (standing.chosen ?? "")}>${words}</option>`,
  );
  return html`
    <select id=${id} aria-describedby="${id}-help ${id}-said" aria-required=${field.required ? "true" : nothing}
      aria-invalid=${standing.fault ? "true" : nothing} @change=${take}>${options}</select>
  `;
}

/**
 * Words to press; a second press lets the answer go. What shows as pressed is stored.
 * @param {Asked} asked @param {boolean} alone whether they are all that there is to answer with
 */
function picks({ field, path, id, standing, acts }, alone) {
  const made = (field.choices ?? []).map(([word, words]) =>
    pick(words, word === standing.value, () => acts.choose(field, path, word === standing.value ? undefined : word)),
  );
  const kind = field.ask === "answer" ? "ls-picks ls-three" : "ls-picks";
  if (!alone) return html`<div class=${kind} role="group" aria-label=${field.label}>${made}</div>`;
  return html`
    <div class=${kind} role="group" aria-labelledby="${id}-name" aria-describedby="${id}-help ${id}-said">${made}</div>
  `;
}

/** A box to type into. @param {Asked} asked */
function typing(asked) {
  const { field, path, id, standing, acts } = asked;
  const type = (/** @type {Event} */ event) => {
    const box = /** @type {HTMLInputElement} */ (event.target);
    if (!box.validity.badInput) acts.type(field, path, box.value, standing.unit); // a day that is half typed says nothing yet
  };
  const settle = () => acts.settle(field, path);
  const key = (/** @type {KeyboardEvent} */ event) => event.key === "Enter" && settle();
  const enter = () => acts.enter(field, path);
  const leave = () => acts.leave(field, path);
  const about = `${id}-help ${id}-said`;
  const needed = field.required ? "true" : nothing;
  const bad = standing.fault ? "true" : nothing;
  if (field.area) {
    return html`
      <textarea id=${id} rows="3" autocomplete="off" aria-describedby=${about} aria-required=${needed}
        aria-invalid=${bad} .value=${standing.text}
        @input=${type} @change=${settle} @focus=${enter} @blur=${leave}></textarea>
    `;
  }
  return html`
    <input id=${id} type=${field.ask === "day" ? "date" : "text"} inputmode=${pad(asked)} enterkeyhint="done"
      autocomplete="off" autocapitalize=${field.pattern ? "none" : nothing} spellcheck=${field.pattern ? "false" : nothing}
      aria-describedby=${about} aria-required=${needed} aria-invalid=${bad} .value=${standing.text}
      @input=${type} @change=${settle} @keydown=${key} @focus=${enter} @blur=${leave}>
  `;
}

/** The keys that a phone offers. @param {Asked} asked */
function pad({ field, standing }) {
  if (field.ask === "length") return standing.unit === "in" || standing.unit === "ft" ? "text" : "decimal"; // 3/16 needs its stroke
  if (field.ask === "number") return field.whole ? "numeric" : "decimal";
  return nothing;
}

/** A length, with its units beside it. @param {Asked} asked */
function withUnits(asked) {
  const { field, path, standing, acts } = asked;
  const made = (field.units ?? []).map((unit) =>
    pick(unit, unit === standing.unit, () => acts.pickUnit(field, path, unit, standing.text), "ls-unit"),
  );
  return html`<div class="ls-q-typed">${typing(asked)}${made}${minus(asked)}</div>`;
}

/** A button for the sign, where a number pad has none. @param {Asked} asked */
function minus({ field, path, id, standing, acts }) {
  const { signed, min, above } = field;
  if (!signed && (min ?? above ?? 0) >= 0) return nothing;
  const turn = () => {
    const text = standing.text.trim();
    acts.type(field, path, /^[-\u2212\u2013]/.test(text) ? text.slice(1) : `-${text}`, standing.unit);
    document.getElementById(id)?.focus();
  };
  return html`<button type="button" class="ls-button ls-quiet" @click=${turn}>${message.minus()}</button>`;
}

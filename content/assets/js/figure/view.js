/** What a calculator shows, as a function of its state: the fields, the result beside them, and what it means. */
import { view as message } from "../messages/figure.js";
import { html, nothing } from "../vendor/lit-html.js";
import { answer } from "./answer.js";
import { shown } from "./number.js";
import { output } from "./outputs.js";
import { gather, inView, pairs, query } from "./state.js";
import { acceptedBy, signOf } from "./typed.js";

/**
 * @typedef {import("./figures.js").Input} Input
 * @typedef {import("./figures.js").Output} Output
 * @typedef {import("./figures.js").Names} Names
 * @typedef {import("./state.js").State} State
 * @typedef {import("./state.js").Errors} Errors
 *
 * @typedef {Object} Acts
 * @property {(name: string, text: string) => unknown} type
 * @property {(one: Input) => unknown} turn change the system of units of a field
 * @property {(group: Input[], one: Input) => unknown} ask ask for another of the inputs that stand for each other
 * @property {(open: boolean) => unknown} more
 * @property {(name: string) => unknown} at go into a field
 */

const LENGTHS = ["mm", "cm", "m"];
/** Signs that the field of a list is wide. */
const LIST = 22;
/** The most letters of a choice beside its name. */
const SHORT = 16;

/** @param {State} state @param {Acts} acts */
export function view(state, acts) {
  const { given, errors } = gather(state);
  const { inputs } = state.figure;
  const row = (/** @type {Input} */ one) => (inView(state, one) ? asking(state, one, errors[one.name], acts) : nothing);
  return html`
    <div class="ls-askings">
      ${inputs.filter((one) => !one.more).map(row)}
      ${more(state, errors, row, acts)}
    </div>
    ${result(state, given, errors)}
  `;
}

/**
 * The inputs that are rarely changed.
 * @param {State} state @param {Errors} errors @param {(one: Input) => unknown} row @param {Acts} acts
 */
function more({ figure, more: open }, errors, row, acts) {
  const rare = figure.inputs.filter((one) => one.more);
  if (!rare.length) return nothing;
  const wrong = rare.some((one) => errors[one.name]);
  const toggled = (/** @type {Event} */ { target }) => acts.more(/** @type {HTMLDetailsElement} */ (target).open);
  const names = rare.map((one) => one.label).join(" · ");
  return html`
    <details class="ls-more ls-rare" ?open=${open || wrong} @toggle=${toggled}>
      <summary><span>${message.more()} <small>${names}</small></span></summary>
      ${rare.map(row)}
    </details>
  `;
}

/** One input. @param {State} state @param {Input} one @param {string | undefined} error @param {Acts} acts */
function asking(state, one, error, acts) {
  const id = `in-${one.name}`;
  const accepts = acceptedBy(one, state.other.has(one.name));
  const range = `${accepts[0].toUpperCase()}${accepts.slice(1)}`;
  const numeric = !one.choices.length && !one.yesNo;
  const wide = one.many || one.choices.some(([, words]) => words.length > SHORT);
  const kinds = [wide && "ls-asking-wide", state.at === one.name && "ls-at", !numeric && "ls-told"].filter(Boolean);
  return html`
    <div class="ls-asking ${kinds.join(" ")}" data-input=${one.name}>
      <label for=${id}>${one.label}${one.optional && numeric ? html` <span>${message.mayBeEmpty()}</span>` : nothing}</label>
      ${control(state, one, id, error, acts)}
      <div class="ls-asking-more">
        ${switches(state, one, acts)}
        ${one.help ? html`<small id="help-${one.name}">${one.help}</small>` : nothing}
        ${numeric ? html`<small class="ls-range" id="range-${one.name}">${range}</small>` : nothing}
        <p class="ls-error" id="error-${one.name}" ?hidden=${!error}>${error ?? ""}</p>
      </div>
    </div>
  `;
}

/** @param {State} state @param {Input} one @param {string} id @param {string | undefined} error @param {Acts} acts */
function control(state, one, id, error, acts) {
  if (one.choices.length) return choice(state, one, id, acts);
  return one.yesNo ? tick(state, one, id, acts) : field(state, one, id, error, acts);
}

/** @param {State} state @param {Input} one @param {string} id @param {Acts} acts */
function choice({ typed }, one, id, acts) {
  const take = (/** @type {Event} */ { target }) =>
    acts.type(one.name, /** @type {HTMLSelectElement} */ (target).value);
  /** @type {[string, string][]} */
  const usual = one.optional ? [["", message.usual()]] : [];
  const options = [...usual, ...one.choices].map(
    ([word, words]) => html`<option value=${word} .selected=${word === typed[one.name]}>${words}</option>`,
  );
  const help = one.help ? `help-${one.name}` : nothing;
  return html`<select id=${id} name=${one.name} aria-describedby=${help} @change=${take}>${options}</select>`;
}

/** @param {State} state @param {Input} one @param {string} id @param {Acts} acts */
function tick({ typed }, one, id, acts) {
  const take = (/** @type {Event} */ { target }) =>
    acts.type(one.name, String(/** @type {HTMLInputElement} */ (target).checked));
  return html`<input type="checkbox" id=${id} name=${one.name} .checked=${typed[one.name] === "true"} @change=${take}>`;
}

/** A number with its unit. @param {State} state @param {Input} one @param {string} id @param {string | undefined} error @param {Acts} acts */
function field({ typed, other }, one, id, error, acts) {
  const imperial = other.has(one.name);
  const take = (/** @type {Event} */ { target }) => acts.type(one.name, /** @type {HTMLInputElement} */ (target).value);
  const told = [...(one.help ? ["help"] : []), "range", "error"].map((part) => `${part}-${one.name}`).join(" ");
  // feet, inches and fractions need more than the keys of a number
  const keys = one.many || (imperial && LENGTHS.includes(one.unit)) ? "text" : "decimal";
  return html`
    <span class="ls-typed">
      <input id=${id} name=${one.name} type="text" inputmode=${keys} size=${width(one)} autocomplete="off"
        autocapitalize="off" spellcheck="false" enterkeyhint="done" aria-describedby=${told}
        aria-invalid=${error ? "true" : "false"} .value=${typed[one.name]} @input=${take} @focus=${() => acts.at(one.name)}>
      ${unit(one, imperial, acts)}
    </span>
  `;
}

/** As wide as its number. @param {Input} one */
const width = (one) => (one.many ? LIST : Math.min(9, Math.max(6, shown(one.high ?? 0).length)));

/** @param {Input} one @param {boolean} imperial @param {Acts} acts */
function unit(one, imperial, acts) {
  const sign = signOf(one, imperial);
  if (!one.others.length) return html`<span class="ls-unit">${sign}</span>`;
  const name = message.unit({ input: one.label, unit: sign, other: signOf(one, !imperial) });
  return html`<button type="button" class="ls-unit" aria-label=${name} @click=${() => acts.turn(one)}>${sign}</button>`;
}

/** What else may be given in the place of an input. @param {State} state @param {Input} one @param {Acts} acts */
function switches(state, one, acts) {
  const group = pairs(state.figure).find((inputs) => inputs.includes(one)) ?? [];
  const others = group.filter((input) => input !== one && !inView(state, input));
  return others.map(
    (input) =>
      html`<button type="button" class="ls-instead" @click=${() => acts.ask(group, input)}>${message.instead({ input: input.label })}</button>`,
  );
}

/** The result and what it means; where something is wrong, what. @param {State} state @param {Names} given @param {Errors} errors */
function result({ figure }, given, errors) {
  const wrong = figure.inputs.filter((one) => errors[one.name]);
  if (wrong.length) {
    const lines = wrong.map((one) => html`<li>${message.wrong({ input: one.label, error: errors[one.name] })}</li>`);
    return html`<div class="ls-answer"><div role="status"><p>${message.notYet()}</p><ul>${lines}</ul></div></div>`;
  }
  const { outputs, warnings, refusals, judgement } = answer(figure, given);
  if (refusals.length) {
    return html`<div class="ls-answer"><div role="status">${refusals.map((words) => html`<p class="ls-error">${words}</p>`)}</div></div>`;
  }
  const main = figure.outputs.find((one) => one.main) ?? figure.outputs[0];
  const term = (/** @type {Output} */ one) =>
    html`<div><dt>${one.label}</dt><dd>${output(one, outputs[one.name])}</dd></div>`;
  const rest = figure.outputs.filter((one) => one !== main);
  return html`
    <div class="ls-answer">
      <div role="status" aria-atomic="true">
        <dl class="ls-out ls-out-main">${term(main)}</dl>
        ${judgement ? html`<p class="ls-judged">${judgement}</p>` : nothing}
        ${warnings.map((words) => html`<p class="ls-note">${words}</p>`)}
      </div>
      ${rest.length ? html`<dl class="ls-out">${rest.map(term)}</dl>` : nothing}
      <p><a class="ls-carry" href="?${query(figure, given)}#calculator">${message.link()}</a></p>
    </div>
  `;
}

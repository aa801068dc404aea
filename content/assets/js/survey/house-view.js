/** The firm's own figures, in the list of surveys: they hold for all of them. */
import { button, labelled, quiet, tools } from "../core/parts.js";
import { houseView as message } from "../messages/survey.js";
import { html, nothing } from "../vendor/lit-html.js";
import { faultOf, own, short } from "./house.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./house.js").Rule} Rule
 * @typedef {import("./house-acts.js").HouseActs} HouseActs
 */

/** @param {State} state @param {HouseActs} acts */
export function houseView({ rules, house, houseSaid }, acts) {
  const figures = own(rules, house).length;
  return html`
    <details class="ls-part ls-house">
      <summary><strong>${message.house()}</strong> <span>${message.own({ figures })}</span></summary>
      <p>${message.help()}</p>
      ${[...new Set(rules.map(({ about }) => about))].map((about) => {
        const these = rules.filter((rule) => rule.about === about);
        return groupView(about, these, house, acts);
      })}
      ${bringView(acts)}
      <p role="status">${houseSaid}</p>
      ${figures ? tools(button(message.save(), () => acts.save())) : nothing}
      ${figures ? clearView(acts) : nothing}
    </details>
  `;
}

/** All figures of the firm go: asked twice, for nothing brings them back. @param {HouseActs} acts */
const clearView = (acts) => html`
  <details class="ls-part">
    <summary>${message.clear()}</summary>
    <p>${message.clearing()}</p>
    ${tools(quiet(message.clearAll(), () => acts.take({}, message.cleared())))}
  </details>
`;

/** Rules of one sort. @param {string} about @param {Rule[]} rules @param {import("./house.js").Typed} house @param {HouseActs} acts */
const groupView = (about, rules, house, acts) => html`
  <details class="ls-part">
    <summary><strong>${about}</strong> <span>${message.own({ figures: own(rules, house).length })}</span></summary>
    ${rules.map((rule) => ruleView(rule, house[rule.name] ?? "", acts))}
  </details>
`;

/** @param {Rule} rule @param {string} text @param {HouseActs} acts */
function ruleView(rule, text, acts) {
  const { name, label, sign, value } = rule;
  const fault = faultOf(rule, text);
  const id = `ls-house-${name}`;
  const type = (/** @type {Event} */ event) => acts.type(name, /** @type {HTMLInputElement} */ (event.target).value);
  return html`
    <div class="ls-q ${fault ? "ls-wrong" : ""}">
      <label class="ls-q-name" for=${id}>${label}</label>
      <small id="${id}-help">${message.library({ value: short(value), unit: sign })}</small>
      <div class="ls-q-typed">
        <input id=${id} type="text" inputmode="decimal" autocomplete="off" aria-describedby="${id}-help ${id}-said"
          aria-invalid=${fault ? "true" : nothing} .value=${text} @input=${type}><span class="ls-unit">${sign}</span>
      </div>
      <div class="ls-q-said" id="${id}-said" aria-live="polite">${fault ? html`<p class="ls-warn">${fault}</p>` : nothing}</div>
    </div>
  `;
}

/** @param {HouseActs} acts */
function bringView(acts) {
  const take = (/** @type {Event} */ event) => {
    const input = /** @type {HTMLInputElement} */ (event.target);
    const [file] = input.files ?? [];
    if (file) acts.bring(file);
    input.value = "";
  };
  const choose = html`<input type="file" id="ls-house-file" accept=".json,application/json" aria-describedby="ls-house-file-help" @change=${take}>`;
  return labelled("ls-house-file", message.bring(), choose, message.bringHelp());
}

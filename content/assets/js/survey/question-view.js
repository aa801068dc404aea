/** Questions of the form: one with a control, and those that hold others: a group, a list, several words. */
import { button } from "../core/parts.js";
import { questionView as message } from "../messages/survey.js";
import { html, nothing } from "../vendor/lit-html.js";
import { control, isSingle, pick } from "./control-view.js";
import { at, wayOf } from "./model.js";
import { standingOf } from "./standing.js";

/**
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Path} Path
 * @typedef {import("./standing.js").Form} Form
 * @typedef {import("./form-acts.js").FormActs} FormActs
 * @typedef {import("../core/parts.js").Part} Part
 */

/** A field as a question. @param {Form} form @param {FormActs} acts @param {Field} field @param {Path} path @returns {Part} */
export function question(form, acts, field, path) {
  if (field.ask === "group") return group(form, acts, field, path);
  if (field.ask !== "list") return single(form, acts, field, path);
  return field.once && field.item?.ask === "choice" ? several(form, acts, field, path) : list(form, acts, field, path);
}

/** @param {Form} form @param {FormActs} acts @param {Field} field @param {Path} path */
function single(form, acts, field, path) {
  const standing = standingOf(form, field, path);
  const way = wayOf(path);
  const id = `ls-q-${way.replaceAll(".", "-")}`;
  const mark = html`<span class="ls-q-open">${standing.mark}</span>`;
  const name = isSingle(field)
    ? html`<label class="ls-q-name" id="${id}-name" for=${id}>${field.label} ${mark}</label>`
    : html`<p class="ls-q-name" id="${id}-name">${field.label} ${mark}</p>`;
  const { fault, suspect } = standing;
  const word = suspect ? button(message.noCode(), () => acts.isNoCode(field, path, suspect)) : nothing;
  return html`
    <div class="ls-q ${fault ? "ls-wrong" : ""}" data-way=${way}>
      ${name}
      <small id="${id}-help">${field.help}</small>
      ${control({ field, path, id, standing, acts })}
      <div class="ls-q-said" id="${id}-said" aria-live="polite">${fault ? html`<p class="ls-warn">${fault}</p>` : nothing}${word}</div>
    </div>
  `;
}

/** Fields that stand together. @param {Form} form @param {FormActs} acts @param {Field} field @param {Path} path */
const group = (form, acts, field, path) => html`
  <fieldset class="ls-q ls-q-group">
    <legend class="ls-q-name">${field.label}</legend>
    <small>${field.help}</small>
    ${(field.fields ?? []).map((one) => question(form, acts, one, [...path, one.name]))}
  </fieldset>
`;

/** A question that is answered by several, or by none. @param {Form} form @param {Field} field @param {Path} path @param {Part | Part[]} items @param {Part | Part[]} picks */
function many(form, field, path, items, picks) {
  const open = at(form.row.data, path) === undefined && !field.extra;
  return html`
    <fieldset class="ls-q ls-q-group" data-way=${wayOf(path)}>
      <legend class="ls-q-name">${field.label} <span class="ls-q-open">${open ? message.open() : nothing}</span></legend>
      <small>${field.help}</small>
      ${items}
      <div class="ls-picks">${picks}</div>
    </fieldset>
  `;
}

/** Several of a kind, added one by one; none of them is an answer too. @param {Form} form @param {FormActs} acts @param {Field} field @param {Path} path */
function list(form, acts, field, path) {
  const told = at(form.row.data, path);
  const size = Array.isArray(told) ? told.length : 0;
  const items = Array.from({ length: size }, (_, index) => {
    const label = message.numbered({ field: field.label, number: index + 1 });
    const item = /** @type {Field} */ ({ ...field.item, label });
    return html`
      <div class="ls-one-of">
        ${question(form, acts, item, [...path, index])}
        ${button(message.takeOut({ number: index + 1 }), () => acts.takeOut(path, index), "ls-quiet")}
      </div>
    `;
  });
  const none = size ? nothing : pick(message.none(), Array.isArray(told), () => acts.none(path));
  const more =
    size < (field.most ?? Infinity) ? button(message.add(), () => acts.add(field, path), "ls-pick") : nothing;
  return many(form, field, path, html`<div data-list=${wayOf(path)}>${items}</div>`, [none, more]);
}

/** Some words of a few, each pressed or not; none of them is an answer too. @param {Form} form @param {FormActs} acts @param {Field} field @param {Path} path */
function several(form, acts, field, path) {
  const told = at(form.row.data, path);
  const words = (field.item?.choices ?? []).map(([word, words]) =>
    pick(words, Boolean(told?.includes(word)), () => acts.press(field, path, word)),
  );
  const none = pick(message.none(), told?.length === 0, () => acts.none(path));
  return many(form, field, path, nothing, [...words, none]);
}

/** Texts that look as if they held a code, and which of them somebody said to be none. Pure. */
import { looksLikeCode } from "../core/words.js";
import { at } from "./model.js";

/** @typedef {import("./check.js").Field} Field @typedef {import("./model.js").Path} Path */

/** The name of a field in `no_codes`. @param {Path} path */
const nameOf = (path) => path.filter((part) => typeof part === "string").join(".");

/** Whether an answer looks as if it held a code. @param {Field} field @param {any} value */
export const isSuspect = (field, value) =>
  field.ask === "text" && !field.pattern && typeof value === "string" && looksLikeCode(value);

/** Whether the text of a field was said to be no code. @param {any} data of the survey, or of the opening @param {Path} path */
export const isNoCode = (data, path) => Boolean(data.no_codes?.includes(nameOf(path)));

/**
 * The answers with a note that the text of a field is no code; the note goes once no text of it looks like one.
 * @param {any} data @param {Path} path @param {boolean} none
 */
export function noted(data, path, none) {
  const name = nameOf(path);
  const texts = [
    at(
      data,
      path.filter((part) => typeof part === "string"),
    ),
  ].flat();
  const suspect = texts.some((text) => typeof text === "string" && looksLikeCode(text));
  const stays = none || (isNoCode(data, path) && suspect);
  const { no_codes: names = [], ...others } = data;
  const left = names.filter((/** @type {string} */ one) => one !== name);
  if (stays) return { ...others, no_codes: [...left, name] };
  return left.length ? { ...others, no_codes: left } : others;
}

/**
 * Texts that look as if they held a code and were not said to be none, by the name of their field.
 * @param {Field[]} fields @param {any} data @param {Path} [path] @param {any} [owner] where it is said
 * @returns {string[]}
 */
export function codes(fields, data, path = [], owner = data) {
  return fields.flatMap((field) => {
    const value = data?.[field.name];
    const here = [...path, field.name];
    if (value === undefined || field.kept) return [];
    if (field.ask === "group") return codes(field.fields ?? [], value, here, owner);
    if (field.ask === "list") return value.flatMap((/** @type {any} */ one) => codesOfItem(field, one, path, owner));
    return isSuspect(field, value) && !isNoCode(owner, here) ? [field.label] : [];
  });
}

/** @param {Field} list @param {any} value of one of its items @param {Path} path @param {any} owner @returns {string[]} */
function codesOfItem({ name, label, item }, value, path, owner) {
  if (item?.fields) return codes(item.fields, value);
  return codes([/** @type {Field} */ ({ ...item, name, label })], { [name]: value }, path, owner);
}

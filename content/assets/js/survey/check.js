/**
 * Does an answer fit its field, and does a file fit the form? Pure: no page, no store. The fields come from the
 * description in the page, which is made from schema/job.schema.json; a test holds this check and that schema to the
 * same answers.
 *
 * @typedef {Object} Field one field of the form
 * @property {string} name
 * @property {string} label
 * @property {string} help
 * @property {"answer" | "choice" | "number" | "length" | "text" | "day" | "list" | "group" | "fixed"} ask
 * @property {string} [or] the field that says the same in another way
 * @property {boolean} [required] @property {boolean} [extra] @property {boolean} [kept] never asked: the form fills it in
 * @property {string} [part] @property {string[]} [kinds]
 * @property {[string, string][]} [choices] word and what a reader sees
 * @property {string} [unit] @property {string[]} [units] @property {number} [far] the longest that can be meant, in the first unit
 * @property {boolean} [signed] @property {boolean} [whole]
 * @property {number} [min] @property {number} [max] @property {number} [above] @property {number} [below]
 * @property {number} [low] @property {number} [high] @property {boolean} [area] @property {string} [pattern]
 * @property {Field} [item] @property {number} [least] @property {number} [most] @property {boolean} [once]
 * @property {Field[]} [fields] @property {any} [value]
 * @typedef {{value?: any, fault?: string}} Read
 */

import { length, millimetres, parts, twoWays } from "../core/lengths.js";
import { listed } from "../core/message.js";
import { clean } from "../core/words.js";
import { check as message } from "../messages/survey.js";
import { canonical, number } from "../visit/entries.js";

/** Whether a length is longer than can be meant. @param {Field} field @param {string} value */
function tooFar({ far = Infinity, units = [] }, value) {
  return (millimetres(value, "") ?? 0) > far * (millimetres("1", units[0]) ?? 1);
}

/** A stored length as the form shows it: what stands in the box, and the unit beside it. @param {Field} field @param {any} value @param {string} unit where it has none */
export function box(field, value, unit) {
  if (value === undefined) return { text: "", unit };
  if (typeof value === "number") return { text: String(value), unit };
  const found = parts(value, "");
  return found?.length === 1 && field.units?.includes(found[0][1])
    ? { text: found[0][0], unit: found[0][1] }
    : { text: String(value), unit };
}

/** From where to where, in words. @param {Field} field */
function range({ min, max, above, below }) {
  const ends = [
    min !== undefined && message.atLeast({ low: String(min) }),
    min === undefined && above !== undefined && message.moreThan({ low: String(above) }),
    max !== undefined && message.atMost({ high: String(max) }),
    max === undefined && below !== undefined && message.lessThan({ high: String(below) }),
  ];
  return listed(/** @type {string[]} */ (ends.filter(Boolean)), "unit").replace(/-/g, "\u2212");
}

/** @param {Field} field @param {string} text @returns {Read} */
function readNumber(field, text) {
  const odd = twoWays(text);
  if (odd) return { fault: odd };
  const value = number(text);
  if (value === null) return { fault: field.whole ? message.noDigits() : message.noNumber() };
  if (field.whole && !Number.isInteger(value)) return { fault: message.typeWhole() };
  return misfit(field, value) ? { fault: message.outOfRange({ range: range(field) }) } : { value };
}

/** @param {Field} field @param {string} text @param {string} unit @returns {Read} */
function readLength(field, text, unit) {
  const odd = twoWays(text);
  if (odd) return { fault: odd };
  const value = length(text, unit);
  if (value === null)
    return { fault: message.noLength({ units: ["in", "ft"].filter((unit) => field.units?.includes(unit)).join("-") }) };
  if (tooFar(field, value)) return { fault: message.tooFar({ far: `${field.far} ${field.units?.[0]}` }) };
  return !field.signed && value.startsWith("-") ? { fault: message.negative() } : { value };
}

/**
 * What was typed, as the file would hold it, or what is wrong with it and how it is put right; neither where it is empty.
 * @param {Field} field @param {string} typed @param {string} [unit] @returns {Read}
 */
export function read(field, typed, unit = "") {
  const text = clean(typed, Infinity);
  if (!text) return {};
  if (field.ask === "number") return readNumber(field, text);
  if (field.ask === "length") return readLength(field, text, unit);
  const over = [...text].length - (field.high ?? Infinity);
  if (over > 0) return { fault: message.tooLong({ over }) };
  if (Number.isNaN(over) || !misfit(field, text)) return { value: text };
  if (field.ask === "day") return { fault: message.noDay() };
  return { fault: field.pattern ? message.noId() : message.tooShort({ letters: field.low ?? 0 }) };
}

/** What is wrong with a stored answer beyond its schema, for the reader. @param {Field} field @param {any} value */
export function finding(field, value) {
  if (field.ask === "length" && typeof value === "string" && length(value) === null)
    return message.unreadLength({ typed: value });
  const wrong = field.ask === "group" || field.ask === "list" ? null : misfit(field, value);
  return wrong ? message.answerAnew({ fault: wrong }) : "";
}

/** @type {Record<string, (field: Field, value: any) => string | null>} */
const FITS = {
  fixed: (field, value) => (value === field.value ? null : message.notFixed({ value: String(field.value) })),
  answer: (field, value) =>
    isWord(field, value) ? null : message.noneOf({ words: (field.choices ?? []).map(([word]) => word).join(", ") }),
  choice: (field, value) => FITS.answer(field, value),
  number: (field, value) => {
    if (isWord(field, value)) return null;
    if (typeof value !== "number" || !Number.isFinite(value)) return message.isNoNumber();
    if (field.whole && !Number.isInteger(value)) return message.isNotWhole();
    const { min = -Infinity, max = Infinity, above = -Infinity, below = Infinity } = field;
    return value >= min && value <= max && value > above && value < below
      ? null
      : message.isNot({ range: range(field) });
  },
  length: (field, value) => {
    if (typeof value === "number")
      return Number.isFinite(value) && (field.signed || value >= 0) ? null : message.isNoLength();
    return typeof value === "string" ? FITS.text(field, value) : message.isNoLength();
  },
  text: (field, value) => {
    if (typeof value !== "string") return message.isNoText();
    const size = [...value].length;
    if (size < (field.low ?? 0) || size > (field.high ?? Infinity))
      return message.letters({ size, low: field.low ?? 0, high: field.high ?? message.anyNumber() });
    return field.pattern && !new RegExp(field.pattern, "u").test(value) ? message.pattern() : null;
  },
  day: (field, value) => FITS.text(field, value),
};

/** @param {Field} field @param {any} value */
const isWord = (field, value) => typeof value === "string" && Boolean(field.choices?.some(([word]) => word === value));

/** What is wrong with a single value, in words; null where it fits. @param {Field} field @param {any} value */
export const misfit = (field, value) => FITS[field.ask](field, value);

/** What does not fit, and where. */
export class Misfit extends Error {}

/**
 * A value as the form takes it over. Fields that are not known are put on the list `aside`, and left out.
 * @param {Field} field @param {any} value @param {string} way where it stands, in words @param {string[]} aside
 * @returns {any} @throws {Misfit}
 */
export function take(field, value, way, aside) {
  if (field.ask === "group") return takeGroup(field.fields ?? [], value, way, aside);
  if (field.ask === "list") {
    if (!Array.isArray(value)) throw new Misfit(message.noList({ field: way }));
    const { least = 0, most = Infinity, item } = field;
    if (value.length < least || value.length > most)
      throw new Misfit(
        message.entries({
          field: way,
          size: value.length,
          low: least,
          high: most === Infinity ? message.anyNumber() : most,
        }),
      );
    const taken = value.map((one, index) =>
      take(/** @type {Field} */ (item), one, message.numbered({ field: way, number: index + 1 }), aside),
    );
    if (field.once && new Set(taken.map(canonical)).size !== taken.length)
      throw new Misfit(message.twice({ field: way }));
    return taken;
  }
  const text =
    typeof value === "string" && (field.ask === "text" || field.ask === "length") && !field.pattern
      ? clean(value, Infinity)
      : value;
  const wrong = misfit(field, text);
  if (wrong) throw new Misfit(message.inField({ field: way, fault: wrong }));
  return text;
}

/** @param {Field[]} fields @param {any} value @param {string} way @param {string[]} aside @returns {any} */
export function takeGroup(fields, value, way, aside) {
  if (value === null || typeof value !== "object" || Array.isArray(value))
    throw new Misfit(way ? message.noGroup({ field: way }) : message.fileNoGroup());
  const at = (/** @type {string} */ name) => (way ? message.within({ group: way, field: name }) : name);
  const known = new Set(fields.map((field) => field.name));
  for (const name of Object.keys(value)) if (!known.has(name)) aside.push(at(clean(name, 40)));
  /** @type {Record<string, any>} */
  const taken = {};
  for (const field of fields) {
    if (Object.hasOwn(value, field.name)) taken[field.name] = take(field, value[field.name], at(field.label), aside);
    else if (field.required) throw new Misfit(message.missing({ field: at(field.label) }));
  }
  return taken;
}

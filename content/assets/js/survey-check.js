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
 * @property {boolean} [required] @property {boolean} [extra] @property {string} [part] @property {string[]} [kinds]
 * @property {[string, string][]} [choices] word and what a reader sees
 * @property {string} [unit] @property {string[]} [units] @property {number} [far] the longest that can be meant, in the first unit
 * @property {boolean} [signed] @property {boolean} [whole]
 * @property {number} [min] @property {number} [max] @property {number} [above] @property {number} [below]
 * @property {number} [low] @property {number} [high] @property {boolean} [area] @property {string} [pattern]
 * @property {Field} [item] @property {number} [least] @property {number} [most] @property {boolean} [once]
 * @property {Field[]} [fields] @property {any} [value]
 * @typedef {{value?: any, fault?: string}} Read
 */
import { canonical, number } from "./entries.js";
import { clean } from "./words.js";

const UNITS = { mm: "mm", cm: "cm", m: "m", in: "in", inch: "in", inches: "in", '"': "in", "\u2033": "in", "\u201d": "in", ft: "ft", foot: "ft", feet: "ft", "'": "ft", "\u2032": "ft", "\u2019": "ft" };
const MILLIMETRES = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };
const PART = /^([+-]?(?:\d{1,4}[ -])?\d{1,3}\/\d{1,3}|[+-]?\d{1,6}(?:[.,]\d{0,4})?|[+-]?[.,]\d{1,4})\s*([a-z"'\u2032\u2033\u2019\u201d]*)\s*/i;
const TWO_WAYS = /(^|[^\d.,])[1-9]\d{0,2},\d{3}(?![\d.,])/;

/** Whether a comma could be read as one of thousands. @param {string} text */
const twoWays = (text) => (TWO_WAYS.test(text) ? `${text.trim()} can be read two ways. Type it without the comma, or with a point.` : "");

/** Whether a fraction can be read: over something, and less than one where a whole number stands before it. @param {string} text */
function soundFraction(text) {
  const [, whole, over, under] = /^[+-]?(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text) ?? [];
  return under === undefined || (Number(under) > 0 && (whole === undefined || Number(over) < Number(under)));
}

/** The size of a figure, where a fraction may stand. @param {string} text */
function sizeOf(text) {
  const [whole, fraction] = text.includes("/") ? (text.includes(" ") ? text.split(" ") : ["0", text.replace("-", "")]) : [text, "0/1"];
  const [over, under] = fraction.split("/").map(Number);
  return Math.abs(Number(whole)) + over / under;
}

/** Whether a length is longer than can be meant. @param {Field} field @param {string} value */
function tooFar({ far = Infinity, units = [] }, value) {
  const size = (parts(value, "") ?? []).reduce((sum, [figure, unit]) => sum + sizeOf(figure) * MILLIMETRES[/** @type {keyof MILLIMETRES} */ (unit)], 0);
  return size > far * (MILLIMETRES[/** @type {keyof MILLIMETRES} */ (units[0])] ?? 1);
}

/** The parts of a length as typed: figure and unit; null where it is none. @param {string} text @param {string} unit of a figure without one */
function parts(text, unit) {
  let rest = text.trim().replace(/^[\u2212\u2013]\s*/, "-").replace(/(\d)([\u00bc-\u00be\u215b-\u215e])/g, "$1 $2").replace(/[\u00bc-\u00be\u215b-\u215e]/g, (sign) => sign.normalize("NFKD").replace("\u2044", "/"));
  /** @type {[string, string][]} */
  const found = [];
  while (rest && found.length < 2) {
    const match = PART.exec(rest);
    if (!match) return null;
    const named = match[2].toLowerCase();
    const of = named === "" ? (found.length ? "" : unit) : Object.hasOwn(UNITS, named) ? UNITS[/** @type {keyof UNITS} */ (named)] : "";
    if (!of || !soundFraction(match[1])) return null;
    found.push([match[1].replace(",", ".").replace(/^\+/, "").replace(/^(-?)\./, "$10.").replace(/\.$/, "").replace(/^(-?\d+)-(?=\d+\/)/, "$1 "), of]);
    rest = rest.slice(match[0].length);
  }
  const feet = found.length !== 2 || (found[0][1] === "ft" && found[1][1] === "in" && /^-?\d+$/.test(found[0][0]) && !found[1][0].startsWith("-"));
  return rest || !found.length || !feet ? null : found;
}

/** A length as the file holds it, `12 ft 6 in`; null where it is none. @param {string} text @param {string} [unit] */
export const length = (text, unit = "") => parts(text, unit)?.map(([figure, of]) => `${figure} ${of}`).join(" ") ?? null;

/** A stored length as the form shows it: what stands in the box, and the unit beside it. @param {Field} field @param {any} value @param {string} unit where it has none */
export function box(field, value, unit) {
  if (value === undefined) return { text: "", unit };
  if (typeof value === "number") return { text: String(value), unit };
  const found = parts(value, "");
  return found?.length === 1 && field.units?.includes(found[0][1]) ? { text: found[0][0], unit: found[0][1] } : { text: String(value), unit };
}

/** From where to where, in words. @param {Field} field */
function range({ min, max, above, below }) {
  const low = min !== undefined ? `at least ${min}` : above !== undefined ? `more than ${above}` : "";
  const high = max !== undefined ? `at most ${max}` : below !== undefined ? `less than ${below}` : "";
  return [low, high].filter(Boolean).join(", ").replace(/-/g, "\u2212");
}

/** @param {Field} field @param {string} text @returns {Read} */
function readNumber(field, text) {
  const odd = twoWays(text);
  if (odd) return { fault: odd };
  const value = number(text);
  if (value === null) return { fault: field.whole ? "That is no number. Type digits alone." : "That is no number. Type it as 2.5 or 2,5." };
  if (field.whole && !Number.isInteger(value)) return { fault: "Type a whole number." };
  return misfit(field, value) ? { fault: `Out of range. Type a number of ${range(field)}.` } : { value };
}

/** @param {Field} field @param {string} text @param {string} unit @returns {Read} */
function readLength(field, text, unit) {
  const odd = twoWays(text);
  if (odd) return { fault: odd };
  const value = length(text, unit);
  if (value === null) return { fault: `That is no length. Type it as 4.5 or 4,5${field.units?.includes("in") ? ", or inches as 3/16" : ""}${field.units?.includes("ft") ? ", or feet and inches as 12 ft 6 in" : ""}.` };
  if (tooFar(field, value)) return { fault: `More than ${field.far} ${field.units?.[0]}. Look at the figure, and at its unit.` };
  return !field.signed && value.startsWith("-") ? { fault: "A length is not less than nothing. Take the minus off." } : { value };
}

/**
 * What was typed, as the file would hold it, or what is wrong with it and how it is mended; neither where it is empty.
 * @param {Field} field @param {string} typed @param {string} [unit] @returns {Read}
 */
export function read(field, typed, unit = "") {
  const text = clean(typed, Infinity);
  if (!text) return {};
  if (field.ask === "number") return readNumber(field, text);
  if (field.ask === "length") return readLength(field, text, unit);
  const over = [...text].length - (field.high ?? Infinity);
  if (over > 0) return { fault: `Too long by ${over}. Shorten it.` };
  if (over !== over || !misfit(field, text)) return { value: text };
  return { fault: field.ask === "day" ? "That is no day. Choose one." : field.pattern ? "Use small letters and digits, words joined by hyphens, a letter first." : `Type at least ${field.low} letters.` };
}

/** What is wrong with a stored answer beyond its schema, for the reader. @param {Field} field @param {any} value */
export function finding(field, value) {
  if (field.ask === "length" && typeof value === "string" && length(value) === null) return `\u201c${value}\u201d cannot be read as a length with its unit.`;
  const wrong = field.ask === "group" || field.ask === "list" ? null : misfit(field, value);
  return wrong ? `The answer that is kept ${wrong}. Answer anew.` : "";
}

/** @type {Record<string, (field: Field, value: any) => string | null>} */
const FITS = {
  fixed: (field, value) => (value === field.value ? null : "may not be anything else than " + field.value),
  answer: (field, value) => (isWord(field, value) ? null : `is none of: ${field.choices?.map(([word]) => word).join(", ")}`),
  choice: (field, value) => FITS.answer(field, value),
  number: (field, value) => {
    if (isWord(field, value)) return null;
    if (typeof value !== "number" || !Number.isFinite(value)) return "is no number";
    if (field.whole && !Number.isInteger(value)) return "is no whole number";
    const { min = -Infinity, max = Infinity, above = -Infinity, below = Infinity } = field;
    return value >= min && value <= max && value > above && value < below ? null : `is not ${range(field)}`;
  },
  length: (field, value) => {
    if (typeof value === "number") return Number.isFinite(value) && (field.signed || value >= 0) ? null : "is no length";
    return typeof value === "string" ? FITS.text(field, value) : "is no length";
  },
  text: (field, value) => {
    if (typeof value !== "string") return "is no text";
    const size = [...value].length;
    if (size < (field.low ?? 0) || size > (field.high ?? Infinity)) return `has ${size} letters and may have ${field.low ?? 0} to ${field.high}`;
    return field.pattern && !new RegExp(field.pattern, "u").test(value) ? "is not written as it has to be" : null;
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
    if (!Array.isArray(value)) throw new Misfit(`${way} is no list`);
    const { least = 0, most = Infinity, item } = field;
    if (value.length < least || value.length > most) throw new Misfit(`${way} has ${value.length} entries and may have ${least} to ${most === Infinity ? "any number" : most}`);
    const taken = value.map((one, index) => take(/** @type {Field} */ (item), one, `${way} ${index + 1}`, aside));
    if (field.once && new Set(taken.map(canonical)).size !== taken.length) throw new Misfit(`${way} names one thing twice`);
    return taken;
  }
  const text = typeof value === "string" && (field.ask === "text" || field.ask === "length") && !field.pattern ? clean(value, Infinity) : value;
  const wrong = misfit(field, text);
  if (wrong) throw new Misfit(`${way} ${wrong}`);
  return text;
}

/** @param {Field[]} fields @param {any} value @param {string} way @param {string[]} aside @returns {any} */
export function takeGroup(fields, value, way, aside) {
  if (value === null || typeof value !== "object" || Array.isArray(value)) throw new Misfit(`${way || "The file"} is no group of fields`);
  const at = (/** @type {string} */ name) => (way ? `${way}, ${name}` : name);
  const known = new Set(fields.map((field) => field.name));
  for (const name of Object.keys(value)) if (!known.has(name)) aside.push(at(clean(name, 40)));
  /** @type {Record<string, any>} */
  const taken = {};
  for (const field of fields) {
    if (Object.hasOwn(value, field.name)) taken[field.name] = take(field, value[field.name], at(field.label), aside);
    else if (field.required) throw new Misfit(`${at(field.label)} is missing`);
  }
  return taken;
}

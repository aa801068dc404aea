/** What the modules of words are made with; `scripts/latchside/messages/javascript.py` writes them. */

const LANGUAGE = "en-GB";
const plurals = new Intl.PluralRules(LANGUAGE);
const numbers = new Intl.NumberFormat(LANGUAGE);

/** A value within words: a count as the language writes numbers. @param {string | number} value */
export const shown = (value) => (typeof value === "number" ? numbers.format(value) : value);

/**
 * The words for a value: those of the value itself, those of how many it is, or the rest.
 * @param {string | number} value @param {Record<string, string>} cases @param {string} rest
 */
export function choose(value, cases, rest) {
  const own = Object.hasOwn(cases, value);
  const key = typeof value === "number" && !own ? plurals.select(value) : value;
  return Object.hasOwn(cases, key) ? cases[key] : rest;
}

/**
 * `a, b and c`; as a `unit`, `a, b, c`; as a `disjunction`, `a, b or c`.
 * @param {string[]} items @param {"conjunction" | "unit" | "disjunction"} [type]
 */
export const listed = (items, type) => new Intl.ListFormat(LANGUAGE, { type }).format(items);

/** The same with elements, as a unit: names and what stands between them. @template Item @param {Item[]} items @returns {(Item | string)[]} */
export function listedParts(items) {
  const places = items.map((_, place) => String(place));
  const parts = new Intl.ListFormat(LANGUAGE, { type: "unit" }).formatToParts(places);
  return parts.map(({ type, value }) => (type === "element" ? items[Number(value)] : value));
}

const EDGE = "\ue000";

/**
 * The words of a message in which elements stand: texts and elements, in the order of the language.
 * @template {Record<string, unknown>} Values
 * @param {(values: {[Name in keyof Values]: Values[Name] extends number ? number : string}) => string} message
 * @param {Values} values elements; texts and counts stay what they are
 * @returns {(string | Values[keyof Values])[]}
 */
export function around(message, values) {
  const edged = Object.entries(values).map(([name, value]) => [
    name,
    typeof value === "number" ? value : EDGE + name + EDGE,
  ]);
  const texts = message(Object.fromEntries(edged)).split(EDGE);
  return texts.map((text, at) => (at % 2 ? /** @type {Values[keyof Values]} */ (values[text]) : text));
}

/**
 * The firm's own figures for house rules: typed, checked, and as the file that the command reads. Pure.
 *
 * @typedef {Object} Rule one house rule, as the library has it
 * @property {string} name @property {string} label @property {string} sign of its unit @property {string} unit
 * @property {string} about what it is one of
 * @property {number} value @property {number} low @property {number} high @property {boolean} whole
 * @typedef {Readonly<Record<string, string>>} Typed what stands in the boxes, by the name of the rule
 */
import { house as message } from "../messages/survey.js";

/** A figure as it is typed; NaN where it is none. @param {string} text */
const figure = (text) => (/^\d{1,6}([.,]\d{1,4})?$/.test(text.trim()) ? Number(text.trim().replace(",", ".")) : NaN);

/** What is wrong with what was typed for a rule; empty: nothing. @param {Rule} rule @param {string} [text] */
export function faultOf({ low, high, sign, whole }, text = "") {
  if (!text.trim()) return "";
  const value = figure(text);
  if (Number.isNaN(value)) return message.noFigure();
  if (whole && !Number.isInteger(value)) return message.notWhole();
  return value < low || value > high ? message.outOfRange({ low: short(low), high: short(high), unit: sign }) : "";
}

/** A figure in few digits. @param {number} value */
export const short = (value) => String(Number(value.toPrecision(6)));

/** The figures that were typed and are sound. @param {Rule[]} rules @param {Typed} typed */
export const own = (rules, typed) =>
  rules.filter((rule) => typed[rule.name]?.trim() && !faultOf(rule, typed[rule.name]));

/** The text of the file of house rules; empty where the firm has none of its own. @param {Rule[]} rules @param {Typed} typed */
export function houseText(rules, typed) {
  const entries = own(rules, typed).map(({ name, unit }) => [name, { value: figure(typed[name]), unit }]);
  return entries.length ? `${JSON.stringify({ values: Object.fromEntries(entries) }, null, 2)}\n` : "";
}

/**
 * What a file of house rules holds, as it would be typed.
 * @param {Rule[]} rules @param {string} text @returns {{fault: string} | {typed: Typed}}
 */
export function fromFile(rules, text) {
  const values = valuesIn(text);
  if (!values) return { fault: message.noFile() };
  /** @type {Record<string, string>} */
  const typed = {};
  for (const [name, entry] of Object.entries(values)) {
    const rule = rules.find((one) => one.name === name);
    const fault = rule ? faultIn(rule, entry) : message.unknown();
    if (fault || !rule) return { fault: message.inRule({ rule: rule?.label ?? name.slice(0, 40), fault }) };
    typed[name] = String(entry.value);
  }
  return { typed };
}

/** @param {string} text @returns {Record<string, any> | null} */
function valuesIn(text) {
  try {
    const { values } = JSON.parse(text.replace(/^\ufeff/, ""));
    return values && typeof values === "object" && !Array.isArray(values) ? values : null;
  } catch {
    return null;
  }
}

/** @param {Rule} rule @param {any} entry */
function faultIn(rule, entry) {
  if (typeof entry?.value !== "number") return message.noFigure();
  return entry.unit === rule.unit ? faultOf(rule, String(entry.value)) : message.otherUnit({ unit: rule.unit });
}

/** What is typed for an input of a figure, read as `latchside.figures.typed` and `lengths` do. Pure. */
import { lengthIn } from "../core/lengths.js";
import { typed as message } from "../messages/figure.js";
import { fromOther, inOther, shown, withSign } from "./number.js";

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/;
const THOUSANDS = /^[+-]?[1-9]\d{0,2}(,\d{3})+$/;
const RESISTOR = /^(\d+)([kKMR])(\d+)$/;
/** @type {Record<string, number>} */
const OHMS = { k: 1e3, K: 1e3, M: 1e6, R: 1 };

/**
 * @typedef {import("./figures.js").Input} Input
 * @typedef {{value?: number, error?: string}} Read
 */

/** The sign of the unit that an input is typed in. @param {Input} one @param {boolean} other */
export const signOf = (one, other) => (other ? (one.others[0] ?? "") : one.sign);

/** What an input accepts, in the units it is typed in. @param {Input} one @param {boolean} other */
export const acceptedBy = (one, other) => (other ? one.acceptsOther : one.accepts);

/** @param {string} text */
const plain = (text) => (NUMBER.test(text) ? Number(text.replace(",", ".")) : null);

/** A resistance as it is written beside a circuit: 4k7, 5.6k, 470R. @param {string} text */
function ohms(text) {
  const whole = text.replace(RESISTOR, "$1.$3$2");
  const factor = OHMS[whole.at(-1) ?? ""];
  const number = factor === undefined ? null : plain(whole.slice(0, -1).trim());
  return number === null ? null : number * factor;
}

/**
 * What was typed, as a number in the unit it was typed in; null where it is none.
 * @param {string} text @param {Input} one @param {boolean} other
 */
function numberIn(text, one, other) {
  const sign = signOf(one, other);
  const bare = sign && text.endsWith(sign) ? text.slice(0, -sign.length).trim() : text;
  const number = plain(bare) ?? lengthIn(text, sign);
  if (number !== null || one.unit !== "ohm") return number;
  return ohms(bare.replace(/ ?ohms?$/i, "")) ?? plain(bare.replace(/ ?ohms?$/i, ""));
}

/**
 * What was typed, as a number in the input's own unit; a message where it is none.
 * @param {Input} one
 * @param {string} text
 * @param {boolean} other whether it was typed in the other system of units
 * @returns {Read}
 */
export function read(one, text, other) {
  const typed = text.trim().replace("−", "-");
  if (THOUSANDS.test(typed)) {
    const whole = typed.replaceAll(",", "");
    const decimal = typed.replace(",", ".");
    const twice = typed.split(",").length === 2;
    return {
      error: twice ? message.twoWays({ typed, plain: whole, decimal }) : message.thousands({ typed, plain: whole }),
    };
  }
  const found = numberIn(typed, one, other);
  const accepts = acceptedBy(one, other);
  if (found === null) return { error: message.noNumber({ typed: text.trim(), accepts }) };
  const number = other ? fromOther(found, one.others) : found;
  if ((one.low !== null && number < one.low) || (one.high !== null && number > one.high)) {
    return { error: message.outOfRange({ value: withSign(found, signOf(one, other)), accepts }) };
  }
  if (one.integer && number !== Math.trunc(number)) {
    return { error: message.notWhole({ value: shown(number), accepts }) };
  }
  return { value: number };
}

/** The entries of a list: behind a semicolon a comma marks decimals. @param {string} text */
export function entries(text) {
  const between = [";", ",", /\s+/].find((mark) => text.search(mark) >= 0) ?? ";";
  return text.split(between).filter((part) => part.trim());
}

/**
 * Every entry of a list, read; the first error.
 * @param {Input} one @param {string} text @param {boolean} other
 * @returns {{values: number[], error?: string}}
 */
export function readList(one, text, other) {
  const all = entries(text).map((part) => read(one, part, other));
  return { values: all.map(({ value }) => value ?? Number.NaN), error: all.find(({ error }) => error)?.error };
}

/**
 * What a field holds, changed from one system of units to the other; as it stands where it is no number.
 * @param {Input} one @param {string} text
 * @param {boolean} other whether it stands in the other system
 * @param {number} [digits]
 */
export function turned(one, text, other, digits = 6) {
  const parts = one.many ? entries(text) : [text.trim()];
  const numbers = parts.map((part) => numberIn(part.trim().replace("−", "-"), one, other));
  if (!text.trim() || numbers.some((number) => number === null || !Number.isFinite(number))) return text;
  const changed = numbers.map((number) =>
    other ? fromOther(Number(number), one.others) : inOther(Number(number), one.others),
  );
  return changed.map((number) => String(Number(number.toPrecision(digits)))).join("; ");
}

/**
 * A length as people write it: 4 mm, 3/16 in, 1 3/16", 12 ft 6 in, 2,5 m, or a number without a unit. The one grammar
 * of lengths for surveys and figures; `latchside.figures.lengths` does the same, and tests hold the two together. Pure.
 */
import { lengths as message } from "../messages/core.js";

/** @type {Record<string, number>} */
const MILLIMETRES = { mm: 1, cm: 10, m: 1000, km: 1e6, thou: 0.0254, in: 25.4, ft: 304.8, yd: 914.4 };
/** @type {Record<string, string>} */
const UNITS = {
  mm: "mm",
  cm: "cm",
  m: "m",
  km: "km",
  thou: "thou",
  in: "in",
  ft: "ft",
  yd: "yd",
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
  centimetre: "cm",
  centimetres: "cm",
  centimeter: "cm",
  centimeters: "cm",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
  kilometre: "km",
  kilometres: "km",
  kilometer: "km",
  kilometers: "km",
  mil: "thou",
  mils: "thou",
  yard: "yd",
  yards: "yd",
  inch: "in",
  inches: "in",
  '"': "in",
  "''": "in",
  foot: "ft",
  feet: "ft",
  "'": "ft",
};
/** @type {Record<string, string>} */
const SIGNS = {
  "\u2212": "-",
  "\u2013": "-",
  "\u00a0": " ",
  "\u202f": " ",
  "\u2009": " ",
  "\u2032": "'",
  "\u2019": "'",
  "\u2033": '"',
  "\u201d": '"',
  "\u2044": "/",
  "\u00bc": " 1/4",
  "\u00bd": " 1/2",
  "\u00be": " 3/4",
  "\u215b": " 1/8",
  "\u215c": " 3/8",
  "\u215d": " 5/8",
  "\u215e": " 7/8",
};
const PART = /^(\d{1,7}(?:[ -]+\d{1,3}\/\d{1,4}|\/\d{1,4}|[.,]\d{0,9})?|[.,]\d{1,9})\s*([a-z]+|"|''?)?\.?\s*/;
const LONGEST = 40;
const METRIC = ["mm", "cm", "m", "km"];
const TWO_WAYS = /(^|[^\d.,])[1-9]\d{0,2},\d{3}(?![\d,]|\.\d)/;

/** Whether a comma could be read as one of thousands. @param {string} text */
export const twoWays = (text) => (TWO_WAYS.test(text) ? message.twoWays({ text: text.trim() }) : "");

/**
 * The size of a figure: a decimal, a fraction, or a whole number and a fraction below one; NaN where it is none.
 * @param {string} figure
 */
function sizeOf(figure) {
  const [, whole, over, under] = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(figure.replace("-", "")) ?? [];
  if (under === undefined) return Math.abs(Number(figure));
  const proper = Number(under) && (whole === undefined || Number(over) < Number(under));
  return proper ? Number(whole ?? 0) + Number(over) / Number(under) : Number.NaN;
}

/**
 * The unit of a part of a length; none where it is unknown, or where only a figure that stands alone may be without.
 * @param {string | undefined} written @param {boolean} alone @param {string} unit of a figure without one
 * @param {boolean} broken whether the figure is a fraction
 */
function unitOf(written, alone, unit, broken) {
  const ofWhat = broken && METRIC.includes(unit); // nobody writes a fraction of a millimetre: it was an inch
  if (written === undefined) return alone && !ofWhat ? unit : "";
  return Object.hasOwn(UNITS, written) ? UNITS[written] : "";
}

/**
 * The parts of a length as typed: figure and unit, the first with its minus; null where it is none.
 * @param {string} text
 * @param {string} unit of a figure without one
 * @returns {[figure: string, unit: string][] | null}
 */
export function parts(text, unit) {
  if (text.length > LONGEST) return null;
  const signs = [...text].map((sign) => SIGNS[sign] ?? sign);
  const plain = signs.join("").trim().toLowerCase();
  let rest = plain.replace(/^[-+]\s*/, "");
  /** @type {[string, string][]} */
  const found = [];
  while (rest && found.length < 2) {
    const match = PART.exec(rest);
    if (!match) return null;
    rest = rest.slice(match[0].length);
    const of = unitOf(match[2], !found.length && !rest, unit, match[1].includes("/"));
    const figure = match[1].replace(/[ -]+/, " ").replace(",", ".").replace(/^\./, "0.").replace(/\.$/, "");
    if (!of || Number.isNaN(sizeOf(figure))) return null;
    found.push([(plain.startsWith("-") && !found.length ? "-" : "") + figure, of]);
  }
  const feet = found.length !== 2 || (found[0][1] === "ft" && found[1][1] === "in" && /^-?\d+$/.test(found[0][0]));
  return rest || !found.length || !feet ? null : found;
}

/** A length as the file holds it, `12 ft 6 in`; null where it is none. @param {string} text @param {string} [unit] */
export const length = (text, unit = "") =>
  parts(text, unit)
    ?.map(([figure, of]) => `${figure} ${of}`)
    .join(" ") ?? null;

/**
 * The length in millimetres; null where it is none.
 * @param {string} text @param {string} unit of a figure without one
 */
export function millimetres(text, unit) {
  const found = parts(text, unit);
  if (!found) return null;
  const sum = found.reduce((all, [figure, of]) => all + sizeOf(figure) * MILLIMETRES[of], 0);
  return found[0][0].startsWith("-") ? -sum : sum;
}

/**
 * The length in a unit, which a bare number is in too; null where it is none, or the unit is none of a length.
 * @param {string} text @param {string} unit
 */
export function lengthIn(text, unit) {
  if (!Object.hasOwn(MILLIMETRES, unit) || twoWays(text)) return null;
  const found = millimetres(text, unit);
  return found === null ? null : Number((found / MILLIMETRES[unit]).toPrecision(12));
}

/** Numbers and units as a page writes them; `latchside.figures.units` does the same at build time. Pure. */

/** @typedef {import("./figures.js").Others} Others */

/** @type {Record<string, string>} */
const SUPERSCRIPTS = { "-": "⁻", 0: "⁰", 1: "¹", 2: "²", 3: "³", 4: "⁴", 5: "⁵", 6: "⁶", 7: "⁷", 8: "⁸", 9: "⁹" };
const PLURALS = ["years", "months", "days", "rungs"];

/** A figure with at most four significant digits, as the build writes it. @param {number} value */
export function shown(value) {
  if (!value) return "0";
  const [mantissa, power] = Math.abs(value).toExponential(11).split("e");
  let exponent = Number(power);
  let rounded = Math.floor((Number(mantissa.replace(".", "")) + 50000000) / 100000000);
  if (rounded === 10000) [rounded, exponent] = [1000, exponent + 1];
  const digits = String(rounded);
  const sign = value < 0 ? "−" : "";
  const trimmed = (/** @type {string} */ text) => text.replace(/0+$/, "");
  if (exponent <= -5 || exponent >= 15) {
    const short = trimmed(`${digits[0]}.${digits.slice(1)}`).replace(/\.$/, "");
    return `${sign}${short} × 10${[...String(exponent)].map((one) => SUPERSCRIPTS[one]).join("")}`;
  }
  if (exponent < 0) return `${sign}0.${"0".repeat(-1 - exponent)}${trimmed(digits)}`;
  const whole = digits.slice(0, exponent + 1).padEnd(exponent + 1, "0");
  const rest = trimmed(digits.slice(exponent + 1));
  return `${sign}${whole.replace(/\B(?=(\d{3})+$)/g, ",")}${rest ? `.${rest}` : ""}`;
}

/**
 * A figure and what stands behind it: a space that keeps the line, and the sign of its unit.
 * @param {number} value @param {string} sign
 * @returns {[figure: string, sign: string]}
 */
export function inParts(value, sign) {
  const figure = shown(value);
  if (!sign) return [figure, ""];
  const said = figure === "1" && PLURALS.includes(sign) ? sign.slice(0, -1) : sign;
  return [figure, sign[0] === "°" || sign === "/K" ? said : `\u00a0${said}`];
}

/** A figure with the sign of its unit. @param {number} value @param {string} sign */
export const withSign = (value, sign) => inParts(value, sign).join("");

/** A value in the other system of units. @param {number} value @param {Others} others */
export const inOther = (value, [, factor = 1, offset = 0]) => factor * value + offset;

/** A value of the other system in the input's own unit. @param {number} value @param {Others} others */
export const fromOther = (value, [, factor = 1, offset = 0]) => (value - offset) / factor;

/** The reading of a check in the guided run: optional, judged at once, kept with the answer. */
import { button, field, fill, h, select } from "../core/dom.js";
import { reading as message } from "../messages/fault.js";
import { figuresOf, judge, readingOf, shown } from "../visit/entries.js";

/**
 * @typedef {import("../visit/reading.js").Figure} Figure
 * @typedef {import("../visit/reading.js").Judged} Judged
 */

/**
 * Of the figures typical of several devices, leave that of the device at hand.
 * @param {Element} shown a copy of the measure @param {string} expectations as JSON @param {string} device
 */
export function narrow(shown, expectations, device) {
  const own = figuresOf(expectations).filter((one) => one.device && one.device === device);
  const words = shown.querySelector(".ls-expect");
  const [reading, typical] = (words?.textContent ?? "").split(`${message.typical()} `);
  if (words && typical && own.length)
    words.textContent = message.typicalOf({ reading, figures: own.map((one) => one.words).join("; ") });
}

/**
 * A box for the reading, and what is read in it.
 * @param {string} expectations what the page knows of good readings, as JSON
 * @param {string} device the device at hand, where it is known
 * @returns {{element: HTMLElement, read: () => Judged | null}}
 */
export function readingBox(expectations, device) {
  const figures = figuresOf(expectations).filter((one) => !one.device || !device || one.device === device);
  const units = [...new Set(figures.flatMap((figure) => figure.scales.map((scale) => scale.unit)))];
  let unit = units[0] ?? "";
  let over = false;
  const verdict = h("p", { class: "ls-verdict", role: "status" });
  /** @type {HTMLInputElement} */
  const input = h("input", { type: "text", inputmode: "decimal", autocomplete: "off", input: () => tell(false) });
  const read = () => {
    const reading = readingOf(input.value, over, unit);
    return reading && { reading, expected: expectedIn(figures, unit) };
  };
  const tell = (/** @type {boolean} */ beyond) => {
    over = beyond;
    if (over) input.value = "";
    const made = read();
    verdict.className = `ls-verdict ls-is-${(made && judge(made.reading, made.expected)) ?? "read"}`;
    if (made) fill(verdict, ...verdictOf(made));
    else fill(verdict, input.value.trim() ? message.noNumber() : "");
  };
  const turn = (/** @type {string} */ value) => {
    unit = value;
    tell(over);
  };
  /** @type {[value: string, words: string][]} */
  const choices = units.map((one) => [one, one]);
  const tools = h(
    "div",
    { class: "ls-tools" },
    units.length > 1 && field(message.unit(), select(choices, unit, turn)),
    units.some((one) => one.endsWith("\u03a9")) && button(message.overRange(), () => tell(true)),
  );
  const element = h("div", { class: "ls-reading" }, field(message.reading(), input), tools, verdict);
  return { element, read };
}

/** What is expected in a unit; of several figures, none is a guess. @param {Figure[]} figures @param {string} unit */
function expectedIn(figures, unit) {
  const fitting = figures.filter((figure) => figure.scales.some((scale) => scale.unit === unit));
  if (fitting.length !== 1) return undefined;
  const [{ words, device, scales }] = fitting;
  const { ranges } = /** @type {import("../visit/reading.js").Scale} */ (scales.find((one) => one.unit === unit));
  return { words, unit, ranges, ...(device && { device }) };
}

/** @param {Judged} made */
function verdictOf({ reading, expected }) {
  const found = judge(reading, expected);
  const title = { inside: message.inside(), outside: message.outside() };
  const read = shown(reading);
  const about = expected ? message.expected({ reading: read, expected: expected.words }) : read;
  return [h("strong", {}, found ? title[found] : message.read()), ` ${about}`];
}

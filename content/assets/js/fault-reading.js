/** The reading of a check in the guided run: optional, judged at once, kept with the answer. */
import { button, field, fill, h, select } from "./dom.js";
import { figuresOf, judge, number, shown } from "./entries.js";

/**
 * Of the figures typical of several devices, leave that of the device at hand.
 * @param {Element} shown a copy of the measure @param {string} expectations as JSON @param {string} device
 */
export function narrow(shown, expectations, device) {
  /** @type {import("./reading.js").Figure[]} */
  const own = figuresOf(expectations).filter((one) => one.device && one.device === device);
  const words = shown.querySelector(".ls-expect");
  const [reading, typical] = (words?.textContent ?? "").split("Typical: ");
  if (words && typical && own.length) words.textContent = `${reading}Typical: ${own.map((one) => one.words).join("; ")}.`;
}

/**
 * @param {string} expectations what the page knows of good readings, as JSON
 * @param {string} device the device at hand, where it is known
 * @returns {{element: HTMLElement, read: () => {reading: any, expected: any} | null}}
 */
export function readingBox(expectations, device) {
  /** @type {import("./reading.js").Figure[]} */
  const figures = figuresOf(expectations).filter((one) => !one.device || !device || one.device === device);
  const units = [...new Set(figures.flatMap((figure) => figure.scales.map((scale) => scale.unit)))];
  let unit = units[0] ?? "";
  let over = false;
  const verdict = h("p", { class: "ls-verdict", role: "status" });
  const input = h("input", { type: "text", inputmode: "decimal", autocomplete: "off", input: () => tell(false) });
  const read = () => {
    const value = number(input.value);
    if (!over && value === null) return null;
    const reading = over ? { over: true, unit } : { value, unit };
    const fitting = figures.filter((figure) => figure.scales.some((scale) => scale.unit === unit));
    const only = fitting.length === 1 ? fitting[0] : null; // of several figures, none is a guess
    const scale = only?.scales.find((one) => one.unit === unit);
    const expected = only && scale ? { words: only.words, unit, ranges: scale.ranges, ...(only.device && { device: only.device }) } : undefined;
    return { reading, expected };
  };
  const tell = (/** @type {boolean} */ beyond) => {
    over = beyond;
    if (over) input.value = "";
    const made = read();
    const found = made && judge(/** @type {any} */ (made.reading), made.expected);
    verdict.className = `ls-verdict ls-is-${found ?? "read"}`;
    if (!made) fill(verdict, input.value.trim() ? "That is no number. Type it as 2.2 or 2,2." : "");
    else fill(verdict, h("strong", {}, found === "inside" ? "Inside: " : found === "outside" ? "Outside: " : "Read: "), shown(/** @type {any} */ (made.reading)), made.expected ? `, expected ${made.expected.words}` : "");
  };
  const ohms = units.some((one) => one.endsWith("\u03a9"));
  const choice = units.length > 1 && field("Unit", select(units.map((one) => [one, one]), unit, (value) => {
    unit = value;
    tell(over);
  }));
  const element = h("div", { class: "ls-reading" }, field("Reading, if you took one", input), h("div", { class: "ls-tools" }, choice, ohms && button("Meter shows over range", () => tell(true))), verdict);
  return { element, read };
}

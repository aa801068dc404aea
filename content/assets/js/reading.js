/** A reading: typed with comma or point, judged at once against what it should be, and told what to do if outside. */
import { button, field, h, select } from "./dom.js";
import { figuresOf, judge, number, scales, shown } from "./entries.js";

/**
 * @typedef {import("./entries.js").Range} Range
 * @typedef {{unit: string, ranges: Range[]}} Scale what is good, in one unit
 * @typedef {{device: string | null, name: string, words: string, note: string | null, scales: Scale[]}} Figure one figure to judge against
 */

const NONE = { unit: "", ranges: [] };

/** The reading of one item. */
export class Reading {
  /**
   * @param {HTMLElement} place the part of the page that holds the measurement
   * @param {(outcome: "done" | "problem", reading: any, expected: any) => Promise<any>} save
   * @param {(reading: any, expected: any) => void} explain asks why a reading outside counts as done
   */
  constructor(place, save, explain) {
    this.all = figuresOf(place.dataset.expect ?? "");
    this.measure = place.dataset.measure ?? ""; // the name of the value, where an opening may have one of its own
    this.input = /** @type {HTMLInputElement} */ (place.querySelector("input"));
    this.outside = place.querySelector(".ls-measure dd:last-of-type");
    this.expect = place.querySelector(".ls-expect");
    this.everyone = [...(this.expect?.childNodes ?? [])]; // what is expected of every device, as the page came
    this.verdict = h("p", { class: "ls-verdict", role: "status" });
    this.tools = h("div", { class: "ls-tools" });
    this.press = h("div", { class: "ls-tools" });
    this.save = save;
    this.explain = explain;
    this.over = false;
    this.chosen = 0;
    this.unit = "";
    this.names = "?";
    /** @type {Figure[]} */
    this.figures = [];
    this.input.addEventListener("input", () => {
      this.over = false;
      this.tell();
    });
    place.append(this.tools, this.verdict, this.press);
    this.forDevices([]);
  }

  /**
   * Keep the figures of the devices at hand; what was planned for the opening goes before them.
   * @param {string[]} devices @param {Record<string, import("./entries.js").Expected>} [planned]
   */
  forDevices(devices, planned = {}) {
    if (Object.hasOwn(planned, this.measure)) {
      const own = planned[this.measure];
      return this.use([{ device: null, name: "Planned for this opening", words: own.words, note: null, scales: scales(own) }]);
    }
    /** @type {Map<string, Figure>} */
    const byWords = new Map(); // the same figure of two devices is one figure
    for (const figure of this.all) {
      if (figure.device && devices.length && !devices.includes(figure.device)) continue;
      const same = byWords.get(figure.words);
      byWords.set(figure.words, same ? { ...same, device: null, name: `${same.name}, ${figure.name}`, note: null } : figure);
    }
    this.use([...byWords.values()]);
  }

  /** @param {Figure[]} fitting */
  use(fitting) {
    const names = fitting.map((figure) => `${figure.name} ${figure.words}`).join("|");
    if (names === this.names) return;
    this.names = names;
    this.figures = fitting;
    this.chosen = fitting.length === 1 ? 0 : -1; // of several figures, none is a guess
    this.build();
  }

  get figure() {
    return this.figures[this.chosen];
  }

  /** @returns {Scale} */
  get scale() {
    return this.figure?.scales.find((scale) => scale.unit === this.unit) ?? this.figure?.scales[0] ?? NONE;
  }

  build() {
    const units = (this.figure ?? this.figures[0])?.scales.map((scale) => scale.unit) ?? [];
    if (!units.includes(this.unit)) this.unit = units[0] ?? "";
    const parts = [];
    if (this.figures.length > 1) {
      /** @type {[string, string][]} */
      const names = this.figures.map((figure, index) => [String(index), `${figure.name}: ${figure.words}`]);
      names.unshift(["-1", "Choose"]);
      names.push([String(names.length - 1), "None of these: the label decides"]);
      parts.push(field("Judge against", select(names, String(this.chosen), (value) => {
        this.chosen = Number(value);
        this.build();
      })));
    }
    if (units.length > 1) {
      const choices = /** @type {[string, string][]} */ (units.map((unit) => [unit, unit]));
      parts.push(field("Unit", select(choices, this.unit, (value) => {
        this.unit = value;
        this.tell();
      })));
    }
    const ranges = this.scale.ranges;
    if (ranges.some((range) => (range.low ?? 0) < 0)) parts.push(button("Minus", () => this.negate()));
    if (units.some((unit) => unit.endsWith("\u03a9"))) parts.push(button("Meter shows over range", () => this.overRange()));
    this.tools.replaceChildren(...parts);
    const own = this.figure && (this.all.length > 1 || this.figure !== this.all[0]) && `${this.figure.name}: ${this.figure.words}`;
    this.expect?.replaceChildren(...(own ? [own] : this.everyone));
    this.tell();
  }

  negate() {
    this.input.value = this.input.value.startsWith("-") ? this.input.value.slice(1) : `-${this.input.value}`;
    this.input.focus();
    this.tell();
  }

  overRange() {
    this.over = true;
    this.input.value = "";
    this.tell();
  }

  /** What was read and what it is judged against; null where nothing sensible was typed. */
  read() {
    const value = number(this.input.value);
    if (!this.over && value === null) return null;
    const { unit, ranges } = this.scale;
    const figure = this.figure;
    const reading = this.over ? { over: true, unit: this.unit } : { value, unit: this.unit };
    const device = figure?.device ? { device: figure.device } : {};
    return { reading, expected: figure && ranges.length ? { words: figure.words, unit, ranges, ...device } : undefined };
  }

  tell() {
    const typed = this.input.value.trim();
    const made = this.read();
    this.input.removeAttribute("aria-invalid");
    this.press.replaceChildren();
    this.verdict.className = "ls-verdict";
    if (!made) {
      this.verdict.textContent = typed ? "That is no number. Type it as 2.2 or 2,2." : "";
      if (typed) this.input.setAttribute("aria-invalid", "true");
      return;
    }
    if (this.chosen < 0 && this.figures.length) {
      this.verdict.textContent = "Choose what to judge it against.";
      return;
    }
    const { reading, expected } = made;
    const verdict = judge(/** @type {any} */ (reading), expected);
    this.verdict.classList.add(`ls-is-${verdict ?? "read"}`);
    const said = shown(/** @type {any} */ (reading));
    if (verdict === "outside") {
      const what = [...(this.outside?.childNodes ?? [])].map((node) => node.cloneNode(true));
      this.verdict.replaceChildren(h("strong", {}, "Outside: "), `${said}, expected ${expected?.words}. `, ...what);
      this.press.append(
        button("Save: outside, a problem", () => this.save("problem", reading, expected)),
        button("Done all the same", () => this.explain(reading, expected), { class: "ls-button ls-quiet" }),
      );
      return;
    }
    const about = expected ? `expected ${expected.words}.` : "no figure here to judge it by. The label on the part decides.";
    this.verdict.replaceChildren(h("strong", {}, expected ? "Inside: " : "Read: "), `${said}, ${about}`);
    if (expected && this.figure?.note) this.verdict.append(` ${this.figure.note}`);
    this.press.append(button(expected ? "Save: inside, done" : "Save: read, done", () => this.save("done", reading, expected)));
  }

  /** Forget what was typed. */
  clear() {
    this.input.value = "";
    this.over = false;
    this.tell();
  }
}

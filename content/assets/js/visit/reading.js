/** A reading: typed with comma or point, judged at once against what it should be, and told what to do if outside. */
import { button, field, fill, h, select } from "../core/dom.js";
import { figuresOf, judge, readingOf, scales, shown } from "./entries.js";

/**
 * @typedef {import("./entries.js").Range} Range
 * @typedef {{unit: string, ranges: Range[]}} Scale what is good, in one unit
 * @typedef {{name: string, words: string, note: string | null, scales: Scale[]}} Limits
 * @typedef {Limits & {device: string | null}} Figure what to judge by, for a device or for all
 * @typedef {{reading: import("./entries.js").Reading, expected?: import("./entries.js").Expected}} Judged
 */

const NONE = { unit: "", ranges: [] };

/** The same figure of two devices is one figure. @param {Figure[]} figures */
function together(figures) {
  /** @type {Map<string, Figure>} */
  const byWords = new Map();
  for (const figure of figures) {
    const same = byWords.get(figure.words);
    const both = same && { ...same, device: null, name: `${same.name}, ${figure.name}`, note: null };
    byWords.set(figure.words, both ?? figure);
  }
  return [...byWords.values()];
}

/** The reading of one item. */
export class Reading {
  /**
   * @param {HTMLElement} place the part of the page that holds the measurement
   * @param {(outcome: "done" | "problem", judged: Judged) => Promise<void>} save
   * @param {(judged: Judged) => void} explain asks why a reading outside counts as done
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
      const name = "Planned for this opening";
      return this.use([{ device: null, name, words: own.words, note: null, scales: scales(own) }]);
    }
    const fitting = this.all.filter(({ device }) => !device || !devices.length || devices.includes(device));
    this.use(together(fitting));
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
    const below = this.scale.ranges.some((range) => (range.low ?? 0) < 0);
    const ohms = units.some((unit) => unit.endsWith("\u03a9"));
    fill(
      this.tools,
      this.figures.length > 1 && this.figureChoice(),
      units.length > 1 && this.unitChoice(units),
      below && button("Minus", () => this.negate()),
      ohms && button("Meter shows over range", () => this.overRange()),
    );
    const own = this.figure && (this.all.length > 1 || this.figure !== this.all[0]);
    this.expect?.replaceChildren(...(own ? [`${this.figure.name}: ${this.figure.words}`] : this.everyone));
    this.tell();
  }

  figureChoice() {
    /** @type {[value: string, words: string][]} */
    const names = this.figures.map((figure, index) => [String(index), `${figure.name}: ${figure.words}`]);
    const none = String(names.length);
    const choices = select(
      [["-1", "Choose"], ...names, [none, "None of these: the label decides"]],
      String(this.chosen),
      (value) => {
        this.chosen = Number(value);
        this.build();
      },
    );
    return field("Judge against", choices);
  }

  /** @param {string[]} units */
  unitChoice(units) {
    const choices = select(
      units.map((unit) => [unit, unit]),
      this.unit,
      (value) => {
        this.unit = value;
        this.tell();
      },
    );
    return field("Unit", choices);
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

  /** What was read and what it is judged against; null where nothing sensible was typed. @returns {Judged | null} */
  read() {
    const reading = readingOf(this.input.value, this.over, this.unit);
    if (!reading) return null;
    const { unit, ranges } = this.scale;
    const { figure } = this;
    const device = figure?.device ? { device: figure.device } : {};
    return {
      reading,
      expected: figure && ranges.length ? { words: figure.words, unit, ranges, ...device } : undefined,
    };
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
    } else if (this.chosen < 0 && this.figures.length) {
      this.verdict.textContent = "Choose what to judge it against.";
    } else this.tellVerdict(made);
  }

  /** @param {Judged} made */
  tellVerdict(made) {
    const { reading, expected } = made;
    const verdict = judge(reading, expected);
    this.verdict.classList.add(`ls-is-${verdict ?? "read"}`);
    if (verdict === "outside") return this.tellOutside(made);
    const about = expected
      ? `expected ${expected.words}.`
      : "no figure here to judge it by. The label on the part decides.";
    const head = h("strong", {}, expected ? "Inside: " : "Read: ");
    this.verdict.replaceChildren(head, `${shown(reading)}, ${about}`);
    if (expected && this.figure?.note) this.verdict.append(` ${this.figure.note}`);
    this.press.append(button(expected ? "Save: inside, done" : "Save: read, done", () => this.save("done", made)));
  }

  /** @param {Judged} made */
  tellOutside(made) {
    const what = [...(this.outside?.childNodes ?? [])].map((node) => node.cloneNode(true));
    const words = `${shown(made.reading)}, expected ${made.expected?.words}. `;
    this.verdict.replaceChildren(h("strong", {}, "Outside: "), words, ...what);
    this.press.append(
      button("Save: outside, a problem", () => this.save("problem", made)),
      button("Done all the same", () => this.explain(made), { class: "ls-button ls-quiet" }),
    );
  }

  /** Forget what was typed. */
  clear() {
    this.input.value = "";
    this.over = false;
    this.tell();
  }
}

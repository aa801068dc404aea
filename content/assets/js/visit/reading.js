/**
 * A reading: typed with comma or point, judged at once against what it should be, and told what to do if outside. It is
 * saved by Enter, when its field is left, and when its item is ticked.
 */
import { inBoth } from "../core/dom.js";
import { around } from "../core/message.js";
import { button, choice, quiet, tools } from "../core/parts.js";
import { reading as message } from "../messages/visit.js";
import { html, nothing, render } from "../vendor/lit-html.js";
import { figuresOf, judge, readingOf, scales, shown } from "./entries.js";
import { tab } from "./store.js";

/**
 * @typedef {import("./entries.js").Range} Range
 * @typedef {{unit: string, ranges: Range[]}} Scale what is good, in one unit
 * @typedef {{name: string, words: string, both?: [string, string], note: string | null, scales: Scale[]}} Limits
 * @typedef {Limits & {device: string | null}} Figure what to judge by, for a device or for all
 * @typedef {{reading: import("./entries.js").Reading, expected?: import("./entries.js").Expected}} Judged
 *
 * @typedef {import("../core/parts.js").Child} Child
 * @typedef {{kind: string, words: Child, presses: Child[]}} Told how a reading is judged, and what can be done with it
 */

const NONE = { unit: "", ranges: [] };
const BLANK = { kind: "", presses: [] };

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

/** A figure with its name, in the reader's units. @param {Figure} figure */
const figureOf = ({ name, words, both }) => around(message.figure, { name, words: both ? inBoth(both) : words });

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
    this.outside = place.closest("[data-item]")?.querySelector(".ls-measure dd:last-of-type") ?? null;
    this.expect = place.querySelector(".ls-expect");
    this.everyone = [...(this.expect?.childNodes ?? [])]; // what is expected of every device, as the page came
    this.place = place;
    this.id = `ls-reading-${place.closest("[data-item]")?.getAttribute("data-item") ?? ""}`;
    this.save = save;
    this.explain = explain;
    this.over = false;
    this.held = false; // nothing can be written here yet
    this.explaining = false; // it is asked why this reading holds
    this.keeping = false; // it is being saved
    this.chosen = 0;
    this.unit = "";
    this.names = "?";
    this.typed = this.id; // under this the tab keeps what is typed and not yet saved
    /** @type {Figure[]} */
    this.figures = [];
    this.input.addEventListener("input", () => {
      this.over = false;
      tab(this.typed, this.input.value);
      this.tell();
    });
    this.input.addEventListener("keydown", (event) => {
      if (event.key === "Enter" && !event.isComposing) this.keep();
    });
    place.addEventListener("focusout", (event) => {
      if (!(event.relatedTarget instanceof Node && place.contains(event.relatedTarget))) this.keep();
    });
    // A press on what belongs to the reading does not leave it, on systems too where buttons take no focus.
    place.addEventListener("mousedown", (event) => {
      if (event.target instanceof Element && event.target.closest("button")) event.preventDefault();
    });
    this.forDevices([]);
  }

  /** Save what was read, as far as it can be judged. Gives back whether there was anything to save. */
  async keep() {
    const made = this.read();
    if (!made || this.held || this.explaining || this.keeping || this.undecided) return this.keeping;
    this.keeping = true;
    const outside = judge(made.reading, made.expected) === "outside";
    await this.save(outside ? "problem" : "done", made).finally(() => {
      this.keeping = false;
    });
    return true;
  }

  /** Whether it is not chosen yet which of several figures it is judged against. */
  get undecided() {
    return this.chosen < 0 && this.figures.length > 0;
  }

  /**
   * Keep the figures of the devices at hand; what was planned for the opening goes before them.
   * @param {string[]} devices @param {Record<string, import("./entries.js").Expected>} [planned]
   */
  forDevices(devices, planned = {}) {
    if (Object.hasOwn(planned, this.measure)) {
      const own = planned[this.measure];
      const name = message.planned();
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
    const own = this.figure && (this.all.length > 1 || this.figure !== this.all[0]);
    this.expect?.replaceChildren(...(own ? figureOf(this.figure) : this.everyone));
    this.tell();
  }

  /** What helps to type it, and what it is judged against. */
  choices() {
    const units = (this.figure ?? this.figures[0])?.scales.map((scale) => scale.unit) ?? [];
    const below = this.scale.ranges.some((range) => (range.low ?? 0) < 0);
    const ohms = units.some((unit) => unit.endsWith("\u03a9"));
    return tools(
      this.figures.length > 1 ? this.figureChoice() : null,
      units.length > 1 ? this.unitChoice(units) : null,
      below ? quiet(message.minus(), () => this.negate()) : null,
      ohms ? quiet(message.overRange(), () => this.overRange()) : null,
    );
  }

  figureChoice() {
    /** @type {[value: string, words: string][]} */
    const names = this.figures.map((figure, index) => [String(index), message.figure(figure)]);
    const none = String(names.length);
    /** @type {[value: string, words: string][]} */
    const all = [["-1", message.choose()], ...names, [none, message.none()]];
    return choice(`${this.id}-figure`, message.judge(), all, String(this.chosen), (value) => {
      this.chosen = Number(value);
      this.build();
    });
  }

  /** @param {string[]} units */
  unitChoice(units) {
    /** @type {[value: string, words: string][]} */
    const all = units.map((unit) => [unit, unit]);
    return choice(`${this.id}-unit`, message.unit(), all, this.unit, (value) => {
      this.unit = value;
      this.tell();
    });
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

  /** Show how it is judged as it stands. */
  tell() {
    const typed = this.input.value.trim();
    const made = this.read();
    if (typed && !made) this.input.setAttribute("aria-invalid", "true");
    else this.input.removeAttribute("aria-invalid");
    const { kind, words, presses } = made ? this.verdict(made) : { ...BLANK, words: typed ? message.noNumber() : "" };
    const held = made && this.held ? html` <strong>${message.held()}</strong>` : nothing;
    const verdict = html`<p class="ls-verdict ${kind}" role="status">${words}${held}</p>`;
    render(html`${this.choices()}${verdict}${tools(...(this.held ? [] : presses))}`, this.place);
  }

  /**
   * Nothing typed at one opening is saved at another; what was typed at this one is there again, after a reload too.
   * @param {import("./bar.js").Place} place
   */
  at({ visit, opening, devices, planned }) {
    this.typed = [location.pathname, this.id, visit, opening].join(" ");
    this.over = false;
    this.input.value = tab(this.typed);
    this.forDevices(devices, planned);
    this.tell();
  }

  /** Offer nothing to save while nothing can be written. @param {boolean} held */
  hold(held) {
    if (held === this.held) return;
    this.held = held;
    this.tell();
  }

  /** @param {Judged} made @returns {Told} */
  verdict(made) {
    if (this.undecided) return { ...BLANK, words: message.chooseFirst() };
    const { reading, expected } = made;
    if (judge(reading, expected) === "outside") return this.outsideVerdict(made);
    const read = shown(reading);
    const about = expected
      ? message.expected({ reading: read, expected: expected.words })
      : message.noFigure({ reading: read });
    const head = html`<strong>${expected ? message.inside() : message.read()}</strong>`;
    const note = expected && this.figure?.note ? ` ${this.figure.note}` : "";
    const words = expected ? message.saveInside() : message.saveRead();
    return {
      kind: expected ? "ls-is-inside" : "ls-is-read",
      words: [head, ` ${about}`, note],
      presses: [button(words, () => this.keep())],
    };
  }

  /** @param {Judged} made @returns {Told} */
  outsideVerdict(made) {
    const what = [...(this.outside?.childNodes ?? [])].map((node) => node.cloneNode(true));
    const about = message.expected({ reading: shown(made.reading), expected: made.expected?.words ?? "" });
    return {
      kind: "ls-is-outside",
      words: [html`<strong>${message.outside()}</strong>`, ` ${about} `, what],
      presses: [
        button(message.saveProblem(), () => this.keep()),
        quiet(message.doneAllTheSame(), () => this.explain(made)),
      ],
    };
  }

  /** Forget what was typed. */
  clear() {
    if (!this.input.value && !this.over) return;
    this.input.value = "";
    tab(this.typed, "");
    this.over = false;
    this.tell();
  }
}

/** One question of the form: its label and help, a control to suit the answer, and what is wrong with what was typed. */
import { button, fill, h, select } from "../core/dom.js";
import { box, finding, read } from "./check.js";
import { at, isNoCode, noteNoCode, put, wayOf } from "./model.js";
import { looksLikeCode } from "../core/words.js";
import { question as message } from "../messages/survey.js";

const WAIT = 300;
const FEW = 7;
let asked = 0;

/**
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Path} Path
 * @typedef {{data: any, typed: Record<string, string>}} Row
 * @typedef {Object} Form what a question needs of the page it stands on
 * @property {(act: (row: Row) => void) => Promise<boolean>} save
 * @property {boolean} imperial
 */

export class Question {
  /** @param {Field} field @param {Path} path @param {Form} form */
  constructor(field, path, form) {
    this.field = field;
    this.path = path;
    this.form = form;
    asked += 1;
    const id = `ls-q-${asked}`;
    /** The unit of a length. */
    this.unit = "";
    /** @type {(unit: string, chosen?: boolean) => void} */
    this.useUnit = () => {};
    /** What was typed and is not stored yet. */
    this.dirty = false;
    /** The text that was said to be no code. */
    this.noCode = "";
    /** What is being stored now. @type {{text: string, unit: string, done: Promise<void>} | null} */
    this.storing = null;
    /** @type {any} */
    this.timer = 0;
    this.said = h("div", { class: "ls-q-said", id: `${id}-said`, "aria-live": "polite" });
    this.open = h("span", { class: "ls-q-open" });
    const about = `${id}-help ${id}-said`;
    const control = this.control({ id, "aria-describedby": about, "aria-required": field.required ? "true" : null });
    const single = Boolean(this.input);
    const name = h(single ? "label" : "p", { class: "ls-q-name", id: `${id}-name`, for: single ? id : null }, field.label, " ", this.open);
    if (!single) for (const [key, value] of [["role", "group"], ["aria-labelledby", `${id}-name`], ["aria-describedby", about]]) control.setAttribute(key, value);
    this.element = h("div", { class: "ls-q", "data-way": wayOf(path) }, name, h("small", { id: `${id}-help` }, field.help), control, this.said);
  }

  /** Show what is stored; what is being typed stays. @param {Row} row */
  show(row) {
    const value = at(row.data, this.path);
    const typed = Object.hasOwn(row.typed, wayOf(this.path)) ? row.typed[wayOf(this.path)] : undefined;
    if (!this.dirty) {
      this.fillIn(value, typed);
      const wrong = typed !== undefined ? (read(this.field, typed, this.unit).fault ?? "") : value !== undefined ? finding(this.field, value) : "";
      if (!wrong && this.suspect(value) && !isNoCode(row.data, this.path)) this.askWhetherCode(value, message.codeKeptOut());
      else this.tell(wrong);
    }
    this.open.textContent = (value !== undefined && typed === undefined) || this.field.extra ? "" : this.field.required ? message.needed() : message.open();
  }

  /** @param {string} wrong @param {...any} more */
  tell(wrong, ...more) {
    fill(this.said, wrong && h("p", { class: "ls-warn" }, wrong), ...more);
    this.element.classList.toggle("ls-wrong", Boolean(wrong));
    if (wrong) this.input?.setAttribute("aria-invalid", "true");
    else this.input?.removeAttribute("aria-invalid");
  }

  /** Move to the control. */
  focus() {
    this.element.scrollIntoView({ block: "center" });
    (this.input ?? this.element.querySelector("button, select"))?.focus({ preventScroll: true });
  }

  /** Store an answer, or what was typed in place of one. @param {any} value @param {string} [typed] */
  async save(value, typed) {
    const way = wayOf(this.path);
    return this.form.save((row) => {
      put(row.data, this.path, value);
      if (this.field.ask === "text") noteNoCode(row.data, this.path, this.suspect(value) && value === this.noCode);
      if (typed === undefined) delete row.typed[way];
      else row.typed[way] = typed;
    });
  }

  /** The control, and how it shows an answer. @param {Record<string, any>} attributes @returns {HTMLElement} */
  control(attributes) {
    const { ask, choices = [] } = this.field;
    this.unit = "";
    /** @type {any} */
    this.input = null;
    /** @type {(value: any, typed?: string) => void} */
    this.fillIn = () => {};
    if (ask === "choice" && choices.length > FEW) return this.long(attributes);
    if (ask === "answer" || ask === "choice") return this.picks(choices);
    const input = this.typing(attributes);
    if (ask === "length") return this.withUnits(input);
    if (choices.length) return this.withWords(input, choices);
    if (!this.field.unit) return input;
    return h("div", { class: "ls-q-typed" }, input, h("span", { class: "ls-unit" }, this.field.unit), this.minus());
  }

  /** A choice of many, as a list that opens. @param {Record<string, any>} attributes */
  long(attributes) {
    const choices = /** @type {[string, string][]} */ ([["", message.choose()], ...(this.field.choices ?? [])]);
    this.input = select(choices, "", (value) => this.save(value || undefined));
    for (const [key, value] of Object.entries(attributes)) if (value) this.input.setAttribute(key, value);
    this.fillIn = (value) => (this.input.value = value ?? "");
    return this.input;
  }

  /** A choice of few, as buttons; the one that is pressed is let go by a second press. @param {[string, string][]} choices */
  picks(choices) {
    const made = choices.map(([word, words]) => button(words, () => this.save(word === this.picked ? undefined : word), { class: "ls-button ls-pick", "aria-pressed": "false" }));
    /** @type {string | undefined} */
    this.picked = undefined;
    this.fillIn = (value) => {
      this.picked = value;
      for (const [index, one] of made.entries()) one.setAttribute("aria-pressed", String(choices[index][0] === value));
    };
    return h("div", { class: this.field.ask === "answer" ? "ls-picks ls-three" : "ls-picks" }, ...made);
  }

  /** A box to type into. @param {Record<string, any>} attributes */
  typing(attributes) {
    const { ask, area, whole, pattern } = this.field;
    const figure = ask === "number" || ask === "length";
    const plain = pattern ? { autocapitalize: "none", spellcheck: "false" } : {};
    const kind = area ? { rows: 3 } : { type: ask === "day" ? "date" : "text", inputmode: figure ? (whole ? "numeric" : "decimal") : null, enterkeyhint: "done" };
    this.input = h(area ? "textarea" : "input", {
      ...attributes, ...kind, ...plain, autocomplete: "off",
      input: () => this.later(), change: () => this.settle(),
      keydown: (/** @type {KeyboardEvent} */ event) => event.key === "Enter" && !area && this.settle(),
    });
    this.fillIn = (value, typed) => (this.input.value = typed ?? value ?? "");
    return this.input;
  }

  /** A length, with its units beside it. @param {HTMLElement} input */
  withUnits(input) {
    const { units = [] } = this.field;
    const usual = () => units[this.form.imperial ? Math.ceil(units.length / 2) : 0];
    const made = units.map((unit) => button(unit, () => this.useUnit(unit, true), { class: "ls-button ls-pick ls-unit", "aria-pressed": "false" }));
    this.useUnit = (/** @type {string} */ unit, /** @type {boolean} */ chosen = false) => {
      this.unit = unit;
      this.input.inputMode = unit === "in" || unit === "ft" ? "text" : "decimal"; // 3/16 wants its stroke
      for (const [index, one] of made.entries()) one.setAttribute("aria-pressed", String(units[index] === unit));
      if (chosen && this.input.value) this.settle(true);
    };
    this.fillIn = (value, typed) => {
      const shown = box(this.field, value, value === undefined && this.unit ? this.unit : usual());
      this.input.value = typed ?? shown.text;
      this.useUnit(shown.unit);
    };
    return h("div", { class: "ls-q-typed" }, input, ...made, this.minus());
  }

  /** A number, or a word in its place. @param {HTMLElement} input @param {[string, string][]} choices */
  withWords(input, choices) {
    const words = this.picks(choices);
    words.setAttribute("role", "group");
    words.setAttribute("aria-label", this.field.label);
    const press = this.fillIn;
    this.fillIn = (value, typed) => {
      press(value);
      this.input.value = typed ?? (typeof value === "number" ? value : "");
    };
    return h("div", { class: "ls-q-typed" }, input, words);
  }

  /** A button for the sign, where a number pad has none. */
  minus() {
    const { signed, min, above } = this.field;
    const negative = signed || (min ?? above ?? 0) < 0;
    return negative && button(message.minus(), () => {
      const text = this.input.value.trim();
      this.input.value = /^[-\u2212\u2013]/.test(text) ? text.slice(1) : `-${text}`;
      this.input.focus();
      this.later();
    }, { class: "ls-button ls-quiet" });
  }

  later() {
    this.dirty = true;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.settle(), WAIT);
  }

  /** Store what was typed. @param {boolean} [anew] even where the text is the same */
  async settle(anew = false) {
    clearTimeout(this.timer);
    /** @type {string} */
    const text = this.input.value;
    if (this.storing?.text === text && this.storing.unit === this.unit) return this.storing.done;
    if (!this.dirty && !anew) return;
    const { value, fault } = read(this.field, text, this.unit);
    if (value !== this.noCode && this.suspect(value)) return this.askWhetherCode(value, message.codeNotStored());
    this.dirty = true;
    this.storing = { text, unit: this.unit, done: this.store(text, value, fault) };
    await this.storing.done;
  }

  /** @param {string} text @param {any} value @param {string} [fault] */
  async store(text, value, fault) {
    const stored = await this.save(value, fault === undefined ? undefined : text);
    this.storing = null;
    if (stored && this.input.value === text) this.dirty = false;
    if (stored) this.tell(fault ?? "");
  }

  /** Whether an answer looks as if it held a code. @param {any} value */
  suspect(value) {
    return this.field.ask === "text" && !this.field.pattern && typeof value === "string" && looksLikeCode(value);
  }

  /** What looks like a code is not stored before somebody says that it is none; the file keeps that. @param {any} text @param {string} why */
  askWhetherCode(text, why) {
    const none = button(message.noCode(), () => {
      this.noCode = text;
      this.settle(true);
    });
    this.tell(why, none);
  }
}

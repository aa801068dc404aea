/** Questions that hold others: a list, a group, and a part of the form that can be folded away. */
import { button, fill, h } from "../core/dom.js";
import { asks, at, concerns, cutOut, open, openWords, put, wayOf } from "./model.js";
import { Question } from "./question.js";
import { parts as message } from "../messages/survey.js";

/**
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Path} Path
 * @typedef {import("./question.js").Form} Form
 * @typedef {import("./question.js").Row} Row
 * @typedef {Question | Group | List | Several} Asking
 */

/** A field as a question. @param {Field} field @param {Path} path @param {Form} form @returns {Asking} */
export function asking(field, path, form) {
  if (field.ask === "list") return field.once && field.item?.ask === "choice" ? new Several(field, path, form) : new List(field, path, form);
  return field.ask === "group" ? new Group(field, path, form) : new Question(field, path, form);
}

/** Fields that stand together; all of them or none. */
export class Group {
  /** @param {Field} field @param {Path} path @param {Form} form */
  constructor(field, path, form) {
    this.field = field;
    this.path = path;
    this.inner = (field.fields ?? []).map((one) => asking(one, [...path, one.name], form));
    /** @type {HTMLElement} */
    this.element = h("fieldset", { class: "ls-q ls-q-group" }, h("legend", { class: "ls-q-name" }, field.label), h("small", {}, field.help), ...this.inner.map((one) => one.element));
  }

  /** @param {Row} row */
  show(row) {
    for (const one of this.inner) one.show(row);
  }

  focus() {
    this.inner[0]?.focus();
  }

  /** @returns {Question[]} */
  get singles() {
    return this.inner.flatMap(singles);
  }
}

/** Several of a kind, added one by one; none of them is an answer too. */
export class List {
  /** @param {Field} field @param {Path} path @param {Form} form */
  constructor(field, path, form) {
    this.field = field;
    this.path = path;
    this.form = form;
    this.item = /** @type {Field} */ (field.item);
    /** @type {Asking[]} */
    this.inner = [];
    this.rows = h("div", {});
    this.open = h("span", { class: "ls-q-open" });
    this.none = button(message.none(), () => this.form.save((row) => put(row.data, path, at(row.data, path) === undefined ? [] : undefined)), { class: "ls-button ls-pick", "aria-pressed": "false" });
    this.more = button(message.add(), () => this.add(), { class: "ls-button ls-pick" });
    this.element = h("fieldset", { class: "ls-q ls-q-group", "data-way": wayOf(path) }, h("legend", { class: "ls-q-name" }, field.label, " ", this.open), h("small", {}, field.help), this.rows, h("div", { class: "ls-picks" }, this.none, this.more));
  }

  async add() {
    const stored = await this.form.save((row) => {
      const list = at(row.data, this.path);
      put(row.data, [...this.path, Array.isArray(list) ? list.length : 0], this.item.ask === "group" ? {} : "");
    });
    if (stored) this.inner.at(-1)?.focus();
  }

  /** @param {Row} row */
  show(row) {
    const list = at(row.data, this.path);
    const size = Array.isArray(list) ? list.length : 0;
    if (size !== this.inner.length) this.build(size);
    for (const one of this.inner) one.show(row);
    this.none.setAttribute("aria-pressed", String(Array.isArray(list) && !size));
    this.none.hidden = size > 0;
    this.more.hidden = size >= (this.field.most ?? Infinity);
    this.open.textContent = list === undefined && !this.field.extra ? message.open() : "";
  }

  /** @param {number} size */
  build(size) {
    this.inner = Array.from({ length: size }, (_, index) => {
      const field = { ...this.item, label: message.numbered({ field: this.field.label, number: index + 1 }) };
      return asking(field, [...this.path, index], this.form);
    });
    const out = (/** @type {number} */ index) => button(message.takeOut({ number: index + 1 }), () => this.form.save((row) => cutOut(row, this.path, index)), { class: "ls-button ls-quiet" });
    fill(this.rows, ...this.inner.flatMap((one, index) => [one.element, out(index)]));
  }

  focus() {
    this.element.scrollIntoView({ block: "center" });
    (this.none.hidden ? this.more : this.none).focus({ preventScroll: true });
  }

  /** @returns {Question[]} */
  get singles() {
    return this.inner.flatMap(singles);
  }
}

/** Some words of a few, each pressed or not; none of them is an answer too. */
export class Several {
  /** @param {Field} field @param {Path} path @param {Form} form */
  constructor(field, path, form) {
    this.field = field;
    const choices = field.item?.choices ?? [];
    /** @param {string} word */
    const press = (word) => form.save((row) => {
      const told = at(row.data, path) ?? [];
      const left = choices.map(([one]) => one).filter((one) => (one === word) !== told.includes(one));
      put(row.data, path, left.length ? left : undefined);
    });
    this.words = choices.map(([word, shown]) => ({ word, button: pick(shown, () => press(word)) }));
    this.none = pick(message.none(), () => form.save((row) => put(row.data, path, at(row.data, path)?.length === 0 ? undefined : [])));
    this.open = h("span", { class: "ls-q-open" });
    this.path = path;
    /** @type {Question[]} */
    this.singles = [];
    this.element = h("fieldset", { class: "ls-q ls-q-group", "data-way": wayOf(path) }, h("legend", { class: "ls-q-name" }, field.label, " ", this.open), h("small", {}, field.help), h("div", { class: "ls-picks" }, ...this.words.map((one) => one.button), this.none));
  }

  /** @param {Row} row */
  show(row) {
    const list = at(row.data, this.path);
    for (const { word, button: made } of this.words) made.setAttribute("aria-pressed", String(Boolean(list?.includes(word))));
    this.none.setAttribute("aria-pressed", String(list?.length === 0));
    this.open.textContent = list === undefined && !this.field.extra ? message.open() : "";
  }

  focus() {
    this.element.scrollIntoView({ block: "center" });
    this.words[0]?.button.focus({ preventScroll: true });
  }
}

/** A button that is pressed or not. @param {string} words @param {() => any} act */
const pick = (words, act) => button(words, act, { class: "ls-button ls-pick", "aria-pressed": "false" });

/** The single questions in one. @param {Asking} one @returns {Question[]} */
export const singles = (one) => (one instanceof Question ? [one] : one.singles);

/** A part of the form: questions under a heading, folded away or not, with a count of what is open. */
export class Part {
  /** @param {string} name @param {Field[]} fields @param {Path} path @param {Form} form @param {boolean} folded */
  constructor(name, fields, path, form, folded) {
    this.fields = fields;
    this.path = path;
    this.asking = fields.map((field) => asking(field, [...path, field.name], form));
    this.state = h("span", { class: "ls-part-state" });
    const elements = this.asking.map((one) => one.element);
    this.element = folded
      ? h("details", { class: "ls-part" }, h("summary", {}, h("strong", {}, name), " ", this.state), ...elements)
      : h("section", { class: "ls-part" }, h("h3", {}, name), ...elements);
    this.folded = folded;
  }

  /** @param {Row} row */
  show(row) {
    for (const one of this.asking) {
      one.element.hidden = !concerns(one.field, row.data);
      one.show(row);
    }
    const left = open(this.fields, row, this.path).length;
    const told = this.fields.filter((field) => at(row.data, [...this.path, field.name]) !== undefined).length;
    this.state.textContent = this.fields.every((field) => field.extra) ? message.answers({ answers: told }) : openWords(left);
  }

  /** Unfold it, where it is folded. */
  unfold() {
    if (this.folded) /** @type {HTMLDetailsElement} */ (this.element).open = true;
  }
}

/** The parts of a group of fields as its marks divide it; what need not be told comes last, folded away. @param {Field[]} fields @param {Form} form */
export function partsOf(fields, form) {
  /** @type {[string, Field[]][]} */
  const groups = [];
  const asked = fields.filter(asks);
  for (const field of asked.filter((one) => !one.extra)) {
    if (field.part || !groups.length) groups.push([field.part ?? message.questions(), []]);
    groups[groups.length - 1][1].push(field);
  }
  const more = asked.filter((field) => field.extra);
  const made = groups.map(([name, group]) => new Part(name, group, [], form, false));
  return more.length ? [...made, new Part(message.more(), more, [], form, true)] : made;
}

/** The way through the open questions of some parts: from the one that was answered last to the next. */
export class Walk {
  /** @param {Part[]} parts @param {HTMLElement} element that holds them */
  constructor(parts, element) {
    this.asked = parts.flatMap((part) => part.asking.map((one) => ({ part, one })));
    this.last = -1;
    element.addEventListener("focusin", (event) => {
      const here = this.asked.findIndex(({ one }) => one.element.contains(/** @type {Node} */ (event.target)));
      if (here >= 0) this.last = here;
    });
  }

  /** Go to the next of the open ones; whether there is one. @param {{path: Path}[]} left @param {boolean} round whether to begin anew at the end */
  next(left, round) {
    const ways = new Set(left.map(({ path }) => wayOf(path)));
    const order = [...this.asked.slice(this.last + 1), ...(round ? this.asked.slice(0, Math.max(this.last, 0)) : [])];
    const found = order.find(({ one }) => ways.has(wayOf(one.path)));
    found?.part.unfold();
    found?.one.focus();
    return Boolean(found);
  }
}

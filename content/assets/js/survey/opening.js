/** One opening of a survey: its questions, and the way to the next. */
import { button, fill, h } from "../core/dom.js";
import { open, openWords, openingFields, openingName } from "./model.js";
import { partsOf, singles, Walk } from "./parts.js";
import { opening as message } from "../messages/survey.js";

/** @typedef {import("./model.js").Survey} Survey */

export class OpeningView {
  /** @param {import("./survey.js").Surveys} all @param {string} key of the survey @param {string} opening */
  constructor(all, key, opening) {
    this.all = all;
    this.key = key;
    this.opening = opening;
    this.fields = openingFields(all.fields);
    this.form = { imperial: false, save: (/** @type {any} */ act) => all.save(key, opening, act) };
    this.parts = partsOf(this.fields, this.form);
    this.title = h("h2", { tabindex: -1 });
    this.count = h("p", { class: "ls-count" });
    this.tools = h("div", { class: "ls-tools" });
    this.element = h("div", {}, button(message.allOpenings(), () => all.open(key), { class: "ls-button ls-quiet" }), this.title, this.count, ...this.parts.map((part) => part.element), this.tools);
    this.walk = new Walk(this.parts, this.element);
    this.shown = false;
  }

  /** @param {Survey} survey */
  show(survey) {
    this.survey = survey;
    const index = survey.openings.findIndex((row) => row.key === this.opening);
    const row = survey.openings[index];
    this.row = row;
    if (!row) return false;
    this.form.imperial = survey.survey.data.units === "imperial";
    for (const part of this.parts) part.show(row);
    if (!this.shown) this.unfoldTold(row);
    fill(this.title, message.numbered({ number: index + 1, opening: openingName(this.fields, row.data, index) }));
    fill(this.count, message.count({ number: index + 1, openings: survey.openings.length, open: openWords(this.left.length) }));
    if (!this.shown) this.layTools(index);
    this.shown = true;
    return true;
  }

  /** What need not be told is shown where it was told. @param {any} row */
  unfoldTold(row) {
    const begun = this.parts.filter((part) => part.fields.some((field) => row.data[field.name] !== undefined));
    for (const part of begun) part.unfold();
  }

  get left() {
    return open(this.fields, /** @type {any} */ (this.row));
  }

  /** @param {number} index */
  layTools(index) {
    const { all, key, survey } = this;
    const after = survey?.openings[index + 1]?.key;
    fill(
      this.tools,
      button(message.copy(), () => all.copy(key, this.opening)),
      button(message.takeAway(), () => all.takeAway(key, this.opening), { class: "ls-button ls-quiet" }),
      after && button(message.next(), () => all.open(key, after), { class: "ls-button ls-quiet" }),
    );
  }

  /** Go to the next question that is open in this opening; whether there is one. */
  next() {
    return this.walk.next(this.left, true);
  }

  /** @returns {import("./question.js").Question[]} */
  get singles() {
    return this.parts.flatMap((part) => part.asking.flatMap(singles));
  }
}

/** One survey: the site, the control unit, the list of openings, and how it leaves the device. */
import { secondPress } from "../core/ask.js";
import { button, fill, h } from "../core/dom.js";
import { listed } from "../core/message.js";
import { leaveBlock } from "./file.js";
import { alike, asks, open as unanswered, openWords, openingFields, openingName } from "./model.js";
import { Part, singles, Walk } from "./parts.js";
import * as store from "./store.js";
import { one as message } from "../messages/survey.js";

/** @typedef {import("./model.js").Survey} Survey */

export class SurveyView {
  /** @param {import("./survey.js").Surveys} all @param {string} key */
  constructor(all, key) {
    this.all = all;
    this.key = key;
    this.inner = openingFields(all.fields);
    this.form = { imperial: false, save: (/** @type {any} */ act) => all.save(key, null, act) };
    const asked = all.fields.filter(asks);
    const bare = asked.filter((field) => field.ask !== "group");
    this.parts = [
      new Part(message.thisSurvey(), bare, [], this.form, true),
      ...asked.filter((field) => field.ask === "group").map((field) => new Part(field.label, (field.fields ?? []).map((one) => (field.extra ? { ...one, extra: true } : one)), [field.name], this.form, true)),
    ];
    this.title = h("h2", { tabindex: -1 });
    this.count = h("p", { class: "ls-count" });
    this.rows = h("ol", { class: "ls-rows ls-walk" });
    this.none = h("p", {});
    this.gone = h("div", { class: "ls-gone", role: "status" });
    this.leave = leaveBlock(all, key);
    /** The opening whose tools are shown. */
    this.unfolded = "";
    const away = secondPress(message.delete(), () => this.question(), message.deleteSure(), () => store.remove(key).then(() => all.open("")));
    this.element = h("div", {}, button(message.allSurveys(), () => all.open(""), { class: "ls-button ls-quiet" }), this.title, this.count, ...this.parts.map((part) => part.element), h("h3", {}, message.walk()), this.none, this.rows, this.gone, this.leave.element, away);
    this.walk = new Walk(this.parts, this.element);
  }

  question() {
    const { survey, openings } = /** @type {Survey} */ (this.survey);
    const asked = survey.filed === survey.changed ? message.deleteAskedSaved : message.deleteAsked;
    return asked({ openings: openings.length });
  }

  /** @param {Survey} survey */
  show(survey) {
    this.survey = survey;
    const { data } = survey.survey;
    this.form.imperial = data.units === "imperial";
    for (const part of this.parts) part.show(survey.survey);
    fill(this.title, data.name || message.noName());
    fill(this.count, message.count({ openings: survey.openings.length, open: openWords(this.all.left(survey)) }));
    const focused = /** @type {HTMLElement | null} */ (document.activeElement)?.dataset?.act;
    const twins = alike(survey.openings);
    fill(this.none, survey.openings.length ? "" : message.none());
    fill(this.rows, ...survey.openings.map((row, index) => this.row(row, index, twins.has(row.key))));
    if (focused) /** @type {HTMLElement | null} */ (this.rows.querySelector(`[data-act="${focused}"]`))?.focus();
    const { last } = survey;
    fill(this.gone, last && h("p", {}, message.takenAway({ opening: openingName(this.inner, last.data, survey.survey.gone.at(-1)?.at ?? 0) })), last && button(message.putBack(), () => this.all.act(() => store.putBack(this.key)), { class: "ls-button ls-quiet" }));
    this.leave.show(survey);
    return true;
  }

  /** @param {any} row @param {number} index @param {boolean} twin */
  row(row, index, twin) {
    const { key } = this;
    const left = unanswered(this.inner, row);
    const name = message.numbered({ number: index + 1, opening: openingName(this.inner, row.data, index) });
    const few = left.length > 0 && left.length < 4;
    const labels = left.map(({ field }) => field.label.toLowerCase());
    const open = openWords(left.length);
    const words = [few ? message.questions({ open, questions: listed(labels, "unit") }) : open, twin && message.twin()];
    const link = h("a", { href: `#s=${key}&o=${row.key}` }, h("strong", {}, name), h("span", {}, words.filter(Boolean).join(" · ")));
    const shown = this.unfolded === row.key;
    const more = button(message.more(), () => {
      this.unfolded = shown ? "" : row.key;
      this.show(/** @type {Survey} */ (this.survey));
    }, { class: "ls-button ls-quiet ls-more", "aria-expanded": String(shown), "aria-label": message.moreFor({ opening: name }), "data-act": `more ${row.key}` });
    return h("li", {}, link, more, shown && this.rowTools(row.key, index));
  }

  /** @param {string} opening @param {number} index */
  rowTools(opening, index) {
    const { all, key } = this;
    const last = /** @type {Survey} */ (this.survey).openings.length - 1;
    const tool = (/** @type {string} */ id, /** @type {string} */ words, /** @type {() => any} */ act, off = false) => button(words, act, { class: "ls-button ls-quiet", disabled: off, "data-act": `${id} ${opening}` });
    return h(
      "div", { class: "ls-tools" },
      tool("copy", message.copy(), () => all.copy(key, opening)),
      tool("up", message.up(), () => all.act(() => store.move(key, opening, -1)), !index),
      tool("down", message.down(), () => all.act(() => store.move(key, opening, 1)), index === last),
      tool("away", message.takeAway(), () => all.takeAway(key, opening)),
    );
  }

  /** Go to the next question that is open, of the site or of an opening. */
  next() {
    const { survey, openings } = /** @type {Survey} */ (this.survey);
    if (this.walk.next(unanswered(this.all.fields, survey), false)) return true;
    const first = openings.find((row) => unanswered(this.inner, row).length);
    if (first) this.all.open(this.key, first.key, true);
    return Boolean(first);
  }

  /** @returns {import("./question.js").Question[]} */
  get singles() {
    return this.parts.flatMap((part) => part.asking.flatMap(singles));
  }
}

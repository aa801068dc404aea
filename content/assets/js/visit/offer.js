/** What was ticked on a list before there was a visit, offered to the visit. */
import { clock, uuid } from "../core/dom.js";
import { button, quiet, tools } from "../core/parts.js";
import { offer as message } from "../messages/visit.js";
import { html, nothing } from "../vendor/lit-html.js";
import { adopted, loosely } from "./adopt.js";
import { view } from "./entries.js";
import * as store from "./store.js";

/** @typedef {import("./bar.js").Place} Place */

export class Offer {
  /** @param {import("./checklist.js").Checklist} list */
  constructor(list) {
    this.list = list;
    /** Answers given without a visit. @type {import("./entries.js").ItemEntry[]} */
    this.answers = [];
  }

  /** Look for answers to the items that are asked here. @param {Place} place */
  async look({ loose, hold, visit, opening }) {
    this.answers = [];
    if (loose || hold) return;
    const { bar, list, items } = this.list;
    const found = loosely(view(await store.entriesOf(bar.loose)), list.id);
    const { place } = bar;
    if (place.visit !== visit || place.opening !== opening) return;
    const asked = new Set(items.filter((item) => item.state !== "foreign").map((item) => item.id));
    this.answers = found.filter((entry) => asked.has(entry.item));
    if (this.answers.length) this.list.render();
  }

  /** @param {Place} place */
  template({ name: visit }) {
    const { length: entries } = this.answers;
    if (!entries) return nothing;
    const at = clock(this.answers.map((entry) => entry.at).sort()[entries - 1]);
    const leave = () => {
      this.answers = [];
      this.list.render();
    };
    const choices = tools(
      button(message.take({ visit }), () => this.take()),
      quiet(message.leave(), leave),
    );
    return html`<p>${message.offered({ entries, at })}</p>${choices}`;
  }

  /** Take them along; without a visit they are taken back, so that no other visit gets them too. */
  async take() {
    const { answers, list } = this;
    const { bar } = list;
    const { visit, opening } = bar.place;
    const said = message.taken({ entries: answers.length });
    if (!(await list.write(adopted(answers, visit, opening, uuid), said))) return;
    this.answers = [];
    const undoes = answers.map((entry) => entry.id);
    const draft = { ...bar.draft({ kind: "undo", undoes, reason: "reset" }), visit: bar.loose };
    await store.add(bar.loose, [draft]).catch((error) => bar.refuse(error));
  }
}

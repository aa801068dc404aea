/** What a reader does in the form: types, presses, adds to lists and takes out of them. */
import { idOf } from "./edits.js";
import { answered, at, cutOut, put } from "./model.js";

/**
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Path} Path
 * @typedef {import("./model.js").Row} Row
 */

export class FormActs {
  /** @param {import("./survey.js").Surveys} page @param {import("./keeper.js").Keeper} keeper */
  constructor(page, keeper) {
    this.page = page;
    this.keeper = keeper;
  }

  /** A question of the row that is shown. @param {Field} field @param {Path} path */
  question(field, path) {
    const { key, opening } = this.page.state;
    return { survey: key, opening: opening || null, field, path };
  }

  /** @param {Field} field @param {Path} path @param {string} text @param {string} unit */
  type(field, path, text, unit) {
    this.keeper.type({ ...this.question(field, path), text, unit });
  }

  /** The typing at a question is over for now: store it. @param {Field} field @param {Path} path */
  settle(field, path) {
    return this.keeper.store(idOf(this.question(field, path)));
  }

  /** @param {Field} field @param {Path} path @param {any} value undefined: no answer any more */
  choose(field, path, value) {
    return this.keeper.choose({ ...this.question(field, path), value });
  }

  /** @param {Field} field @param {Path} path @param {string} text that looks as if it held a code */
  isNoCode(field, path, text) {
    return this.keeper.choose({ ...this.question(field, path), text, isNoCode: true });
  }

  /** A unit is chosen; what stands in the box is in that unit. @param {Field} field @param {Path} path @param {string} unit @param {string} text */
  pickUnit(field, path, unit, text) {
    const question = this.question(field, path);
    this.page.set({ units: { ...this.page.state.units, [idOf(question)]: unit } });
    return text ? this.keeper.choose({ ...question, text, unit }) : undefined;
  }

  /** @param {Field} field @param {Path} path */
  enter(field, path) {
    this.keeper.enter(idOf(this.question(field, path)));
  }

  /** @param {Field} field @param {Path} path */
  leave(field, path) {
    return this.keeper.leave(idOf(this.question(field, path)));
  }

  /** The reader is at a question. @param {string} way */
  reach(way) {
    if (way !== this.page.state.here) this.page.set({ here: way });
  }

  /** Unfold a part of the form, or fold it. @param {string} name @param {boolean} open */
  fold(name, open) {
    const { folds, opening } = this.page.state;
    const key = foldKey(opening, name);
    if (folds[key] !== open) this.page.set({ folds: { ...folds, [key]: open } });
  }

  /** @param {(row: any) => Row} work */
  change(work) {
    const { key, opening } = this.page.state;
    if (opening) return this.keeper.change(key, opening, (_, row) => ({ opening: /** @type {any} */ (work(row)) }));
    return this.keeper.change(key, null, (survey) => ({ survey: /** @type {any} */ (work(survey)) }));
  }

  /** One more in a list. @param {Field} field @param {Path} path */
  async add(field, path) {
    const empty = field.item?.ask === "group" ? {} : "";
    const done = await this.change((row) => {
      const list = at(row.data, path);
      return { ...row, data: put(row.data, [...path, Array.isArray(list) ? list.length : 0], empty) };
    });
    if (done) this.page.lead(`[data-list="${path.join(".")}"] > .ls-one-of:last-of-type`);
  }

  /** None is the answer, or it is let go. @param {Path} path */
  none(path) {
    return this.change((row) => {
      const list = at(row.data, path);
      return answered(row, path, Array.isArray(list) && !list.length ? undefined : []);
    });
  }

  /** One of a list goes, with what was typed for it. @param {Path} path @param {number} index */
  async takeOut(path, index) {
    await this.keeper.settle();
    const { key, opening } = this.page.state;
    const done = await this.change((row) => cutOut(row, path, index));
    if (done) this.keeper.cutOut({ survey: key, opening: opening || null, path }, index);
  }

  /** A word of several is pressed, or let go. @param {Field} field @param {Path} path @param {string} word */
  press(field, path, word) {
    return this.change((row) => {
      const told = at(row.data, path) ?? [];
      const all = (field.item?.choices ?? []).map(([one]) => one);
      const left = all.filter((one) => (one === word) !== told.includes(one));
      return answered(row, path, left.length ? left : undefined);
    });
  }
}

/** What a fold is remembered by. @param {string} opening @param {string} name of the part */
export const foldKey = (opening, name) => `${opening} ${name}`;

/** Brings what is typed and chosen into the store, and the state up to what is stored. */
import { now } from "../core/dom.js";
import { applied, idOf, needsWord, withEdit, withoutEdit, withoutItem } from "./edits.js";
import * as store from "./store.js";

/**
 * @typedef {import("./edits.js").Edit} Edit
 * @typedef {import("./model.js").Row} Row
 * @typedef {Omit<Edit, "state">} Given what was typed or chosen
 * @typedef {Object} Page
 * @property {import("./state.js").State} state
 * @property {(change: Partial<import("./state.js").State>) => void} set
 * @property {(key: string, opening: string | null, work: store.Change) => Promise<void>} change rows, where they are kept
 */

/** Typing is stored once it pauses for so many milliseconds. */
const PAUSE = 300;

export class Keeper {
  /** @param {Page} page */
  constructor(page) {
    this.page = page;
    /** @type {Map<string, ReturnType<typeof setTimeout>>} */
    this.timers = new Map();
    /** @type {Map<string, Promise<void>>} what is being stored, by the id of its question */
    this.storing = new Map();
    /** The question whose box the reader is in. */
    this.focused = "";
    /** What could not be done, to be tried again. @type {(() => Promise<unknown>) | null} */
    this.failed = null;
  }

  get edits() {
    return this.page.state.edits;
  }

  /** @param {Edit} edit */
  put(edit) {
    this.page.set({ edits: withEdit(this.edits, edit), said: "" });
  }

  /** Something was typed. @param {Given} given */
  type(given) {
    const id = idOf(given);
    this.put({ ...given, state: "new" });
    clearTimeout(this.timers.get(id));
    this.timers.set(
      id,
      setTimeout(() => this.store(id), PAUSE),
    );
  }

  /** Something was chosen, or shall be stored at once. @param {Given} given */
  choose(given) {
    this.put({ ...given, state: "new" });
    return this.store(idOf(given));
  }

  /** @param {string} id */
  enter(id) {
    this.focused = id;
  }

  /** The reader has left a box: it is stored, and shown as it was read. @param {string} id */
  async leave(id) {
    this.focused = "";
    if (this.edits.get(id)?.state === "stored") this.drop(id);
    await this.store(id);
  }

  /** @param {string} id */
  drop(id) {
    this.page.set({ edits: withoutEdit(this.edits, id) });
  }

  /** Store what was typed or chosen at a question. @param {string} id @returns {Promise<void>} */
  async store(id) {
    clearTimeout(this.timers.get(id));
    const edit = this.edits.get(id);
    if (!edit || edit.state === "stored" || edit.state === "code") return;
    if (edit.state === "storing") return this.storing.get(id);
    if (needsWord(edit, this.rowOf(edit))) return this.put({ ...edit, state: "code" });
    const done = this.write(id, { ...edit, state: "storing", fault: "" });
    this.storing.set(id, done);
    await done;
  }

  /** @param {string} id @param {Edit} edit */
  async write(id, edit) {
    this.put(edit);
    const { survey: key, opening } = edit;
    const isLast = () => this.edits.get(id) === edit; // nothing else was typed meanwhile
    try {
      const work = opening === null ? siteWith(edit) : openingWith(edit);
      await this.page.change(key, opening, work);
      if (isLast() && this.focused === id) this.put({ ...edit, state: "stored" });
      else if (isLast()) this.drop(id);
      this.page.set({ at: clock(), fault: "" });
    } catch (error) {
      const fault = store.inWords(error);
      if (store.isGone(error)) this.drop(id);
      else if (isLast()) this.put({ ...edit, state: "failed", fault });
      if (store.isGone(error)) this.page.set({ fault });
    }
  }

  /** The row that an edit goes into; an empty one where it is not at hand. @param {Edit} edit @returns {Row} */
  rowOf({ survey: key, opening }) {
    const { survey, trial } = this.page.state;
    if (trial?.survey === key && trial.row.key === opening) return trial.row;
    const there = survey?.survey.key === key ? survey : null;
    return (opening === null ? there?.survey : there?.rows.get(opening)) ?? { data: {}, typed: {} };
  }

  /** The reader goes elsewhere: what is stored shows as it was read. */
  rest() {
    this.focused = "";
    return new Map([...this.edits].filter(([, { state }]) => state !== "stored"));
  }

  /** Store all that was typed. @param {boolean} [again] what could not be stored, too */
  async settle(again = false) {
    const open = [...this.edits].filter(
      ([, { state }]) => state === "new" || state === "storing" || (again && state === "failed"),
    );
    await Promise.all(open.map(([id]) => this.store(id)));
  }

  /** What could not be stored is tried again. */
  async tryAgain() {
    const { failed } = this;
    this.failed = null;
    this.page.set({ fault: "" });
    await this.settle(true);
    await failed?.();
  }

  /**
   * Do what changes the store; whether it is done.
   * @param {() => Promise<unknown>} work
   * @returns {Promise<boolean>}
   */
  async act(work) {
    this.page.set({ running: this.page.state.running + 1, said: "", fault: "" });
    try {
      await work();
      this.page.set({ running: this.page.state.running - 1, at: clock() });
      return true;
    } catch (error) {
      this.failed = () => this.act(work);
      this.page.set({ running: this.page.state.running - 1, fault: store.inWords(error) });
      return false;
    }
  }

  /** Change a survey or an opening of it. @param {string} key @param {string | null} opening @param {store.Change} work */
  change(key, opening, work) {
    return this.act(() => this.page.change(key, opening, work));
  }

  /** What was typed for one that is taken out of a list goes with it. @param {Parameters<typeof withoutItem>[1]} list @param {number} index */
  cutOut(list, index) {
    this.page.set({ edits: withoutItem(this.edits, list, index) });
  }
}

/** @param {Edit} edit @returns {store.Change} */
const siteWith = (edit) => (survey) => ({ survey: applied(survey, edit) });

/** @param {Edit} edit @returns {store.Change} */
const openingWith = (edit) => (_, opening) => ({ opening: applied(opening, edit) });

const clock = () => now().slice(11, 16);

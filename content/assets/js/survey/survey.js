/** The page of surveys: all of them side by side, one of them, or one opening of it. */
import { survey as message } from "../messages/survey.js";
import { Packing } from "../plan/packing.js";
import { Planning } from "../plan/planning.js";
import { NOT_BEGUN } from "../plan/state.js";
import { Trying } from "../plan/trying.js";
import { Visiting } from "../plan/visiting.js";
import { render } from "../vendor/lit-html.js";
import { laySheet } from "../visit/sheet.js";
import { withEdits } from "./edits.js";
import { findingsOf } from "./findings.js";
import { FormActs } from "./form-acts.js";
import { HouseActs, typedBefore } from "./house-acts.js";
import { Keeper } from "./keeper.js";
import { nextOpen, shownParts } from "./layout.js";
import { filed, moved, openIn, openingFields, putBack, surveyOf, takenAway, wayOf, withOpening } from "./model.js";
import { page } from "./page-view.js";
import { blankSheet, surveySheet } from "./sheet.js";
import { firstState, nextWithOpen, shownOpening, wouldLose } from "./state.js";
import * as store from "./store.js";
import { Traffic } from "./traffic.js";

/**
 * @typedef {import("./model.js").Survey} Survey
 * @typedef {import("./state.js").State} State
 */

/** A survey, an opening of it, a question of the one or the other. */
const PLACE = /^#s=([0-9a-f-]{36})(?:&o=([0-9a-f-]{36}))?(?:&f=([a-z_.]+))?$/;

/** Take over the page of surveys. */
export async function start() {
  const root = /** @type {HTMLElement} */ (document.querySelector("[data-ls-survey]"));
  const data = JSON.parse(document.getElementById("survey-form")?.textContent ?? "");
  document.body.classList.add("ls-surveying");
  const standing = await store.start();
  const firm = Boolean(await navigator.storage?.persisted?.().catch(() => false));
  const weight = Number(root.dataset.lsPlans);
  await new Surveys(root, firstState({ ...data, typed: typedBefore(), weight }, { ...standing, firm })).start();
  document.documentElement.dataset.lsReady = "survey";
}

export class Surveys {
  /** @param {HTMLElement} root @param {State} state */
  constructor(root, state) {
    this.root = root;
    this.state = state;
    this.keeper = new Keeper(this);
    this.form = new FormActs(this, this.keeper);
    this.traffic = new Traffic(this, this.keeper);
    this.house = new HouseActs(this);
    this.planning = new Planning(this);
    this.trying = new Trying(this, this.planning.planner);
    const { planner } = this.planning;
    const file = () => this.traffic.file();
    const own = () => this.house.text;
    this.packing = new Packing(this, planner, file, own);
    this.visiting = new Visiting(this, planner, file, own);
    this.hash = "";
    /** Counts the places that were asked for: of two, the later one is shown. */
    this.turn = 0;
    /** Counts the changes that were stored: what was read from the store before one is read again. */
    this.changes = 0;
    this.rendering = false;
    /** Whether the state has changed since it was rendered. */
    this.stale = false;
    /** Whether the next place that is opened begins at its first open question. */
    this.ahead = false;
    /** How far down each place was when it was left, by its address. @type {Map<string, number>} */
    this.depths = new Map();
  }

  async start() {
    const settle = () => this.keeper.settle();
    history.scrollRestoration = "manual"; // what is shown is not there yet when the browser would scroll
    addEventListener("hashchange", () => this.show());
    this.root.addEventListener("click", ({ target }) => {
      const link = target instanceof Element ? target.closest("a") : null;
      if (link?.hash && link.href === location.href) this.arrive(); // the address does not change a second time
    });
    addEventListener("beforeprint", () => this.laySheet());
    addEventListener("pagehide", settle);
    addEventListener("beforeunload", (event) => wouldLose(this.state) && event.preventDefault());
    document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && settle());
    store.onForeignChange((key) => (!this.state.key || key === this.state.key) && this.show());
    await this.show();
  }

  /** @param {Partial<State>} change */
  set(change) {
    this.state = { ...this.state, ...change };
    this.stale = true;
    if (this.rendering) return; // a box that is taken off the page tells that it was left
    this.rendering = true;
    try {
      for (; this.stale; render(page(this.state, this), this.root)) this.stale = false;
    } finally {
      this.rendering = false;
    }
  }

  /** Change rows as they are stored, or as they are tried. @param {string} key @param {string | null} opening @param {store.Change} work */
  async change(key, opening, work) {
    if (this.trying.covers(key, opening)) this.trying.change(work);
    else this.take(key, await store.change(key, opening, work));
  }

  /** Rows of a survey as they are stored now. @param {string} key @param {store.Changed} changed */
  take(key, { survey, opening }) {
    const before = this.state.survey;
    if (before?.survey.key !== key) return;
    this.changes += 1;
    this.setSurvey(surveyOf(survey, opening ? new Map(before.rows).set(opening.key, opening) : before.rows));
  }

  /** @param {Survey | null} survey @param {Partial<State>} [more] */
  setSurvey(survey, more = {}) {
    this.set({ ...more, survey, findings: survey ? findingsOf(this.state.fields, survey) : new Map() });
    this.planning.look();
  }

  /** Go to the list, to a survey or to an opening. @param {string} key @param {string} [opening] @param {boolean} [ahead] to its first open question */
  open(key, opening, ahead = false) {
    const hash = key ? `#s=${key}${opening ? `&o=${opening}` : ""}` : "";
    this.ahead = ahead;
    if (location.hash === hash) this.show();
    else location.hash = hash;
  }

  /** Show what the address names, as it is stored now. */
  async show() {
    const { hash } = location;
    const left = this.hash;
    const hasMoved = hash !== left;
    if (hasMoved) {
      this.depths.set(left, scrollY);
      await this.keeper.settle();
    }
    this.turn += 1;
    const { turn } = this;
    const [, key = "", opening = ""] = PLACE.exec(hash) ?? [];
    const [survey, all] = await this.read(key);
    if (turn !== this.turn) return;
    this.hash = hash;
    const anew = { here: "", tools: "", deleting: false, handed: null, told: "", said: "", begun: NOT_BEGUN };
    this.setSurvey(survey, { ...(hasMoved && { ...anew, edits: this.keeper.rest() }), key, opening, all });
    document.body.classList.toggle("ls-has-bar", Boolean(key));
    if (hasMoved) this.arrive(left);
  }

  /** The survey of a key, or without one all of them. @param {string} key @returns {Promise<[Survey | null, Survey[]]>} */
  async read(key) {
    if (!key) return [null, await store.all()];
    const { changes } = this;
    const survey = await store.load(key);
    return changes === this.changes ? [survey, []] : this.read(key);
  }

  /** Lead the reader to what was opened; from an opening back to where the survey was left. @param {string} [left] address */
  arrive(left) {
    const { ahead, state } = this;
    const depth = left && !state.opening && !ahead ? this.depths.get(location.hash) : undefined;
    scrollTo(0, depth ?? 0);
    const [, , , field] = PLACE.exec(location.hash) ?? [];
    const led = (field && this.leadTo(field)) || (ahead && this.leadOn());
    this.ahead = false;
    if (led || !state.key) return;
    const way = depth !== undefined && PLACE.test(left ?? "") ? `a[href="${left}"]` : "h2";
    /** @type {HTMLElement | null} */ (this.root.querySelector(way))?.focus({ preventScroll: true });
    if (depth === undefined) this.root.scrollIntoView({ block: "start" });
  }

  /** Put the reader at the first control of an element. @param {string} selector @param {ScrollLogicalPosition} [block] */
  lead(selector, block = "center") {
    const element = this.root.querySelector(selector);
    const control = element?.matches("button") ? element : element?.querySelector("input, select, textarea, button");
    element?.scrollIntoView({ block });
    /** @type {HTMLElement | null | undefined} */ (control)?.focus({ preventScroll: true });
  }

  /** Lead to the next open question of what is shown; whether there is one. */
  leadOn() {
    const { fields, survey, here } = this.state;
    const at = shownOpening(this.state);
    if (!survey) return false;
    const inner = at ? openingFields(fields) : fields;
    const parts = shownParts(this.state);
    const next = nextOpen(parts, openIn(inner, at?.row ?? survey.survey), here, Boolean(at));
    return next !== null && this.leadTo(next.way);
  }

  /** Lead to a question of what is shown; whether it is asked there. @param {string} way */
  leadTo(way) {
    const part = shownParts(this.state).find(({ fields, path }) =>
      fields.some(({ name }) => wayOf([...path, name]) === way),
    );
    if (part?.folded) this.form.fold(part.name, true);
    const chosen = `[data-way="${way}"]`;
    if (!part || !this.root.querySelector(chosen)) return false;
    this.lead(chosen);
    return true;
  }

  /** To the next question that is open: here, in the openings that follow, or of the site. */
  async next() {
    await this.keeper.settle();
    const { key, fields, survey } = this.state;
    if (!survey || this.leadOn()) return;
    const next = nextWithOpen(this.state);
    if (next) this.open(key, next.key, true);
    else if (openIn(fields, survey.survey).length) this.again();
    else this.set({ said: message.allAnswered() });
  }

  /** To the open questions of the site, from the first. */
  again() {
    this.set({ here: "" });
    if (this.state.opening) this.open(this.state.key, "", true);
    else this.leadOn();
  }

  /** A new opening: empty, or like another in all that a copy can know. @param {string} [like] */
  async add(like) {
    await this.keeper.settle();
    const { key, survey } = this.state;
    const row = like ? survey?.rows.get(like) : undefined;
    if (like && !row) return;
    const { id: _, spoken: __, ...data } = row?.data ?? {};
    const made = store.newOpening(key, data);
    const done = await this.keeper.change(key, null, (one) => ({
      survey: withOpening(one, made.key, like),
      opening: made,
    }));
    if (done) this.open(key, made.key, !like);
  }

  /** @param {string} opening @param {-1 | 1} by */
  async move(opening, by) {
    const { key } = this.state;
    await this.keeper.change(key, null, (survey) => ({ survey: moved(survey, opening, by) }));
    const order = this.state.survey?.survey.order ?? [];
    const again = by < 0 ? "up" : "down";
    const atEnd = [0, order.length - 1].includes(order.indexOf(opening));
    this.lead(`[data-act="${atEnd ? "more" : again} ${opening}"]`, "nearest");
  }

  /** @param {string} opening */
  async takeAway(opening) {
    const { key } = this.state;
    if (await this.keeper.change(key, null, (survey) => ({ survey: takenAway(survey, opening) }))) this.open(key);
  }

  putBack() {
    return this.keeper.change(this.state.key, null, (survey) => ({ survey: putBack(survey) }));
  }

  /** The file that was handed over is where it was put. */
  async noteFiled() {
    const { key, handed } = this.state;
    if (!handed) return;
    const note = (/** @type {import("./model.js").SurveyRow} */ survey) => ({
      survey: filed(survey, handed.changed, handed.ids),
    });
    if (await this.keeper.change(key, null, note)) this.set({ handed: null, told: message.noted() });
  }

  /** @param {boolean} deleting */
  askDelete(deleting) {
    this.set({ deleting });
    this.lead(deleting ? ".ls-second .ls-tools" : ".ls-second", "nearest");
  }

  async remove() {
    const { key } = this.state;
    if (await this.keeper.act(() => store.remove(key))) this.open("");
  }

  /** What printing prints: the survey that is open, or the blank sheet. */
  laySheet() {
    const { fields, survey, edits, library } = this.state;
    laySheet(survey ? surveySheet(fields, withEdits(survey, edits), library) : blankSheet());
  }

  async print() {
    await this.keeper.settle();
    this.laySheet();
    print();
  }
}

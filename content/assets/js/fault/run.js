/** The guided run on the page of a fault: one check at a time, down to a remedy or to somebody named. */
import { h } from "../core/dom.js";
import { run as message } from "../messages/fault.js";
import { render } from "../vendor/lit-html.js";
import * as store from "../visit/store.js";
import { figuresFor, isTyped, readOf } from "./reading.js";
import { Recorder } from "./record.js";
import { changed, doubtOf, opened, retyped } from "./state.js";
import { standing } from "./steps.js";
import { shownOf } from "./view.js";
import { expectations } from "./words.js";

/**
 * @typedef {import("./steps.js").Event} Event
 * @typedef {import("./steps.js").Standing} Standing
 * @typedef {import("./state.js").Reads} Reads
 * @typedef {import("./reading.js").Typed} Typed
 * @typedef {{id: string, result: string, reads: Reads | undefined, why: import("./state.js").Doubt}} Question
 */

/** Take over the guided run of this page. */
export async function start() {
  const root = /** @type {HTMLElement} */ (document.querySelector("[data-fault-run]"));
  const data = JSON.parse(document.getElementById("fault-data")?.textContent ?? "");
  const run = new Run(root, data, await store.open());
  await run.start();
  document.documentElement.dataset.lsReady = "fault";
}

export class Run {
  /** @param {HTMLElement} root @param {import("./record.js").Fault} data @param {store.Standing} kept */
  constructor(root, data, kept) {
    this.data = data;
    const { prove = "", offTest = "", visits = "./" } = root.dataset;
    this.links = { prove, offTest, visits };
    /** Where the run that is shown is kept. */
    this.key = "";
    this.begun = location.hash === "#find";
    /** @type {string | null} null: not asked yet; empty: not known */
    this.device = null;
    /** @type {Event[]} */
    this.events = [];
    /** @type {Record<string, Typed>} what is typed at each check */
    this.typed = {};
    /** @type {number | null} the step that is open to be answered anew */
    this.changing = null;
    /** @type {Question | null} the answer that is asked about */
    this.doubt = null;
    /** @type {Reads | null} the reading is right: only answers that fit it are shown */
    this.fits = null;
    /** How many steps the last change has taken with it. */
    this.dropped = 0;
    /** What could not be stored, in words. */
    this.lost = "";
    /** Whether an answer is being stored: the next tap waits for the next step. */
    this.busy = false;
    this.record = new Recorder(data, visits, kept, () => this.moved());
    this.place = h("div", { class: "ls-find-step" });
    this.root = root;
    root.replaceChildren(this.place, this.record.element);
  }

  async start() {
    await this.record.start();
    await this.load();
  }

  /** Each opening of a visit has a run of its own; without a visit there is one. */
  get runKey() {
    return `fault-run ${this.data.fault}${this.record.where}`;
  }

  /** The place to write to has changed: show the run of that place. */
  async moved() {
    if (!this.key || this.busy) return;
    if (this.key !== this.runKey) await this.load();
    else this.render();
  }

  /** Take up the run of the place at hand. */
  async load() {
    const key = this.runKey;
    this.key = key;
    const kept = await store.recall(key).catch(() => null);
    if (key !== this.key) return;
    this.take(opened(kept, this.data.listed, (device) => this.problemOf(device ?? this.deviceThere)));
    this.begun ||= this.events.length > 0;
    this.render();
  }

  /** @param {Required<import("./state.js").Kept>} kept */
  take({ device, events, typed }) {
    Object.assign(this, { device, events, typed, changing: null, doubt: null, fits: null });
  }

  /** The device of the opening of the visit, where it can have this fault. */
  get deviceThere() {
    const there = this.record.device;
    return this.data.listed.includes(there) ? there : null;
  }

  /** The device that counts: chosen here, or that of the opening of the visit. */
  get at() {
    return this.device ?? this.deviceThere;
  }

  get asksDevice() {
    return Object.keys(this.data.own).length > 0 && this.at === null && !this.events.length;
  }

  /** @param {string | null} device */
  problemOf(device) {
    return this.data.problems[this.data.own[device ?? ""]] ?? this.data.any;
  }

  get problem() {
    return this.problemOf(this.at);
  }

  get standing() {
    return standing(this.problem, this.events);
  }

  /** The step that is open to be answered anew. */
  get opened() {
    return this.changing === null ? undefined : this.events[this.changing];
  }

  /** What a reading of a check is judged against; null where it measures nothing. @param {string} id */
  figures(id) {
    const stated = expectations(id);
    return stated ? figuresFor(stated, this.at ?? "") : null;
  }

  /** What is typed at a check, as it is judged. @param {string} id */
  read(id) {
    return readOf(this.figures(id) ?? [], this.typed[id]);
  }

  /** The answers of a check that fit, each with its place on the page. @param {string} id */
  answersOf(id) {
    const all = (this.problem.checks.find((one) => one.id === id)?.results ?? []).map((one, index) => ({
      index,
      result: one.id,
    }));
    const against = this.fits && { inside: "outside", outside: "inside" }[this.fits];
    const fitting = all.filter(({ result }) => !against || this.data.reads[id]?.[result] !== against);
    return fitting.length ? fitting : all;
  }

  /** @param {string} id @param {string} result */
  answerNumber(id, result) {
    return this.problem.checks.find((one) => one.id === id)?.results.findIndex((one) => one.id === result) ?? -1;
  }

  render() {
    render(shownOf(this), this.place);
    this.record.element.hidden = !this.begun;
    this.root.classList.toggle("ls-begun", this.begun);
    if (this.begun && !this.asksDevice) this.planAhead(this.standing);
  }

  /** Work out, while nothing else is to do, how it goes on if this one cannot be done. @param {Standing} at */
  planAhead(at) {
    if (at.kind === "end") return;
    const { problem } = this;
    /** @type {Event[]} */
    const events = [...this.events, { do: at.kind === "check" ? "cannot" : "skip", id: at.id }];
    (window.requestIdleCallback ?? setTimeout)(() => standing(problem, events));
  }

  begin() {
    this.begun = true;
    this.render();
    this.lead();
  }

  /** Lead the reader to what is shown now. */
  lead() {
    this.place.querySelector("h3")?.focus({ preventScroll: true });
    this.place.scrollIntoView({ block: "start" });
  }

  /** @param {string} device */
  choose(device) {
    return this.keep([], device);
  }

  /** Start anew; what is written in a visit stays. */
  anew() {
    this.typed = {};
    return this.keep([], null, { leave: true });
  }

  /** @param {string} id @param {Typed} typed */
  type(id, typed) {
    this.typed = { ...this.typed, [id]: typed };
    this.doubt = null;
    this.fits = null;
    this.render();
  }

  /** An answer was tapped: it counts, or is asked about. @param {string} id @param {string} result */
  tap(id, result) {
    const figures = this.figures(id);
    const reads = figures?.length ? this.data.reads[id]?.[result] : undefined;
    const read = this.read(id);
    const typed = isTyped(this.typed[id]) ? { typed: Boolean(read), verdict: read?.verdict ?? null } : null;
    const why = doubtOf(reads, typed);
    if (!why) return this.settle(id, result, read);
    this.doubt = { id, result, reads, why };
    this.render();
    return this.place.querySelector("[role=alert]")?.scrollIntoView({ block: "nearest" });
  }

  /** @param {string} id @param {string} result @param {import("./reading.js").Read | null} read what was read */
  settle(id, result, read) {
    const measured = read ? { reading: read.reading, ...(read.expected && { expected: read.expected }) } : {};
    return this.answer({ do: "check", id, result, ...measured });
  }

  /** The reading is right: show the answers that fit it. */
  trust() {
    this.fits = this.doubt ? (this.read(this.doubt.id)?.verdict ?? null) : null;
    this.doubt = null;
    this.render();
  }

  /** The reading was typed wrong, or not yet: type it. */
  typeAgain() {
    if (!this.doubt) return;
    const { id } = this.doubt;
    const { unit } = this.typed[id] ?? { unit: "" };
    if (this.typed[id]) this.type(id, { text: "", over: false, unit });
    this.doubt = null;
    this.render();
    /** @type {HTMLInputElement | null} */ (this.place.querySelector("#ls-run-reading"))?.focus();
  }

  showAll() {
    this.fits = null;
    this.render();
  }

  /** Open a step that was done, or leave it as it was. @param {number | null} number */
  open(number) {
    Object.assign(this, { changing: number, doubt: null, fits: null, dropped: 0 });
    this.typed = retyped(this.typed, this.opened);
    this.render();
    this.lead();
  }

  /** @param {Event} event */
  answer(event) {
    if (this.changing === null) return this.keep([...this.events, event], this.at);
    const { events, dropped } = changed(this.problem, this.events, this.changing, event);
    return this.keep(events, this.at, { dropped });
  }

  back() {
    this.typed = retyped(this.typed, this.events.at(-1));
    return this.keep(this.events.slice(0, -1), this.device);
  }

  /**
   * Store the steps, here and in the visit, then show what follows.
   * @param {Event[]} steps @param {string | null} device
   * @param {{dropped?: number, leave?: boolean}} [how] `leave`: what is written in the visit stays
   */
  async keep(steps, device, { dropped = 0, leave = false } = {}) {
    if (this.busy) return;
    this.busy = true;
    this.place.setAttribute("aria-busy", "true");
    delete this.root.dataset.kept;
    this.lost = "";
    let events = steps;
    try {
      if (!leave) events = await this.record.turn(this, steps);
      await store.remember(this.key, { device, events, typed: this.typed });
    } catch (error) {
      this.lost = message.notKept({ fault: store.inWords(error) });
    }
    this.busy = false;
    this.take({ device, events, typed: this.typed });
    this.dropped = dropped;
    this.render();
    this.place.removeAttribute("aria-busy");
    this.lead();
    this.root.dataset.kept = String(events.length);
  }
}

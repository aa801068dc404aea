/** The guided run on the page of a fault: one check at a time, down to a remedy or to somebody named. */
import { fill, h } from "../core/dom.js";
import { run as message } from "../messages/fault.js";
import * as store from "../visit/store.js";
import { Recorder } from "./record.js";
import { standing } from "./steps.js";
import { cause, deviceChoice, passedTo, step } from "./view.js";

/**
 * @typedef {import("./steps.js").Event} Event
 * @typedef {import("./steps.js").Standing} Standing
 * @typedef {import("./record.js").Found} Found
 * @typedef {{device: string | null, events: Event[]}} Kept a run as it is remembered
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
    /** Where the run that is shown is kept. */
    this.key = "";
    /** @type {string | null} null: not asked yet; empty: not known */
    this.device = null;
    /** @type {Event[]} */
    this.events = [];
    this.record = new Recorder(data, root.dataset.visits ?? "./", kept, () => this.moved());
    this.place = h("div", { class: "ls-find-step" });
    this.root = root;
    root.replaceChildren(this.place, this.record.element);
    /** Whether an answer is being stored: the next tap waits for the next step. */
    this.busy = false;
    /** What could not be stored, in words. */
    this.lost = "";
    /** @type {string | null} */
    this.shownAt = null;
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
    else if (this.shownAt !== this.at) this.render();
  }

  /** Take up the run of the place at hand. */
  async load() {
    const key = this.runKey;
    this.key = key;
    /** @type {Kept | null | undefined} */
    const kept = await store.recall(key).catch(() => null);
    if (key !== this.key) return;
    const known = !kept?.device || this.data.listed.includes(kept.device);
    const sound = known && Array.isArray(kept?.events) ? kept : null;
    this.device = sound?.device ?? null;
    this.events = sound?.events ?? [];
    const at = standing(this.problem, this.events);
    this.events = this.events.slice(0, at.events); // what an older library asked and this one does not
    this.render();
  }

  get asksDevice() {
    return Object.keys(this.data.own).length > 0;
  }

  /** The device that counts: chosen here, or that of the opening of the visit. */
  get at() {
    const there = this.record.device;
    return this.device ?? (this.data.listed.includes(there) ? there : null);
  }

  get problem() {
    return this.data.problems[this.data.own[this.at ?? ""]] ?? this.data.any;
  }

  render() {
    this.shownAt = this.at;
    if (this.asksDevice && this.at === null && !this.events.length) return fill(this.place, ...deviceChoice(this));
    const at = standing(this.problem, this.events);
    fill(this.place, this.lost && h("p", { class: "ls-warn", role: "alert" }, this.lost), ...step(this, at));
    if (at.kind !== "end") this.planAhead([...this.events, { do: at.kind === "check" ? "cannot" : "skip", id: at.id }]);
  }

  /** Work out, while nothing else is to do, how it goes on if this one cannot be done. @param {Event[]} events */
  planAhead(events) {
    const { problem } = this;
    (window.requestIdleCallback ?? setTimeout)(() => standing(problem, events));
  }

  /** @param {Event} event @param {Found | null} what */
  answer(event, what) {
    const events = [...this.events, event];
    const at = standing(this.problem, events);
    const about = ["check", "cannot"].includes(event.do) ? "check" : "cause";
    const items = what ? [{ item: `${about}-${event.id}`, outcome: outcomeOf(event), ...what }] : [];
    const end = at.kind === "end" ? this.endWords(at) : "";
    if (end && !["gone", "go"].includes(at.why)) {
      const ruled = at.ruledOut.map(cause).join("; ");
      const note = ruled ? message.ruledOut({ causes: ruled }) : message.noneRuledOut();
      items.push({ item: "passed-on", outcome: "problem", words: end, note });
    }
    return this.keep(events, this.at, async () => {
      Object.assign(event, await this.record.write(items, end));
    });
  }

  /** How the run ends, for the record. @param {Standing} at */
  endWords(at) {
    if (at.why === "gone") return message.gone();
    if (at.why === "go") return message.another({ fault: this.data.faults[at.id] });
    return message.passedOn({ who: passedTo(this, at) });
  }

  back() {
    const last = this.events.at(-1);
    return this.keep(this.events.slice(0, -1), this.device, async () => last && this.record.takeBack(last));
  }

  /**
   * Store what `first` writes and the run, then show it.
   * @param {Event[]} events
   * @param {string | null} device
   * @param {() => Promise<void>} [first]
   */
  async keep(events, device, first) {
    if (this.busy) return;
    this.busy = true;
    this.place.setAttribute("aria-busy", "true");
    delete this.root.dataset.kept;
    this.lost = "";
    try {
      await first?.();
      await store.remember(this.key, { device, events });
    } catch (error) {
      this.lost = message.notKept({ fault: store.inWords(error) });
    }
    this.busy = false;
    this.events = events;
    this.device = device;
    this.render();
    this.place.removeAttribute("aria-busy");
    this.place.querySelector("h3")?.focus({ preventScroll: true });
    this.place.scrollIntoView({ block: "start" });
    this.root.dataset.kept = String(events.length);
  }
}

/** What an event is in the record. @param {Event} event @returns {import("./record.js").Answer} */
function outcomeOf(event) {
  if (event.do === "check" || event.gone) return "done";
  return event.do === "pass" || event.do === "skip" ? "problem" : "not-applicable";
}

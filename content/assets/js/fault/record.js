/** The guided run in the record of a visit: its path, readings and remedy become entries like those of a checklist. */
import { h } from "../core/dom.js";
import { record as message } from "../messages/fault.js";
import { VisitBar } from "../visit/bar.js";
import * as store from "../visit/store.js";
import { endOf, findingsOf } from "./findings.js";

/**
 * What the page knows of its fault, as `scripts/latchside/pages/fault_data.py` writes it:
 * @typedef {Object} Fault
 * @property {string} fault its id
 * @property {string} name
 * @property {number} version
 * @property {string} library
 * @property {Record<string, string>} needs set-ups, in words
 * @property {Record<string, string>} who who does what, in words
 * @property {string} to who it is passed on to
 * @property {Record<string, string>} devices names of all devices
 * @property {string[]} listed devices that can have this fault
 * @property {Record<string, Record<string, import("./state.js").Reads>>} reads of a check, which result is a reading
 *   inside what is expected, and which one outside
 * @property {Record<string, string>} faults names of the faults that it may turn out to be
 * @property {import("./plan.js").Problem} any the problem, whatever the device
 * @property {Record<string, number>} own which of `problems` is that of a device
 * @property {import("./plan.js").Problem[]} problems
 *
 * @typedef {import("../visit/entries.js").Answer} Answer
 * @typedef {import("./steps.js").Event} Event
 * @typedef {import("./steps.js").Written} Written
 * @typedef {{words: string, note: string} & Partial<import("../visit/reading.js").Judged>} Found what was done and seen
 * @typedef {Found & {item: string, outcome: Answer}} Finding
 */

/** A step without what was written of it. @param {Event} step @returns {Event} */
const unwritten = ({ visit, entries, ...step }) => step;

/** @param {string} text @param {number} most */
const short = (text, most) => [...text.replace(/\s+/g, " ").trim()].slice(0, most).join("");

export class Recorder {
  /**
   * @param {Fault} data
   * @param {string} visits where the page of visits is
   * @param {store.Standing} kept
   * @param {() => void} changed
   */
  constructor(data, visits, kept, changed) {
    this.data = data;
    this.list = `fault-run-${data.fault}`;
    this.element = h("div", { class: "ls-run" });
    const devices = Object.entries(data.devices);
    const list = { id: this.list, library: data.library, devices, visits };
    this.bar = new VisitBar(this.element, { ...list, per: "opening" }, kept, changed);
  }

  start() {
    return this.bar.start();
  }

  /** The device at the opening that was chosen, where it is known. */
  get device() {
    const { devices } = this.bar.place;
    return devices.length === 1 ? devices[0] : "";
  }

  /** The place of a run: the visit and the opening, or nothing where no visit is open. */
  get where() {
    const { loose, visit, opening } = this.bar.place;
    return loose ? "" : ` ${visit} ${opening ?? ""}`.trimEnd();
  }

  /**
   * Write what was found; nothing where no visit is open.
   * @param {Finding[]} items
   * @param {string} end words of the end, where the run ends with it
   * @returns {Promise<Written>}
   */
  async write(items, end) {
    const { place, shown } = this.bar;
    if (place.loose || !shown.visit || shown.state !== "open") return {}; // the bar says which
    const run = shown.runs.get(`${this.list}|${place.opening ?? ""}`);
    const drafts = items.map((one) => this.draftOf(one, run?.items.get(one.item)?.heads ?? []));
    if (end) {
      const after = (run?.complete ?? []).map((entry) => entry.id);
      drafts.push(this.bar.draft({ kind: "complete", ...this.fields, words: short(end, 300), after }));
    }
    const written = await this.bar.write(drafts);
    return written ? { visit: place.visit, entries: drafts.map((draft) => draft.id) } : {};
  }

  /**
   * Bring the visit from the steps that a run had to those that it has: what holds no more is taken back, what is new
   * is written. The end of a run is written with its last step.
   * @param {import("./run.js").Run} run
   * @param {Event[]} steps
   * @returns {Promise<Event[]>} the steps, each with what was written of it
   */
  async turn(run, steps) {
    const before = run.events;
    const end = endOf(run, steps);
    const ends = new Set([...(endOf(run, before) ? before.slice(-1) : []), ...(end ? steps.slice(-1) : [])]);
    const moved = (/** @type {Event} */ step) => steps.at(-1) !== before.at(-1) && ends.has(step);
    const now = steps.map((step) => (before.includes(step) && moved(step) ? unwritten(step) : step));
    for (const step of before) if (!now.includes(step)) await this.takeBack(step);
    for (const step of now) {
      if (before.includes(step)) continue;
      const last = end && step === now.at(-1);
      const items = [...findingsOf(run, step), ...(last ? end.items : [])];
      Object.assign(step, await this.write(items, last ? end.words : ""));
    }
    return now;
  }

  /** The fields that say which run it was, where. */
  get fields() {
    const name = short(message.list({ fault: this.data.name }), 120);
    const { opening } = this.bar.place;
    return { checklist: this.list, list_name: name, list_version: this.data.version, opening };
  }

  /** @param {Finding} one @param {{id: string}[]} heads what it replaces */
  draftOf({ item, words, outcome, note, reading, expected }, heads) {
    return this.bar.draft({
      kind: "item",
      ...this.fields,
      item,
      words: short(words, 300),
      outcome,
      note: short(note, 500),
      ...(reading && { reading }),
      ...(reading && expected && { expected }),
      after: heads.map((entry) => entry.id),
    });
  }

  /** Take back what an event wrote. @param {Written} event */
  async takeBack({ visit, entries }) {
    if (!visit || !entries?.length) return;
    const draft = { ...this.bar.draft({ kind: "undo", undoes: entries, reason: "undo" }), visit };
    await store.add(visit, [draft]).catch((error) => this.bar.refuse(error));
  }
}

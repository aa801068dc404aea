/** The guided run in the record of a visit: its path, readings and remedy become entries like those of a checklist. */
import { h } from "./dom.js";
import * as store from "./store.js";
import { VisitBar } from "./visit-bar.js";

const short = (/** @type {string} */ text, /** @type {number} */ most) => [...text.replace(/\s+/g, " ").trim()].slice(0, most).join("");

export class Recorder {
  /** @param {any} data of the fault @param {string} visits where the page of visits is @param {{kept: boolean, why: string}} kept @param {() => void} changed */
  constructor(data, visits, kept, changed) {
    this.data = data;
    this.list = `fault-run-${data.fault}`;
    this.element = h("div", { class: "ls-run" });
    const devices = /** @type {[string, string][]} */ (Object.entries(data.devices));
    this.bar = new VisitBar(this.element, { id: this.list, per: "opening", library: data.library, devices, visits }, kept, changed);
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
   * @param {{item: string, words: string, outcome: string, note: string, reading?: any, expected?: any}[]} items
   * @param {string} end words of the end, where the run ends with it
   * @returns {Promise<{visit?: string, entries?: string[]}>}
   */
  async write(items, end) {
    const { place, shown } = this.bar;
    if (place.loose || !shown.visit || shown.state !== "open") return {}; // the bar says which
    const fields = { checklist: this.list, list_name: short(`Fault: ${this.data.name}`, 120), list_version: this.data.version, opening: place.opening };
    const run = shown.runs.get(`${this.list}|${place.opening ?? ""}`);
    const drafts = items.map(({ item, words, outcome, note, reading, expected }) => this.bar.draft("item", {
      ...fields, item, words: short(words, 300), outcome, note: short(note, 500),
      ...(reading && { reading }), ...(reading && expected && { expected }),
      after: (run?.items.get(item)?.heads ?? []).map((entry) => entry.id),
    }));
    if (end) drafts.push(this.bar.draft("complete", { ...fields, words: short(end, 300), after: (run?.complete ?? []).map((entry) => entry.id) }));
    const written = await this.bar.write(drafts);
    return written ? { visit: place.visit, entries: drafts.map((draft) => draft.id) } : {};
  }

  /** Take back what an event wrote. @param {{visit?: string, entries?: string[]}} event */
  async takeBack({ visit, entries }) {
    if (!visit || !entries?.length) return;
    const draft = { ...this.bar.draft("undo", { undoes: entries, reason: "undo" }), visit };
    await store.add(visit, [draft]).catch((error) => this.bar.writes.replaceChildren(h("strong", { class: "ls-warn" }, store.inWords(error))));
  }
}

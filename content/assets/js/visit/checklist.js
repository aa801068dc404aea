/** A checklist as a tool: outcomes, readings, what is open, completion, undo and starting anew. */
import { button, clock, count, fill, h } from "../core/dom.js";
import { VisitBar } from "./bar.js";
import { runKey } from "./entries.js";
import { Item } from "./item.js";
import * as store from "./store.js";

/**
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {import("./entries.js").Run} Run
 * @typedef {import("./bar.js").Place} Place
 * @typedef {import("./bar.js").List & {name: string, version: number}} List
 */

/** Take over the checklist on this page. */
export async function start() {
  const root = /** @type {HTMLElement} */ (document.querySelector("[data-ls-checklist]"));
  const data = root.dataset;
  const pairs = (data.devices ?? "").split(";").filter(Boolean);
  /** @type {List} */
  const list = {
    id: data.lsChecklist ?? "",
    name: data.name ?? "",
    version: Number(data.version),
    per: data.per === "opening" ? "opening" : "site",
    library: data.library ?? "unknown",
    visits: data.visits ?? "./",
    devices: pairs.map((pair) => /** @type {[string, string]} */ (pair.split("="))),
  };
  document.querySelector(".ls-unkept")?.remove();
  const checklist = new Checklist(root, list, await store.open());
  await checklist.bar.start();
  checklist.render();
  document.documentElement.dataset.lsReady = "checklist";
}

/** How many entries one undo may name. */
const MOST_UNDONE = 500;

export class Checklist {
  /** @param {HTMLElement} root @param {List} list @param {store.Standing} kept */
  constructor(root, list, kept) {
    this.list = list;
    this.bar = new VisitBar(root, list, kept, () => this.render());
    this.changedList = h("div", { class: "ls-changed", role: "status" });
    root.append(this.changedList);
    /** @type {NodeListOf<HTMLElement>} */
    const elements = document.querySelectorAll("[data-item]");
    this.items = [...elements].map((element) => new Item(element, this));
    this.points = document.querySelectorAll(".ls-items");
    this.complete = /** @type {HTMLElement} */ (document.querySelector(".ls-complete"));
    this.finish = h("div", { class: "ls-finish" });
    this.press = button("Complete", () => this.declare(this.run), { class: "ls-button ls-main" });
    this.closed = h("p", {});
    this.rows = this.items.map((item) => h("li", {}, h("a", { href: `#${item.element.id}` }, item.words)));
    this.links = h("ul", {}, ...this.rows);
    this.anew = h("div", { class: "ls-anew" }, this.anewButton());
    this.complete.after(this.finish, this.anew);
    this.said = h("p", { class: "ls-said", role: "status" });
    this.where = h("p", { class: "ls-where" });
    this.next = button("Next open item", () => this.goNext(), { class: "ls-button ls-main" });
    this.undo = button("Undo", () => this.takeBackLast(), { class: "ls-button" });
    this.last = -1;
    /** Whether the last line was closed, and the file asked for. */
    this.asked = false;
    const region = { class: "ls-bar", role: "region", "aria-label": "This checklist" };
    const tools = h("div", { class: "ls-tools" }, this.undo, this.next);
    document.body.append(h("div", region, this.where, this.said, tools));
    document.body.classList.add("ls-has-bar");
  }

  /** @returns {Run} */
  get run() {
    return this.bar.shown.runs.get(this.key) ?? { items: new Map(), complete: [] };
  }

  get key() {
    return runKey({ checklist: this.list.id, opening: this.bar.place.opening });
  }

  /** The fields that say which list was run, where. */
  get fields() {
    const { id, name, version } = this.list;
    return { checklist: id, list_name: name, list_version: version, opening: this.bar.place.opening };
  }

  get open() {
    return this.items.filter((item) => item.isOpen);
  }

  /** Show how things stand: worked out from the entries alone. */
  render() {
    const { place } = this.bar;
    const run = this.run;
    for (const item of this.items) item.settle(run.items.get(item.id), place);
    const lastClosed = this.items.findLastIndex((item) => item.isAnswered);
    for (const [index, item] of this.items.entries()) item.render(index < lastClosed, Boolean(place.hold));
    for (const points of this.points) points.classList.toggle("ls-started", run.items.size > 0);
    const open = this.open.length;
    this.where.textContent =
      place.hold || `Writes to: ${place.name}${place.openingName ? `, ${place.openingName}` : ""}`;
    this.next.textContent = open ? `Next open item (${open} left)` : "To the last line";
    this.undo.disabled = !this.lastChange;
    this.renderChanged(run);
    this.renderFinish(run, place);
  }

  /** @param {Run} run */
  renderChanged(run) {
    const heads = [...run.items.values()].flatMap((outcome) => outcome.heads);
    const others = heads.map((entry) => entry.list_version).filter((version) => version !== this.list.version);
    const versions = [...new Set(others)];
    const known = new Set(this.items.map((item) => item.id));
    const gone = [...run.items].filter(([id]) => !known.has(id)).map(([, outcome]) => outcome.heads[0].words);
    const reworded = this.items.filter((item) => item.state === "changed").length;
    if (!versions.length && !gone.length && !reworded) return fill(this.changedList);
    const kept = this.items.filter((item) => item.isAnswered).length;
    const then = `version ${versions.join(", ") || "as now"}, now ${this.list.version}`;
    const outcomes = count(kept, "outcome is", "outcomes are");
    const lines = [`This list has changed since it was filled in (${then}). ${outcomes} kept.`];
    if (reworded) {
      lines.push(
        `${count(reworded, "item reads otherwise now and is", "items read otherwise now and are")} open again.`,
      );
    }
    if (gone.length) lines.push(`No longer on the list, still in the record: ${gone.join("; ")}.`);
    fill(this.changedList, ...lines.map((line) => h("p", {}, line)));
  }

  /** @param {Run} run @param {Place} place */
  renderFinish(run, place) {
    const open = this.open;
    const problems = this.items.filter((item) => item.state === "problem").length;
    const done = !open.length && run.complete.length > 0;
    this.complete.classList.toggle("ls-is-complete", done);
    if (done) {
      const [{ at, by }] = run.complete;
      const words = `Complete, ${clock(at)}${by ? `, ${by}` : ""}.`;
      fill(this.finish, h("p", { class: "ls-outcome" }, words, problems ? ` With ${count(problems, "problem")}.` : ""));
    } else this.nameOpen(open.length, problems, Boolean(place.hold));
    if (done && !this.asked) this.askForFile();
    this.asked = done;
    this.anew.hidden = !this.liveIds.length;
  }

  /**
   * The closed last line, with what is open; only what changed is touched.
   * @param {number} open @param {number} problems @param {boolean} held
   */
  nameOpen(open, problems, held) {
    fill(this.press, problems ? `Complete, with ${count(problems, "problem")}` : "Complete");
    this.press.disabled = open > 0 || held;
    fill(this.closed, open ? `Closed while ${count(open, "item is", "items are")} open:` : "");
    let after = null;
    for (const [index, row] of [...this.rows.entries()].reverse()) {
      const { isOpen } = this.items[index];
      const isThere = row.parentNode === this.links;
      if (isOpen && !isThere) this.links.insertBefore(row, after);
      if (!isOpen && isThere) row.remove();
      if (isOpen) after = row;
    }
    if (this.finish.firstChild !== this.press) this.finish.replaceChildren(this.press, this.closed, this.links);
  }

  /** Starting anew needs a second press. */
  async askAnew() {
    const { secondPress } = await import("../core/ask.js");
    const { openingName } = this.bar.place;
    const question = () => {
      const all = count(this.liveIds.length, "entry", "entries");
      return `This takes back ${all} of this list${openingName ? ` for ${openingName}` : ""}. Undo brings them back.`;
    };
    const again = () => this.anew.replaceChildren(this.anewButton());
    const asking = secondPress("Start this list anew", question, "Take them all back", () => this.reset(), again);
    this.anew.replaceChildren(asking);
    asking.querySelector("button")?.click();
  }

  anewButton() {
    return button("Start this list anew", () => this.askAnew(), { class: "ls-button ls-quiet" });
  }

  /** Once the list is complete, the record should leave the device. */
  async askForFile() {
    const { fileBlock } = await import("./record-file.js");
    const { visit } = this.bar.place;
    this.finish.append(await fileBlock(visit, this.list.library));
  }

  /** Whether an entry belongs to this run. @param {Entry} entry */
  isOurs(entry) {
    return (entry.kind === "item" || entry.kind === "complete") && runKey(entry) === this.key;
  }

  /** Entries of this run that stand, with those they replaced. */
  get liveIds() {
    const { live, ordered } = this.bar.shown;
    return ordered.filter((entry) => live.has(entry.id) && this.isOurs(entry)).map((entry) => entry.id);
  }

  /**
   * The latest change of this run that can be taken back: an outcome, a completion, an item opened again, or a fresh
   * start.
   */
  get lastChange() {
    const { live, ordered } = this.bar.shown;
    const mine = new Set();
    let last = null;
    for (const entry of ordered) {
      const ours = this.isOurs(entry);
      if (ours) mine.add(entry.id);
      const fresh = entry.kind === "undo" && entry.reason !== "undo" && entry.undoes.some((id) => mine.has(id));
      if (live.has(entry.id) && (ours || fresh)) last = entry;
    }
    return last;
  }

  /** Store entries of this run; what is not stored is not shown. @param {store.Draft[]} drafts @param {string} said */
  async write(drafts, said) {
    try {
      await store.add(this.bar.place.visit, drafts);
      this.said.textContent = said;
      return true;
    } catch (error) {
      this.said.replaceChildren(h("strong", { class: "ls-warn" }, store.inWords(error)));
      return false;
    }
  }

  /** @param {string[]} ids @param {"undo" | "open" | "reset"} reason @param {string} said */
  takeBack(ids, reason, said) {
    const drafts = [];
    for (let at = 0; at < ids.length; at += MOST_UNDONE) {
      drafts.push(this.bar.draft({ kind: "undo", undoes: ids.slice(at, at + MOST_UNDONE), reason }));
    }
    return this.write(drafts, said);
  }

  async takeBackLast() {
    const entry = this.lastChange;
    if (entry) await this.takeBack([entry.id], "undo", `Taken back: ${changeOf(entry)}.`);
  }

  reset() {
    return this.takeBack(this.liveIds, "reset", "Started anew. Undo brings everything back.");
  }

  /** @param {Run} run */
  async declare(run) {
    const words = this.complete.dataset.words ?? "Complete";
    const after = run.complete.map((entry) => entry.id);
    await this.write([this.bar.draft({ kind: "complete", ...this.fields, words, after })], "Complete.");
  }

  /** Lead to the next open item after the one last touched; the last line where none is open. */
  goNext() {
    const open = this.items.map((item, index) => (item.isOpen ? index : -1)).filter((index) => index >= 0);
    const index = open.find((at) => at > this.last) ?? open[0];
    if (index === undefined) {
      this.complete.scrollIntoView({ block: "center" });
      this.finish.querySelector("button")?.focus({ preventScroll: true });
      return;
    }
    this.last = index;
    const { element, box } = this.items[index];
    element.scrollIntoView({ block: "end" });
    box.focus({ preventScroll: true });
  }

  /** @param {Item} item */
  touched(item) {
    this.last = this.items.indexOf(item);
  }
}

/** What an entry did, in words. @param {Entry} entry */
function changeOf(entry) {
  if (entry.kind === "item") return entry.words;
  return entry.kind === "complete" ? "completion" : "what was taken back";
}

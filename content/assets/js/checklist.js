/** A checklist as a tool: outcomes, readings, what is open, completion, undo and starting anew. */
import { button, clock, count, fill, h } from "./dom.js";
import { runKey } from "./entries.js";
import { Item } from "./item.js";
import * as store from "./store.js";
import { VisitBar } from "./visit-bar.js";

/** Take over the checklist on this page. */
export async function start() {
  const root = /** @type {HTMLElement} */ (document.querySelector("[data-ls-checklist]"));
  const data = root.dataset;
  const list = {
    id: data.lsChecklist ?? "", name: data.name ?? "", version: Number(data.version), per: data.per ?? "site",
    library: data.library ?? "unknown", visits: data.visits ?? "./",
    devices: /** @type {[string, string][]} */ ((data.devices ?? "").split(";").filter(Boolean).map((pair) => pair.split("="))),
  };
  document.querySelector(".ls-unkept")?.remove();
  const checklist = new Checklist(root, list, await store.open());
  await checklist.bar.start();
  checklist.render();
  document.documentElement.dataset.lsReady = "checklist";
}

class Checklist {
  /** @param {HTMLElement} root @param {any} list @param {{kept: boolean, why: string}} kept */
  constructor(root, list, kept) {
    this.list = list;
    this.bar = new VisitBar(root, list, kept, () => this.render());
    this.changedList = h("div", { class: "ls-changed", role: "status" });
    root.append(this.changedList);
    this.items = [...document.querySelectorAll("[data-item]")].map((element) => new Item(/** @type {HTMLElement} */ (element), this));
    this.points = document.querySelectorAll(".ls-items");
    this.complete = /** @type {HTMLElement} */ (document.querySelector(".ls-complete"));
    this.finish = h("div", { class: "ls-finish" });
    this.press = button("Complete", () => this.declare(this.run), { class: "ls-button ls-main" });
    this.closed = h("p", {});
    this.links = h("ul", {}, ...this.items.map((item) => h("li", {}, h("a", { href: `#${item.element.id}` }, item.words))));
    this.rows = [...this.links.children];
    this.anew = h("div", { class: "ls-anew" }, this.anewButton());
    this.complete.after(this.finish, this.anew);
    this.said = h("p", { class: "ls-said", role: "status" });
    this.where = h("p", { class: "ls-where" });
    this.next = button("Next open item", () => this.goNext(), { class: "ls-button ls-main" });
    this.undo = button("Undo", () => this.takeBackLast(), { class: "ls-button" });
    this.last = -1;
    document.body.append(h("div", { class: "ls-bar", role: "region", "aria-label": "This checklist" }, this.where, this.said, h("div", { class: "ls-tools" }, this.undo, this.next)));
    document.body.classList.add("ls-has-bar");
  }

  /** @returns {import("./entries.js").Run} */
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
    this.items.forEach((item, index) => item.render(index < lastClosed, Boolean(place.hold)));
    for (const points of this.points) points.classList.toggle("ls-started", run.items.size > 0);
    const open = this.open.length;
    this.where.textContent = place.hold || `Writes to: ${place.name}${place.openingName ? `, ${place.openingName}` : ""}`;
    this.next.textContent = open ? `Next open item (${open} left)` : "To the last line";
    this.undo.disabled = !this.lastChange;
    this.renderChanged(run);
    this.renderFinish(run, place);
  }

  /** @param {import("./entries.js").Run} run */
  renderChanged(run) {
    const heads = [...run.items.values()].flatMap((outcome) => outcome.heads);
    const versions = [...new Set(heads.map((entry) => /** @type {any} */ (entry).list_version))].filter((version) => version !== this.list.version);
    const known = new Set(this.items.map((item) => item.id));
    const gone = [...run.items].filter(([id]) => !known.has(id)).map(([, outcome]) => /** @type {any} */ (outcome.heads[0]).words);
    const reworded = this.items.filter((item) => item.state === "changed").length;
    if (!versions.length && !gone.length && !reworded) return fill(this.changedList);
    const kept = this.items.filter((item) => item.isAnswered).length;
    const lines = [`This list has changed since it was filled in (version ${versions.join(", ") || "as now"}, now ${this.list.version}). ${count(kept, "outcome is", "outcomes are")} kept.`];
    if (reworded) lines.push(`${count(reworded, "item reads otherwise now and is", "items read otherwise now and are")} open again.`);
    if (gone.length) lines.push(`No longer on the list, still in the record: ${gone.join("; ")}.`);
    fill(this.changedList, ...lines.map((line) => h("p", {}, line)));
  }

  /** @param {import("./entries.js").Run} run @param {import("./visit-bar.js").Place} place */
  renderFinish(run, place) {
    const open = this.open;
    const problems = this.items.filter((item) => item.state === "problem").length;
    const done = !open.length && run.complete.length > 0;
    this.complete.classList.toggle("ls-is-complete", done);
    if (done) {
      const [entry] = run.complete;
      fill(this.finish, h("p", { class: "ls-outcome" }, `Complete, ${clock(entry.at)}${entry.by ? `, ${entry.by}` : ""}.`, problems ? ` With ${count(problems, "problem")}.` : ""));
    } else this.nameOpen(open.length, problems, Boolean(place.hold));
    if (done && !this.asked) this.askForFile();
    this.asked = done;
    this.anew.hidden = !this.liveIds.length;
  }

  /** The closed last line, with what is open; only what changed is touched. @param {number} open @param {number} problems @param {boolean} held */
  nameOpen(open, problems, held) {
    fill(this.press, problems ? `Complete, with ${count(problems, "problem")}` : "Complete");
    this.press.disabled = open > 0 || held;
    fill(this.closed, open ? `Closed while ${count(open, "item is", "items are")} open:` : "");
    let after = null;
    for (const [index, row] of [...this.rows.entries()].reverse()) {
      const wanted = this.items[index].isOpen;
      if (wanted !== (row.parentNode === this.links)) wanted ? this.links.insertBefore(row, after) : row.remove();
      if (wanted) after = row;
    }
    if (this.finish.firstChild !== this.press) this.finish.replaceChildren(this.press, this.closed, this.links);
  }

  /** Starting anew needs a second press. */
  async askAnew() {
    const { secondPress } = await import("./ask.js");
    const { openingName } = this.bar.place;
    const question = () => `This takes back ${count(this.liveIds.length, "entry", "entries")} of this list${openingName ? ` for ${openingName}` : ""}. Undo brings them back.`;
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

  /** Entries of this run that stand, with those they replaced. */
  get liveIds() {
    const { live, ordered } = this.bar.shown;
    return ordered.filter((entry) => live.has(entry.id) && (entry.kind === "item" || entry.kind === "complete") && runKey(entry) === this.key).map((entry) => entry.id);
  }

  /** The latest change of this run that can be taken back: an outcome, a completion, an item opened again, or a fresh start. */
  get lastChange() {
    const { live, ordered } = this.bar.shown;
    const mine = new Set();
    let last = null;
    for (const entry of ordered) {
      const ours = (entry.kind === "item" || entry.kind === "complete") && runKey(entry) === this.key;
      if (ours) mine.add(entry.id);
      const fresh = entry.kind === "undo" && /** @type {any} */ (entry).reason !== "undo" && entry.undoes?.some((id) => mine.has(id));
      if (live.has(entry.id) && (ours || fresh)) last = entry;
    }
    return last;
  }

  /** Store entries of this run; what is not stored is not shown. @param {object[]} drafts @param {string} said */
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
    for (let at = 0; at < ids.length; at += 500) drafts.push(this.bar.draft("undo", { undoes: ids.slice(at, at + 500), reason }));
    return this.write(drafts, said);
  }

  async takeBackLast() {
    const entry = /** @type {any} */ (this.lastChange);
    if (!entry) return;
    const what = entry.kind === "item" ? entry.words : entry.kind === "complete" ? "completion" : "what was taken back";
    await this.takeBack([entry.id], "undo", `Taken back: ${what}.`);
  }

  reset() {
    return this.takeBack(this.liveIds, "reset", "Started anew. Undo brings everything back.");
  }

  /** @param {import("./entries.js").Run} run */
  async declare(run) {
    const words = this.complete.dataset.words ?? "Complete";
    await this.write([this.bar.draft("complete", { ...this.fields, words, after: run.complete.map((entry) => entry.id) })], "Complete.");
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

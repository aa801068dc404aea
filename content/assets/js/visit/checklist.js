/** A checklist as a tool: the items of the device at hand, their outcomes, what is open, and undo. */
import { h } from "../core/dom.js";
import { listed } from "../core/message.js";
import { button } from "../core/parts.js";
import { checklist as message } from "../messages/visit.js";
import { html, nothing, render } from "../vendor/lit-html.js";
import { VisitBar } from "./bar.js";
import { runKey } from "./entries.js";
import { Item } from "./item.js";
import { ListEnd } from "./list-end.js";
import * as store from "./store.js";

/**
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {import("./entries.js").Run} Run
 * @typedef {import("./bar.js").Place} Place
 * @typedef {import("../core/parts.js").Part} Part
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
    /** What became of a list that has changed, what was ticked without a visit, and the bar. */
    this.places = {
      changed: h("div", { class: "ls-changed", role: "status" }),
      offer: h("div", { class: "ls-offer", role: "status" }),
      bar: h("div", { class: "ls-bar", role: "region", "aria-label": message.thisChecklist() }),
    };
    root.append(this.places.changed, this.places.offer);
    /** @type {NodeListOf<HTMLElement>} */
    const elements = document.querySelectorAll("[data-item]");
    this.items = [...elements].map((element) => new Item(element, this));
    this.byDevice = this.items.some((item) => item.only.length > 0);
    /** @type {NodeListOf<HTMLElement>} */
    const sections = document.querySelectorAll(".ls-point");
    this.points = [...sections].map((section) => ({
      section,
      items: this.items.filter((item) => section.contains(item.element)),
    }));
    this.end = new ListEnd(this);
    /** What was ticked before there was a visit, once there is one. @type {import("./offer.js").Offer | null} */
    this.offer = null;
    document.body.append(this.places.bar);
    document.body.classList.add("ls-has-bar");
    /** How the last change went, and whether it was refused. */
    this.said = "";
    this.refused = false;
    /** The item last touched. */
    this.last = -1;
    /** Where the items stood when they were last shown. */
    this.shownAt = "";
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

  /** Whether the items go by the device, and none is chosen. */
  get lacksDevice() {
    const { devices, loose, opening } = this.bar.place;
    return this.byDevice && !devices.length && (loose || opening !== null);
  }

  /** Show how things stand: worked out from the entries alone. */
  render() {
    const { place } = this.bar;
    const run = this.run;
    this.comeTo(place);
    for (const item of this.items) item.settle(run.items.get(item.id), place);
    const lastClosed = this.items.findLastIndex((item) => item.isAnswered);
    for (const [index, item] of this.items.entries()) item.render(index < lastClosed, Boolean(place.hold));
    for (const { section, items } of this.points) {
      section.hidden = items.every((item) => item.state === "foreign");
      section.classList.toggle("ls-started", run.items.size > 0);
    }
    const { changed, offer, bar } = this.places;
    render(this.changes(run), changed);
    render(!run.items.size && this.offer ? this.offer.template(place) : nothing, offer);
    this.end.render(run, place);
    render(this.barParts(place), bar);
  }

  /** The items come to another place: what was typed for the one before is not taken along. @param {Place} place */
  comeTo(place) {
    const at = JSON.stringify([place.visit, place.opening, place.devices, place.planned]);
    if (at === this.shownAt) return;
    this.shownAt = at;
    document.body.classList.toggle("ls-one-device", place.devices.length === 1);
    for (const item of this.items) item.reading?.at(place);
    this.lookForOffer(place);
  }

  /** @param {Place} place */
  async lookForOffer(place) {
    if (!this.offer && !place.loose && !place.hold) this.offer = new (await import("./offer.js")).Offer(this);
    await this.offer?.look(place);
  }

  /** What leads on: to the choice that is wanting, to the next open item, or to the last line. @param {Place} place */
  next({ hold }) {
    const open = this.open.length;
    if (hold || (this.lacksDevice && !this.run.items.size))
      return button(message.choose({ wanted: this.bar.wanted }), () => this.bar.ask(), "ls-main");
    return button(open ? message.nextLeft({ open }) : message.lastLine(), () => this.goNext(), "ls-main");
  }

  /** @param {Place} place */
  barParts(place) {
    const { hold, name: visit, openingName: opening } = place;
    const where = hold || (opening ? message.writesToOpening({ visit, opening }) : message.writesTo({ visit }));
    const undo = this.lastChange && (() => this.takeBackLast());
    return barOf({ where, said: this.said, refused: this.refused, undo, next: this.next(place) });
  }

  /** What became of the list since it was filled in. @param {Run} run */
  changes(run) {
    const heads = [...run.items.values()].flatMap((outcome) => outcome.heads);
    const others = heads.map((entry) => entry.list_version).filter((version) => version !== this.list.version);
    const versions = [...new Set(others)];
    const known = new Set(this.items.map((item) => item.id));
    const gone = [...run.items].filter(([id]) => !known.has(id)).map(([, outcome]) => outcome.heads[0].words);
    const reworded = this.items.filter((item) => item.state === "changed").length;
    if (!versions.length && !gone.length && !reworded) return nothing;
    const kept = this.items.filter((item) => item.isAnswered).length;
    const then = versions.length ? listed(versions.map(String), "unit") : message.versionNow();
    return html`
      <p>${message.changed({ kept, then, now: String(this.list.version) })}</p>
      ${reworded ? html`<p>${message.reworded({ items: reworded })}</p>` : nothing}
      ${gone.length ? html`<p>${message.gone({ items: gone.join("; ") })}</p>` : nothing}
    `;
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
  write(drafts, said) {
    return store.addAndSay(this.bar.place.visit, drafts, said, (words, refused) => this.say(words, refused));
  }

  /** @param {string} said @param {boolean} [refused] */
  say(said, refused = false) {
    this.said = said;
    this.refused = refused;
    render(this.barParts(this.bar.place), this.places.bar);
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
    if (entry) await this.takeBack([entry.id], "undo", message.takenBack({ words: changeOf(entry) }));
  }

  reset() {
    return this.takeBack(this.liveIds, "reset", message.startedAnew());
  }

  /** Close the list. @param {string} words its last line */
  async declare(words) {
    const after = this.run.complete.map((entry) => entry.id);
    await this.write([this.bar.draft({ kind: "complete", ...this.fields, words, after })], message.saidComplete());
  }

  /** Lead to the next open item after the one last touched; the last line where none is open. */
  goNext() {
    const open = this.items.map((item, index) => (item.isOpen ? index : -1)).filter((index) => index >= 0);
    const index = open.find((at) => at > this.last) ?? open[0];
    if (index === undefined) return this.end.goThere();
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

/**
 * The bar of a list: where it writes, what was done last with undo where there is something to take back, what is next.
 * @param {{where: string, said: string, refused: boolean, undo: (() => unknown) | null, next: Part}} shown
 */
export function barOf({ where, said, refused, undo, next }) {
  return html`
    <p class="ls-where">${where}</p>
    <p class="ls-said" role="status">${refused ? html`<strong class="ls-warn">${said}</strong>` : said}</p>
    <div class="ls-tools">
      <button type="button" class="ls-button ls-quiet" ?disabled=${!undo} @click=${undo}>${message.undo()}</button>
      ${next}
    </div>
  `;
}

/** What an entry did, in words. @param {Entry} entry */
function changeOf(entry) {
  if (entry.kind === "item") return entry.words;
  return entry.kind === "complete" ? message.completion() : message.whatWasTakenBack();
}

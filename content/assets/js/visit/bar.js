/** Which visit and opening a checklist writes to: said in words, changed by choice, the same after a reload. */
import { h, now, uuid } from "../core/dom.js";
import { tools } from "../core/parts.js";
import { bar as message } from "../messages/visit.js";
import { html, nothing, render } from "../vendor/lit-html.js";
import { view } from "./entries.js";
import * as store from "./store.js";

/**
 * @typedef {import("../core/parts.js").Part} Part
 *
 * @typedef {Object} Place where changes go
 * @property {string} visit
 * @property {boolean} loose whether it is no visit, but the list of what was run without one
 * @property {string} name of the visit
 * @property {string | null} opening
 * @property {string} openingName
 * @property {string[]} devices device classes at hand; empty where unknown
 * @property {Record<string, import("./entries.js").Expected>} planned figures of this opening: they come first
 * @property {string} hold why nothing can be written, or nothing
 *
 * @typedef {Object} List which list is run: a checklist, or the run of a fault
 * @property {string} id
 * @property {"site" | "opening"} per
 * @property {string} library
 * @property {[id: string, name: string][]} devices
 * @property {string} visits where the page of visits is
 */

export class VisitBar {
  /**
   * @param {HTMLElement} root
   * @param {List} list
   * @param {store.Standing} kept
   * @param {() => void} changed
   */
  constructor(root, list, kept, changed) {
    this.list = list;
    this.kept = kept;
    this.changed = changed;
    /** @type {import("./entries.js").Entry[]} */
    this.entries = [];
    this.shown = view([]);
    /** @type {Set<string>} ids of entries that a file holds */
    this.saved = new Set();
    /** How many readings of the store were begun. */
    this.asked = 0;
    this.reading = false;
    this.loose = "";
    this.visit = "";
    this.opening = "";
    this.device = "";
    this.by = "";
    this.missing = "";
    this.noted = "";
    /** Why the last change was not stored. */
    this.refused = "";
    /** The choices, where they are open. @type {Part | null} */
    this.panel = null;
    this.element = h("div", {});
    /** What keeps the screen on, once it is offered. @type {import("./screen.js").Screen | null} */
    this.screen = null;
    root.append(this.element);
  }

  async start() {
    const asked = new URLSearchParams(location.search);
    const facts = /** @type {(string | undefined)[]} */ (await store.recallAll(["loose", "me", "device", "last"]));
    const [loose, me, device, last] = facts;
    this.loose = loose ?? (await store.once("loose", uuid()).catch(() => uuid()));
    this.by = me ?? "";
    this.device = device ?? "";
    const tab = store.tab("ls-place").split("|");
    await this.goWhere(asked.get("visit") ?? "", asked.get("opening") ?? "", tab, last ?? "");
    history.replaceState(history.state, "", location.pathname + location.hash);
    store.onChange(async (visit, made) => {
      if (visit !== null && visit !== this.visit) return;
      if (made && !this.reading)
        this.take([...this.entries, ...made]); // stored by now, so it need not be read again
      else await this.load();
      this.changed();
    });
  }

  /**
   * Go to the visit that is asked for, else to where this tab or the last one wrote. What can take no entries is passed
   * over, and said where it was asked for: to look at a finished visit does not change where lists write.
   * @param {string} visit @param {string} opening @param {string[]} tab @param {string} last
   */
  async goWhere(visit, opening, tab, last) {
    /** @type {[visit: string, opening: string][]} */
    const ways = [
      [visit, opening || (tab[0] === visit && tab[1]) || ""],
      [tab[0] || last, tab[1] ?? ""],
    ];
    for (const [id, at] of ways.filter(([one]) => one && one !== this.loose)) {
      const seen = view(await store.entriesOf(id));
      if (seen.visit && seen.state === "open") return this.go(id, at);
      if (id === visit) this.missing = seen.visit ? message.archived({ site: seen.visit.site }) : message.missing();
    }
    return this.go(this.loose, "");
  }

  /** @param {string} visit @param {string} opening */
  async go(visit, opening) {
    this.visit = visit;
    this.opening = opening;
    await this.load();
  }

  /** Read the entries of the visit again; the latest reading wins. */
  async load() {
    this.asked += 1;
    const { asked } = this;
    this.reading = true;
    const [entries, exported] = await Promise.all([store.entriesOf(this.visit), store.exported(this.visit)]);
    if (asked !== this.asked) return;
    this.reading = false;
    this.saved = new Set(exported?.ids);
    this.take(entries);
  }

  /** @param {import("./entries.js").Entry[]} entries */
  take(entries) {
    this.shown = view(entries);
    this.entries = this.shown.ordered;
    const { openings } = this;
    if (!openings.some((one) => one.opening === this.opening)) {
      this.opening = this.list.per === "opening" && openings.length === 1 ? openings[0].opening : "";
    }
    const here = `${this.visit}|${this.opening}`;
    if (here !== this.noted) store.tab("ls-place", here);
    this.noted = here;
    this.refused = "";
    this.render();
  }

  /** The openings of the visit that are there. */
  get openings() {
    return [...this.shown.openings.values()].filter((one) => !one.removed);
  }

  /** How many of the entries no file holds. */
  get left() {
    return this.entries.filter((entry) => !this.saved.has(entry.id)).length;
  }

  render() {
    const writes = this.refused ? html`<strong class="ls-warn">${this.refused}</strong>` : this.writes();
    const { panel } = this;
    const toggle = () => this.toggle();
    const change = html`
      <button type="button" class="ls-button ls-quiet" aria-label=${message.changeWhere()}
        aria-expanded=${String(Boolean(panel))} @click=${toggle}>${message.change()}</button>
    `;
    const kept = keptWords(this.kept);
    const rest = html`<p class="ls-unsaved">${this.unsaved()}</p>${tools(this.screen?.template())}`;
    const parts = html`
      <div class="ls-whereto"><p class="ls-writes" role="status">${writes}</p>${change}</div>
      ${this.kept.kept ? nothing : kept}
      <div class="ls-panel" ?hidden=${!panel}>${panel}${panel && rest}${panel && this.kept.kept ? kept : nothing}</div>
    `;
    render(parts, this.element);
  }

  /** Open the choices, where they are not, and lead to the one that is wanting. */
  async ask() {
    if (!this.panel) await this.toggle();
    const control = /** @type {HTMLElement | null} */ (this.element.querySelector(`#ls-place-${this.wanted}`));
    control?.focus();
  }

  /** The choice that is wanting, where one is: of a visit that takes no entries, another visit. */
  get wanted() {
    if (this.visit === this.loose) return "device";
    const { visit, state } = this.shown;
    if (!visit || state !== "open" || this.list.per === "site") return "visit";
    return this.opening ? "device" : "opening";
  }

  unsaved() {
    if (!this.entries.length) return nothing;
    const { left } = this;
    const words = left ? message.unsaved({ entries: left }) : message.saved();
    const href = `${this.list.visits}#v=${this.visit}`;
    return html`${words} <a href=${href}>${left ? message.save() : message.seeAll()}</a>`;
  }

  /** @param {string} visit @param {string} opening */
  async choose(visit, opening) {
    this.missing = "";
    await this.go(visit, opening);
    await store.remember("last", visit).catch(() => {});
    this.build();
    this.changed();
  }

  /** @returns {Place} */
  get place() {
    const loose = this.visit === this.loose;
    const perOpening = this.list.per === "opening" && !loose;
    const opening = perOpening ? this.openings.find((one) => one.opening === this.opening) : undefined;
    const devices = perOpening ? [opening?.device] : this.openings.map((one) => one.device);
    const known = (loose ? [this.device] : devices).filter((device) => typeof device === "string");
    return {
      visit: this.visit,
      loose,
      name: loose ? message.noVisit() : (this.shown.visit?.site ?? message.aVisit()),
      opening: (perOpening && this.opening) || null,
      openingName: opening?.name ?? "",
      devices: [...new Set(known.filter(Boolean))],
      planned: opening?.expected ?? {},
      hold: this.hold(perOpening && !opening),
    };
  }

  /** Why nothing can be written now, or nothing. @param {boolean} noOpening */
  hold(noOpening) {
    if (this.visit !== this.loose && !this.shown.visit) return message.holdMissing();
    if (this.shown.state !== "open") return message.holdArchived();
    return noOpening ? message.holdOpening() : "";
  }

  /**
   * An entry as far as the place and the moment fill it in.
   * @param {store.Said} said
   * @returns {store.Draft}
   */
  draft(said) {
    return { id: uuid(), visit: this.visit, at: now(), by: this.by, library: this.list.library, ...said };
  }

  writes() {
    const { loose, name, openingName, devices, hold } = this.place;
    const device = this.list.devices.find(([id]) => devices.length === 1 && id === devices[0])?.[1];
    const on = { visit: name, date: this.shown.visit?.date ?? "" };
    const dated = openingName ? name : message.visitOn(on);
    const visit = loose ? message.noVisitHere() : dated;
    const missing = this.missing && `${this.missing} `;
    const held = hold && html`<strong class="ls-hold">${hold}</strong>`;
    const lead = openingName || device;
    const names = [lead && html`<strong>${lead}</strong>`, openingName && device, visit].filter(Boolean);
    return [missing, names.map((one, at) => (at ? html` · ${one}` : one)), held];
  }

  async toggle() {
    this.panel = this.panel ? null : html``;
    await this.build();
    this.render();
  }

  /** Show the choices anew, where they are open. */
  async build() {
    if (!this.panel) return;
    const [{ placePanel }, { Screen }] = await Promise.all([import("./place-panel.js"), import("./screen.js")]);
    this.screen ??= new Screen(() => this.render());
    this.panel = await placePanel(this);
    this.render();
  }

  /** Store entries; where that is refused, say so. @param {store.Draft[]} drafts */
  async write(drafts) {
    try {
      await store.add(this.visit, drafts);
      return true;
    } catch (error) {
      this.refuse(error);
      return false;
    }
  }

  /** Say that a change was not stored. @param {unknown} error */
  refuse(error) {
    this.refused = store.inWords(error);
    this.render();
  }

  /** @param {string} device */
  async keepDevice(device) {
    this.device = device;
    await store.remember("device", device).catch(() => {});
    this.render();
    this.changed();
  }
}

/** What is kept, where, in words. @param {store.Standing} standing */
export function keptWords({ kept, why }) {
  if (kept) return html`<p class="ls-kept">${message.kept()}</p>`;
  return html`<p class="ls-kept ls-warn">${message.refused({ why })}</p>`;
}

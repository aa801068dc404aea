/** Which visit and opening a checklist writes to: said in words, changed by choice, the same after a reload. */
import { button, count, fill, h, now, uuid } from "../core/dom.js";
import { merge, view } from "./entries.js";
import * as store from "./store.js";

/**
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
    this.writes = h("p", { class: "ls-writes", role: "status" });
    this.unsaved = h("p", { class: "ls-unsaved" });
    this.panel = h("div", { class: "ls-panel", hidden: true });
    const closed = { class: "ls-button ls-quiet", "aria-expanded": "false" };
    this.change = button("Change where it writes to", () => this.toggle(), closed);
    const tools = h("div", { class: "ls-tools" });
    fill(tools, this.change, wakeButton());
    root.append(this.writes, this.unsaved, tools, this.panel, keptWords(kept));
  }

  async start() {
    const asked = new URLSearchParams(location.search);
    const facts = /** @type {(string | undefined)[]} */ (await store.recallAll(["loose", "me", "device", "last"]));
    const [loose, me, device, last] = facts;
    this.loose = loose ?? (await store.once("loose", uuid()).catch(() => uuid()));
    this.by = me ?? "";
    this.device = device ?? "";
    const tab = store.tab("ls-place").split("|");
    this.visit = asked.get("visit") || tab[0] || last || this.loose;
    this.opening = asked.get("opening") || (tab[0] === this.visit && tab[1]) || "";
    await this.load();
    const { visit, state } = this.shown;
    if (this.visit !== this.loose && (!visit || state !== "open")) {
      const archived = visit && `The visit ${visit.site} is archived. `;
      this.missing = archived ?? "The visit asked for is not on this device. ";
      await this.choose(this.loose, "");
    }
    history.replaceState(history.state, "", location.pathname + location.hash);
    store.onChange(async (visit, made) => {
      if (visit !== null && visit !== this.visit) return;
      if (made && !this.reading)
        this.take(merge(this.entries, made)); // stored by now, so it need not be read again
      else await this.load();
      this.changed();
    });
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
    this.entries = entries;
    this.shown = view(entries);
    const { openings } = this;
    if (!openings.some((one) => one.opening === this.opening)) {
      this.opening = this.list.per === "opening" && openings.length === 1 ? openings[0].opening : "";
    }
    const here = `${this.visit}|${this.opening}`;
    if (here !== this.noted) store.tab("ls-place", here);
    this.noted = here;
    this.sayUnsaved();
    this.say();
  }

  /** The openings of the visit that are there. */
  get openings() {
    return [...this.shown.openings.values()].filter((one) => !one.removed);
  }

  sayUnsaved() {
    if (!this.entries.length) return fill(this.unsaved, "");
    const waiting = this.entries.filter((entry) => !this.saved.has(entry.id)).length;
    const words = waiting ? `${count(waiting, "entry is", "entries are")} only on this device. ` : "Saved as a file. ";
    const where = `${this.list.visits}#v=${this.visit}`;
    fill(this.unsaved, words, h("a", { href: where }, waiting ? "Save it as a file" : "See all of it"));
  }

  /** @param {string} visit @param {string} opening */
  async choose(visit, opening) {
    this.visit = visit;
    this.opening = opening;
    await this.load();
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
      name: loose ? "no visit" : (this.shown.visit?.site ?? "a visit"),
      opening: (perOpening && this.opening) || null,
      openingName: opening?.name ?? "",
      devices: [...new Set(known.filter(Boolean))],
      planned: opening?.expected ?? {},
      hold: this.hold(perOpening && !opening),
    };
  }

  /** Why nothing can be written now, or nothing. @param {boolean} noOpening */
  hold(noOpening) {
    if (this.visit !== this.loose && !this.shown.visit)
      return "This visit is no longer on this device. Choose another.";
    if (this.shown.state !== "open") return "This visit is archived. Choose another.";
    return noOpening ? "Choose the opening first: this list is run once for each." : "";
  }

  /**
   * An entry as far as the place and the moment fill it in.
   * @param {store.Said} said
   * @returns {store.Draft}
   */
  draft(said) {
    return { id: uuid(), visit: this.visit, at: now(), by: this.by, library: this.list.library, ...said };
  }

  say() {
    const { loose, name, openingName, devices, hold } = this.place;
    const device = this.list.devices.find(([id]) => devices.length === 1 && id === devices[0])?.[1];
    const where = loose ? "no visit, this device only" : `${name}, ${this.shown.visit?.date ?? ""}`;
    fill(
      this.writes,
      this.missing,
      "Writes to: ",
      h("strong", {}, where),
      openingName && h("span", {}, " · ", h("strong", {}, openingName)),
      device && ` · ${device}`,
      hold && h("strong", { class: "ls-hold" }, ` ${hold}`),
    );
  }

  async toggle() {
    this.panel.hidden = !this.panel.hidden;
    this.change.setAttribute("aria-expanded", String(!this.panel.hidden));
    if (!this.panel.hidden) await this.build();
  }

  /** Show the choices, where they are open. */
  async build() {
    if (this.panel.hidden) return;
    const { placePanel } = await import("./place-panel.js");
    this.panel.replaceChildren(...(await placePanel(this)));
  }

  /** Store entries; where that is refused, say so. @param {store.Draft[]} drafts */
  async write(drafts) {
    try {
      await store.add(this.visit, drafts);
      return true;
    } catch (error) {
      fill(this.writes, h("strong", { class: "ls-warn" }, store.inWords(error)));
      return false;
    }
  }

  /** @param {string} device */
  async keepDevice(device) {
    this.device = device;
    await store.remember("device", device).catch(() => {});
    this.say();
    this.changed();
  }
}

/** What is kept, where, in words. @param {store.Standing} standing */
export function keptWords({ kept, why }) {
  if (kept) {
    const words = "Stored on this device before it shows. In a private window it goes when the window closes.";
    return h("p", { class: "ls-kept" }, words);
  }
  const refused = `This browser refuses to store anything here (${why}).`;
  const open = "Ticks and readings stay only while this page is open:";
  return h("p", { class: "ls-kept ls-warn" }, `${refused} ${open} print it, or save the file, before you leave it.`);
}

/** A switch that keeps the screen on, where the browser can. */
function wakeButton() {
  if (!("wakeLock" in navigator)) return null;
  /** @type {WakeLockSentinel | null} */
  let lock = null;
  let wanted = false;
  const show = () => {
    const held = lock ? "Screen stays on" : "Screen: the device refuses to stay on";
    press.setAttribute("aria-pressed", String(wanted));
    press.textContent = wanted ? held : "Keep the screen on";
  };
  const take = async () => {
    const seen = wanted && document.visibilityState === "visible";
    lock = seen ? await navigator.wakeLock.request("screen").catch(() => null) : null;
    show();
  };
  const turn = async () => {
    wanted = !wanted;
    if (!wanted) await lock?.release().catch(() => {});
    await take();
  };
  const press = button("Keep the screen on", turn, { class: "ls-button ls-quiet", "aria-pressed": "false" });
  document.addEventListener("visibilitychange", () => wanted && take());
  return press;
}

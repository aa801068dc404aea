/** Which visit and opening a checklist writes to: said in words, changed by choice, the same after a reload. */
import { button, count, fill, h, now, uuid } from "./dom.js";
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
 * @property {Record<string, import("./entries.js").Expected>} planned figures of this opening, which go before those of its device
 * @property {string} hold why nothing can be written, or nothing
 */

export class VisitBar {
  /**
   * @param {HTMLElement} root
   * @param {{id: string, per: string, library: string, devices: [string, string][], visits: string}} list
   * @param {{kept: boolean, why: string}} kept
   * @param {() => void} changed
   */
  constructor(root, list, kept, changed) {
    this.list = list;
    this.kept = kept;
    this.changed = changed;
    /** @type {import("./entries.js").Entry[]} */
    this.entries = [];
    this.shown = view([]);
    this.saved = new Set();
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
    this.change = button("Change where it writes to", () => this.toggle(), { class: "ls-button ls-quiet", "aria-expanded": "false" });
    root.append(this.writes, this.unsaved, h("div", { class: "ls-tools" }, this.change, wakeButton()), this.panel, keptWords(kept));
  }

  async start() {
    const asked = new URLSearchParams(location.search);
    const [loose, me, device, last] = await store.recallAll(["loose", "me", "device", "last"]);
    this.loose = loose ?? (await store.once("loose", uuid()).catch(() => uuid()));
    this.by = me ?? "";
    this.device = device ?? "";
    const tab = store.tab("ls-place").split("|");
    this.visit = asked.get("visit") || tab[0] || last || this.loose;
    this.opening = asked.get("opening") || (tab[0] === this.visit && tab[1]) || "";
    await this.load();
    const known = this.visit === this.loose || (this.shown.visit && this.shown.state === "open");
    if (!known) {
      this.missing = this.shown.visit ? `The visit ${this.shown.visit.site} is archived. ` : "The visit asked for is not on this device. ";
      await this.choose(this.loose, "");
    }
    history.replaceState(history.state, "", location.pathname + location.hash);
    store.onChange(async (visit, made) => {
      if (visit !== null && visit !== this.visit) return;
      if (made && !this.reading) this.take(merge(this.entries, made)); // stored by now, so it need not be read again
      else await this.load();
      this.changed();
    });
  }

  /** Read the entries of the visit again; the latest reading wins. */
  async load() {
    const asked = (this.asked = (this.asked ?? 0) + 1);
    this.reading = true;
    const [entries, exported] = await Promise.all([store.entriesOf(this.visit), store.recall(`exported ${this.visit}`)]);
    if (asked !== this.asked) return;
    this.reading = false;
    this.saved = new Set(exported?.ids);
    this.take(entries);
  }

  /** @param {import("./entries.js").Entry[]} entries */
  take(entries) {
    this.entries = entries;
    this.shown = view(entries);
    const openings = [...this.shown.openings.values()].filter((one) => !one.removed);
    if (!openings.some((one) => one.opening === this.opening)) {
      this.opening = this.list.per === "opening" && openings.length === 1 ? openings[0].opening : "";
    }
    const here = `${this.visit}|${this.opening}`;
    if (here !== this.noted) store.tab("ls-place", (this.noted = here));
    const waiting = entries.filter((entry) => !this.saved.has(entry.id)).length;
    const where = h("a", { href: `${this.list.visits}#v=${this.visit}` }, waiting ? "Save it as a file" : "See all of it");
    fill(this.unsaved, ...(entries.length ? [waiting ? `${count(waiting, "entry is", "entries are")} only on this device. ` : "Saved as a file. ", where] : [""]));
    this.say();
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
    const openings = [...this.shown.openings.values()].filter((one) => !one.removed);
    const opening = openings.find((one) => one.opening === this.opening);
    const perOpening = this.list.per === "opening" && !loose;
    /** @type {string[]} */
    const devices = perOpening ? [opening?.device] : loose ? [this.device] : openings.map((one) => one.device);
    return {
      visit: this.visit, loose, name: loose ? "no visit" : (this.shown.visit?.site ?? "a visit"),
      opening: perOpening ? this.opening || null : null, openingName: perOpening ? (opening?.name ?? "") : "",
      devices: [...new Set(devices.filter(Boolean))], planned: (perOpening && opening?.expected) || {},
      hold: this.hold(perOpening && !opening),
    };
  }

  /** Why nothing can be written now, or nothing. @param {boolean} noOpening */
  hold(noOpening) {
    if (this.visit !== this.loose && !this.shown.visit) return "This visit is no longer on this device. Choose another.";
    if (this.shown.state !== "open") return "This visit is archived. Choose another.";
    return noOpening ? "Choose the opening first: this list is run once for each." : "";
  }

  /** An entry as far as the place and the moment fill it in. @param {string} kind @param {object} fields */
  draft(kind, fields) {
    return { kind, id: uuid(), visit: this.visit, at: now(), by: this.by, library: this.list.library, ...fields };
  }

  say() {
    const { loose, name, openingName, devices, hold } = this.place;
    const device = this.list.devices.find(([id]) => devices.length === 1 && id === devices[0])?.[1];
    fill(
      this.writes, this.missing, "Writes to: ",
      h("strong", {}, loose ? "no visit, this device only" : `${name}, ${this.shown.visit?.date ?? ""}`),
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

  /** Store entries; where that is refused, say so. @param {object[]} drafts */
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

/** What is kept, where, in words. @param {{kept: boolean, why: string}} kept */
export function keptWords({ kept, why }) {
  const words = kept
    ? "Stored on this device before it shows. In a private window it goes when the window closes."
    : `This browser refuses to store anything here (${why}). Ticks and readings stay only while this page is open: print it, or save the file, before you leave it.`;
  return h("p", { class: kept ? "ls-kept" : "ls-kept ls-warn" }, words);
}

/** A switch that keeps the screen on, where the browser can. */
function wakeButton() {
  if (!("wakeLock" in navigator)) return null;
  /** @type {any} */
  let lock = null;
  let wanted = false;
  const show = () => {
    press.setAttribute("aria-pressed", String(wanted));
    press.textContent = wanted ? (lock ? "Screen stays on" : "Screen: the device refuses to stay on") : "Keep the screen on";
  };
  const take = async () => {
    lock = wanted && document.visibilityState === "visible" ? await navigator.wakeLock.request("screen").catch(() => null) : null;
    show();
  };
  const press = button("Keep the screen on", async () => {
    wanted = !wanted;
    if (!wanted) await lock?.release().catch(() => {});
    await take();
  }, { class: "ls-button ls-quiet", "aria-pressed": "false" });
  document.addEventListener("visibilitychange", () => wanted && take());
  return press;
}

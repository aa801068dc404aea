/** One visit on the page of visits: openings, checklists, problems, readings, notes, and how it leaves the device. */
import { ask, reader, secondPress } from "../core/ask.js";
import { button, count, field, fill, form, h, now, refill, select, uuid } from "../core/dom.js";
import { openingAfter, view } from "./entries.js";
import { canLock, lockAway, passphraseForm, unlock } from "./lock.js";
import { faultRuns, found, openingName, signed } from "./page-found.js";
import { lists } from "./page-lists.js";
import { fileBlock, waiting } from "./record-file.js";
import { laySheet, sheet } from "./sheet.js";
import * as store from "./store.js";
import * as more from "./store-visits.js";

/**
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {import("./entries.js").Opening} Opening
 * @typedef {import("./entries.js").VisitEntry} VisitEntry
 */

const QUIET = { class: "ls-button ls-quiet" };
const block = () => h("div", {});

export class VisitPage {
  /** @param {import("./visits.js").Visits} all @param {string} visit @param {HTMLElement} place */
  constructor(all, visit, place) {
    this.all = all;
    this.visit = visit;
    /** @type {Entry[]} */
    this.entries = [];
    this.seen = view([]);
    this.said = h("p", { role: "status", class: "ls-said" });
    /** Openings whose lists were folded or unfolded by hand. @type {Map<string, boolean>} */
    this.unfolded = new Map();
    /** The parts of the page, from top to bottom. */
    this.parts = {
      head: block(),
      openings: block(),
      lists: block(),
      faults: block(),
      problems: block(),
      readings: block(),
      notes: block(),
      leave: block(),
      away: block(),
    };
    this.noteList = h("ul", {});
    /** @type {HTMLElement | null} what asks for the record to be taken along */
    this.file = null;
    this.where = h("p", { class: "ls-where" });
    this.take = button("Take it with you", () => this.goLeave(), { class: "ls-button ls-main" });
    const tools = h("div", { class: "ls-tools" }, this.backButton({}), this.take);
    const region = { class: "ls-bar", role: "region", "aria-label": "This visit" };
    this.bar = h("div", region, this.where, this.said, tools);
    place.replaceChildren(this.backButton(QUIET), ...Object.values(this.parts), this.bar);
    this.opened = false;
  }

  /** @param {{class?: string}} attributes */
  backButton(attributes) {
    return button("All visits", () => this.all.open(""), attributes);
  }

  /** The openings that are there. */
  get openingsThere() {
    return [...this.seen.openings.values()].filter((one) => !one.removed);
  }

  /** @param {Entry[]} entries */
  async show(entries) {
    this.entries = entries;
    this.seen = view(entries);
    const { parts, seen } = this;
    this.bar.hidden = !entries.length;
    if (!entries.length) return this.showMissing();
    const left = await waiting(this.visit, entries);
    const kept = left ? `${count(left, "entry", "entries")} only on this device` : "saved as a file";
    this.where.textContent = `${seen.visit?.site ?? "No visit"}: ${kept}`;
    const archived = seen.state !== "open";
    if (!this.opened && !archived) this.beginWork();
    this.opened = true;
    refill(parts.head, ...this.head());
    refill(parts.openings, ...this.openings(archived));
    fill(parts.lists, ...lists(this, archived));
    fill(parts.faults, ...faultRuns(seen));
    fill(parts.problems, ...found(seen, "Problems", (entry) => entry.outcome === "problem"));
    fill(parts.readings, ...found(seen, "Readings", (entry) => Boolean(entry.reading)));
    const said = seen.notes.map((note) => `${openingName(seen, note.opening)}${note.note} `);
    fill(this.noteList, ...seen.notes.map((note, index) => h("li", {}, said[index], signed(note))));
    await this.showFile();
    refill(parts.away, ...(await this.away(archived)));
  }

  /** The visit that is open here is the one that this tab, and the next tab, writes to. */
  beginWork() {
    if (!store.tab("ls-place").startsWith(this.visit)) store.tab("ls-place", `${this.visit}|`);
    store.remember("last", this.visit).catch(() => {});
    const save = (/** @type {string} */ note) => this.write({ kind: "note", opening: null, note }, "Noted.");
    fill(this.parts.notes, h("h3", {}, "Notes"), this.noteList, ask("A note about this visit", "Save the note", save));
  }

  /** What asks for the record to be taken along, as it stands now. */
  async showFile() {
    const made = await fileBlock(this.visit, this.all.library, () => this.all.show());
    const title = h("h3", {}, "Take it with you");
    if (this.file) this.file.replaceWith(made);
    else
      this.parts.leave.append(
        title,
        made,
        button("Print the sheet", () => this.print()),
      );
    this.file = made;
  }

  print() {
    laySheet(sheet(this.seen, this.all.data, this.all.library));
    print();
  }

  goLeave() {
    this.parts.leave.scrollIntoView({ block: "center" });
    this.parts.leave.querySelector("button")?.focus({ preventScroll: true });
  }

  async showMissing() {
    for (const part of Object.values(this.parts)) part.replaceChildren();
    this.opened = false;
    this.file = null;
    const row = (await more.everything("locked")).find((one) => one.visit === this.visit);
    const words = "This visit is not on this device. Bring it in from its file.";
    if (row) fill(this.parts.head, ...this.lockedParts(row));
    else fill(this.parts.head, h("p", { class: "ls-warn" }, words));
  }

  /** @param {store.Locked} row */
  lockedParts(row) {
    const wipe = secondPress(
      "Wipe the locked visit",
      () => "It goes from this device for good. The file you saved is all that stays.",
      "Wipe it",
      () => more.takeAway(this.visit, new Set()).then(() => this.all.open("")),
    );
    const open = async (/** @type {string} */ words) =>
      (await unlock(row, words)) ? "" : "That is not its passphrase.";
    const title = h("h2", {}, `Locked visit of ${row.date}`);
    return [title, passphraseForm("Passphrase", "Unlock", false, open), wipe];
  }

  /** Store an entry of this visit. @param {store.Said} fields @param {string} said */
  async write(fields, said) {
    const common = { id: uuid(), visit: this.visit, at: now(), by: this.all.by, library: this.all.library };
    try {
      await store.add(this.visit, [{ ...common, ...fields }]);
      this.said.textContent = said;
      return true;
    } catch (error) {
      this.said.replaceChildren(h("strong", { class: "ls-warn" }, store.inWords(error)));
      return false;
    }
  }

  head() {
    const { visit, state } = this.seen;
    if (!visit) return [h("h2", {}, "Lists run without a visit")];
    const archived = h("p", {}, h("strong", {}, "Archived: nothing more is written to it."));
    const change = button("Change name, date or who", () => fill(this.parts.head, this.headForm(visit)), QUIET);
    const when = h("p", {}, `${visit.date}${visit.who ? ` · ${visit.who}` : ""}`);
    return [h("h2", {}, visit.site), when, state === "open" ? change : archived];
  }

  /** @param {VisitEntry} visit */
  headForm(visit) {
    const site = h("input", { type: "text", maxlength: 120, value: visit.site });
    const date = h("input", { type: "date", value: visit.date });
    const who = h("input", { type: "text", maxlength: 120, value: visit.who });
    const warning = h("p", { class: "ls-warn", role: "alert" });
    const read = reader(warning);
    const submit = async () => {
      const texts = read([site, who]);
      if (!texts?.[0] || !date.value) return;
      const after = this.seen.heads.visit;
      const fields = { site: texts[0], date: date.value, who: texts[1], after };
      if (await this.write({ kind: "visit", ...fields }, "Changed.")) fill(this.parts.head, ...this.head());
    };
    return form(
      "ls-ask",
      submit,
      field("A name for the site", site),
      field("Date", date),
      field("Who", who),
      warning,
      h("button", { type: "submit", class: "ls-button" }, "Save"),
    );
  }

  /** @param {boolean} archived */
  openings(archived) {
    if (!this.seen.visit) return [];
    const rows = this.openingsThere.map((one) => this.openingRow(one, archived));
    const save = (/** @type {string} */ text) => {
      const name = [...text].slice(0, 80).join("");
      const fields = { opening: uuid(), name, device: null, removed: false, after: [] };
      return this.write({ kind: "opening", ...fields }, "Added.");
    };
    const add = archived ? null : ask("Another opening: place, side, opening", "Add it", save);
    return [h("h3", {}, "Openings"), h("ul", { class: "ls-openings" }, ...rows), add];
  }

  /** @param {Opening} one @param {boolean} archived */
  openingRow(one, archived) {
    const change = (/** @type {Parameters<typeof openingAfter>[1]} */ fields, /** @type {string} */ said) =>
      this.write({ kind: "opening", ...openingAfter(one, fields) }, said);
    /** @type {[id: string, name: string][]} */
    const devices = this.all.data.devices.map(({ id, name }) => [id, name]);
    const choose = select([["", "Device not chosen"], ...devices], one.device ?? "", (device) => {
      change({ device: device || null }, "Changed.");
    });
    choose.disabled = archived;
    const away = secondPress(
      "Take off the list",
      () => `${one.name} goes from the list. What was recorded at it stays in the record.`,
      "Take it off",
      () => change({ removed: true }, "Taken off."),
    );
    return h("li", {}, field(one.name, choose), archived ? null : away);
  }

  /** Archive, lock, wipe. @param {boolean} archived @returns {Promise<HTMLElement[]>} */
  async away(archived) {
    const left = await waiting(this.visit, this.entries);
    const { visit } = this.seen;
    const title = h("h3", {}, "Put it away");
    const archive = visit ? [this.archiveTool(archived, left)] : [];
    if (left) {
      const words = "It can be locked away or wiped once all of it is saved as a file.";
      return [title, ...archive, h("p", {}, words)];
    }
    const lock = canLock() && visit ? this.lockTools(visit.date) : [];
    return [title, ...archive, ...lock, this.wipeTool()];
  }

  /** @param {boolean} archived @param {number} left entries that no file holds */
  archiveTool(archived, left) {
    const after = this.seen.heads.state;
    if (archived) {
      return button("Open it again", () => this.write({ kind: "state", state: "open", after }, "Open again."));
    }
    const unsaved = left ? ` ${count(left, "entry is", "entries are")} in no file yet.` : "";
    return secondPress(
      "Archive it",
      () => `It leaves the open visits and stays on this device.${unsaved}`,
      "Archive it",
      () => this.write({ kind: "state", state: "archived", after }, "Archived."),
    );
  }

  /** @param {string} date */
  lockTools(date) {
    const words = "Locked away, it can be read only with a passphrase of your own. Nobody can bring it back without.";
    const lock = async (/** @type {string} */ passphrase) => {
      await lockAway(this.visit, this.entries, date, passphrase).catch((error) => this.sayWhy(error));
      return "";
    };
    return [h("p", {}, words), passphraseForm("A passphrase", "Lock it away", true, lock)];
  }

  wipeTool() {
    const known = new Set(this.entries.map((entry) => entry.id));
    const all = count(this.entries.length, "entry goes", "entries go");
    const wipe = () =>
      more.takeAway(this.visit, known).then(
        () => this.all.open(""),
        (error) => this.sayWhy(error),
      );
    return secondPress(
      "Wipe it from this device",
      () => `${all} from this device for good. The file you saved is all that stays.`,
      "Wipe it",
      wipe,
    );
  }

  /** Say why it was not put away. @param {unknown} error */
  sayWhy(error) {
    const meanwhile = error instanceof Error && error.message === "changed meanwhile";
    this.said.textContent = meanwhile
      ? "Something was recorded meanwhile. Save the file again first."
      : store.inWords(error);
  }
}

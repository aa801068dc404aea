/** One visit on the page of visits: openings, checklists, problems, readings, notes, and how it leaves the device. */
import { ask, reader, secondPress } from "./ask.js";
import { button, clock, count, field, fill, h, now, refill, select, uuid } from "./dom.js";
import { shown as figure, judge, openingAfter, view } from "./entries.js";
import { canLock, lockAway, passphraseForm, unlock } from "./lock.js";
import { fileBlock, waiting } from "./record-file.js";
import { findingsOf, laySheet, sheet, standing } from "./sheet.js";
import * as more from "./store-visits.js";
import * as store from "./store.js";

export class VisitPage {
  /** @param {import("./visits.js").Visits} all @param {string} visit @param {HTMLElement} place */
  constructor(all, visit, place) {
    this.all = all;
    this.visit = visit;
    this.place = place;
    /** @type {import("./entries.js").Entry[]} */
    this.entries = [];
    this.seen = view([]);
    this.said = h("p", { role: "status", class: "ls-said" });
    const names = ["head", "openings", "lists", "faults", "problems", "readings", "notes", "leave", "away"];
    /** @type {Map<string, boolean>} */
    this.unfolded = new Map();
    this.parts = Object.fromEntries(names.map((name) => [name, h("div", {})]));
    this.where = h("p", { class: "ls-where" });
    this.take = button("Take it with you", () => this.goLeave(), { class: "ls-button ls-main" });
    this.bar = h("div", { class: "ls-bar", role: "region", "aria-label": "This visit" }, this.where, this.said, h("div", { class: "ls-tools" }, button("All visits", () => all.open("")), this.take));
    place.replaceChildren(button("All visits", () => all.open(""), { class: "ls-button ls-quiet" }), ...names.map((name) => this.parts[name]), this.bar);
    this.opened = false;
  }

  /** @param {import("./entries.js").Entry[]} entries */
  async show(entries) {
    this.entries = entries;
    this.seen = view(entries);
    const { parts } = this;
    this.bar.hidden = !entries.length;
    if (!entries.length) return this.showMissing();
    const left = await waiting(this.visit, entries);
    this.where.textContent = `${this.seen.visit?.site ?? "No visit"}: ${left ? `${count(left, "entry", "entries")} only on this device` : "saved as a file"}`;
    const archived = this.seen.state !== "open";
    if (!this.opened) {
      this.opened = true;
      if (!archived) this.workHere();
      if (!archived) fill(parts.notes, h("h3", {}, "Notes"), this.noteList = h("ul", {}), ask("A note about this visit", "Save the note", (note) => this.write("note", { opening: null, note }, "Noted.")));
    }
    refill(parts.head, ...this.head());
    refill(parts.openings, ...this.openings(archived));
    fill(parts.lists, ...this.lists(archived));
    fill(parts.faults, ...this.faults());
    fill(parts.problems, ...this.found("Problems", (entry) => entry.outcome === "problem"));
    fill(parts.readings, ...this.found("Readings", (entry) => entry.reading));
    const notes = this.seen.notes.map((/** @type {any} */ note) => h("li", {}, `${this.openingName(note.opening)}${note.note} `, h("small", {}, `${clock(note.at)} ${note.by}`)));
    if (this.noteList) fill(this.noteList, ...notes);
    if (!parts.leave.firstChild) parts.leave.append(h("h3", {}, "Take it with you"), this.file = await fileBlock(this.visit, this.all.library, () => this.all.show()), button("Print the sheet", () => this.print()));
    else if (this.file) this.file.replaceWith(this.file = await fileBlock(this.visit, this.all.library, () => this.all.show()));
    refill(parts.away, ...(await this.away(archived)));
  }

  /** The visit that is open here is the one that this tab, and the next tab, writes to. */
  workHere() {
    if (!store.tab("ls-place").startsWith(this.visit)) store.tab("ls-place", `${this.visit}|`);
    store.remember("last", this.visit).catch(() => {});
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
    const row = (await more.everything("locked")).find((one) => one.visit === this.visit);
    if (!row) return fill(this.parts.head, h("p", { class: "ls-warn" }, "This visit is not on this device. Bring it in from its file."));
    const wipe = secondPress("Wipe the locked visit", () => "It goes from this device for good. The file you saved is all that stays.", "Wipe it", () => more.takeAway(this.visit, new Set()).then(() => this.all.open("")));
    fill(this.parts.head, h("h2", {}, `Locked visit of ${row.date}`), passphraseForm("Passphrase", "Unlock", false, async (words) => ((await unlock(row, words)) ? "" : "That is not its passphrase.")), wipe);
  }

  /** Store an entry of this visit. @param {string} kind @param {object} fields @param {string} said */
  async write(kind, fields, said) {
    try {
      await store.add(this.visit, [{ kind, id: uuid(), visit: this.visit, at: now(), by: this.all.by, library: this.all.library, ...fields }]);
      this.said.textContent = said;
      return true;
    } catch (error) {
      this.said.replaceChildren(h("strong", { class: "ls-warn" }, store.inWords(error)));
      return false;
    }
  }

  head() {
    const { visit } = this.seen;
    if (!visit) return [h("h2", {}, "Lists run without a visit")];
    const change = button("Change name, date or who", () => fill(this.parts.head, this.headForm(visit)), { class: "ls-button ls-quiet" });
    const archived = this.seen.state === "open" ? null : h("p", {}, h("strong", {}, "Archived: nothing more is written to it."));
    return [h("h2", {}, visit.site), h("p", {}, `${visit.date}${visit.who ? ` · ${visit.who}` : ""}`), archived ?? change];
  }

  /** @param {any} visit */
  headForm(visit) {
    const site = h("input", { type: "text", maxlength: 120, value: visit.site });
    const date = h("input", { type: "date", value: visit.date });
    const who = h("input", { type: "text", maxlength: 120, value: visit.who });
    const warning = h("p", { class: "ls-warn", role: "alert" });
    const read = reader(warning);
    const submit = async (/** @type {Event} */ event) => {
      event.preventDefault();
      const texts = read([site, who]);
      if (!texts?.[0] || !date.value) return;
      if (await this.write("visit", { site: texts[0], date: date.value, who: texts[1], after: this.seen.heads.visit }, "Changed.")) fill(this.parts.head, ...this.head());
    };
    return h("form", { class: "ls-ask", submit }, field("A name for the site", site), field("Date", date), field("Who", who), warning, h("button", { type: "submit", class: "ls-button" }, "Save"));
  }

  /** @param {string | null} id */
  openingName(id) {
    const opening = id && this.seen.openings.get(id);
    return opening ? `${opening.name}: ` : "";
  }

  /** @param {boolean} archived */
  openings(archived) {
    if (!this.seen.visit) return [];
    const devices = /** @type {[string, string][]} */ ([["", "Device not chosen"], ...this.all.data.devices.map((/** @type {any} */ one) => [one.id, one.name])]);
    const rows = [...this.seen.openings.values()].filter((one) => !one.removed).map((one) => {
      const change = (/** @type {object} */ fields, /** @type {string} */ said) => this.write("opening", openingAfter(one, fields), said);
      const choose = select(devices, one.device ?? "", (device) => change({ device: device || null }, "Changed."));
      choose.disabled = archived;
      const away = secondPress("Take off the list", () => `${one.name} goes from the list. What was recorded at it stays in the record.`, "Take it off", async () => void (await change({ removed: true }, "Taken off.")));
      return h("li", {}, field(one.name, choose), archived ? null : away);
    });
    const add = archived ? null : ask("Another opening: place, side, opening", "Add it", (name) => this.write("opening", { opening: uuid(), name: [...name].slice(0, 80).join(""), device: null, removed: false, after: [] }, "Added."));
    return [h("h3", {}, "Openings"), h("ul", { class: "ls-openings" }, ...rows), add];
  }

  /** @param {boolean} archived */
  lists(archived) {
    const { checklists } = this.all.data;
    const openings = [...this.seen.openings.values()].filter((one) => !one.removed);
    const all = openings.map((one) => one.device).filter(Boolean);
    const loose = !this.seen.visit;
    const site = checklists.filter((/** @type {any} */ list) => loose || list.per === "site");
    const out = [h("h3", {}, loose ? "Lists" : "Lists for the site"), h("ul", { class: "ls-rows" }, ...site.map((/** @type {any} */ list) => this.listRow(list, null, loose ? [] : all, archived)))];
    for (const one of loose ? [] : openings) {
      const fitting = checklists.filter((/** @type {any} */ list) => list.per === "opening" && (!one.device || list.devices.includes(one.device)));
      out.push(this.folded(one, fitting, openings.length < 3, archived));
    }
    return out;
  }

  /** The lists of one opening; folded where there are many openings and none of its lists is under way. @param {any} one @param {any[]} lists @param {boolean} few @param {boolean} archived */
  folded(one, lists, few, archived) {
    const devices = one.device ? [one.device] : [];
    const states = lists.map((list) => standing(list, this.seen.runs.get(`${list.id}|${one.opening}`), devices));
    const begun = states.filter((state) => state.started);
    const complete = begun.filter((state) => state.complete).length;
    const problems = begun.reduce((sum, state) => sum + state.problems.length, 0);
    const words = [`${begun.length} of ${count(lists.length, "list")} started`, begun.length && `${complete} complete`, problems && count(problems, "problem")].filter(Boolean).join(", ");
    const open = this.unfolded.get(one.opening) ?? (few || begun.length > complete);
    const rows = lists.map((list) => this.listRow(list, one.opening, devices, archived));
    const keep = (/** @type {any} */ event) => void this.unfolded.set(one.opening, event.target.open);
    return h("details", { class: "ls-folded", open, toggle: keep }, h("summary", {}, h("h3", {}, `Lists for ${one.name}`), h("span", {}, words)), h("ul", { class: "ls-rows" }, ...rows));
  }

  /** @param {any} list @param {string | null} opening @param {string[]} devices @param {boolean} archived */
  listRow(list, opening, devices, archived) {
    const state = standing(list, this.seen.runs.get(`${list.id}|${opening ?? ""}`), devices);
    const closed = state.rows.length - state.open.length;
    const words = !state.started ? "Not started" : [state.complete ? "Complete" : `${closed} of ${state.rows.length}, ${state.open.length} open`, state.problems.length ? count(state.problems.length, "problem") : ""].filter(Boolean).join(", ");
    const inside = [h("strong", {}, list.name), h("span", {}, words)];
    if (archived) return h("li", { class: "ls-row-none" }, ...inside);
    const query = new URLSearchParams({ visit: this.visit, ...(opening && { opening }) });
    return h("li", {}, h("a", { href: `${list.href}?${query}` }, ...inside));
  }

  /** @param {string} title @param {(entry: any) => any} wanted */
  found(title, wanted) {
    const rows = [];
    for (const run of this.seen.runs.values()) {
      for (const outcome of run.items.values()) {
        for (const entry of /** @type {any[]} */ (outcome.heads).filter(wanted)) {
          const verdict = entry.reading && judge(entry.reading, entry.expected);
          rows.push(h("li", { class: verdict === "outside" ? "ls-is-outside" : "" }, h("strong", {}, this.openingName(entry.opening)), `${entry.words}: `, findingsOf(entry) || figure(entry.reading), " ", h("small", {}, `${clock(entry.at)} ${entry.by}`)));
        }
      }
    }
    return rows.length ? [h("h3", {}, title), h("ul", {}, ...rows)] : [];
  }

  /** The faults that were looked for: each check and remedy in the order in which it was done, and how it ended. */
  faults() {
    const out = [];
    for (const [key, run] of this.seen.runs) {
      if (!key.startsWith("fault-run-")) continue;
      const entries = [...run.items.values()].flatMap((outcome) => /** @type {any[]} */ (outcome.heads)).sort((a, b) => a.n - b.n);
      if (!entries.length) continue;
      const steps = entries.map((entry) => {
        const found = findingsOf(entry);
        return h("li", {}, `${entry.words}${found ? `: ${found}` : ""} `, h("small", {}, `${clock(entry.at)} ${entry.by}`));
      });
      const ends = run.complete.map((/** @type {any} */ entry) => h("p", {}, h("strong", {}, entry.words)));
      out.push(h("h4", {}, this.openingName(entries[0].opening), entries[0].list_name), h("ol", {}, ...steps), ...(ends.length ? ends : [h("p", {}, "Not ended yet.")]));
    }
    return out.length ? [h("h3", {}, "Faults looked for"), ...out] : [];
  }

  /** Archive, lock, wipe. @param {boolean} archived */
  async away(archived) {
    const left = await waiting(this.visit, this.entries);
    const out = [h("h3", {}, "Put it away")];
    const state = { state: archived ? "open" : "archived", after: this.seen.heads.state };
    if (this.seen.visit) out.push(archived ? button("Open it again", () => this.write("state", state, "Open again.")) : secondPress("Archive it", () => `It leaves the open visits and stays on this device.${left ? ` ${count(left, "entry is", "entries are")} in no file yet.` : ""}`, "Archive it", async () => void (await this.write("state", state, "Archived."))));
    if (left) return [...out, h("p", {}, "It can be locked away or wiped once all of it is saved as a file.")];
    const known = new Set(this.entries.map((entry) => entry.id));
    const failed = (/** @type {any} */ error) => void (this.said.textContent = error.message === "changed meanwhile" ? "Something was recorded meanwhile. Save the file again first." : store.inWords(error));
    if (canLock() && this.seen.visit) out.push(h("p", {}, "Locked away, it can be read only with a passphrase of your own. Nobody can bring it back without."), passphraseForm("A passphrase", "Lock it away", true, async (words) => {
      await lockAway(this.visit, this.entries, this.seen.visit.date, words).catch(failed);
      return "";
    }));
    out.push(secondPress("Wipe it from this device", () => `${count(this.entries.length, "entry goes", "entries go")} from this device for good. The file you saved is all that stays.`, "Wipe it", () => more.takeAway(this.visit, known).then(() => this.all.open(""), failed)));
    return out;
  }
}

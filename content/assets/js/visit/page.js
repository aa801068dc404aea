/** One visit on the page of visits: openings, checklists, problems, readings, notes, and how it leaves the device. */
import { ask, reader, secondPress } from "../core/ask.js";
import { now, uuid } from "../core/dom.js";
import { button, choice, labelled, quiet, tools } from "../core/parts.js";
import { PageJob } from "../job/page-job.js";
import { page as message } from "../messages/visit.js";
import { html, nothing, render } from "../vendor/lit-html.js";
import { openingAfter, view } from "./entries.js";
import { canLock, lockAway, passphraseForm, unlock } from "./lock.js";
import { faultRuns, found, openingName, signed } from "./page-found.js";
import { lists } from "./page-lists.js";
import { PagePhotographs } from "./page-photographs.js";
import { Leaving, waiting } from "./record-file.js";
import { isFinished, laySheet, sheet } from "./sheet.js";
import * as store from "./store.js";
import * as more from "./store-visits.js";

/**
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {import("./entries.js").Opening} Opening
 * @typedef {import("./entries.js").VisitEntry} VisitEntry
 */

export class VisitPage {
  job = new PageJob(this);

  /** @param {import("./visits.js").Visits} all @param {string} visit @param {HTMLElement} place */
  constructor(all, visit, place) {
    this.all = all;
    this.visit = visit;
    this.place = place;
    /** @type {Entry[]} */
    this.entries = [];
    this.seen = view([]);
    /** What was run without a visit, which its lists offer to take along. @type {import("./entries.js").View["runs"]} */
    this.loose = new Map();
    /** How many entries no file holds. */
    this.left = 0;
    /** @type {store.Locked | undefined} the visit as it is locked away */
    this.locked = undefined;
    /** How the last change went, and whether it was refused. */
    this.said = "";
    this.refused = false;
    this.editing = false;
    /** What is wrong with what was typed for the name of the visit. */
    this.warning = "";
    this.read = reader((said) => {
      this.warning = said;
      this.render();
    });
    /** Openings whose lists were folded or unfolded by hand. @type {Map<string, boolean>} */
    this.unfolded = new Map();
    this.begun = false;
    this.leaving = new Leaving(
      visit,
      all.library,
      () => this.render(),
      () => all.show(),
    );
    this.photographs = new PagePhotographs(this);
    this.noteForm = ask(message.noteAbout(), message.saveNote(), (note) =>
      this.write({ kind: "note", opening: null, note }, message.noted()),
    );
    this.openingForm = ask(message.addOpening(), message.add(), (text) => this.addOpening(text));
    this.lockForm = passphraseForm(message.newPassphrase(), message.lock(), true, (words) => this.lock(words));
    this.unlockForm = passphraseForm(message.passphrase(), message.unlock(), false, (words) => this.unlock(words));
    /** What takes a second press, by what it does; made anew when the entries are others. @type {Map<string, Node>} */
    this.presses = new Map();
    render(nothing, place); // what another visit left
  }

  /** The openings that are there. */
  get openingsThere() {
    return [...this.seen.openings.values()].filter((one) => !one.removed);
  }

  get archived() {
    return this.seen.state !== "open";
  }

  /** @param {Entry[]} entries */
  async show(entries) {
    const left = await waiting(this.visit, entries);
    const others = await this.photographs.look(await this.leaving.look());
    if (entries.length !== this.entries.length || left !== this.left || others) this.presses.clear();
    this.entries = entries;
    this.left = left;
    this.seen = view(entries);
    await this.job.look(this.seen);
    if (!entries.length) {
      laySheet(null);
      this.locked = (await more.everything("locked")).find((one) => one.visit === this.visit);
    } else if (!this.begun && !this.archived && !isFinished(this.seen, this.all.data.checklists)) {
      this.beginWork();
    }
    this.render();
  }

  /** The visit that is open here is the one that this tab, and the next tab, writes to. */
  beginWork() {
    if (!store.tab("ls-place").startsWith(this.visit)) store.tab("ls-place", `${this.visit}|`);
    store.remember("last", this.visit).catch(() => {});
    this.begun = true;
  }

  render() {
    const all = () => this.all.open("");
    const parts = this.entries.length ? this.parts() : this.missing();
    const back = this.entries.length ? nothing : quiet(message.allVisits(), all); // else it stands in the bar
    render(html`${back}${parts}${this.bar(all)}`, this.place);
  }

  /** The page from top to bottom. */
  parts() {
    const { seen } = this;
    return html`
      <div>${this.editing && seen.visit ? headForm(this, seen.visit) : this.head()}</div>
      <div>${this.openings()}</div>
      <div>${lists(this, this.archived)}</div>
      <div>${faultRuns(seen)}</div>
      <div>${found(seen, message.problems(), (entry) => entry.outcome === "problem")}</div>
      <div>${found(seen, message.readings(), (entry) => Boolean(entry.reading))}</div>
      <div>${this.notes()}</div>
      <div class="ls-leave">
        <h3>${message.take()}</h3>
        ${this.leaving.template(this.entries, this.left)}
        ${button(message.print(), () => this.print())}
        ${this.job.leaving()}
      </div>
      <div>${this.job.shown()}</div>
      <div>${this.away()}</div>
    `;
  }

  /** @param {() => void} all */
  bar(all) {
    const { entries, left } = this;
    const site = this.seen.visit?.site ?? message.noVisit();
    const { along } = this.leaving;
    const inFile = along?.left ? along.onlyHere(site) : message.inFile({ site });
    const where = left ? message.onlyHere({ site, entries: left }) : inFile;
    const said = this.refused ? html`<strong class="ls-warn">${this.said}</strong>` : this.said;
    return html`
      <div class="ls-bar" role="region" aria-label=${message.thisVisit()} ?hidden=${!entries.length}>
        <p class="ls-where">${where}</p>
        <p class="ls-said" role="status">${said}</p>
        ${tools(
          button(message.allVisits(), all),
          button(message.take(), () => this.goLeave(), "ls-main"),
        )}
      </div>
    `;
  }

  /** Its sheet, or the paper of what was fitted, with the photographs. */
  paper() {
    if (this.job.fitted) return this.job.paper();
    return sheet(this.seen, this.all.data, this.all.library, this.photographs.printed());
  }

  /** @param {boolean} [fitted] what was fitted, in the place of the sheet */
  async print(fitted = false) {
    this.job.fitted = fitted;
    const paper = this.paper();
    laySheet(paper);
    await Promise.allSettled([...paper.querySelectorAll("img")].map((image) => image.decode()));
    print();
  }

  goLeave() {
    const leave = this.place.querySelector(".ls-leave");
    leave?.scrollIntoView({ block: "center" });
    leave?.querySelector("button")?.focus({ preventScroll: true });
  }

  /** A visit of which nothing is here: locked away, or on another device. */
  missing() {
    const { stranded } = this.photographs;
    if (!this.locked) return html`<p class="ls-warn">${message.missing()}</p>${stranded}`;
    const wipe = this.press("wipe-locked", () => [
      message.wipeLocked(),
      message.wipeLockedAsked,
      message.wipeSure(),
      () => more.takeAway(this.visit, new Set()).then(() => this.all.open("")),
    ]);
    return html`<h2 tabindex="-1">${message.locked(this.locked)}</h2>${stranded}${this.unlockForm}${wipe}`;
  }

  /** @param {string} passphrase */
  async unlock(passphrase) {
    return this.locked && (await unlock(this.locked, passphrase)) ? "" : message.wrongPassphrase();
  }

  /**
   * What takes a second press.
   * @param {string} key @param {() => Parameters<typeof secondPress>} made
   */
  press(key, made) {
    const known = this.presses.get(key) ?? secondPress(...made());
    this.presses.set(key, known);
    return known;
  }

  /** Store an entry of this visit. @param {store.Said} fields @param {string} said */
  write(fields, said) {
    const common = { id: uuid(), visit: this.visit, at: now(), by: this.all.by, library: this.all.library };
    const drafts = [{ ...common, ...fields }];
    return store.addAndSay(this.visit, drafts, said, (words, refused) => this.say(words, refused));
  }

  /** @param {string} said @param {boolean} [refused] */
  say(said, refused = false) {
    this.said = said;
    this.refused = refused;
    this.render();
  }

  head() {
    const { visit } = this.seen;
    if (!visit) return html`<h2>${message.listsOnly()}</h2>`;
    const archived = html`<p><strong>${message.archived()}</strong></p>`;
    const change = quiet(message.changeVisit(), () => this.edit(true));
    const when = visit.who ? `${visit.date} · ${visit.who}` : visit.date;
    return html`<h2 tabindex="-1">${visit.site}</h2><p>${when}</p>${this.archived ? archived : change}`;
  }

  /** @param {boolean} editing */
  edit(editing) {
    this.editing = editing;
    this.warning = "";
    this.render();
  }

  openings() {
    if (!this.seen.visit) return nothing;
    const rows = this.openingsThere.map((one) => this.openingRow(one));
    return html`
      <h3>${message.openings()}</h3>
      <ul class="ls-openings">${rows}</ul>
      ${this.photographs.elsewhere()}
      ${this.archived ? nothing : this.openingForm}
    `;
  }

  /** @param {string} text its name */
  addOpening(text) {
    const name = [...text].slice(0, 80).join("");
    const fields = { opening: uuid(), name, device: null, removed: false, after: [] };
    return this.write({ kind: "opening", ...fields }, message.added());
  }

  /** @param {Opening} one */
  openingRow(one) {
    const change = (/** @type {Parameters<typeof openingAfter>[1]} */ fields, /** @type {string} */ said) =>
      this.write({ kind: "opening", ...openingAfter(one, fields) }, said);
    /** @type {[id: string, name: string][]} */
    const devices = this.all.data.devices.map(({ id, name }) => [id, name]);
    const choices = /** @type {[string, string][]} */ ([["", message.noDevice()], ...devices]);
    const take = (/** @type {string} */ device) => change({ device: device || null }, message.changed());
    const away = this.press(`off-${one.opening}`, () => [
      message.takeOff(),
      () => message.takeOffAsked({ opening: one.name }),
      message.takeOffSure(),
      () => change({ removed: true }, message.takenOff()),
    ]);
    const id = `ls-opening-${one.opening}`;
    const field = choice(id, one.name, choices, one.device ?? "", take, this.archived);
    return html`<li>${field}${this.archived ? nothing : away}${this.photographs.at(one, this.archived)}</li>`;
  }

  notes() {
    const { notes } = this.seen;
    if (this.archived && !notes.length) return nothing;
    const rows = notes.map((note) => {
      const line = `${openingName(this.seen, note.opening)}${note.note}`;
      return html`<li>${line} ${signed(note)}</li>`;
    });
    return html`<h3>${message.notes()}</h3><ul>${rows}</ul>${this.archived ? nothing : this.noteForm}`;
  }

  /** Archive, lock, wipe. */
  away() {
    const { visit } = this.seen;
    const archive = visit ? this.archiveTool() : nothing;
    const lock = canLock() && visit ? html`<p>${message.lockWhy()}</p>${this.lockForm}` : nothing;
    const left = this.left || this.leaving.along?.left;
    const rest = left ? html`<p>${message.saveFirst()}</p>` : html`${lock}${this.wipeTool()}`;
    return html`<h3>${message.putAway()}</h3>${archive}${rest}`;
  }

  archiveTool() {
    const after = this.seen.heads.state;
    if (this.archived) {
      const open = () => this.write({ kind: "state", state: "open", after }, message.openedAgain());
      return button(message.openAgain(), open);
    }
    return this.press("archive", () => [
      message.archive(),
      () => message.archiveAsked({ unsaved: this.left }),
      message.archive(),
      () => this.write({ kind: "state", state: "archived", after }, message.archivedNow()),
    ]);
  }

  /** Lock it away; what was recorded meanwhile is said and stays. @param {string} passphrase */
  async lock(passphrase) {
    const date = this.seen.visit?.date ?? "";
    await lockAway(this.visit, this.entries, date, passphrase).catch((error) => this.sayWhy(error));
    return "";
  }

  wipeTool() {
    return this.press("wipe", () => {
      const { along } = this.leaving;
      const ids = this.entries.map((entry) => entry.id);
      const known = new Set([...ids, ...(along?.ids ?? [])]);
      const asked = () => along?.wipeAsked(ids.length) ?? message.wipeAsked({ entries: ids.length });
      const wipe = () =>
        more.takeAway(this.visit, known).then(
          () => this.all.open(""),
          (error) => this.sayWhy(error),
        );
      return [message.wipe(), asked, message.wipeSure(), wipe];
    });
  }

  /** Say why it was not put away. @param {unknown} error */
  sayWhy(error) {
    const meanwhile = error instanceof Error && error.message === "changed meanwhile";
    this.say(meanwhile ? message.changedMeanwhile() : store.inWords(error));
  }
}

/** What changes the name, the date and who. @param {VisitPage} page @param {VisitEntry} visit */
function headForm(page, visit) {
  const submit = async (/** @type {SubmitEvent} */ event) => {
    event.preventDefault();
    const form = /** @type {HTMLFormElement} */ (event.target);
    const [site, date, who] = form.querySelectorAll("input");
    const texts = page.read([site, who]);
    if (!texts?.[0] || !date.value) return;
    const fields = { site: texts[0], date: date.value, who: texts[1], after: page.seen.heads.visit };
    if (await page.write({ kind: "visit", ...fields }, message.changed())) page.edit(false);
  };
  const text = (/** @type {string} */ id, /** @type {string} */ words, /** @type {string} */ value) =>
    labelled(id, words, html`<input type="text" id=${id} maxlength="120" value=${value}>`);
  return html`
    <form class="ls-ask" @submit=${submit}>
      ${text("ls-site", message.siteName(), visit.site)}
      ${labelled("ls-date", message.date(), html`<input type="date" id="ls-date" value=${visit.date}>`)}
      ${text("ls-who", message.who(), visit.who)}
      <p class="ls-warn" role="alert">${page.warning}</p>
      <button type="submit" class="ls-button">${message.save()}</button>
    </form>
  `;
}

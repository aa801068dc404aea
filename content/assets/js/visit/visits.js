/** The page of visits: all of them side by side, and one of them open. */
import { reader, secondPress } from "../core/ask.js";
import { download, h, now, uuid } from "../core/dom.js";
import { button, labelled, linkRow, rowsUnder, tools } from "../core/parts.js";
import { led } from "../job/begin.js";
import { visits as message } from "../messages/visit.js";
import { html, nothing, render } from "../vendor/lit-html.js";
import { keptWords } from "./bar.js";
import { view } from "./entries.js";
import { VisitPage } from "./page.js";
import { Import } from "./record-file.js";
import { laySheet, standing } from "./sheet.js";
import * as store from "./store.js";
import * as more from "./store-visits.js";

/**
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {import("./entries.js").View} View
 * @typedef {import("../core/parts.js").Part} Part
 * @typedef {{id: string, shown: View, left: number}} Seen a visit, and how many of its entries no file holds
 */

/** Take over the page of visits. */
export async function start() {
  const root = /** @type {HTMLElement} */ (document.querySelector("[data-ls-visits]"));
  document.querySelector(".ls-unkept")?.remove();
  const page = new Visits(root, JSON.parse(root.dataset.lsVisits ?? "{}"), await store.open());
  await page.start();
  document.documentElement.dataset.lsReady = "visits";
}

export class Visits {
  /** @param {HTMLElement} root @param {import("./sheet.js").Known} data @param {store.Standing} kept */
  constructor(root, data, kept) {
    this.root = root;
    this.data = data;
    this.kept = kept;
    this.library = data.library;
    this.loose = "";
    this.by = "";
    this.firm = false;
    /** The visits of the device, or where one is open, that one. @type {Part} */
    this.list = nothing;
    this.one = h("div", { class: "ls-visit" });
    this.place = h("div", {});
    this.turn = 0;
    /** The visit that was started just now, or led to from its survey: its heading takes the focus. */
    this.fresh = "";
    this.told = ""; // what is said of it there
    /** @type {VisitPage | null} */
    this.page = null;
    this.import = new Import(
      () => this.render(),
      (visit) => this.open(visit),
    );
    /** What is wrong with what was typed for a new visit. */
    this.warning = "";
    this.read = reader((said) => this.warn(said));
    this.forget = secondPress(
      message.forget(),
      () => message.forgetAsked({ entries: this.aside.length }),
      message.forget(),
      () => more.clearAside(),
    );
    /** @type {store.Damaged[]} */
    this.aside = [];
    /** What is said of photographs that no file holds, by visit. @type {Map<string, string>} */
    this.unsaved = new Map();
  }

  async start() {
    this.loose = await store.once("loose", uuid()).catch(() => uuid());
    this.by = (await store.recall("me")) ?? "";
    this.firm = Boolean(await navigator.storage?.persisted?.().catch(() => false));
    const { visit, words } = led();
    this.fresh = visit;
    this.told = words;
    this.root.append(this.place, this.one);
    addEventListener("hashchange", () => this.show());
    addEventListener("beforeprint", () => this.layOpen());
    store.onChange(() => this.show());
    await this.show();
  }

  /** The visit named in the address, if any. */
  get chosen() {
    return /^#v=([0-9a-f-]{36})$/.exec(location.hash)?.[1] ?? "";
  }

  /** @param {string} visit */
  open(visit) {
    if (location.hash === `#v=${visit}`) this.show();
    else location.hash = visit ? `v=${visit}` : "";
  }

  /** Lay the sheet of the visit that is open ready to print. */
  layOpen() {
    const page = this.chosen ? this.page : null;
    laySheet(page?.seen.ordered.length ? page.paper() : null);
  }

  async show() {
    this.turn += 1;
    const { chosen } = this;
    document.body.classList.toggle("ls-has-bar", Boolean(chosen));
    await (chosen ? this.showOne(chosen, this.turn) : this.showAll(this.turn));
  }

  render() {
    const { chosen } = this;
    this.one.hidden = !chosen;
    const start = html`<div class="ls-start">${this.newForm()}${this.import.template()}${this.keeping()}</div>`;
    render(chosen ? nothing : html`<div class="ls-visits">${this.list}</div>${start}`, this.place);
  }

  /** @param {string} chosen @param {number} turn */
  async showOne(chosen, turn) {
    const entries = await more.soundEntries(chosen);
    if (turn !== this.turn) return;
    if (this.page?.visit !== chosen) this.page = new VisitPage(this, chosen, this.one);
    const loose = chosen === this.loose ? [] : await store.entriesOf(this.loose);
    if (turn !== this.turn) return;
    this.page.loose = view(loose).runs;
    await this.page.show(entries);
    this.render();
    if (this.fresh !== chosen) return;
    scrollTo(0, 0);
    this.one.querySelector("h2")?.focus({ preventScroll: true });
    if (this.told) this.page.say(this.told);
    this.fresh = this.told = "";
  }

  /** @param {number} turn */
  async showAll(turn) {
    this.page = null;
    render(nothing, this.one);
    const all = await more.allEntries(); // first: it puts aside what is damaged
    const [locked, aside, facts, photographs] = await Promise.all([
      more.everything("locked"),
      more.everything("aside"),
      more.everything("meta"),
      more.photographIds(),
    ]);
    const saved = savedOf(facts);
    const { unsavedWords } = photographs.size ? await import("../photo/list.js") : {};
    if (turn !== this.turn) return;
    this.unsaved = unsavedWords?.(photographs, saved) ?? new Map();
    const seen = [...all].map(([id, entries]) => seenOf(id, entries, saved.get(id))).sort(lastFirst);
    this.aside = aside;
    const away = rowsUnder(html`<h2>${message.locked()}</h2>`, locked.map(lockedRow));
    this.list = html`${this.damaged()}${this.rowsOf(seen)}${away}`;
    this.render();
  }

  /** @param {Seen[]} seen */
  rowsOf(seen) {
    const open = seen.filter((one) => one.shown.state === "open").map((one) => this.row(one));
    const archived = seen.filter((one) => one.shown.state !== "open").map((one) => this.row(one));
    return html`
      ${open.length ? nothing : html`<p class="ls-none">${message.none()}</p>`}
      ${rowsUnder(html`<h2>${message.open()}</h2>`, open)}
      ${rowsUnder(html`<h2>${message.archived()}</h2>`, archived)}
    `;
  }

  /** @param {Seen} one */
  row({ id, shown, left }) {
    const { problems, open, started } = this.sum(shown);
    const words = [
      shown.visit?.who,
      message.openings({ openings: shown.openings.size }),
      message.lists({ lists: started, items: open }),
      problems ? message.problems({ problems }) : "",
      left ? message.onlyHere({ entries: left }) : !this.unsaved.has(id) && message.inFile(),
      this.unsaved.get(id),
    ];
    return linkRow(`#v=${id}`, this.nameOf(id, shown), words.filter(Boolean).join(" · "));
  }

  /** @param {string} id @param {View} shown */
  nameOf(id, { visit }) {
    if (visit) return message.visitOn({ visit: visit.site, date: visit.date });
    return id === this.loose ? message.loose() : message.listsOnly();
  }

  /** How many lists were begun, with the items open and the problems found. @param {View} shown */
  sum({ runs, openings }) {
    const sum = { problems: 0, open: 0, started: 0 };
    for (const [key, run] of runs) {
      const [id, opening] = key.split("|");
      const list = this.data.checklists.find((one) => one.id === id);
      const device = openings.get(opening)?.device;
      const state = standing(list?.items ?? [], run, device ? [device] : []);
      sum.problems += state.problems.length;
      if (state.started) {
        sum.started += 1;
        sum.open += state.open.length;
      }
    }
    return sum;
  }

  newForm() {
    const submit = async (/** @type {SubmitEvent} */ event) => {
      event.preventDefault();
      const inputs = /** @type {HTMLFormElement} */ (event.target).querySelectorAll("input");
      const [site, date, who] = inputs;
      const texts = this.read([site, who]);
      if (!texts) return;
      if (!texts[0] || !/^\d{4}-\d{2}-\d{2}$/.test(date.value)) return this.warn(message.giveBoth());
      await this.create(texts[0], date.value, texts[1]);
    };
    const site = html`
      <input type="text" id="ls-site" maxlength="120" required autocomplete="off" aria-describedby="ls-site-help">
    `;
    const date = html`<input type="date" id="ls-date" required value=${now().slice(0, 10)}>`;
    const who = html`
      <input type="text" id="ls-who" maxlength="60" autocomplete="name" aria-describedby="ls-who-help" value=${this.by}>
    `;
    return html`
      <form class="ls-new" @submit=${submit}>
        <h2>${message.start()}</h2>
        ${labelled("ls-site", message.siteName(), site, message.siteHelp())}
        ${labelled("ls-date", message.date(), date)}
        ${labelled("ls-who", message.who(), who, message.whoHelp())}
        <p class="ls-warn" role="alert">${this.warning}</p>
        <button type="submit" class="ls-button ls-main">${message.startVisit()}</button>
      </form>
    `;
  }

  /** @param {string} said */
  warn(said) {
    this.warning = said;
    this.render();
  }

  /** @param {string} site @param {string} date @param {string} who */
  async create(site, date, who) {
    const visit = uuid();
    this.by = who;
    const common = { id: uuid(), visit, at: now(), by: who, library: this.library };
    try {
      await store.add(visit, [{ kind: "visit", ...common, site, date, who, after: [] }]);
      await store.remember("me", who);
    } catch (error) {
      return this.warn(store.inWords(error));
    }
    this.firm = Boolean(await navigator.storage?.persist?.().catch(() => false));
    this.fresh = visit;
    this.open(visit);
  }

  /** Where things are kept, and whether the browser promised to keep them. */
  keeping() {
    const words = this.firm ? message.promised() : message.notPromised();
    return html`<div>${keptWords(this.kept)}${this.kept.kept ? html`<p>${words}</p>` : nothing}</div>`;
  }

  /** What was found damaged: kept aside, and saved as it is. */
  damaged() {
    const { aside } = this;
    if (!aside.length) return nothing;
    const save = () => download(damagedText(aside), "visit-damaged-entries.json", "application/json");
    return html`
      <section class="ls-damaged">
        <p class="ls-warn">${message.damaged({ entries: aside.length })}</p>
        ${tools(button(message.saveDamaged(), save))}
        ${this.forget}
      </section>
    `;
  }
}

/** Which entries of each visit a file holds. @param {store.Fact[]} facts */
function savedOf(facts) {
  /** @type {Map<string, Set<string>>} */
  const saved = new Map();
  for (const { key, value } of facts) {
    if (key.startsWith("exported ")) saved.set(key.slice(9), new Set(/** @type {store.Exported} */ (value).ids));
  }
  return saved;
}

/** @param {string} id @param {Entry[]} entries @param {Set<string> | undefined} saved @returns {Seen} */
const seenOf = (id, entries, saved) => ({
  id,
  shown: view(entries),
  left: entries.filter((entry) => !saved?.has(entry.id)).length,
});

/** The latest visit first, before it what is no visit. @param {Seen} a @param {Seen} b */
const lastFirst = (a, b) =>
  (b.shown.visit?.date ?? "9").localeCompare(a.shown.visit?.date ?? "9") || (a.id < b.id ? -1 : 1);

/** @param {store.Locked} row */
const lockedRow = (row) => linkRow(`#v=${row.visit}`, message.lockedVisit(row), message.opensWith());

/** @param {store.Damaged[]} aside */
function damagedText(aside) {
  try {
    return JSON.stringify(aside, null, 1);
  } catch {
    return aside.map((row) => `${row.why}: ${String(row.raw)}`).join("\n");
  }
}

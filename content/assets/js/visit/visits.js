/** The page of visits: all of them side by side, and one of them open. */
import { reader, secondPress } from "../core/ask.js";
import { button, count, download, field, fill, form, h, now, uuid } from "../core/dom.js";
import { keptWords } from "./bar.js";
import { view } from "./entries.js";
import { VisitPage } from "./page.js";
import { importBlock } from "./record-file.js";
import { laySheet, sheet, standing } from "./sheet.js";
import * as store from "./store.js";
import * as more from "./store-visits.js";

/**
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {import("./entries.js").View} View
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
    this.list = h("div", { class: "ls-visits" });
    this.tools = h("div", { class: "ls-start" });
    this.one = h("div", { class: "ls-visit" });
    this.turn = 0;
    /** @type {VisitPage | null} */
    this.page = null;
  }

  async start() {
    this.loose = await store.once("loose", uuid()).catch(() => uuid());
    this.by = (await store.recall("me")) ?? "";
    this.root.append(this.list, this.one, this.tools);
    const bringIn = importBlock((visit) => this.open(visit));
    this.tools.append(this.newForm(), bringIn, await this.keeping());
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
    const seen = this.chosen ? this.page?.seen : null;
    laySheet(seen?.ordered.length ? sheet(seen, this.data, this.library) : null);
  }

  async show() {
    this.turn += 1;
    const { chosen } = this;
    this.list.hidden = Boolean(chosen);
    this.tools.hidden = Boolean(chosen);
    this.one.hidden = !chosen;
    document.body.classList.toggle("ls-has-bar", Boolean(chosen));
    await (chosen ? this.showOne(chosen, this.turn) : this.showAll(this.turn));
  }

  /** @param {string} chosen @param {number} turn */
  async showOne(chosen, turn) {
    const entries = await more.soundEntries(chosen);
    if (turn !== this.turn) return;
    if (this.page?.visit !== chosen) this.page = new VisitPage(this, chosen, this.one);
    await this.page.show(entries);
  }

  /** @param {number} turn */
  async showAll(turn) {
    this.page = null;
    this.one.replaceChildren();
    const all = await more.allEntries(); // first: it puts aside what is damaged
    const [locked, aside, facts] = await Promise.all([
      more.everything("locked"),
      more.everything("aside"),
      more.everything("meta"),
    ]);
    if (turn !== this.turn) return;
    const saved = savedOf(facts);
    const seen = [...all].map(([id, entries]) => seenOf(id, entries, saved.get(id))).sort(lastFirst);
    fill(this.list, ...damaged(aside), ...this.rowsOf(seen), ...part("Locked away", locked.map(lockedRow)));
  }

  /** @param {Seen[]} seen */
  rowsOf(seen) {
    const open = seen.filter((one) => one.shown.state === "open").map((one) => this.row(one));
    const archived = seen.filter((one) => one.shown.state !== "open").map((one) => this.row(one));
    const none = h("p", { class: "ls-none" }, "No visit is open on this device.");
    return [open.length ? null : none, ...part("Open visits", open), ...part("Archived", archived)];
  }

  /** @param {Seen} one */
  row({ id, shown, left }) {
    const { problems, open, started } = this.sum(shown);
    const words = [
      shown.visit?.who,
      count(shown.openings.size, "opening"),
      `${count(started, "list")}, ${count(open, "item")} open`,
      problems ? count(problems, "problem") : "",
      left ? `${count(left, "entry", "entries")} only on this device` : "saved as a file",
    ];
    return linkRow(id, this.nameOf(id, shown), words.filter(Boolean).join(" · "));
  }

  /** @param {string} id @param {View} shown */
  nameOf(id, { visit }) {
    if (visit) return `${visit.site}, ${visit.date}`;
    return id === this.loose ? "Without a visit" : "Lists run without a visit";
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
    const site = h("input", { type: "text", maxlength: 120, required: true, autocomplete: "off" });
    const date = h("input", { type: "date", required: true, value: now().slice(0, 10) });
    const who = h("input", { type: "text", maxlength: 60, autocomplete: "name", value: this.by });
    const warning = h("p", { class: "ls-warn", role: "alert" });
    const read = reader(warning);
    const submit = async () => {
      const texts = read([site, who]);
      if (!texts) return;
      if (!texts[0] || !/^\d{4}-\d{2}-\d{2}$/.test(date.value)) {
        warning.textContent = "Give the site a name and the visit a date.";
        return;
      }
      await this.create(texts[0], date.value, texts[1], warning);
    };
    return form(
      "ls-new",
      submit,
      h("h2", {}, "Start a visit"),
      field("A name for the site", site, "As short as you would say it. No code."),
      field("Date", date),
      field("Who you are", who, "Stands beside everything you record."),
      warning,
      h("button", { type: "submit", class: "ls-button ls-main" }, "Start this visit"),
    );
  }

  /** @param {string} site @param {string} date @param {string} who @param {HTMLElement} warning */
  async create(site, date, who, warning) {
    const visit = uuid();
    this.by = who;
    const common = { id: uuid(), visit, at: now(), by: who, library: this.library };
    try {
      await store.add(visit, [{ kind: "visit", ...common, site, date, who, after: [] }]);
      await store.remember("me", who);
    } catch (error) {
      warning.textContent = store.inWords(error);
      return;
    }
    await navigator.storage?.persist?.().catch(() => false);
    this.open(visit);
  }

  /** Where things are kept, and whether the browser promised to keep them. */
  async keeping() {
    const firm = await navigator.storage?.persisted?.().catch(() => false);
    const words = firm
      ? "The browser has promised to keep it."
      : "The browser may clear it when space is short. The saved file is what stays.";
    return h("div", {}, keptWords(this.kept), this.kept.kept && h("p", {}, words));
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

/** @param {string} visit @param {string} name @param {string} words */
const linkRow = (visit, name, words) =>
  h("li", {}, h("a", { href: `#v=${visit}` }, h("strong", {}, name), h("span", {}, words)));

/** @param {store.Locked} row */
const lockedRow = (row) => linkRow(row.visit, `Locked visit of ${row.date}`, "Opens with its passphrase");

/** @param {string} words @param {HTMLElement[]} rows */
const part = (words, rows) => (rows.length ? [h("h2", {}, words), h("ul", { class: "ls-rows" }, ...rows)] : []);

/** What was found damaged: kept aside, and saved as it is. @param {store.Damaged[]} aside */
function damaged(aside) {
  if (!aside.length) return [];
  const save = () => download(damagedText(aside), "visit-damaged-entries.json", "application/json");
  const forget = secondPress(
    "Forget them",
    () => `${count(aside.length, "damaged entry", "damaged entries")} will be gone for good.`,
    "Forget them",
    () => more.clearAside(),
  );
  const stored = count(aside.length, "stored entry was", "stored entries were");
  return [
    h(
      "section",
      { class: "ls-damaged" },
      h("p", { class: "ls-warn" }, `${stored} damaged and put aside. Everything else is unharmed.`),
      h("div", { class: "ls-tools" }, button("Save the damaged entries as a file", save)),
      forget,
    ),
  ];
}

/** @param {store.Damaged[]} aside */
function damagedText(aside) {
  try {
    return JSON.stringify(aside, null, 1);
  } catch {
    return aside.map((row) => `${row.why}: ${String(row.raw)}`).join("\n");
  }
}

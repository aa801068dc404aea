/** The page of visits: all of them side by side, and one of them open. */
import { reader, secondPress } from "./ask.js";
import { button, count, download, field, fill, h, now, uuid } from "./dom.js";
import { view } from "./entries.js";
import { importBlock } from "./record-file.js";
import { laySheet, sheet, standing } from "./sheet.js";
import * as more from "./store-visits.js";
import * as store from "./store.js";
import { keptWords } from "./visit-bar.js";
import { VisitPage } from "./visit-page.js";

/** Take over the page of visits. */
export async function start() {
  const root = /** @type {HTMLElement} */ (document.querySelector("[data-ls-visits]"));
  document.querySelector(".ls-unkept")?.remove();
  const page = new Visits(root, JSON.parse(root.dataset.lsVisits ?? "{}"), await store.open());
  await page.start();
  document.documentElement.dataset.lsReady = "visits";
}

export class Visits {
  /** @param {HTMLElement} root @param {any} data @param {{kept: boolean, why: string}} kept */
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
  }

  async start() {
    this.loose = await store.once("loose", uuid()).catch(() => uuid());
    this.by = (await store.recall("me")) ?? "";
    this.root.append(this.list, this.one, this.tools);
    this.tools.append(this.newForm(), importBlock((visit) => this.open(visit)), await this.keeping());
    addEventListener("hashchange", () => this.show());
    addEventListener("beforeprint", () => laySheet(this.chosen && this.page && this.page.seen.ordered.length ? sheet(this.page.seen, this.data, this.library) : null));
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

  async show() {
    const turn = (this.turn += 1);
    const chosen = this.chosen;
    this.list.hidden = this.tools.hidden = Boolean(chosen);
    this.one.hidden = !chosen;
    document.body.classList.toggle("ls-has-bar", Boolean(chosen));
    if (chosen) {
      const entries = await more.soundEntries(chosen);
      if (turn !== this.turn) return;
      if (this.page?.visit !== chosen) this.page = new VisitPage(this, chosen, this.one);
      return this.page.show(entries);
    }
    this.page = null;
    this.one.replaceChildren();
    const all = await more.allEntries(); // first: it puts aside what is damaged
    const [locked, aside, facts] = await Promise.all(["locked", "aside", "meta"].map(more.everything));
    if (turn !== this.turn) return;
    const saved = new Map(facts.filter((row) => row.key.startsWith("exported ")).map((row) => [row.key.slice(9), new Set(row.value.ids)]));
    this.render(all, locked, aside, saved);
  }

  /** @param {Map<string, any[]>} all @param {any[]} locked @param {any[]} aside @param {Map<string, Set<string>>} saved */
  render(all, locked, aside, saved) {
    const seen = [...all].map(([id, entries]) => ({ id, entries, shown: view(entries), left: entries.filter((entry) => !saved.get(id)?.has(entry.id)).length }));
    seen.sort((a, b) => (b.shown.visit?.date ?? "9").localeCompare(a.shown.visit?.date ?? "9") || (a.id < b.id ? -1 : 1));
    const open = seen.filter((one) => one.shown.state === "open").map((one) => this.row(one));
    const archived = seen.filter((one) => one.shown.state !== "open").map((one) => this.row(one));
    const shut = locked.map((row) => h("li", {}, h("a", { href: `#v=${row.visit}` }, h("strong", {}, `Locked visit of ${row.date}`), h("span", {}, "Opens with its passphrase"))));
    const part = (/** @type {string} */ words, /** @type {any[]} */ rows) => (rows.length ? [h("h2", {}, words), h("ul", { class: "ls-rows" }, ...rows)] : []);
    fill(this.list, ...this.damaged(aside), open.length ? null : h("p", { class: "ls-none" }, "No visit is open on this device."), ...part("Open visits", open), ...part("Archived", archived), ...part("Locked away", shut));
  }

  /** @param {any} one */
  row({ id, shown, left }) {
    const { problems, open, started } = this.sum(shown);
    const words = [shown.visit?.who, count(shown.openings.size, "opening"), `${count(started, "list")}, ${count(open, "item")} open`, problems ? count(problems, "problem") : "", left ? `${count(left, "entry", "entries")} only on this device` : "saved as a file"];
    const name = shown.visit ? `${shown.visit.site}, ${shown.visit.date}` : id === this.loose ? "Without a visit" : "Lists run without a visit";
    return h("li", {}, h("a", { href: `#v=${id}` }, h("strong", {}, name), h("span", {}, words.filter(Boolean).join(" · "))));
  }

  /** @param {any} shown */
  sum(shown) {
    const sum = { problems: 0, open: 0, started: 0 };
    for (const [key, run] of shown.runs) {
      const [id, opening] = key.split("|");
      const list = this.data.checklists.find((/** @type {any} */ one) => one.id === id);
      const device = shown.openings.get(opening)?.device;
      const state = standing(list ?? { items: [] }, run, device ? [device] : []);
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
    const submit = async (/** @type {Event} */ event) => {
      event.preventDefault();
      const texts = read([site, who]);
      if (!texts) return;
      if (!texts[0] || !/^\d{4}-\d{2}-\d{2}$/.test(date.value)) {
        warning.textContent = "Give the site a name and the visit a date.";
        return;
      }
      await this.create(texts[0], date.value, texts[1], warning);
    };
    const press = h("button", { type: "submit", class: "ls-button ls-main" }, "Start this visit");
    return h("form", { class: "ls-new", submit }, h("h2", {}, "Start a visit"), field("A name for the site", site, "As short as you would say it. No code."), field("Date", date), field("Who you are", who, "Stands beside everything you record."), warning, press);
  }

  /** @param {string} site @param {string} date @param {string} who @param {HTMLElement} warning */
  async create(site, date, who, warning) {
    const visit = uuid();
    this.by = who;
    try {
      await store.add(visit, [{ kind: "visit", id: uuid(), visit, at: now(), by: who, library: this.library, site, date, who, after: [] }]);
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
    return h("div", {}, keptWords(this.kept), this.kept.kept && h("p", {}, firm ? "The browser has promised to keep it." : "The browser may clear it when space is short. The saved file is what stays."));
  }

  /** What was found damaged: kept aside, and saved as it is. @param {any[]} aside */
  damaged(aside) {
    if (!aside.length) return [];
    const text = () => {
      try {
        return JSON.stringify(aside, null, 1);
      } catch {
        return aside.map((row) => `${row.why}: ${String(row.raw)}`).join("\n");
      }
    };
    const forget = secondPress("Forget them", () => `${count(aside.length, "damaged entry", "damaged entries")} will be gone for good.`, "Forget them", () => more.clearAside());
    return [h("section", { class: "ls-damaged" }, h("p", { class: "ls-warn" }, `${count(aside.length, "stored entry was", "stored entries were")} damaged and put aside. Everything else is unharmed.`), h("div", { class: "ls-tools" }, button("Save the damaged entries as a file", () => download(text(), "visit-damaged-entries.json", "application/json"))), forget)];
  }
}

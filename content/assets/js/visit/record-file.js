/** The record as a file: out as JSON or as a table, by download or the share sheet; in again, all of it or nothing. */
import { download, now } from "../core/dom.js";
import { listed } from "../core/message.js";
import { button, labelled, quiet, tools } from "../core/parts.js";
import { recordFile as message } from "../messages/visit.js";
import { html } from "../vendor/lit-html.js";
import { canonical, judge, settle, view } from "./entries.js";
import { readFile } from "./shape.js";
import * as store from "./store.js";
import * as more from "./store-visits.js";

/**
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {import("./entries.js").View} View
 */

/** A file larger than this is not read. */
const MOST_BYTES = 40_000_000;

/** The text of a record's file. @param {string} visit @param {Entry[]} entries @param {string} library */
export function recordText(visit, entries, library) {
  const { ordered } = settle(entries);
  const record = { format: "latchside-visit", version: 1, saved: now(), library, visit, entries: ordered };
  return `${JSON.stringify(record, null, 1)}\n`;
}

/** A cell that a spreadsheet can only read as text or as a number. @param {unknown} value */
export function cell(value) {
  if (value === null || value === undefined) return "";
  if (typeof value === "number") return String(value);
  const text = String(value).replace(/[\r\n]+/g, " ");
  const safe = /^[\s"']*[=+\-@|%\uff1d\uff0b\uff0d\uff20\u2212]/.test(text) ? `'${text}` : text;
  return /[",;\t\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** What an entry says in its own words. @param {Entry} entry */
function wordsOf(entry) {
  if ("words" in entry) return entry.words;
  if (entry.kind === "visit") return entry.site;
  if (entry.kind === "opening") return entry.name;
  if (entry.kind === "state") return entry.state;
  return entry.kind === "undo" ? message.takesBack({ entries: entry.undoes.length }) : undefined;
}

/** The columns of the table: the name of each, and its cell for an entry. @param {View} seen */
const columns = ({ live, openings }) => {
  const item = (/** @type {Entry} */ entry) => (entry.kind === "item" ? entry : undefined);
  const listed = (/** @type {Entry} */ entry) => ("checklist" in entry ? entry : undefined);
  const opening = (/** @type {Entry} */ entry) => ("opening" in entry ? entry.opening : undefined);
  const verdict = (/** @type {Entry} */ entry) => {
    const { reading, expected } = item(entry) ?? {};
    return reading && judge(reading, expected);
  };
  /** @type {[name: string, cell: (entry: Entry) => unknown][]} */
  const made = [
    [message.order(), (entry) => entry.n],
    [message.time(), (entry) => entry.at],
    [message.by(), (entry) => entry.by],
    [message.what(), (entry) => entry.kind],
    [message.takenBack(), (entry) => (live.has(entry.id) ? "" : message.takenBack())],
    [message.opening(), (entry) => openings.get(opening(entry) ?? "")?.name ?? opening(entry)],
    [message.checklist(), (entry) => listed(entry)?.list_name],
    [message.version(), (entry) => listed(entry)?.list_version],
    [message.item(), (entry) => item(entry)?.item],
    [message.words(), wordsOf],
    [message.outcome(), (entry) => item(entry)?.outcome],
    [message.reading(), (entry) => (item(entry)?.reading?.over ? message.overRange() : item(entry)?.reading?.value)],
    [message.unit(), (entry) => item(entry)?.reading?.unit],
    [message.verdict(), verdict],
    [message.expected(), (entry) => item(entry)?.expected?.words],
    [message.note(), (entry) => ("note" in entry ? entry.note : undefined)],
    [message.library(), (entry) => entry.library],
    [message.id(), (entry) => entry.id],
  ];
  return made;
};

/** The record as comma-separated values, one line an entry. @param {Entry[]} entries */
export function csvText(entries) {
  const seen = view(entries);
  const made = columns(seen);
  const lines = seen.ordered.map((entry) => made.map(([, cellOf]) => cellOf(entry)));
  const table = [made.map(([name]) => name), ...lines].map((line) => line.map(cell).join(","));
  return `\ufeff${table.join("\r\n")}\r\n`;
}

/** A name for the file that any system takes. @param {Entry[]} entries @param {string} ending */
export function fileName(entries, ending) {
  const { visit } = view(entries);
  const bare = (visit?.site ?? message.noVisit()).normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  const plain = bare.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
  return `visit-${visit?.date ?? now().slice(0, 10)}-${plain.slice(0, 40) || "site"}.${ending}`;
}

/** How many entries no file holds yet. @param {string} visit @param {Entry[]} entries */
export async function waiting(visit, entries) {
  const saved = new Set((await store.exported(visit))?.ids);
  return entries.filter((entry) => !saved.has(entry.id)).length;
}

/** What was in a file before still is. @param {string} visit @param {string[]} ids of entries and photographs */
async function markSaved(visit, ids) {
  const before = (await store.exported(visit))?.ids ?? [];
  await store.remember(`exported ${visit}`, { at: now(), ids: [...new Set([...before, ...ids])] });
}

/** @typedef {{entries: Entry[], photographs?: string[]}} Handed */

/** How the record leaves the device: what asks for it to be taken along, and the ways it can be. */
export class Leaving {
  /**
   * @param {string} visit @param {string} library @param {() => unknown} render shows it anew
   * @param {() => unknown} changed told once the record is saved
   */
  constructor(visit, library, render, changed) {
    this.visit = visit;
    this.library = library;
    this.render = render;
    this.changed = changed;
    this.said = "";
    /** A file that was handed over; whether it arrived, only the technician knows. @type {Handed | null} */
    this.handed = null;
    /** How photographs leave with it, where there are some. @type {import("../photo/along.js").Along | null} */
    this.along = null;
    this.turn = 0;
  }

  /** Look which photographs there are: their ids. */
  async look() {
    this.turn += 1;
    const { turn } = this;
    const ids = (await more.photographIds(this.visit)).get(this.visit) ?? [];
    const along = ids.length ? (this.along ?? new (await import("../photo/along.js")).Along(this)) : null;
    await along?.look(ids);
    if (turn === this.turn) this.along = along;
    return ids;
  }

  /** @param {string} said @param {Handed | null} [handed] */
  say(said, handed = null) {
    this.said = said;
    this.handed = handed;
    this.render();
  }

  /** @param {Entry[]} entries of the visit @param {number} left how many of them no file holds */
  template(entries, left) {
    const { handed, along } = this;
    const saved = along?.left ? along.words(entries.length) : message.saved({ entries: entries.length });
    const words = left ? message.unsaved({ entries: left }) : saved;
    const there = handed && button(message.there(), () => this.settle(handed));
    return html`
      <section class="ls-file" aria-label=${message.take()}>
        <p class=${left || along?.left ? "ls-warn" : ""}>${words}</p>
        ${tools(
          button(message.save(), () => this.save(), along?.left ? "" : "ls-main"),
          SHARED.some(isTaken) ? button(message.share(), () => this.share()) : null,
          quiet(message.table(), () => this.table()),
        )}
        ${along?.template()}
        <p role="status">${this.said} ${there}</p>
      </section>
    `;
  }

  async save() {
    const entries = await more.soundEntries(this.visit);
    const name = fileName(entries, "json");
    download(recordText(this.visit, entries, this.library), name, "application/json");
    this.say(message.look({ file: name }), { entries });
  }

  async table() {
    const entries = await more.soundEntries(this.visit);
    download(csvText(entries), fileName(entries, "csv"), "text/csv;charset=utf-8");
    this.say(message.tableSaved());
  }

  /** Hand it to the phone's share sheet. */
  async share() {
    const entries = await more.soundEntries(this.visit);
    const { type, ending } = SHARED.find(isTaken) ?? SHARED[0];
    const file = new File([recordText(this.visit, entries, this.library)], fileName(entries, ending), { type });
    try {
      await navigator.share({ files: [file], title: file.name });
      await this.settle({ entries });
    } catch (error) {
      this.say(store.nameOf(error) === "AbortError" ? message.notShared() : message.shareRefused());
    }
  }

  /** Note that a file holds these. @param {Handed} handed */
  async settle({ entries, photographs = [] }) {
    await markSaved(this.visit, [...entries.map((entry) => entry.id), ...photographs]).catch(() => {});
    await this.look();
    this.say(message.noted());
    await this.changed();
  }
}

const SHARED = [
  { type: "application/json", ending: "json" },
  { type: "text/plain", ending: "json.txt" },
];

/** Whether the phone's share sheet takes a file of a type. @param {{type: string, ending: string}} shared */
const isTaken = ({ type, ending }) =>
  navigator.canShare?.({ files: [new File(["{}"], `visit.${ending}`, { type })] }) ?? false;

/** @typedef {{visit: string, all: Entry[], fresh: Entry[], words: string}} Found what a file would bring in */

/**
 * Look at a file before anything is changed.
 * @param {string} content
 * @returns {Promise<{fault: string} | Found>}
 */
export async function lookAt(content) {
  const read = readFile(content);
  if ("fault" in read) return read;
  const { visit, entries } = read.record;
  if ((await more.everything("locked")).some((row) => row.visit === visit)) {
    return { fault: message.locked() };
  }
  const known = new Map((await more.soundEntries(visit)).map((entry) => [entry.id, entry]));
  const altered = entries.some((entry) => {
    const here = known.get(entry.id);
    return here && canonical(here) !== canonical(entry);
  });
  if (altered) {
    return { fault: message.altered() };
  }
  const fresh = entries.filter((entry) => !known.has(entry.id));
  const elsewhere = new Set((await more.everything("entries")).map((entry) => entry.id));
  if (fresh.some((entry) => elsewhere.has(entry.id))) {
    return { fault: message.otherVisit() };
  }
  return { visit, all: entries, fresh, words: foundWords(entries, fresh.length) };
}

/** @param {Entry[]} entries @param {number} fresh how many of them are new here */
function foundWords(entries, fresh) {
  const { visit } = view(entries);
  const people = [...new Set(entries.map((entry) => entry.by).filter(Boolean))].slice(0, 5);
  const name = visit ? message.visitOn({ visit: visit.site, date: visit.date }) : message.listsOnly();
  const values = { name, entries: entries.length, fresh };
  return people.length ? message.foundBy({ ...values, people: listed(people, "unit") }) : message.found(values);
}

/** What a file holds, as text; null where it is too large or cannot be read. @param {File} file */
const contentOf = async (file) => (file.size > MOST_BYTES ? null : file.text().catch(() => null));

/** Bring a record in, after a look and a second press. */
export class Import {
  /** @param {() => unknown} render shows it anew @param {(visit: string) => void} brought */
  constructor(render, brought) {
    this.render = render;
    this.brought = brought;
    this.said = "";
    this.warns = false;
    /** @type {Found | null} what is looked at */
    this.found = null;
  }

  /** @param {string} said @param {boolean} [warns] @param {Found | null} [found] */
  say(said, warns = false, found = null) {
    Object.assign(this, { said, warns, found });
    this.render();
  }

  template() {
    const accept = ".json,.txt,application/json,text/plain";
    const choose = (/** @type {Event} */ event) => this.look(/** @type {HTMLInputElement} */ (event.target));
    const input = html`<input type="file" id="ls-import" accept=${accept} @change=${choose}>`;
    const { found } = this;
    const said = this.said && html`<p class=${this.warns ? "ls-warn" : ""}>${this.said}</p>`;
    return html`
      <div class="ls-import">
        ${labelled("ls-import", message.bring(), input)}
        <div class="ls-said" role="status">${said}${
          found &&
          tools(
            button(message.bringIn(), () => this.bring(found), "ls-main"),
            quiet(message.leave(), () => this.say("")),
          )
        }</div>
      </div>
    `;
  }

  /** @param {HTMLInputElement} input */
  async look(input) {
    const [file] = input.files ?? [];
    input.value = "";
    if (!file) return;
    this.say(""); // what was said of another file
    const content = await contentOf(file);
    const found = content === null ? { fault: message.unreadable() } : await lookAt(content);
    if ("fault" in found) this.say(message.unchanged(found), true);
    else if (!found.fresh.length) this.say(message.nothingNew({ found: found.words }));
    else this.say(found.words, false, found);
  }

  /** @param {Found} found */
  async bring({ fresh, visit }) {
    try {
      await more.addAll(fresh);
      this.say(message.brought({ entries: fresh.length }));
      this.brought(visit);
    } catch (error) {
      this.say(message.unchanged({ fault: store.inWords(error) }), true);
    }
  }
}

/** The record as a file: out as JSON or as a table, by download or the share sheet; in again, all of it or nothing. */
import { button, count, download, field, fill, h, now } from "../core/dom.js";
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
  return entry.kind === "undo" ? `takes back ${entry.undoes.length}` : undefined;
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
    ["order", (entry) => entry.n],
    ["time", (entry) => entry.at],
    ["by", (entry) => entry.by],
    ["what", (entry) => entry.kind],
    ["taken back", (entry) => (live.has(entry.id) ? "" : "taken back")],
    ["opening", (entry) => openings.get(opening(entry) ?? "")?.name ?? opening(entry)],
    ["checklist", (entry) => listed(entry)?.list_name],
    ["version", (entry) => listed(entry)?.list_version],
    ["item", (entry) => item(entry)?.item],
    ["words", wordsOf],
    ["outcome", (entry) => item(entry)?.outcome],
    ["reading", (entry) => (item(entry)?.reading?.over ? "over range" : item(entry)?.reading?.value)],
    ["unit", (entry) => item(entry)?.reading?.unit],
    ["verdict", verdict],
    ["expected", (entry) => item(entry)?.expected?.words],
    ["note", (entry) => ("note" in entry ? entry.note : undefined)],
    ["library", (entry) => entry.library],
    ["id", (entry) => entry.id],
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
  const bare = (visit?.site ?? "no visit").normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  const plain = bare.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
  return `visit-${visit?.date ?? now().slice(0, 10)}-${plain.slice(0, 40) || "site"}.${ending}`;
}

/** How many entries no file holds yet. @param {string} visit @param {Entry[]} entries */
export async function waiting(visit, entries) {
  const saved = new Set((await store.exported(visit))?.ids);
  return entries.filter((entry) => !saved.has(entry.id)).length;
}

/** @param {string} visit @param {Entry[]} entries */
const markSaved = (visit, entries) =>
  store.remember(`exported ${visit}`, { at: now(), ids: entries.map((entry) => entry.id) });

/**
 * @typedef {Object} Leaving a record on its way out
 * @property {string} visit
 * @property {string} library
 * @property {HTMLElement} said where to say how it went
 * @property {(entries: Entry[]) => Promise<void>} settled called once it is out
 */

/**
 * What asks for the record to be taken along, with the ways it can be.
 * @param {string} visit @param {string} library @param {() => void} [changed]
 */
export async function fileBlock(visit, library, changed = () => {}) {
  const block = h("section", { class: "ls-file", "aria-label": "Take the record with you" });
  const said = h("p", { role: "status" });
  const show = async () => {
    const entries = await more.soundEntries(visit);
    const left = await waiting(visit, entries);
    const words = left
      ? `Before you go: ${count(left, "entry is", "entries are")} only on this device. Take the record with you.`
      : `All of it, ${count(entries.length, "entry", "entries")}, is in a file that you saved.`;
    fill(block, h("p", { class: left ? "ls-warn" : "" }, words), waysOut(leaving), said);
  };
  const settled = async (/** @type {Entry[]} */ entries) => {
    await markSaved(visit, entries).catch(() => {});
    said.textContent = "Noted: the record is saved.";
    await show();
    changed();
  };
  const leaving = { visit, library, said, settled };
  await show();
  return block;
}

/** @param {Leaving} leaving */
function waysOut(leaving) {
  const table = async () => {
    const entries = await more.soundEntries(leaving.visit);
    download(csvText(entries), fileName(entries, "csv"), "text/csv;charset=utf-8");
    leaving.said.textContent =
      "The table opens in a spreadsheet. It cannot be brought in again: save the file as well.";
  };
  const tools = h("div", { class: "ls-tools" });
  fill(
    tools,
    button("Save as a file", () => save(leaving), { class: "ls-button ls-main" }),
    shareButton(leaving),
    button("Save as a table", table, { class: "ls-button ls-quiet" }),
  );
  return tools;
}

/** @param {Leaving} leaving */
async function save({ visit, library, said, settled }) {
  const entries = await more.soundEntries(visit);
  const name = fileName(entries, "json");
  download(recordText(visit, entries, library), name, "application/json");
  // A page is not told whether a download has arrived: the technician says so.
  const there = button("It is there", () => settled(entries));
  said.replaceChildren(`Look for ${name} among the downloads. Is it there? `, there);
}

const SHARED = [
  { type: "application/json", ending: "json" },
  { type: "text/plain", ending: "json.txt" },
];

/** Whether the phone's share sheet takes a file of a type. @param {{type: string, ending: string}} shared */
const isTaken = ({ type, ending }) =>
  navigator.canShare?.({ files: [new File(["{}"], `visit.${ending}`, { type })] }) ?? false;

/** The phone's share sheet, where there is one that takes a file. @param {Leaving} leaving */
function shareButton({ visit, library, said, settled }) {
  const shared = SHARED.find(isTaken);
  if (!shared) return null;
  return button("Share", async () => {
    const entries = await more.soundEntries(visit);
    const { type, ending } = shared;
    const file = new File([recordText(visit, entries, library)], fileName(entries, ending), { type });
    try {
      await navigator.share({ files: [file], title: file.name });
      await settled(entries);
    } catch (error) {
      const left = store.nameOf(error) === "AbortError";
      said.textContent = left ? "Not shared." : "Sharing was refused. Save it as a file instead.";
    }
  });
}

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
    return { fault: "This visit is locked away on this device. Unlock it first." };
  }
  const known = new Map((await more.soundEntries(visit)).map((entry) => [entry.id, entry]));
  const altered = entries.some((entry) => {
    const here = known.get(entry.id);
    return here && canonical(here) !== canonical(entry);
  });
  if (altered) {
    return { fault: "The record was altered: an entry that is on this device reads otherwise in the file." };
  }
  const fresh = entries.filter((entry) => !known.has(entry.id));
  const elsewhere = new Set((await more.everything("entries")).map((entry) => entry.id));
  if (fresh.some((entry) => elsewhere.has(entry.id))) {
    return { fault: "The record was altered: it holds an entry of another visit." };
  }
  return { visit, all: entries, fresh, words: foundWords(entries, fresh.length) };
}

/** @param {Entry[]} entries @param {number} fresh how many of them are new here */
function foundWords(entries, fresh) {
  const { visit } = view(entries);
  const people = [...new Set(entries.map((entry) => entry.by).filter(Boolean))].slice(0, 5).join(", ");
  const name = visit ? `${visit.site}, ${visit.date}` : "Lists run without a visit";
  const by = people ? ` by ${people}` : "";
  return `${name}: ${count(entries.length, "entry", "entries")}${by}, ${fresh} of them new here.`;
}

/** What a file holds, as text; null where it is too large or cannot be read. @param {File} file */
const contentOf = async (file) => (file.size > MOST_BYTES ? null : file.text().catch(() => null));

/** Bring a record in, after a look and a second press. @param {(visit: string) => void} brought */
export function importBlock(brought) {
  const said = h("div", { class: "ls-said", role: "status" });
  const choose = async () => {
    const [file] = input.files ?? [];
    input.value = "";
    if (!file) return;
    const content = await contentOf(file);
    const found = content === null ? { fault: "The file is too large, or cannot be read." } : await lookAt(content);
    if ("fault" in found) said.replaceChildren(h("p", { class: "ls-warn" }, `${found.fault} Nothing was changed.`));
    else if (!found.fresh.length) said.replaceChildren(h("p", {}, `${found.words} Nothing to bring in.`));
    else said.replaceChildren(h("p", {}, found.words), importTools(found, said, brought));
  };
  const accept = ".json,.txt,application/json,text/plain";
  /** @type {HTMLInputElement} */
  const input = h("input", { type: "file", accept, change: choose });
  return h("div", { class: "ls-import" }, field("Bring in a saved file", input), said);
}

/** @param {Found} found @param {HTMLElement} said @param {(visit: string) => void} brought */
function importTools({ fresh, visit }, said, brought) {
  const bring = async () => {
    try {
      await more.addAll(fresh);
      said.replaceChildren(h("p", {}, `${count(fresh.length, "entry", "entries")} brought in.`));
      brought(visit);
    } catch (error) {
      said.replaceChildren(h("p", { class: "ls-warn" }, `${store.inWords(error)} Nothing was changed.`));
    }
  };
  const leave = button("Leave it", () => said.replaceChildren(), { class: "ls-button ls-quiet" });
  return h("div", { class: "ls-tools" }, button("Bring it in", bring, { class: "ls-button ls-main" }), leave);
}

/** The record as a file: out as JSON or as a table, by download or the share sheet; in again, all of it or nothing. */
import { button, count, download, field, fill, h, now } from "./dom.js";
import { canonical, judge, settle, view } from "./entries.js";
import { readFile } from "./shape.js";
import * as more from "./store-visits.js";
import * as store from "./store.js";

/** @typedef {import("./entries.js").Entry} Entry */

/** The text of a record's file. @param {string} visit @param {Entry[]} entries @param {string} library */
export function recordText(visit, entries, library) {
  const { ordered } = settle(entries);
  return `${JSON.stringify({ format: "latchside-visit", version: 1, saved: now(), library, visit, entries: ordered }, null, 1)}\n`;
}

const COLUMNS = [
  "order", "time", "by", "what", "taken back", "opening", "checklist", "version", "item", "words", "outcome", "reading", "unit", "verdict", "expected", "note", "library", "id",
];

/** A cell that a spreadsheet can only read as text or as a number. @param {any} value */
export function cell(value) {
  if (value === null || value === undefined) return "";
  if (typeof value === "number") return String(value);
  const text = String(value).replace(/[\r\n]+/g, " ");
  const safe = /^[\s"']*[=+\-@|%\uff1d\uff0b\uff0d\uff20\u2212]/.test(text) ? `'${text}` : text;
  return /[",;\t\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The record as comma-separated values, one line an entry. @param {Entry[]} entries */
export function csvText(entries) {
  const { ordered, live, openings } = view(entries);
  const lines = ordered.map((/** @type {any} */ entry) => {
    const opening = openings.get(entry.opening)?.name ?? entry.opening;
    const what = { visit: entry.site, opening: entry.name, state: entry.state, undo: entry.reason && `takes back ${entry.undoes.length}` }[/** @type {string} */ (entry.kind)];
    return [
      entry.n, entry.at, entry.by, entry.kind, live.has(entry.id) ? "" : "taken back", opening, entry.list_name, entry.list_version, entry.item, entry.words ?? what,
      entry.outcome, entry.reading?.over ? "over range" : entry.reading?.value, entry.reading?.unit, entry.reading && judge(entry.reading, entry.expected),
      entry.expected?.words, entry.note, entry.library, entry.id,
    ];
  });
  return `\ufeff${[COLUMNS, ...lines].map((line) => line.map(cell).join(",")).join("\r\n")}\r\n`;
}

/** A name for the file that any system takes. @param {Entry[]} entries @param {string} ending */
export function fileName(entries, ending) {
  const { visit } = view(entries);
  const plain = (visit?.site ?? "no visit").normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 40);
  return `visit-${visit?.date ?? now().slice(0, 10)}-${plain || "site"}.${ending}`;
}

/** How many entries no file holds yet. @param {string} visit @param {Entry[]} entries */
export async function waiting(visit, entries) {
  const saved = new Set((await store.recall(`exported ${visit}`))?.ids);
  return entries.filter((entry) => !saved.has(entry.id)).length;
}

/** @param {string} visit @param {Entry[]} entries */
const markSaved = (visit, entries) => store.remember(`exported ${visit}`, { at: now(), ids: entries.map((entry) => entry.id) });

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
    fill(block, h("p", { class: left ? "ls-warn" : "" }, words), tools(), said);
  };
  const settled = async (/** @type {Entry[]} */ entries) => {
    await markSaved(visit, entries).catch(() => {});
    said.textContent = "Noted: the record is saved.";
    await show();
    changed();
  };
  const tools = () => h("div", { class: "ls-tools" }, button("Save as a file", () => save(visit, library, said, settled), { class: "ls-button ls-main" }), shareButton(visit, library, said, settled), button("Save as a table", async () => {
    const entries = await more.soundEntries(visit);
    download(csvText(entries), fileName(entries, "csv"), "text/csv;charset=utf-8");
    said.textContent = "The table opens in a spreadsheet. It cannot be brought in again: save the file as well.";
  }, { class: "ls-button ls-quiet" }));
  await show();
  return block;
}

/** @param {string} visit @param {string} library @param {HTMLElement} said @param {(entries: Entry[]) => Promise<void>} settled */
async function save(visit, library, said, settled) {
  const entries = await more.soundEntries(visit);
  const name = fileName(entries, "json");
  download(recordText(visit, entries, library), name, "application/json");
  // A page is not told whether a download has arrived: the technician says so.
  said.replaceChildren(`Look for ${name} among the downloads. Is it there? `, button("It is there", () => settled(entries)));
}

/** The phone's share sheet, where there is one that takes a file. @param {string} visit @param {string} library @param {HTMLElement} said @param {(entries: Entry[]) => Promise<void>} settled */
function shareButton(visit, library, said, settled) {
  const sample = new File(["{}"], "visit.json", { type: "application/json" });
  const asText = new File(["{}"], "visit.txt", { type: "text/plain" });
  const kind = navigator.canShare?.({ files: [sample] }) ? "json" : navigator.canShare?.({ files: [asText] }) ? "txt" : "";
  if (!kind) return null;
  return button("Share", async () => {
    const entries = await more.soundEntries(visit);
    const type = kind === "json" ? "application/json" : "text/plain";
    const file = new File([recordText(visit, entries, library)], fileName(entries, kind === "json" ? "json" : "json.txt"), { type });
    try {
      await navigator.share({ files: [file], title: file.name });
      await settled(entries);
    } catch (error) {
      said.textContent = /** @type {any} */ (error)?.name === "AbortError" ? "Not shared." : "Sharing was refused. Save it as a file instead.";
    }
  });
}

/**
 * Look at a file before anything is changed.
 * @param {string} content
 * @returns {Promise<{fault: string} | {visit: string, all: Entry[], fresh: Entry[], words: string}>}
 */
export async function lookAt(content) {
  const { record, fault } = readFile(content);
  if (fault) return { fault };
  if ((await more.everything("locked")).some((row) => row.visit === record.visit)) return { fault: "This visit is locked away on this device. Unlock it first." };
  const known = new Map((await more.soundEntries(record.visit)).map((entry) => [entry.id, entry]));
  /** @type {Entry[]} */
  const fresh = [];
  for (const entry of record.entries) {
    const here = known.get(entry.id);
    if (here && canonical(here) !== canonical(entry)) return { fault: "The record was altered: an entry that is on this device reads otherwise in the file." };
    if (!here) fresh.push(entry);
  }
  const elsewhere = new Map((await more.everything("entries")).map((entry) => [entry.id, entry.visit]));
  if (fresh.some((entry) => elsewhere.has(entry.id))) return { fault: "The record was altered: it holds an entry of another visit." };
  const { visit } = view(record.entries);
  const people = [...new Set(record.entries.map((/** @type {Entry} */ entry) => entry.by).filter(Boolean))].slice(0, 5).join(", ");
  const words = `${visit ? `${visit.site}, ${visit.date}` : "Lists run without a visit"}: ${count(record.entries.length, "entry", "entries")}${people ? ` by ${people}` : ""}, ${fresh.length} of them new here.`;
  return { visit: record.visit, all: record.entries, fresh, words };
}

/** Bring a record in, after a look and a second press. @param {(visit: string) => void} brought */
export function importBlock(brought) {
  const said = h("div", { class: "ls-said", role: "status" });
  const choose = h("input", { type: "file", accept: ".json,.txt,application/json,text/plain", change: async (/** @type {any} */ event) => {
    const [file] = event.target.files;
    event.target.value = "";
    if (!file) return;
    const content = file.size > 40_000_000 ? null : await file.text().catch(() => null);
    const found = content === null ? { fault: "The file is too large, or cannot be read." } : await lookAt(content);
    if ("fault" in found) return said.replaceChildren(h("p", { class: "ls-warn" }, `${found.fault} Nothing was changed.`));
    if (!found.fresh.length) return said.replaceChildren(h("p", {}, `${found.words} Nothing to bring in.`));
    said.replaceChildren(h("p", {}, found.words), h("div", { class: "ls-tools" }, button("Bring it in", async () => {
      try {
        await more.addAll(found.fresh);
        said.replaceChildren(h("p", {}, `${count(found.fresh.length, "entry", "entries")} brought in.`));
        brought(found.visit);
      } catch (error) {
        said.replaceChildren(h("p", { class: "ls-warn" }, `${store.inWords(error)} Nothing was changed.`));
      }
    }, { class: "ls-button ls-main" }), button("Leave it", () => said.replaceChildren(), { class: "ls-button ls-quiet" })));
  } });
  return h("div", { class: "ls-import" }, field("Bring in a saved file", choose), said);
}

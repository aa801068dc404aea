/**
 * The printed sheet of a visit: every list that was run, open items marked, readings with what they were judged
 * against.
 */
import { clock, h } from "../core/dom.js";
import { sheet as message } from "../messages/visit.js";
import { judge, shown } from "./entries.js";

/**
 * What the page of visits knows of the library, as `scripts/latchside/pages/visit_lists.py` writes it:
 * @typedef {{id: string, words: string, only?: string[], measure?: string}} ListItem
 * @typedef {{href: string, per: "site" | "opening", devices: string[], items: ListItem[]}} ListFields
 * @typedef {{id: string, name: string} & ListFields} List
 * @typedef {{library: string, devices: {id: string, name: string}[], checklists: List[]}} Known
 *
 * @typedef {import("./entries.js").ItemEntry} ItemEntry
 * @typedef {import("./entries.js").Run} Run
 * @typedef {import("./entries.js").View} View
 * @typedef {import("./entries.js").Outcome["outcome"] | "open"} State
 * @typedef {{item: {id: string, words: string}, state: State, heads: ItemEntry[]}} Row
 */

const isOpen = (/** @type {Row} */ row) => row.state === "open" || row.state === "differs";

/**
 * How a list stands in a run.
 * @param {ListItem[]} items of the list
 * @param {Run | undefined} run
 * @param {string[]} devices
 */
export function standing(items, run, devices) {
  const asked = items.filter((item) => isAsked(item, run, devices));
  const rows = [...asked.map((item) => rowOf(item, run)), ...gone(items, run)];
  const open = rows.filter(isOpen);
  const problems = rows.filter((row) => row.state === "problem");
  const complete = !open.length && Boolean(run?.complete.length);
  return { rows, open, problems, started: Boolean(run?.items.size), complete };
}

/**
 * Whether every list that was begun in a visit is complete: then the visit is there to be looked at.
 * @param {View} seen @param {List[]} lists
 */
export function isFinished({ runs, openings }, lists) {
  const states = [...runs].map(([key, run]) => {
    const [id, opening] = key.split("|");
    const device = openings.get(opening)?.device;
    return standing(lists.find((one) => one.id === id)?.items ?? [], run, device ? [device] : []);
  });
  return states.length > 0 && states.every((state) => state.complete);
}

/**
 * Whether an item is asked at these devices, or was answered.
 * @param {ListItem} item @param {Run | undefined} run @param {string[]} devices
 */
const isAsked = ({ id, only }, run, devices) =>
  run?.items.has(id) || !only || !devices.length || only.some((device) => devices.includes(device));

/** @param {ListItem} item @param {Run | undefined} run @returns {Row} */
function rowOf(item, run) {
  const outcome = run?.items.get(item.id);
  if (!outcome) return { item, state: "open", heads: [] };
  const { heads } = outcome;
  return { item, state: heads.some((entry) => entry.words !== item.words) ? "open" : outcome.outcome, heads };
}

/**
 * Answers to items that are no longer on the list.
 * @param {ListItem[]} items @param {Run | undefined} run
 * @returns {Row[]}
 */
function gone(items, run) {
  const known = new Set(items.map((item) => item.id));
  const others = [...(run?.items ?? [])].filter(([id]) => !known.has(id));
  return others.map(([id, { outcome, heads }]) => ({ item: { id, words: heads[0].words }, state: outcome, heads }));
}

/** What was read and noted. @param {ItemEntry} entry */
export function findingsOf({ reading, expected, note }) {
  const parts = [];
  if (reading) {
    const verdict = judge(reading, expected);
    const read = shown(reading);
    parts.push(verdict ? message.judged({ reading: read, verdict, expected: expected?.words ?? "" }) : read);
  }
  if (note) parts.push(note);
  return parts.join(". ");
}

/** When and by whom. @param {{at: string, by: string}} entry */
const signed = ({ at, by }) => `${clock(at)} ${by}`;

/** @param {View} seen @param {Known} data @param {string} library @param {Node[]} [photographs] by opening */
export function sheet(seen, data, library, photographs = []) {
  const { visit, runs } = seen;
  const title = h("h2", {}, visit ? visit.site : message.listsOnly());
  const paper = h("section", { class: "ls-sheet" }, title);
  if (visit) paper.append(h("p", {}, `${visit.date}${visit.who ? ` · ${visit.who}` : ""}`));
  for (const [key, run] of runs) paper.append(...listPart(seen, key, run, data));
  paper.append(...photographs, ...notesPart(seen));
  paper.append(h("p", { class: "ls-sign-line" }, message.signature()));
  paper.append(h("p", {}, message.library({ library, when: new Date().toLocaleString() })));
  return paper;
}

/** @param {View} seen @param {string} key of the run @param {Run} run @param {Known} data */
function listPart({ openings }, key, run, data) {
  const [id, at] = key.split("|");
  const list = data.checklists.find((one) => one.id === id);
  const opening = openings.get(at);
  const state = standing(list?.items ?? [], run, opening?.device ? [opening.device] : []);
  if (!state.started && !run.complete.length) return [];
  const [first] = [...[...run.items.values()].flatMap((outcome) => outcome.heads), ...run.complete];
  const name = list?.name ?? first.list_name;
  const titles = ["", message.item(), message.reading(), message.time()].map((words) =>
    h("th", { scope: "col" }, words),
  );
  const body = h("tbody", {}, ...state.rows.map(tableRow));
  const complete = state.complete && message.complete({ signed: signed(run.complete[0]) });
  return [
    h("h3", {}, at ? message.listAt({ list: name, opening: opening?.name ?? message.anOpening() }) : name),
    h("table", {}, h("thead", {}, h("tr", {}, ...titles)), body),
    h("p", { class: "ls-end" }, complete || message.notComplete({ open: state.open.length })),
  ];
}

/** @param {Row} row */
function tableRow(row) {
  const { item, state, heads } = row;
  const found = heads.map(findingsOf).filter(Boolean).join(" / ");
  const cells = [message.mark({ state }), item.words, found, heads.map(signed).join(" / ")];
  return h("tr", { class: isOpen(row) ? "ls-open" : "" }, ...cells.map((words) => h("td", {}, words)));
}

/** @param {View} seen */
function notesPart({ notes, openings }) {
  if (!notes.length) return [];
  const rows = notes.map((note) => {
    const opening = openings.get(note.opening ?? "")?.name;
    const said = { note: note.note, signed: signed(note) };
    return h("li", {}, opening ? message.noteAt({ opening, ...said }) : message.note(said));
  });
  return [h("h3", {}, message.notes()), h("ul", {}, ...rows)];
}

/**
 * Lay a sheet ready: from now on, printing prints it and nothing else; without one, the page again.
 * @param {HTMLElement | null} paper
 */
export function laySheet(paper) {
  document.querySelector("body > .ls-sheet")?.remove();
  document.body.classList.toggle("ls-printing", Boolean(paper));
  if (paper) document.body.append(paper);
}

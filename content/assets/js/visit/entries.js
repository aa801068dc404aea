/**
 * What a list of entries means. Pure: no page, no store, no clock. `scripts/latchside/visits/state.py` says the same
 * in Python, and both are held to the cases in `tests/visits/`.
 *
 * @typedef {{low?: number, high?: number}} Range
 * @typedef {{value?: number, over?: true, unit: string}} Reading
 * @typedef {{words: string, unit: string, ranges: Range[], device?: string}} Expected
 *
 * An entry of a visit is what schema/visit.schema.json describes, one type for each kind:
 * @typedef {{id: string, visit: string, n: number, at: string, by: string, library: string}} Common
 * @typedef {{checklist: string, list_name: string, list_version: number, opening: string | null}} Listed
 * @typedef {"done" | "not-applicable" | "problem"} Answer
 * @typedef {{id: string, calendar?: string}} Job the survey that a visit came from, and what falls due after it
 * @typedef {Common & {kind: "visit", site: string, date: string, who: string, job?: Job, after: string[]}} VisitEntry
 * @typedef {{opening: string, name: string, device: string | null, removed: boolean}} OpeningFields
 * @typedef {{opening: string, zone?: string}} Place of an opening in the plan: its id in the survey, its position
 * @typedef {{expected?: Record<string, Expected>, job?: Place, after: string[]}} OpeningPlan
 * @typedef {Common & {kind: "opening"} & OpeningFields & OpeningPlan} OpeningEntry
 * @typedef {{item: string, words: string, outcome: Answer, note?: string, after: string[]}} ItemFields
 * @typedef {{reading?: Reading, expected?: Expected}} Measured
 * @typedef {Common & Listed & {kind: "item"} & ItemFields & Measured} ItemEntry
 * @typedef {Common & Listed & {kind: "complete", words: string, after: string[]}} CompleteEntry
 * @typedef {Common & {kind: "note", opening: string | null, note: string}} NoteEntry
 * @typedef {Common & {kind: "state", state: "open" | "archived", after: string[]}} StateEntry
 * @typedef {Common & {kind: "undo", undoes: string[], reason: "undo" | "open" | "reset"}} UndoEntry
 * @typedef {VisitEntry | OpeningEntry | ItemEntry | CompleteEntry | NoteEntry | StateEntry | UndoEntry} Entry
 *
 * What entries mean together:
 * @typedef {OpeningEntry & {heads: string[]}} Opening
 * @typedef {{outcome: Answer | "differs", heads: ItemEntry[]}} Outcome
 * @typedef {{items: Map<string, Outcome>, complete: CompleteEntry[]}} Run
 * @typedef {Object} View how things stand in a visit
 * @property {VisitEntry | null} visit
 * @property {StateEntry["state"]} state
 * @property {{visit: string[], state: string[]}} heads
 * @property {Map<string, Opening>} openings
 * @property {Map<string, Run>} runs
 * @property {NoteEntry[]} notes
 * @property {Set<string>} live ids of the entries that stand
 * @property {Entry[]} ordered
 */
import { entries as message } from "../messages/visit.js";

/** The order of entries: counter, then id. The time is not asked. @param {Entry} a @param {Entry} b */
export const order = (a, b) => a.n - b.n || Number(a.id > b.id) - Number(a.id < b.id);

/** The union of lists of entries, in order. @param {...Entry[]} lists @returns {Entry[]} */
export function merge(...lists) {
  const all = new Map();
  for (const entry of lists.flat()) {
    const known = all.get(entry.id);
    if (!known || canonical(entry) < canonical(known)) all.set(entry.id, entry);
  }
  return [...all.values()].sort(order);
}

/** One text for one content, whatever the order of its keys. @param {unknown} value @returns {string} */
export function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  const group = /** @type {Record<string, unknown>} */ (value);
  const keys = Object.keys(group).sort();
  return `{${keys.map((key) => `${JSON.stringify(key)}:${canonical(group[key])}`).join(",")}}`;
}

/** The list and opening that an entry belongs to. @param {{checklist: string, opening?: string | null}} entry */
export const runKey = ({ checklist, opening }) => `${checklist}|${opening ?? ""}`;

/** What an entry is about: only entries about the same thing replace each other. @param {Entry} entry */
function slot(entry) {
  if (entry.kind === "item") return `item|${runKey(entry)}|${entry.item}`;
  if (entry.kind === "complete") return `complete|${runKey(entry)}`;
  return entry.kind === "opening" ? `opening|${entry.opening}` : entry.kind;
}

/** The ids of the entries that one replaces. @param {Entry} entry @returns {string[]} */
const before = (entry) => ("after" in entry ? (entry.after ?? []) : []);

/**
 * Which entries stand: from the last to the first, an entry is taken back where a later undo that stands names it,
 * and replaced where a later entry about the same thing that stands, or was itself replaced, names it.
 * @param {Entry[]} entries @returns {{live: Set<string>, heads: Entry[], ordered: Entry[]}}
 */
export function settle(entries) {
  const ordered = merge(entries);
  const undone = new Set();
  const replaced = new Set();
  /** @type {Set<string>} */
  const live = new Set();
  /** @type {Entry[]} */
  const heads = [];
  for (const entry of ordered.toReversed()) {
    const about = slot(entry);
    const covered = replaced.has(`${about} ${entry.id}`);
    const stands = !undone.has(entry.id);
    if (stands) live.add(entry.id);
    if (stands && entry.kind === "undo") for (const id of entry.undoes ?? []) undone.add(id);
    if (stands || covered) for (const id of before(entry)) replaced.add(`${about} ${id}`);
    if (stands && !covered) heads.push(entry);
  }
  return { live, heads: heads.reverse(), ordered };
}

/**
 * How things stand in a visit.
 * @param {Entry[]} entries
 * @returns {View}
 */
export function view(entries) {
  const { live, heads, ordered } = settle(entries);
  /** @type {View} */
  const shown = {
    visit: null,
    state: "open",
    heads: { visit: [], state: [] },
    openings: new Map(),
    runs: new Map(),
    notes: [],
    live,
    ordered,
  };
  for (const entry of heads) addTo(shown, entry);
  shown.openings = inTurn(shown.openings, ordered);
  return shown;
}

/** @param {View} shown @param {Entry} entry */
function addTo(shown, entry) {
  if (entry.kind === "visit") {
    shown.heads.visit.push(entry.id);
    shown.visit = entry;
  } else if (entry.kind === "state") {
    shown.heads.state.push(entry.id);
    shown.state = entry.state;
  } else if (entry.kind === "opening") {
    const known = shown.openings.get(entry.opening)?.heads ?? [];
    shown.openings.set(entry.opening, { ...entry, heads: [...known, entry.id] });
  } else if (entry.kind === "note") shown.notes.push(entry);
  else if (entry.kind !== "undo") addToRun(shown.runs, entry);
}

/**
 * The openings in the order in which they were first named.
 * @param {Map<string, Opening>} openings @param {Entry[]} ordered
 */
function inTurn(openings, ordered) {
  const named = ordered.flatMap((entry) => (entry.kind === "opening" ? [entry.opening] : []));
  /** @type {Map<string, Opening>} */
  const sorted = new Map();
  for (const id of named) {
    const opening = openings.get(id);
    if (opening) sorted.set(id, opening);
  }
  return sorted;
}

/**
 * An opening changed: what was planned for it stays as long as its device does.
 * @param {Opening} before @param {Partial<OpeningFields>} fields
 * @returns {OpeningFields & OpeningPlan}
 */
export function openingAfter({ opening, name, device, removed, expected, heads }, fields) {
  const planned = expected && (fields.device === undefined || fields.device === device) ? { expected } : {};
  return { opening, name, device, removed, ...planned, after: heads, ...fields };
}

/** @param {Map<string, Run>} runs @param {ItemEntry | CompleteEntry} entry */
function addToRun(runs, entry) {
  const key = runKey(entry);
  /** @type {Run} */
  const run = runs.get(key) ?? { items: new Map(), complete: [] };
  runs.set(key, run);
  if (entry.kind === "complete") {
    run.complete.push(entry);
    return;
  }
  const known = run.items.get(entry.item);
  if (!known) run.items.set(entry.item, { outcome: entry.outcome, heads: [entry] });
  else {
    known.heads.push(entry);
    if (known.outcome !== entry.outcome) known.outcome = "differs";
  }
}

/** Whether a reading lies within limits. @param {Reading} reading @param {Range} range */
function within({ value, over }, { low, high }) {
  if (over) return high === undefined;
  return value !== undefined && (low === undefined || low <= value) && (high === undefined || value <= high);
}

/**
 * Inside, outside, or null where nothing was expected.
 * @param {Reading} reading @param {Expected | undefined} expected
 */
export function judge(reading, expected) {
  if (!expected) return null;
  return expected.ranges.some((range) => within(reading, range)) ? "inside" : "outside";
}

/** @type {Record<string, number>[]} */
const FAMILIES = [
  { "\u03a9": 1, "k\u03a9": 1e3, "M\u03a9": 1e6 },
  { mV: 1e-3, V: 1 },
  { s: 1, min: 60, h: 3600 },
  { mm: 1, in: 25.4 },
  { m: 1, ft: 0.3048 },
];

/**
 * The figures of a page, one for each device that has it.
 * @param {string} expectations as JSON
 * @returns {import("./reading.js").Figure[]}
 */
export function figuresOf(expectations) {
  /** @type {(Omit<import("./reading.js").Figure, "device" | "name"> & {of: Record<string, string>})[]} */
  const stated = JSON.parse(expectations || "[]");
  return stated.flatMap(({ of, ...figure }) =>
    Object.entries(of).map(([device, name]) => ({ device: device || null, name, ...figure })),
  );
}

/**
 * What is good, in its own unit and in those that a meter, a rule or a display may show instead.
 * @param {Expected} expected
 */
export function scales({ unit, ranges }) {
  const family = FAMILIES.find((one) => Object.hasOwn(one, unit)) ?? {};
  const others = Object.keys(family).filter((other) => other !== unit);
  const turned = (/** @type {Range} */ range, /** @type {string} */ other) => {
    const factor = (/** @type {number} */ value) => Number(((value * family[unit]) / family[other]).toPrecision(5));
    return Object.fromEntries(Object.entries(range).map(([limit, value]) => [limit, factor(value)]));
  };
  return [
    { unit, ranges },
    ...others.map((other) => ({ unit: other, ranges: ranges.map((one) => turned(one, other)) })),
  ];
}

/** A number as typed, with comma or point; null where it is none. @param {string} text */
export function number(text) {
  const plain = text.trim().replace(/^[\u2212\u2013]/, "-");
  return /^[+-]?(\d{1,9}([.,]\d{0,6})?|[.,]\d{1,6})$/.test(plain) ? Number(plain.replace(",", ".")) : null;
}

/**
 * What was typed, or what lies over the range of the meter; null where it is no number.
 * @param {string} typed @param {boolean} over @param {string} unit
 * @returns {Reading | null}
 */
export function readingOf(typed, over, unit) {
  if (over) return { over: true, unit };
  const value = number(typed);
  return value === null ? null : { value, unit };
}

/** A figure with its sign for the reader. @param {Reading} reading */
export function shown(reading) {
  if (reading.over) return message.overRange();
  return `${String(reading.value).replace("-", "\u2212")}${reading.unit ? `\u00a0${reading.unit}` : ""}`;
}

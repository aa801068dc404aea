/**
 * What a list of entries means. Pure: no page, no store, no clock. `scripts/latchside/visits/state.py` says the same
 * in Python, and both are held to the cases in `tests/visits/`.
 *
 * @typedef {{low?: number, high?: number}} Range
 * @typedef {{value?: number, over?: true, unit: string}} Reading
 * @typedef {{words: string, unit: string, ranges: Range[], device?: string}} Expected
 * @typedef {Object} Entry one entry of a visit, as schema/visit.schema.json describes it
 * @property {string} id
 * @property {string} visit
 * @property {number} n
 * @property {string} at
 * @property {string} by
 * @property {string} library
 * @property {string} kind
 * @property {string[]} [after]
 * @property {string[]} [undoes]
 * @typedef {{outcome: string, heads: Entry[]}} Outcome
 * @typedef {{items: Map<string, Outcome>, complete: Entry[]}} Run
 */

/** The order of entries: counter, then id. The time is not asked. @param {Entry} a @param {Entry} b */
export const order = (a, b) => a.n - b.n || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** The union of lists of entries, in order. @param {...Entry[]} lists @returns {Entry[]} */
export function merge(...lists) {
  const all = new Map();
  for (const entry of lists.flat()) {
    const known = all.get(entry.id);
    if (!known || canonical(entry) < canonical(known)) all.set(entry.id, entry);
  }
  return [...all.values()].sort(order);
}

/** One text for one content, whatever the order of its keys. @param {any} value @returns {string} */
export function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  const keys = Object.keys(value).sort();
  return `{${keys.map((key) => `${JSON.stringify(key)}:${canonical(value[key])}`).join(",")}}`;
}

/** The list and opening that an entry belongs to. @param {any} entry */
export const runKey = (entry) => `${entry.checklist}|${entry.opening ?? ""}`;

/** What an entry is about: only entries about the same thing replace each other. @param {any} entry */
function slot(entry) {
  if (entry.kind === "item") return `item|${runKey(entry)}|${entry.item}`;
  if (entry.kind === "complete") return `complete|${runKey(entry)}`;
  return entry.kind === "opening" ? `opening|${entry.opening}` : entry.kind;
}

/**
 * Which entries stand: from the last to the first, an entry is taken back where a later undo that stands names it,
 * and replaced where a later entry about the same thing that stands, or was itself replaced, names it.
 * @param {Entry[]} entries @returns {{live: Set<string>, heads: Entry[], ordered: Entry[]}}
 */
export function settle(entries) {
  const ordered = merge(entries);
  const undone = new Set();
  const replaced = new Set();
  const live = new Set();
  const heads = [];
  for (const entry of [...ordered].reverse()) {
    const about = slot(entry);
    const covered = replaced.has(`${about} ${entry.id}`);
    const stands = !undone.has(entry.id);
    if (stands) live.add(entry.id);
    if (stands && entry.kind === "undo") for (const id of entry.undoes ?? []) undone.add(id);
    if (stands || covered) for (const id of entry.after ?? []) replaced.add(`${about} ${id}`);
    if (stands && !covered) heads.unshift(entry);
  }
  return { live, heads, ordered };
}

/**
 * How things stand in a visit.
 * @param {Entry[]} entries
 */
export function view(entries) {
  const { live, heads, ordered } = settle(entries);
  const shown = {
    visit: /** @type {any} */ (null), state: "open", heads: { visit: [], state: [] },
    openings: new Map(), runs: /** @type {Map<string, Run>} */ (new Map()), notes: [], live, ordered,
  };
  for (const entry of /** @type {any[]} */ (heads)) {
    if (entry.kind === "visit" || entry.kind === "state") {
      shown.heads[entry.kind].push(entry.id);
      shown[entry.kind] = entry.kind === "visit" ? entry : entry.state;
    } else if (entry.kind === "opening") {
      const before = shown.openings.get(entry.opening);
      shown.openings.set(entry.opening, { ...entry, heads: [...(before?.heads ?? []), entry.id] });
    } else if (entry.kind === "note") shown.notes.push(entry);
    else if (entry.kind === "item" || entry.kind === "complete") addToRun(shown.runs, entry);
  }
  const first = new Map();
  for (const entry of /** @type {any[]} */ (ordered)) {
    if (entry.kind === "opening" && !first.has(entry.opening)) first.set(entry.opening, first.size);
  }
  shown.openings = new Map([...shown.openings].sort(([a], [b]) => first.get(a) - first.get(b)));
  return shown;
}

/** An opening changed: what was planned for it stays as long as its device does. @param {any} before @param {any} fields */
export function openingAfter({ opening, name, device, removed, expected, heads }, fields) {
  const planned = expected && (fields.device === undefined || fields.device === device) ? { expected } : {};
  return { opening, name, device, removed, ...planned, after: heads, ...fields };
}

/** @param {Map<string, Run>} runs @param {any} entry */
function addToRun(runs, entry) {
  const key = runKey(entry);
  if (!runs.has(key)) runs.set(key, { items: new Map(), complete: [] });
  const run = /** @type {Run} */ (runs.get(key));
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

/** Inside, outside, or null where nothing was expected. @param {Reading} reading @param {Expected | undefined} expected */
export function judge(reading, expected) {
  if (!expected) return null;
  const fits = expected.ranges.some((range) =>
    reading.over
      ? range.high === undefined
      : reading.value !== undefined &&
        (range.low === undefined || range.low <= reading.value) &&
        (range.high === undefined || reading.value <= range.high),
  );
  return fits ? "inside" : "outside";
}

const FAMILIES = [
  { "\u03a9": 1, "k\u03a9": 1e3, "M\u03a9": 1e6 }, { mV: 1e-3, V: 1 }, { s: 1, min: 60, h: 3600 }, { mm: 1, in: 25.4 }, { m: 1, ft: 0.3048 },
];

/** The figures of a page, one for each device that has it. @param {string} expectations as JSON @returns {import("./reading.js").Figure[]} */
export const figuresOf = (expectations) =>
  JSON.parse(expectations || "[]").flatMap((/** @type {any} */ { of, ...figure }) => Object.entries(of).map(([device, name]) => ({ device: device || null, name, ...figure })));

/** What is good, in its own unit and in those that a meter, a rule or a display may show instead. @param {Expected} expected */
export function scales({ unit, ranges }) {
  /** @type {Record<string, number>} */
  const family = FAMILIES.find((one) => Object.hasOwn(one, unit)) ?? {};
  const others = Object.keys(family).filter((other) => other !== unit);
  const turned = (/** @type {any} */ range, /** @type {string} */ other) =>
    Object.fromEntries(Object.entries(range).map(([limit, value]) => [limit, Number(((value * family[unit]) / family[other]).toPrecision(5))]));
  return [{ unit, ranges }, ...others.map((other) => ({ unit: other, ranges: ranges.map((range) => turned(range, other)) }))];
}

/** A number as typed, with comma or point; null where it is none. @param {string} text */
export function number(text) {
  const plain = text.trim().replace(/^[\u2212\u2013]/, "-");
  return /^[+-]?(\d{1,9}([.,]\d{0,6})?|[.,]\d{1,6})$/.test(plain) ? Number(plain.replace(",", ".")) : null;
}

/** A figure with its sign for the reader. @param {Reading} reading */
export function shown(reading) {
  if (reading.over) return "over range";
  return `${String(reading.value).replace("-", "\u2212")}${reading.unit ? `\u00a0${reading.unit}` : ""}`;
}

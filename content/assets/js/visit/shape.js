/**
 * Does an entry, or a whole file, fit schema/visit.schema.json? The same rules by hand, because a page carries no
 * schema library; a test holds both to the same answers. A fault is told in words, and null means there is none.
 *
 * @typedef {(value: unknown) => string | null} Check
 * @typedef {Record<string, unknown>} Fields
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {{saved: string, library: string, visit: string, entries: Entry[]}} VisitRecord what a file holds
 */
import { shape as message } from "../messages/visit.js";

const END = "(?![^])";
const UUID = new RegExp(`^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}${END}`);
const SLUG = new RegExp(`^[a-z][a-z0-9]*(-[a-z0-9]+)*${END}`);
const DAY = "[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])";
const DATE = new RegExp(`^${DAY}${END}`);
const CLOCK = "([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9][.][0-9]{3}";
const TIME = new RegExp(`^${DAY}T${CLOCK}[+-](0[0-9]|1[0-4]):[0-5][0-9]${END}`);
const UNSEEN = /[\p{Cc}\u2028-\u202e\u2066-\u2069\ufeff\ud800-\udfff]/u;
const CALENDAR = new RegExp(`^BEGIN:VCALENDAR\r\n([^\r\n]+\r\n)+END:VCALENDAR\r\n${END}`);
const MOST_ENTRIES = 20000;
const MOST_BYTES = 20_000_000;

/** @param {RegExp} pattern @param {() => string} fault @returns {Check} */
const match = (pattern, fault) => (value) => (typeof value === "string" && pattern.test(value) ? null : fault());
const uuid = match(UUID, message.noId);
/** @type {Check} */
const slug = (value) =>
  match(SLUG, message.noRecordId)(value) ?? (typeof value === "string" && value.length > 60 ? message.tooLong() : null);
const date = match(DATE, message.noDate);
const moment = match(TIME, message.noTime);
/** @param {number} low @param {number} high @returns {Check} */
const text = (low, high) => (value) => {
  if (typeof value !== "string") return message.noText();
  const size = [...value].length;
  if (size < low || size > high) return message.characters({ size, low, high });
  return UNSEEN.test(value) ? message.unseen() : null;
};
/** @param {number} high @returns {Check} */
const whole = (high) => (value) => {
  const fits = typeof value === "number" && Number.isInteger(value) && value >= 1 && value <= high;
  return fits ? null : message.noWhole();
};
/** @type {Check} */
const figure = (value) => (typeof value === "number" && Math.abs(value) <= 1e12 ? null : message.noNumber());
/** @param {...(string | number | boolean)} words @returns {Check} */
const word =
  (...words) =>
  (value) =>
    words.some((one) => one === value) ? null : message.noneOf({ words: words.join(", ") });
/** @param {Check} check @returns {Check} */
const orNull = (check) => (value) => (value === null ? null : check(value));
/** @param {Check} check @param {number} low @param {number} high @param {boolean} [once] @returns {Check} */
const list =
  (check, low, high, once = false) =>
  (value) => {
    if (!Array.isArray(value)) return message.noList();
    if (value.length < low || value.length > high) return message.entries({ size: value.length, low, high });
    if (once && new Set(value).size !== value.length) return message.twice();
    for (const one of value) {
      const fault = check(one);
      if (fault) return message.holds({ fault });
    }
    return null;
  };
/** @param {unknown} value @returns {value is Fields} */
const isGroup = (value) => value !== null && typeof value === "object" && !Array.isArray(value);

/**
 * @param {Record<string, Check>} fields
 * @param {string[]} [optional]
 * @param {(value: Fields) => string | null} [also]
 * @returns {Check}
 */
const group =
  (fields, optional = [], also = () => null) =>
  (value) => {
    if (!isGroup(value)) return message.noGroup();
    const strange = Object.keys(value).find((key) => !Object.hasOwn(fields, key));
    if (strange !== undefined) return message.strange({ field: strange.slice(0, 40) });
    for (const [key, check] of Object.entries(fields)) {
      if (!Object.hasOwn(value, key)) {
        if (optional.includes(key)) continue;
        return message.lacks({ field: key });
      }
      const fault = check(value[key]);
      if (fault) return message.inField({ field: key, fault });
    }
    return also(value);
  };

/** @param {Check} name @param {Check} check @param {number} low @param {number} high @returns {Check} */
const named = (name, check, low, high) => (value) => {
  if (!isGroup(value)) return message.noGroup();
  const pairs = Object.entries(value);
  if (pairs.length < low || pairs.length > high) return message.fields({ size: pairs.length, low, high });
  for (const [key, one] of pairs) {
    const fault = name(key) ?? check(one);
    if (fault) return message.inField({ field: key.slice(0, 40), fault });
  }
  return null;
};

const after = list(uuid, 0, 50, true);
const range = group({ low: figure, high: figure }, ["low", "high"], (value) =>
  Object.keys(value).length ? null : message.noLimit(),
);
const reading = group({ value: figure, over: word(true), unit: text(0, 12) }, ["value", "over"], (value) =>
  "value" in value !== "over" in value ? null : message.valueOrOver(),
);
const judged = { words: text(1, 200), unit: text(0, 12), ranges: list(range, 1, 20) };
const expected = group({ ...judged, device: slug }, ["device"]);
const planned = named(slug, group(judged), 1, 40);
/** @type {Check} */
const calendar = (value) =>
  match(CALENDAR, () => message.noneOf({ words: "text/calendar" }))(value) ??
  text(1, 400_000)(String(value).replaceAll("\r\n", "  ")); // the ends of lines count, and nothing else unseen is let in
const job = group({ id: slug, calendar }, ["calendar"]);
const place = group({ opening: slug, zone: text(1, 12) }, ["zone"]);
const common = { id: uuid, visit: uuid, n: whole(100000), at: moment, by: text(0, 60), library: text(1, 40) };
const run = { checklist: slug, list_name: text(1, 120), list_version: whole(100000), opening: orNull(uuid) };

/** @param {Fields} entry */
function itemRules(entry) {
  if (entry.expected && !entry.reading) return message.noReading();
  if (entry.outcome === "not-applicable" && !entry.note) return message.noReason();
  return entry.outcome === "problem" && !entry.note && !entry.reading ? message.noProblem() : null;
}

/** @type {typeof group} */
const entry = (fields, optional, also) => group({ kind: () => null, ...common, ...fields }, optional, also);
/** @type {Record<string, Check>} */
const KINDS = {
  visit: entry({ site: text(1, 120), date, who: text(0, 120), job, after }, ["job"]),
  opening: entry(
    {
      ...{ opening: uuid, name: text(1, 80), device: orNull(slug), removed: word(true, false) },
      ...{ expected: planned, job: place, after },
    },
    ["expected", "job"],
  ),
  item: entry(
    {
      ...run,
      item: slug,
      words: text(1, 300),
      outcome: word("done", "not-applicable", "problem"),
      note: text(1, 500),
      reading,
      expected,
      after,
    },
    ["note", "reading", "expected"],
    itemRules,
  ),
  complete: entry({ ...run, words: text(1, 300), after }),
  note: entry({ opening: orNull(uuid), note: text(1, 500) }),
  state: entry({ state: word("open", "archived"), after }),
  undo: entry({ undoes: list(uuid, 1, 500, true), reason: word("undo", "open", "reset") }),
};

/** What is wrong with an entry, in words; null where it is sound. @type {Check} */
export function entryFault(value) {
  if (!isGroup(value)) return message.noEntry();
  const kind = Object.hasOwn(value, "kind") && typeof value.kind === "string" ? value.kind : "";
  if (Object.hasOwn(KINDS, kind)) return KINDS[kind](value);
  return message.unknownKind({ kind: kind.slice(0, 40) });
}

const frame = group({
  format: word("latchside-visit"),
  version: word(1),
  saved: moment,
  library: text(1, 40),
  visit: uuid,
  entries: () => null,
});

/** Whether a stored or read value is a sound entry. @param {unknown} value @returns {value is Entry} */
export const isEntry = (value) => entryFault(value) === null;

/**
 * The record in a file's text, or what is wrong with it.
 * @param {string} content
 * @returns {{record: VisitRecord} | {fault: string}}
 */
export function readFile(content) {
  if (content.length > MOST_BYTES) return { fault: message.large() };
  /** @type {unknown} */
  let record;
  try {
    record = JSON.parse(content.replace(/^\ufeff/, ""));
  } catch {
    return { fault: message.noJson() };
  }
  if (!isGroup(record) || record.format !== "latchside-visit") return { fault: message.noRecord() };
  if (record.version !== 1) return { fault: message.otherVersion() };
  const fault = frame(record) ?? entriesFault(record);
  if (fault) return { fault: message.damaged({ fault }) };
  return { record: /** @type {VisitRecord} */ (/** @type {unknown} */ (record)) };
}

/** @param {Fields} record @returns {string | null} */
function entriesFault({ visit, entries }) {
  const misfit = list(() => null, 1, MOST_ENTRIES)(entries);
  if (misfit) return message.inEntries({ fault: misfit });
  const all = /** @type {unknown[]} */ (entries);
  const seen = new Set();
  const placed = (/** @type {Entry} */ one) => {
    if (one.visit !== visit) return message.otherVisit();
    if (seen.has(one.id)) return message.sameId();
    seen.add(one.id);
    return one.n > all.length + 1000 ? message.countsTooHigh() : null;
  };
  for (const [index, one] of all.entries()) {
    const fault = isEntry(one) ? placed(one) : entryFault(one);
    if (fault) return message.inEntry({ number: index + 1, fault });
  }
  return null;
}

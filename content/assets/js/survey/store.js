/**
 * Where surveys are kept: a database of their own, one transaction a change, on disk before it counts as saved. Each
 * opening is a row by itself, and a change writes the one answer into the row as it stands, so two tabs at one survey
 * lose nothing of each other. Where the browser refuses, surveys live in memory and the page says so.
 *
 * @typedef {import("./model.js").SurveyRow} SurveyRow
 * @typedef {import("./model.js").OpeningRow} OpeningRow
 * @typedef {import("./model.js").Survey} Survey
 */
import { Database } from "../core/database.js";
import { uuid } from "../core/dom.js";
import { store as message } from "../messages/survey.js";

const NAME = "latchside-surveys";
const STORES = ["surveys", "openings"];
const MOST_GONE = 20;

/** Set once the browser has refused. @type {Record<string, Map<string, any>> | null} */
let memory = null;
/** @type {Set<(key: string | null, mine: boolean) => void>} */
const listeners = new Set();
const channel = typeof BroadcastChannel === "function" ? new BroadcastChannel(NAME) : null;
channel?.addEventListener("message", (event) => {
  for (const tell of listeners) tell(event.data, false);
});

/** Be told which survey changed, and whether here. @param {(key: string | null, mine: boolean) => void} tell */
export const onChange = (tell) => void listeners.add(tell);

/** @param {string} key */
function announce(key) {
  channel?.postMessage(key);
  for (const tell of listeners) tell(key, true);
}

const database = new Database(NAME, (db) => {
  db.createObjectStore("surveys", { keyPath: "key" });
  db.createObjectStore("openings", { keyPath: "key" }).createIndex("survey", "survey");
});

/**
 * One transaction over both stores. @type {(mode: IDBTransactionMode, work: Parameters<Database["transaction"]>[2]) => Promise<any>}
 */
const transaction = (mode, work) => database.transaction(STORES, mode, work);

/** Open the store. @returns {Promise<{kept: boolean, why: string}>} whether surveys are kept, and if not, why */
export async function start() {
  try {
    await database.connect();
    return { kept: true, why: "" };
  } catch (error) {
    memory = { surveys: new Map(), openings: new Map() };
    return { kept: false, why: /** @type {any} */ (error)?.name ?? "refused" };
  }
}

/** What went wrong, for the lead. @param {any} error */
export function inWords(error) {
  if (error?.name === "QuotaExceededError") return message.full();
  if (error?.message === "gone") return message.gone();
  return message.refused({ why: error?.name ?? "unknown" });
}

/** Whether a stored row can be worked with. @param {any} row */
const sound = (row) => row && typeof row.key === "string" && row.data !== null && typeof row.data === "object" && row.typed !== null && typeof row.typed === "object";

/** @param {any} row @returns {row is SurveyRow} */
const soundSurvey = (row) => sound(row) && Array.isArray(row.order) && Array.isArray(row.gone) && typeof row.named === "object";

/** @param {any[]} surveys @param {any[]} openings @returns {Survey[]} */
function together(surveys, openings) {
  const byKey = new Map(openings.filter(sound).map((row) => [row.key, row]));
  return surveys.filter(soundSurvey).map((survey) => ({ survey, openings: survey.order.flatMap((key) => byKey.get(key) ?? []), last: byKey.get(survey.gone.at(-1)?.key ?? "") ?? null }));
}

/** All surveys. @returns {Promise<Survey[]>} */
export async function all() {
  if (memory) return together([...memory.surveys.values()], [...memory.openings.values()]);
  const [surveys, openings] = await transaction("readonly", (stores, done) => {
    const asked = STORES.map((name) => stores[name].getAll());
    asked[1].onsuccess = () => done(asked.map((request) => request.result));
  });
  return together(surveys, openings);
}

/** One survey. @param {string} key @returns {Promise<Survey | null>} */
export async function load(key) {
  if (memory) return together([memory.surveys.get(key)], [...memory.openings.values()])[0] ?? null;
  const [survey, openings] = await transaction("readonly", (stores, done) => {
    const asked = stores.surveys.get(key);
    const rows = stores.openings.index("survey").getAll(key);
    rows.onsuccess = () => done([asked.result, rows.result]);
  });
  return together([survey], openings)[0] ?? null;
}

/**
 * Change a survey, or one opening of it, as it stands now. `act` changes the rows it is handed; rows it gives back are
 * put in as well.
 * @param {string} key @param {string | null} opening
 * @param {(survey: SurveyRow, opening: any) => OpeningRow[] | void} act
 */
export async function change(key, opening, act) {
  /** @param {any} survey @param {any} row @returns {any[][] | null} */
  const worked = (survey, row) => {
    if (!soundSurvey(survey) || (opening !== null && !sound(row))) return null;
    const more = act(survey, row) ?? [];
    survey.changed += 1;
    return [[survey], [...(row ? [row] : []), ...more]];
  };
  if (memory) {
    const { surveys, openings } = memory;
    const made = worked(structuredClone(surveys.get(key)), opening === null ? null : structuredClone(openings.get(opening)));
    if (!made) throw new Error("gone");
    for (const [index, name] of STORES.entries()) for (const one of made[index]) memory[name].set(one.key, one);
  } else {
    await transaction("readwrite", (stores, done, fail) => {
      const survey = stores.surveys.get(key);
      const row = opening === null ? survey : stores.openings.get(opening);
      row.onsuccess = () => {
        try {
          const made = worked(survey.result, opening === null ? null : row.result);
          if (!made) return fail(new Error("gone"));
          for (const [index, name] of STORES.entries()) for (const one of made[index]) stores[name].put(one);
        } catch (error) {
          return fail(error);
        }
        done(null);
      };
    });
  }
  announce(key);
}

/** Put a new survey in, whole. @param {any} data @param {any[]} openings @param {boolean} filed whether a file holds it @returns {Promise<string>} its key */
export async function create(data, openings, filed) {
  const key = uuid();
  const rows = openings.map((one) => ({ key: uuid(), survey: key, data: one, typed: {} }));
  /** @type {SurveyRow} */
  const survey = { key, data, typed: {}, order: rows.map((row) => row.key), gone: [], named: {}, changed: 1, filed: filed ? 1 : 0 };
  if (memory) {
    memory.surveys.set(key, survey);
    for (const row of rows) memory.openings.set(row.key, row);
  } else {
    await transaction("readwrite", (stores) => {
      stores.surveys.put(survey);
      for (const row of rows) stores.openings.put(row);
    });
  }
  announce(key);
  return key;
}

/** Take a survey off this device, with all its openings. @param {string} key */
export async function remove(key) {
  if (memory) {
    memory.surveys.delete(key);
    for (const row of [...memory.openings.values()]) if (row.survey === key) memory.openings.delete(row.key);
  } else {
    await transaction("readwrite", ({ surveys, openings }) => {
      surveys.delete(key);
      const keys = openings.index("survey").getAllKeys(key);
      keys.onsuccess = () => {
        for (const one of keys.result) openings.delete(one);
      };
    });
  }
  announce(key);
}

/** A new opening, at the end or behind another. @param {string} key @param {any} data @param {string} [behind] @returns {Promise<string>} its key */
export async function addOpening(key, data, behind) {
  const row = { key: uuid(), survey: key, data, typed: {} };
  await change(key, null, (survey) => {
    survey.order.splice(behind && survey.order.includes(behind) ? survey.order.indexOf(behind) + 1 : survey.order.length, 0, row.key);
    return [row];
  });
  return row.key;
}

/** One place up or down in the walk. @param {string} key @param {string} opening @param {-1 | 1} by */
export const move = (key, opening, by) =>
  change(key, null, ({ order }) => {
    const from = order.indexOf(opening);
    const to = from + by;
    if (from >= 0 && to >= 0 && to < order.length) [order[from], order[to]] = [order[to], order[from]];
  });

/** Take an opening out of the walk; its row stays, so that it can be put back. @param {string} key @param {string} opening */
export const takeAway = (key, opening) =>
  change(key, null, (survey) => {
    const place = survey.order.indexOf(opening);
    if (place < 0) return;
    survey.order.splice(place, 1);
    survey.gone = [...survey.gone, { key: opening, at: place }].slice(-MOST_GONE);
  });

/** Put the opening that was taken away last back where it was. @param {string} key */
export const putBack = (key) =>
  change(key, null, (survey) => {
    const last = survey.gone.pop();
    if (last && !survey.order.includes(last.key)) survey.order.splice(Math.min(last.at, survey.order.length), 0, last.key);
  });

/** Note that a file holds the survey as it stood, and which ids it gave the openings. @param {string} key @param {number} changed @param {Map<string, string>} ids */
export const filed = (key, changed, ids) =>
  change(key, null, (survey) => {
    survey.named = Object.fromEntries(ids);
    survey.filed = survey.changed === changed ? survey.changed + 1 : changed; // this change itself counts as one
  });

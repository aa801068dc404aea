/**
 * Where surveys are kept: a database of their own, one transaction a change, on disk before it counts as saved. Each
 * opening is a row by itself, and a change is made to the rows as they stand, so two tabs at one survey lose nothing
 * of each other. Where the browser refuses, surveys live in memory and the page says so.
 *
 * @typedef {import("./model.js").SurveyRow} SurveyRow
 * @typedef {import("./model.js").OpeningRow} OpeningRow
 * @typedef {import("./model.js").Survey} Survey
 * @typedef {{survey: SurveyRow, opening: OpeningRow | null}} Changed the rows as they are stored now
 * @typedef {(survey: SurveyRow, opening: any) => {survey?: SurveyRow, opening?: OpeningRow}} Change the rows that a
 *   change makes of those that stand
 */
import { Database } from "../core/database.js";
import { uuid } from "../core/dom.js";
import { store as message } from "../messages/survey.js";
import { newSurvey, surveyOf } from "./model.js";

const NAME = "latchside-surveys";
const STORES = ["surveys", "openings"];

/** Set once the browser has refused. @type {Record<string, Map<string, any>> | null} */
let memory = null;
/** @type {Set<(key: string | null) => void>} */
const listeners = new Set();
const channel = typeof BroadcastChannel === "function" ? new BroadcastChannel(NAME) : null;
channel?.addEventListener("message", (event) => {
  for (const tell of listeners) tell(event.data);
});

/** Be told which survey changed in another tab. @param {(key: string | null) => void} tell */
export const onForeignChange = (tell) => void listeners.add(tell);

/** @param {string} key */
const announce = (key) => channel?.postMessage(key);

const database = new Database(NAME, (db) => {
  db.createObjectStore("surveys", { keyPath: "key" });
  db.createObjectStore("openings", { keyPath: "key" }).createIndex("survey", "survey");
});

/**
 * One transaction over both stores.
 * @type {(mode: IDBTransactionMode, work: Parameters<Database["transaction"]>[2]) => Promise<any>}
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
  if (isGone(error)) return message.gone();
  return message.refused({ why: error?.name ?? "unknown" });
}

/** Whether there is nothing any more that could be changed. @param {any} error */
export const isGone = (error) => error?.message === "gone";

/** Whether a stored row can be worked with. @param {any} row */
const sound = (row) =>
  row &&
  typeof row.key === "string" &&
  [row.data, row.typed].every((part) => part !== null && typeof part === "object");

/** @param {any} row @returns {row is SurveyRow} */
const soundSurvey = (row) =>
  sound(row) && Array.isArray(row.order) && Array.isArray(row.gone) && typeof row.named === "object";

/** @param {any[]} surveys @param {any[]} openings @returns {Survey[]} */
function together(surveys, openings) {
  const rows = new Map(openings.filter(sound).map((row) => [row.key, row]));
  return surveys.filter(soundSurvey).map((survey) => surveyOf(survey, rows));
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
 * Change a survey, or one opening of it, as it stands now.
 * @param {string} key @param {string | null} opening @param {Change} work
 * @returns {Promise<Changed>}
 */
export async function change(key, opening, work) {
  const made = await (memory ? changeInMemory(memory, key, opening, work) : changeOnDisk(key, opening, work));
  announce(key);
  return made;
}

/** @param {any} survey @param {any} opening @param {string | null} key of the opening @param {Change} work @returns {Changed} */
function changed(survey, opening, key, work) {
  if (!soundSurvey(survey) || (key !== null && !sound(opening))) throw new Error("gone");
  const made = work(survey, opening);
  return { survey: { ...(made.survey ?? survey), changed: survey.changed + 1 }, opening: made.opening ?? null };
}

/** @param {Record<string, Map<string, any>>} stores @param {string} key @param {string | null} opening @param {Change} work */
async function changeInMemory(stores, key, opening, work) {
  const made = changed(stores.surveys.get(key), stores.openings.get(opening ?? ""), opening, work);
  stores.surveys.set(key, made.survey);
  if (made.opening) stores.openings.set(made.opening.key, made.opening);
  return made;
}

/** @param {string} key @param {string | null} opening @param {Change} work @returns {Promise<Changed>} */
const changeOnDisk = (key, opening, work) =>
  transaction("readwrite", (stores, done, fail) => {
    const survey = stores.surveys.get(key);
    const row = opening === null ? survey : stores.openings.get(opening);
    row.onsuccess = () => {
      try {
        const made = changed(survey.result, row.result, opening, work);
        stores.surveys.put(made.survey);
        if (made.opening) stores.openings.put(made.opening);
        done(made);
      } catch (error) {
        fail(error);
      }
    };
  });

/**
 * Put a new survey in, whole.
 * @param {any} data @param {any[]} openings @param {boolean} filed whether a file holds it
 * @returns {Promise<string>} its key
 */
export async function create(data, openings, filed) {
  const key = uuid();
  const rows = openings.map((one) => newOpening(key, one));
  const survey = newSurvey(
    key,
    data,
    rows.map((row) => row.key),
    filed,
  );
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

/** A new opening of a survey. @param {string} survey @param {any} data @returns {OpeningRow} */
export const newOpening = (survey, data) => ({ key: uuid(), survey, data, typed: {} });

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

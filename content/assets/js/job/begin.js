/** A visit of a survey's plan, put into the store of visits; of one job one is open. */
import { now, uuid } from "../core/dom.js";
import { begin as message } from "../messages/job.js";
import { view } from "../visit/entries.js";
import { readFile } from "../visit/shape.js";
import * as store from "../visit/store.js";
import * as more from "../visit/store-visits.js";
import { jobOf, openingsOf } from "./job.js";

/** @typedef {import("../visit/entries.js").Entry} Entry */

/** Under this a tab remembers the visit that it was led to, and whether that was started. */
const LED = "ls-led";

/**
 * Start a visit of a job; or find the one that is open, or was started from the same plan. Nothing of one that is here
 * is changed. Gives its id.
 * @param {string} job id of the survey @param {string[]} openings their ids there
 * @param {() => Promise<string>} made the text of the visit's file
 */
export async function startVisit(job, openings, made) {
  const { kept, why } = await store.open();
  if (!kept) throw new Error(message.notKept({ why }));
  const open = await openVisitOf(job, openings);
  if (open) return ledTo(open, false);
  const read = readFile(await made());
  if ("fault" in read) throw new Error(read.fault);
  const { visit, entries } = read.record;
  if (await isHere(visit)) return ledTo(visit, false);
  const by = (await store.recall("me")) ?? "";
  try {
    await more.addAll([...entries, todays(entries, by)]);
  } catch (error) {
    if (await isHere(visit)) return ledTo(visit, false); // another tab was faster
    throw new Error(store.inWords(error));
  }
  await navigator.storage?.persist?.().catch(() => false);
  return ledTo(visit, true);
}

/**
 * The visit of a job that is open on this device. Two surveys may have one name: what shares no opening is another job.
 * @param {string} job @param {string[]} openings
 */
async function openVisitOf(job, openings) {
  const seen = [...(await more.allEntries())].map(([id, entries]) => ({ id, shown: view(entries) }));
  const same = (/** @type {import("./job.js").View} */ shown) => openings.some((id) => openingsOf(shown).has(id));
  return seen.find(({ shown }) => shown.state === "open" && jobOf(shown)?.id === job && same(shown))?.id;
}

/** Whether a visit is on this device: open, archived, or locked away. @param {string} visit */
const isHere = async (visit) =>
  (await store.rowsOf(visit)).length > 0 || (await more.everything("locked")).some((row) => row.visit === visit);

/** The visit is of today, whenever the site was surveyed. @param {Entry[]} entries of its file @param {string} by @returns {Entry} */
function todays(entries, by) {
  const first = /** @type {import("../visit/entries.js").VisitEntry} */ (entries.find(({ kind }) => kind === "visit"));
  const { job: _, ...named } = first;
  const at = now();
  return { ...named, id: uuid(), n: entries.length + 1, at, by, date: at.slice(0, 10), who: by, after: [first.id] };
}

/** @param {string} visit @param {boolean} started */
function ledTo(visit, started) {
  store.tab(LED, `${visit}|${started ? "started" : "there"}`);
  return visit;
}

/** What this tab was led to, said once: the visit, and words for it. */
export function led() {
  const [visit, how] = store.tab(LED).split("|");
  store.tab(LED, "");
  const words = how === "started" ? message.started() : message.there();
  return { visit, words: visit && words };
}

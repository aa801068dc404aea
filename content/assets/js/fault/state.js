/**
 * What a run does with an answer. Pure: no page, no store.
 *
 * @typedef {import("./plan.js").Problem} Problem
 * @typedef {import("./steps.js").Event} Event
 * @typedef {import("./reading.js").Typed} Typed
 * @typedef {"inside" | "outside"} Reads
 * @typedef {{device: string | null, events: Event[], typed?: Record<string, Typed>}} Kept a run as it is stored
 * @typedef {"unread" | "contradicts"} Doubt why an answer is asked about before it counts
 */
import { standing } from "./steps.js";

const TEXT = 20;

/**
 * A stored run, as far as this library can play it; a run that was stored before readings were kept has none.
 * @param {unknown} stored @param {string[]} listed devices that can have the fault
 * @param {(device: string | null) => Problem} problemOf
 * @returns {Required<Kept>}
 */
export function opened(stored, listed, problemOf) {
  const kept = /** @type {Partial<Kept> | null} */ (stored);
  const known = !kept?.device || listed.includes(kept.device);
  if (!known || !Array.isArray(kept?.events)) return { device: null, events: [], typed: {} };
  const device = kept.device ?? null;
  const events = kept.events.slice(0, standing(problemOf(device), kept.events).events);
  const typed = Object.entries(kept.typed ?? {}).filter(([, one]) => typeof one?.text === "string");
  return { device, events, typed: Object.fromEntries(typed) };
}

/**
 * Whether an answer is asked about first: it says that something reads right and nothing was read, or it contradicts
 * what was typed.
 * @param {Reads | undefined} reads what the answer says of the reading
 * @param {{typed: boolean, verdict: Reads | null} | null} read what was typed; null where nothing was
 * @returns {Doubt | null}
 */
export function doubtOf(reads, read) {
  if (!read) return reads === "inside" ? "unread" : null;
  if (!read.typed) return "unread";
  return reads && read.verdict && reads !== read.verdict ? "contradicts" : null;
}

/**
 * The steps with one of them answered anew: those after it that still hold are kept.
 * @param {Problem} problem @param {Event[]} events @param {number} at @param {Event} event
 * @returns {{events: Event[], dropped: number}}
 */
export function changed(problem, events, at, event) {
  const kept = [...events.slice(0, at), event];
  const later = events.slice(at + 1);
  for (const one of later) if (holds(problem, kept, one)) kept.push(one);
  return { events: kept, dropped: at + 1 + later.length - kept.length };
}

/** Whether a step still says something sound after others. @param {Problem} problem @param {Event[]} before @param {Event} one */
function holds(problem, before, one) {
  const now = standing(problem, before);
  if (now.kind === "end" || one.do === "else" || one.do === "pass") return false;
  if (one.do === "mend") return !one.gone || now.left.includes(one.id);
  if (one.do !== "check") return true;
  const check = problem.checks.find(({ id }) => id === one.id);
  const covers = check?.results.reduce((all, result) => all | result.leaves, 0) ?? 0;
  const asked = problem.causes.every(({ id }, index) => (covers >> index) & 1 || !now.left.includes(id));
  const after = standing(problem, [...before, one]);
  return asked && after.events > before.length && after.why !== "does-not-fit";
}

/**
 * What was typed, with the reading of a step taken up again.
 * @param {Record<string, Typed>} typed @param {Event | undefined} event
 * @returns {Record<string, Typed>}
 */
export function retyped(typed, event) {
  if (!event?.reading) return typed;
  const { over, unit } = event.reading;
  const text = over ? "" : String(event.reading.value ?? "").slice(0, TEXT);
  return { ...typed, [event.id]: { text, over: Boolean(over), unit } };
}

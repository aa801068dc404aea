/**
 * What a visit knows of the job that it was planned as: the first entry that names the visit, or an opening, says what
 * was planned, and later ones what became of it. Pure.
 *
 * @typedef {import("../visit/entries.js").View} View
 * @typedef {import("../visit/entries.js").OpeningEntry} OpeningEntry
 */
import { order } from "../visit/entries.js";

/** The job of a visit; undefined where it came from no plan. @param {View} seen */
export const jobOf = ({ ordered }) =>
  ordered.flatMap((entry) => (entry.kind === "visit" && entry.job ? [entry.job] : []))[0];

/**
 * What was planned, by the opening of the visit: the entry that came with the plan.
 * @param {View} seen
 * @returns {Map<string, OpeningEntry>}
 */
export function plannedOf({ ordered }) {
  /** @type {Map<string, OpeningEntry>} */
  const planned = new Map();
  for (const entry of ordered)
    if (entry.kind === "opening" && entry.job && !planned.has(entry.opening)) planned.set(entry.opening, entry);
  return planned;
}

/** The openings of the survey that a visit was planned for, by their ids there. @param {View} seen */
export const openingsOf = (seen) => new Set([...plannedOf(seen).values()].map((one) => one.job?.opening ?? ""));

/**
 * Every answer at an opening that stands, in turn; what was looked for in a fault is told in the record alone.
 * @param {View} seen @param {string} opening empty: the site
 */
export const answersAt = ({ runs }, opening) =>
  [...runs]
    .filter(([key]) => key.endsWith(`|${opening}`) && !key.startsWith("fault-run-"))
    .flatMap(([, { items }]) => [...items.values()])
    .flatMap(({ heads }) => heads)
    .sort(order);

/** What was worked on last in a visit. Pure. */
import { view } from "./entries.js";

/**
 * @typedef {Object} Work
 * @property {string} path where it goes on, from the root of the site
 * @property {string} list its name; none where no list was begun
 * @property {string} opening its name, or nothing
 * @property {string} site the name of the visit, or nothing
 * @property {number} answers how many items are answered there
 */

/**
 * The list that was written to last and is not complete, or the visit itself; null where nothing is to be continued.
 * @param {import("./entries.js").Entry[]} entries of the visit @param {boolean} loose whether it is no visit
 * @returns {Work | null}
 */
export function lastWork(entries, loose) {
  const { visit, state, runs, openings, ordered, live } = view(entries);
  if ((!visit && !loose) || state !== "open") return null;
  const id = ordered[0]?.visit ?? "";
  const site = visit?.site ?? "";
  const last = ordered.findLast((entry) => entry.kind === "item" && live.has(entry.id));
  const run = last?.kind === "item" ? runs.get(`${last.checklist}|${last.opening ?? ""}`) : undefined;
  if (last?.kind === "item" && run?.items.size && !run.complete.length) {
    const at = new URLSearchParams({ ...(!loose && { visit: id }), ...(last.opening && { opening: last.opening }) });
    const opening = openings.get(last.opening ?? "")?.name ?? "";
    return { path: pathOf(last.checklist, at), list: last.list_name, opening, site, answers: run.items.size };
  }
  return visit ? { path: `visits/#v=${id}`, list: "", opening: "", site, answers: 0 } : null;
}

/** Where a list, or the run of a fault, is. @param {string} checklist @param {URLSearchParams} at */
function pathOf(checklist, at) {
  const [, fault] = /^fault-run-(.+)$/.exec(checklist) ?? [];
  const query = at.size ? `?${at}` : "";
  return fault ? `faults/${fault}/${query}` : `checklists/${checklist}/${query}`;
}

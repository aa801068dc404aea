/** The checklists of a visit, for its page: those of the site, and those of each opening. */
import { count, h } from "../core/dom.js";
import { standing } from "./sheet.js";

/**
 * @typedef {import("./page.js").VisitPage} VisitPage
 * @typedef {import("./sheet.js").List} List
 * @typedef {import("./entries.js").Opening} Opening
 */

/** With fewer openings than this, none is folded. */
const MANY = 3;

const joined = (/** @type {(string | false | 0)[]} */ parts) => parts.filter(Boolean).join(", ");

/** @param {VisitPage} page @param {boolean} archived */
export function lists(page, archived) {
  const { checklists } = page.all.data;
  const loose = !page.seen.visit;
  const openings = loose ? [] : page.openingsThere;
  const site = checklists.filter((list) => loose || list.per === "site");
  const devices = openings.map((one) => one.device).filter((device) => device !== null);
  const rows = site.map((list) => listRow(page, list, null, devices, archived));
  return [
    h("h3", {}, loose ? "Lists" : "Lists for the site"),
    h("ul", { class: "ls-rows" }, ...rows),
    ...openings.map((one) => folded(page, one, openings.length < MANY, archived)),
  ];
}

/** Whether a list is run at an opening. @param {List} list @param {Opening} opening */
const fits = (list, { device }) => list.per === "opening" && (!device || list.devices.includes(device));

/**
 * How a list stands.
 * @param {VisitPage} page @param {List} list @param {string | null} opening @param {string[]} devices
 */
const stateOf = ({ seen }, { id, items }, opening, devices) =>
  standing(items, seen.runs.get(`${id}|${opening ?? ""}`), devices);

/**
 * The lists of one opening; folded where there are many openings and none of its lists is under way.
 * @param {VisitPage} page @param {Opening} one @param {boolean} few @param {boolean} archived
 */
function folded(page, one, few, archived) {
  const fitting = page.all.data.checklists.filter((list) => fits(list, one));
  const devices = one.device ? [one.device] : [];
  const begun = fitting.map((list) => stateOf(page, list, one.opening, devices)).filter((state) => state.started);
  const complete = begun.filter((state) => state.complete).length;
  const problems = begun.reduce((sum, state) => sum + state.problems.length, 0);
  const words = joined([
    `${begun.length} of ${count(fitting.length, "list")} started`,
    begun.length && `${complete} complete`,
    problems && count(problems, "problem"),
  ]);
  const open = page.unfolded.get(one.opening) ?? (few || begun.length > complete);
  const rows = fitting.map((list) => listRow(page, list, one.opening, devices, archived));
  /** @type {HTMLDetailsElement} */
  const details = h(
    "details",
    { class: "ls-folded", open, toggle: () => page.unfolded.set(one.opening, details.open) },
    h("summary", {}, h("h3", {}, `Lists for ${one.name}`), h("span", {}, words)),
    h("ul", { class: "ls-rows" }, ...rows),
  );
  return details;
}

/** How far a list has come, in words. @param {ReturnType<typeof standing>} state */
function progress({ started, complete, rows, open, problems }) {
  if (!started) return "Not started";
  const closed = `${rows.length - open.length} of ${rows.length}, ${open.length} open`;
  return joined([complete ? "Complete" : closed, problems.length && count(problems.length, "problem")]);
}

/**
 * @param {VisitPage} page @param {List} list @param {string | null} opening @param {string[]} devices
 * @param {boolean} archived
 */
function listRow(page, list, opening, devices, archived) {
  const words = progress(stateOf(page, list, opening, devices));
  const inside = [h("strong", {}, list.name), h("span", {}, words)];
  if (archived) return h("li", { class: "ls-row-none" }, ...inside);
  const query = new URLSearchParams({ visit: page.visit, ...(opening && { opening }) });
  return h("li", {}, h("a", { href: `${list.href}?${query}` }, ...inside));
}

/** The checklists of a visit, for its page: those of the site, and those of each opening. */

import { listed } from "../core/message.js";
import { linkRow, rowsUnder } from "../core/parts.js";
import { pageLists as message } from "../messages/visit.js";
import { html, nothing } from "../vendor/lit-html.js";
import { standing } from "./sheet.js";

/**
 * @typedef {import("./page.js").VisitPage} VisitPage
 * @typedef {import("./sheet.js").List} List
 * @typedef {import("./entries.js").Opening} Opening
 */

/** With fewer openings than this, none is folded. */
const MANY = 3;

/** What is there of several texts, in one. @param {(string | false | 0)[]} parts */
const joined = (parts) => listed(/** @type {string[]} */ (parts.filter(Boolean)), "unit");

/** @param {VisitPage} page @param {boolean} archived */
export function lists(page, archived) {
  const { checklists } = page.all.data;
  const loose = !page.seen.visit;
  const openings = loose ? [] : page.openingsThere;
  const site = checklists.filter((list) => loose || list.per === "site");
  const devices = openings.map((one) => one.device).filter((device) => device !== null);
  const rows = site.map((list) => listRow(page, list, null, devices, archived));
  return html`
    ${loose || archived ? nothing : taken(page)}
    <h3>${loose ? message.title() : message.titleSite()}</h3>
    <ul class="ls-rows">${rows}</ul>
    ${openings.map((one) => folded(page, one, openings.length < MANY, archived))}
  `;
}

/** The lists that were run before there was a visit: each offers its answers to this one. @param {VisitPage} page */
function taken({ loose, all, visit }) {
  const begun = all.data.checklists.filter((list) => loose.get(`${list.id}|`)?.items.size);
  const rows = begun.map((list) => {
    const entries = loose.get(`${list.id}|`)?.items.size ?? 0;
    return linkRow(`${list.href}?visit=${visit}`, list.name, message.answers({ entries }));
  });
  return rowsUnder(html`<h3>${message.titleLoose()}</h3>`, rows);
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
    message.started({ started: begun.length, lists: fitting.length }),
    begun.length && message.completeLists({ lists: complete }),
    problems && message.problems({ problems }),
  ]);
  const open = page.unfolded.get(one.opening) ?? (few || begun.length > complete);
  const rows = fitting.map((list) => listRow(page, list, one.opening, devices, archived));
  const toggle = (/** @type {Event} */ event) => {
    page.unfolded.set(one.opening, /** @type {HTMLDetailsElement} */ (event.target).open);
  };
  return html`
    <details class="ls-folded" ?open=${open} @toggle=${toggle}>
      <summary><h3>${message.titleOpening({ opening: one.name })}</h3><span>${words}</span></summary>
      <ul class="ls-rows">${rows}</ul>
    </details>
  `;
}

/** How far a list has come, in words. @param {ReturnType<typeof standing>} state */
function progress({ started, complete, rows, open, problems }) {
  if (!started) return message.notStarted();
  const closed = { closed: rows.length - open.length, items: rows.length, open: open.length };
  const how = complete ? message.complete() : message.closed(closed);
  return joined([how, problems.length && message.problems({ problems: problems.length })]);
}

/**
 * @param {VisitPage} page @param {List} list @param {string | null} opening @param {string[]} devices
 * @param {boolean} archived
 */
function listRow(page, list, opening, devices, archived) {
  const words = progress(stateOf(page, list, opening, devices));
  if (archived) return html`<li class="ls-row-none"><strong>${list.name}</strong><span>${words}</span></li>`;
  const query = new URLSearchParams({ visit: page.visit, ...(opening && { opening }) });
  return linkRow(`${list.href}?${query}`, list.name, words);
}

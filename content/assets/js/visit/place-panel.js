/** The choice of visit, opening and device for a checklist. Fetched when it is wanted. */
import { ask } from "../core/ask.js";
import { field, h, select, uuid } from "../core/dom.js";
import { openingAfter, view } from "./entries.js";
import { allEntries } from "./store-visits.js";

/** @typedef {import("./bar.js").VisitBar} VisitBar */

/** @param {VisitBar} bar */
export async function placePanel(bar) {
  /** @type {[id: string, name: string][]} */
  const visits = [[bar.loose, "No visit"]];
  for (const [id, entries] of await allEntries()) {
    const shown = id === bar.loose ? null : view(entries);
    if (shown?.visit && shown.state === "open") visits.push([id, `${shown.visit.site}, ${shown.visit.date}`]);
  }
  const choose = select(visits, bar.visit, (value) => bar.choose(value, ""));
  const all = h("a", { href: bar.list.visits }, "Start a visit, or see all");
  return [field("Visit", choose), h("p", {}, all), ...placeParts(bar)];
}

/** @param {VisitBar} bar @returns {HTMLElement[]} */
function placeParts(bar) {
  if (bar.place.loose) return [device(bar, "Device class", bar.device, (value) => bar.keepDevice(value))];
  return bar.list.per === "opening" ? openingParts(bar) : [];
}

/** @param {VisitBar} bar */
function openingParts(bar) {
  /** @type {[id: string, name: string][]} */
  const names = bar.openings.map((one) => [one.opening, one.name]);
  const choose = select([["", "Choose"], ...names], bar.opening, (value) => bar.choose(bar.visit, value));
  /** @type {HTMLElement[]} */
  const parts = [field("Opening", choose)];
  const chosen = bar.openings.find((one) => one.opening === bar.opening);
  if (chosen) {
    const act = (/** @type {string} */ value) => change(bar, chosen, { device: value || null });
    parts.push(device(bar, "Device class at this opening", chosen.device ?? "", act));
  }
  parts.push(ask("Another opening: place, side, opening", "Add it", (text) => add(bar, text)));
  return parts;
}

/** Add an opening and go there. @param {VisitBar} bar @param {string} text its name */
async function add(bar, text) {
  const opening = uuid();
  const name = [...text].slice(0, 80).join("");
  const draft = bar.draft({ kind: "opening", opening, name, device: null, removed: false, after: [] });
  const stored = await bar.write([draft]);
  if (stored) await bar.choose(bar.visit, opening);
  return stored;
}

/** @param {VisitBar} bar @param {import("./entries.js").Opening} before @param {{device: string | null}} fields */
async function change(bar, before, fields) {
  if (await bar.write([bar.draft({ kind: "opening", ...openingAfter(before, fields) })])) await bar.build();
}

/** @param {VisitBar} bar @param {string} words @param {string} chosen @param {(value: string) => void} act */
function device(bar, words, chosen, act) {
  /** @type {[id: string, name: string][]} */
  const choices = [["", "Not chosen: every item is asked"], ...bar.list.devices];
  return field(words, select(choices, chosen, act));
}

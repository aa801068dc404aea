/** The choice of visit, opening and device for a checklist. Fetched when it is wanted. */
import { ask } from "./ask.js";
import { field, h, select, uuid } from "./dom.js";
import { openingAfter, view } from "./entries.js";
import { allEntries } from "./store-visits.js";

/** @typedef {import("./visit-bar.js").VisitBar} VisitBar */

/** @param {VisitBar} bar */
export async function placePanel(bar) {
  /** @type {[string, string][]} */
  const visits = [[bar.loose, "No visit"]];
  for (const [id, entries] of await allEntries()) {
    const shown = id === bar.loose ? null : view(entries);
    if (shown?.visit && shown.state === "open") visits.push([id, `${shown.visit.site}, ${shown.visit.date}`]);
  }
  const parts = [field("Visit", select(visits, bar.visit, (value) => bar.choose(value, ""))), h("p", {}, h("a", { href: bar.list.visits }, "Start a visit, or see all"))];
  const { loose } = bar.place;
  if (bar.list.per === "opening" && !loose) parts.push(...openingParts(bar));
  else if (loose) parts.push(device(bar, "Device class", bar.device, (value) => bar.keepDevice(value)));
  return parts;
}

/** @param {VisitBar} bar */
function openingParts(bar) {
  const openings = [...bar.shown.openings.values()].filter((one) => !one.removed);
  /** @type {[string, string][]} */
  const names = [["", "Choose"], ...openings.map((one) => /** @type {[string, string]} */ ([one.opening, one.name]))];
  const parts = [field("Opening", select(names, bar.opening, (value) => bar.choose(bar.visit, value)))];
  const chosen = openings.find((one) => one.opening === bar.opening);
  if (chosen) parts.push(device(bar, "Device class at this opening", chosen.device ?? "", (value) => change(bar, chosen, { device: value || null })));
  parts.push(ask("Another opening: place, side, opening", "Add it", async (text) => {
    const opening = uuid();
    const name = [...text].slice(0, 80).join("");
    const stored = await bar.write([bar.draft("opening", { opening, name, device: null, removed: false, after: [] })]);
    if (stored) await bar.choose(bar.visit, opening);
    return stored;
  }));
  return parts;
}

/** @param {VisitBar} bar @param {any} before @param {object} fields */
async function change(bar, before, fields) {
  if (await bar.write([bar.draft("opening", openingAfter(before, fields))])) await bar.build();
}

/** @param {VisitBar} bar @param {string} words @param {string} chosen @param {(value: string) => void} act */
const device = (bar, words, chosen, act) => field(words, select([["", "Not chosen: every item is asked"], ...bar.list.devices], chosen, act));

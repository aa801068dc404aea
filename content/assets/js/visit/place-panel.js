/** The choice of visit, opening and device for a checklist. Fetched when it is wanted. */
import { ask } from "../core/ask.js";
import { uuid } from "../core/dom.js";
import { choice } from "../core/parts.js";
import { placePanel as message } from "../messages/visit.js";
import { html, nothing } from "../vendor/lit-html.js";
import { openingAfter, view } from "./entries.js";
import { allEntries } from "./store-visits.js";

/** @typedef {import("./bar.js").VisitBar} VisitBar */

/** @param {VisitBar} bar */
export async function placePanel(bar) {
  /** @type {[id: string, name: string][]} */
  const visits = [[bar.loose, message.noVisit()]];
  for (const [id, entries] of await allEntries()) {
    const shown = id === bar.loose ? null : view(entries);
    if (shown?.visit && shown.state === "open")
      visits.push([id, message.visitOn({ visit: shown.visit.site, date: shown.visit.date })]);
  }
  return html`
    ${choice("ls-place-visit", message.visit(), visits, bar.visit, (value) => bar.choose(value, ""))}
    <p><a href=${bar.list.visits}>${message.all()}</a></p>
    ${placeParts(bar)}
  `;
}

/** @param {VisitBar} bar */
function placeParts(bar) {
  if (bar.place.loose) return device(bar, message.device(), bar.device, (value) => bar.keepDevice(value));
  return bar.list.per === "opening" ? openingParts(bar) : nothing;
}

/** What asks for another opening, one for each bar: what is typed in it stays. @type {WeakMap<VisitBar, Node>} */
const forms = new WeakMap();

/** @param {VisitBar} bar */
function openingParts(bar) {
  /** @type {[id: string, name: string][]} */
  const names = [
    ["", message.choose()],
    ...bar.openings.map((one) => /** @type {[string, string]} */ ([one.opening, one.name])),
  ];
  const take = (/** @type {string} */ value) => bar.choose(bar.visit, value);
  const chosen = bar.openings.find((one) => one.opening === bar.opening);
  const act = (/** @type {string} */ value) => chosen && change(bar, chosen, { device: value || null });
  const form = forms.get(bar) ?? ask(message.addOpening(), message.add(), (text) => add(bar, text));
  forms.set(bar, form);
  return html`
    ${choice("ls-place-opening", message.opening(), names, bar.opening, take)}
    ${chosen ? device(bar, message.deviceHere(), chosen.device ?? "", act) : nothing}
    ${form}
  `;
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

/** @param {VisitBar} bar @param {string} words @param {string} chosen @param {(value: string) => unknown} act */
function device(bar, words, chosen, act) {
  /** @type {[id: string, name: string][]} */
  const choices = [["", message.noDevice()], ...bar.list.devices];
  return choice("ls-place-device", words, choices, chosen, act);
}

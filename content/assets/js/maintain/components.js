/** The page of components: the states of items and of the bar, by the views that lists have. Nothing is stored. */
import { button } from "../core/parts.js";
import { checklist as message } from "../messages/visit.js";
import { render } from "../vendor/lit-html.js";
import { barOf } from "../visit/checklist.js";
import { Item } from "../visit/item.js";

/** @type {import("../visit/entries.js").Answer[]} */
const ANSWERS = ["done", "problem", "not-applicable"];
const AT = "2026-01-01T09:30:00.000+00:00";
const PLACE = { visit: "", loose: true, name: "", opening: null, openingName: "", devices: [], planned: {}, hold: "" };

/** Show each item in a state of its own, and the bar as it is before and after something was done. */
export function start() {
  const place = /** @type {HTMLElement} */ (document.querySelector("[data-ls-components]"));
  /** @type {HTMLElement[]} */
  const elements = [...place.querySelectorAll("[data-item]")].filter((one) => one instanceof HTMLElement);
  const items = elements.map((element) => new Item(element, pretended()));
  for (const [index, item] of items.entries()) {
    item.settle(outcomeOf(item, index, place.dataset.note ?? ""), PLACE);
    item.render(false, false);
  }
  for (const [index, { reading }] of items.filter((one) => one.reading).entries()) type(reading, index);
  showBars(items[0].words);
  document.documentElement.dataset.lsReady = "components";
}

/** A list that keeps nothing. */
function pretended() {
  const nothing = { say() {}, touched() {}, takeBack: async () => {}, write: async () => false, fields: {} };
  return /** @type {import("../visit/checklist.js").Checklist} */ (/** @type {unknown} */ (nothing));
}

/**
 * What came of the item at a place of the list: the first is open, then comes each answer, then one worded otherwise.
 * @param {Item} item @param {number} index @param {string} note
 * @returns {import("../visit/entries.js").Outcome | undefined}
 */
function outcomeOf(item, index, note) {
  const outcome = ANSWERS[index - 1] ?? "done";
  if (item.reading || index === 0 || index > ANSWERS.length + 1) return undefined;
  const words = index > ANSWERS.length ? note : item.words;
  const entry = { id: String(index), outcome, words, at: AT, by: "", ...(outcome !== "done" && { note }) };
  return { outcome, heads: [/** @type {import("../visit/entries.js").ItemEntry} */ (/** @type {unknown} */ (entry))] };
}

/** Type a reading: what is expected into the first, far too much into the others. @param {Item["reading"]} reading @param {number} index */
function type(reading, index) {
  const [range] = reading?.all[0]?.scales[0]?.ranges ?? [];
  if (!reading || !range) return;
  const inside = range.low ?? range.high ?? 0;
  reading.input.value = String(index ? 1000 * (range.high ?? inside) + 1000 : inside);
  reading.input.dispatchEvent(new Event("input"));
}

/** @param {string} words of what was done */
function showBars(words) {
  const place = document.querySelector("[data-ls-components-bar]");
  if (!place) return;
  const next = () => button(message.nextLeft({ open: 4 }), () => {}, "ls-main");
  const where = message.writesTo({ visit: "" });
  const states = [
    { where, said: "", refused: false, undo: null, next: next() },
    { where, said: message.takenBack({ words }), refused: false, undo: () => {}, next: next() },
    { where, said: message.takenBack({ words }), refused: true, undo: () => {}, next: next() },
  ];
  for (const state of states) {
    const bar = place.appendChild(document.createElement("div"));
    bar.className = "ls-bar";
    render(barOf(state), bar);
  }
}

/** A list of many short entries: a field narrows it as one types, by whatever an entry is called. */
import { render } from "../vendor/lit-html.js";
import { narrowed } from "./narrow.js";
import { view } from "./view.js";

/** Put the field into its place. */
export function start() {
  const place = /** @type {HTMLElement} */ (document.querySelector("[data-ls-narrow]"));
  const entries = /** @type {HTMLElement[]} */ ([...document.querySelectorAll(".ls-entry")]);
  const names = entries.map((entry) => ({ id: entry.id, names: namesOf(entry) }));
  const show = (/** @type {string} */ typed) => {
    const meant = narrowed(names, typed);
    for (const entry of entries) entry.hidden = !meant.has(entry.id);
    for (const group of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(".ls-entries")))
      group.hidden = !group.querySelector(".ls-entry:not([hidden])");
    for (const letters of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(".ls-letters")))
      letters.hidden = Boolean(typed.trim());
    render(view({ typed, shown: meant.size, all: entries.length }, show), place);
  };
  show("");
  addEventListener("hashchange", () => {
    const goal = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!goal?.closest("[hidden]")) return;
    show(""); // a link to what is left out at the moment
    goal.scrollIntoView();
  });
}

/** @param {HTMLElement} entry */
const namesOf = (entry) =>
  [...entry.querySelectorAll(".ls-entry > summary strong, .ls-also")].map((one) => one.textContent).join("\n");

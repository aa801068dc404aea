/**
 * The reader's region: which words and units a page shows. The page sets what was chosen, or a first guess, before it
 * is painted; this is the choice in the header, and the other system of units on a tap.
 */
import { h } from "./core/dom.js";
import { remember } from "./core/place.js";
import { region as message } from "./messages/region.js";

/** @type {[string, () => string, () => string][]} the word of the page, what is chosen from, and in short */
const REGIONS = [
  ["north_america", message.northAmerica, message.northAmericaShort],
  ["united_kingdom", message.unitedKingdom, message.unitedKingdomShort],
  ["continent", message.continent, message.continentShort],
];

/** Put the choice into the header. */
export function start() {
  const chosen = document.documentElement.dataset.region;
  const options = REGIONS.map(([word, , short]) => h("option", { value: word, selected: word === chosen }, short()));
  const full = REGIONS.map(([, long]) => long());
  const select = h("select", { class: "ls-region", change: choose, title: full.join(" · ") }, ...options);
  select.setAttribute("aria-label", message.choose());
  document.querySelector(".md-header__inner")?.append(select);
  document.addEventListener("click", other);
}

/** @param {Event} event */
function choose({ target }) {
  const { value } = /** @type {HTMLSelectElement} */ (target);
  document.documentElement.dataset.region = value;
  remember("region", [value]);
}

/** Show a figure that was tapped in both systems of units. @param {Event} event */
function other({ target }) {
  const figure = /** @type {Element} */ (target).closest(".ls-both");
  if (figure && !figure.closest("a,button,summary,label")) figure.classList.toggle("ls-both-open");
}

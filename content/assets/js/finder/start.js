/** The one place to search: the button in the header, `/` and Ctrl or Cmd with K, and the finder that a page has. */
import { h } from "../core/dom.js";
import { here as address } from "../core/place.js";
import { wordsOf } from "./address.js";

const finder = () => import("./finder.js");

/** Take over the link in the header, and put the finder where the page has a place for it. */
export async function start() {
  const link = /** @type {HTMLElement | null} */ (document.querySelector(".ls-find-open"));
  if (link) takeOver(link);
  const place = /** @type {HTMLElement | null} */ (document.querySelector("[data-ls-finder]"));
  const here = place && (await finder()).settle(place);
  if (here && place.dataset.lsFinder === "address") here.answer(wordsOf(address));
  const begin = async (/** @type {string} */ query = "") => (here ? here.begin(query) : (await finder()).open(query));
  document.addEventListener("keydown", (event) => {
    if (!isShortcut(event)) return;
    event.preventDefault();
    begin();
  });
  const asked = new URLSearchParams(location.search);
  const query = asked.get("find") ?? asked.get("q"); // `q` is in addresses that an earlier search made
  if (query !== null) begin(query);
}

/** A button in the place of the link that leads to the list of pages without scripts. @param {HTMLElement} link */
function takeOver(link) {
  const open = async () => (await finder()).open();
  const name = link.getAttribute("aria-label");
  const made = h("button", { type: "button", class: link.className, "aria-label": name, click: open });
  made.ariaHasPopup = "dialog";
  made.ariaKeyShortcuts = "/ Control+K Meta+K";
  made.append(...link.childNodes);
  link.replaceWith(made);
}

/** @param {KeyboardEvent} event */
function isShortcut(event) {
  if (event.key.toLowerCase() === "k" && (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey)
    return true;
  if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey) return false;
  const at = /** @type {HTMLElement} */ (event.target);
  return !at.closest(":is(input,textarea,select,[contenteditable])");
}

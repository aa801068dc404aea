/** Telling of an error on a page: a text is made to copy, share or send. Nothing leaves the page by itself. */
import { root } from "../core/place.js";
import { region as regions } from "../messages/region.js";
import { look } from "../offline/copy.js";
import { render } from "../vendor/lit-html.js";
import { report, subject } from "./text.js";
import { view } from "./view.js";

/** @type {Record<string, () => string>} */
const REGIONS = {
  north_america: regions.northAmericaShort,
  united_kingdom: regions.unitedKingdomShort,
  continent: regions.continentShort,
};

/** Take over the end of the page. */
export async function start() {
  const part = /** @type {HTMLElement} */ (document.querySelector(".ls-tell"));
  const place = /** @type {HTMLElement} */ (part.lastElementChild);
  const known = await content();
  /** @type {import("./view.js").State} */
  let state = {
    facts: factsWith(known),
    own: "",
    to: part.dataset.to ?? "",
    shares: Boolean(navigator.share),
    copied: null,
  };
  const show = (/** @type {Partial<import("./view.js").State>} */ change) => {
    state = { ...state, facts: factsWith(known), ...change };
    render(view(state, { typed, copy, share }), place);
  };
  const typed = (/** @type {string} */ own) => show({ own, copied: null });
  const share = () =>
    navigator.share({ title: subject(state.facts), text: report(state.facts, state.own) }).catch(() => {}); // left off
  const copy = async () => {
    const shown = /** @type {Element} */ (place.querySelector(".ls-report"));
    const copied = await written(report(state.facts, state.own));
    if (!copied) getSelection()?.selectAllChildren(shown);
    show({ copied });
  };
  show({});
}

/** Whether a text could be put where other programs find it. @param {string} text */
const written = (text) =>
  Promise.resolve(navigator.clipboard?.writeText(text) ?? Promise.reject(new Error("none"))).then(
    () => true,
    () => false,
  );

/** What is read here: the copy that is saved, or what the site has. */
async function content() {
  const saved = (await look().catch(() => null))?.list;
  if (saved) return { version: saved.version, date: saved.date };
  const answer = await fetch(new URL("offline.json", root)).catch(() => null);
  const list = answer?.ok ? await answer.json().catch(() => ({})) : {};
  return { version: String(list.version ?? ""), date: String(list.date ?? "") };
}

/**
 * Which page it is. What an address carries besides a place on the page may tell of a site, and is left out.
 * @param {{version: string, date: string}} known
 */
function factsWith(known) {
  const { origin, pathname, hash } = location;
  const title = document.querySelector("article h1")?.textContent ?? "";
  const named = hash.length > 1 && document.getElementById(hash.slice(1)) ? hash : "";
  const region = REGIONS[document.documentElement.dataset.region ?? ""]?.() ?? "";
  return { title, address: origin + pathname + named, region, ...known };
}

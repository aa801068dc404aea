/** The strip on every page: the finder, the state of the saved copy in words, and safety corrections. */
import { button, fill, h } from "./core/dom.js";
import { remember, remembered, root } from "./core/place.js";
import { rememberThis, showRecent } from "./finder/recent.js";
import { ask, begin, isOld, look, onChange } from "./offline/copy.js";

/** Take over the strip. */
export async function start() {
  const strip = document.querySelector(".ls-strip");
  if (!strip) return;
  rememberThis();
  const find = button("Find", () => open(), { class: "ls-button ls-strip-find" });
  strip.querySelector(".ls-strip-find")?.replaceWith(find);
  const state = /** @type {HTMLElement} */ (strip.querySelector(".ls-strip-state"));
  const news = h("div", { class: "ls-news", role: "status" });
  strip.prepend(news);
  const asked = new URLSearchParams(location.search).get("find");
  if (asked !== null) open(asked);
  onChange(async () => {
    const standing = await look();
    fill(state, standing.words);
    state.classList.toggle("ls-strip-warn", standing.state === "none" || isOld(standing.age));
    fill(news, ...unread(standing.corrections).map((one) => announced(one)));
    document.documentElement.dataset.lsCopy = standing.state;
  });
  if (document.querySelector("[data-ls-copy-page]")) import("./offline/page.js").then((page) => page.start());
  const last = document.querySelector("[data-ls-recent]");
  if (last) showRecent(last);
  standIn();
  await begin();
}

/**
 * The search of the whole text needs its index. Where that is neither saved nor to be had, the finder opens instead.
 */
function standIn() {
  const box = /** @type {HTMLInputElement | null} */ (document.querySelector("#__search"));
  box?.addEventListener("change", async () => {
    const { list } = await look();
    if (!box.checked || !list || list.everything || (await ask({ ask: "contact" })).done) return;
    box.checked = false;
    open();
  });
}

/** @param {string} [query] */
async function open(query = "") {
  (await import("./finder/finder.js")).open(query);
}

/**
 * Corrections that this reader has not said to have read.
 * @param {import("./offline/copy.js").Correction[]} corrections
 */
function unread(corrections) {
  const read = new Set(remembered("corrections read"));
  return corrections.filter((one) => !read.has(one.key));
}

/** @param {import("./offline/copy.js").Correction} correction */
function announced(correction) {
  const { key, address, name, text } = correction;
  const page = h("a", { href: new URL(address, root) }, name);
  const read = () => {
    remember("corrections read", [...remembered("corrections read"), key]);
    block.remove();
  };
  /** @type {HTMLElement} */
  const block = h(
    "div",
    { class: "ls-correction" },
    h("p", {}, h("strong", {}, "Safety correction: "), page, `. ${text}`),
    button("I have read it", read),
  );
  return block;
}

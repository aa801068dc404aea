/** The strip on every page: the state of the saved copy in words, and safety corrections. */
import { h } from "./core/dom.js";
import { around } from "./core/message.js";
import { button } from "./core/parts.js";
import { remember, remembered, root } from "./core/place.js";
import { rememberThis, showRecent } from "./finder/recent.js";
import { strip as message } from "./messages/strip.js";
import { begin, isOld, look, onChange } from "./offline/copy.js";
import { html, render } from "./vendor/lit-html.js";

/** Take over the strip. */
export async function start() {
  const strip = document.querySelector(".ls-strip");
  if (!strip) return;
  rememberThis();
  const state = /** @type {HTMLElement} */ (strip.querySelector(".ls-strip-state"));
  const news = h("div", { class: "ls-news", role: "status" });
  strip.prepend(news);
  onChange(async () => {
    const standing = await look();
    if (state.textContent !== standing.words) state.textContent = standing.words;
    state.classList.toggle("ls-strip-warn", standing.state === "none" || isOld(standing.age));
    announce(standing.corrections, news);
    document.documentElement.dataset.lsCopy = standing.state;
  });
  if (document.querySelector("[data-ls-copy-page]")) import("./offline/page.js").then((page) => page.start());
  const last = /** @type {HTMLElement | null} */ (document.querySelector("[data-ls-recent]"));
  if (last) showRecent(last);
  await begin();
}

/**
 * Corrections that this reader has not said to have read.
 * @param {import("./offline/copy.js").Correction[]} corrections
 */
function unread(corrections) {
  const read = new Set(remembered("corrections read"));
  return corrections.filter((one) => !read.has(one.key));
}

/**
 * Show the corrections that are not read yet.
 * @param {import("./offline/copy.js").Correction[]} corrections @param {HTMLElement} place
 */
function announce(corrections, place) {
  const blocks = unread(corrections).map(({ key, address, name, text }) => {
    const page = html`<a href=${new URL(address, root).href}>${name}</a>`;
    const read = () => {
      remember("corrections read", [...remembered("corrections read"), key]);
      announce(corrections, place);
    };
    return html`
      <div class="ls-correction">
        <p><strong>${message.safetyCorrection()}</strong> ${around(message.correction, { page, text })}</p>
        ${button(message.read(), read)}
      </div>
    `;
  });
  render(blocks, place);
}

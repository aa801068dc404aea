/** *Continue where you were*: the list that was written to last, of the visit that is open here. */
import { linkRow } from "../core/parts.js";
import { root } from "../core/place.js";
import { goOn as message } from "../messages/visit.js";
import { html, render } from "../vendor/lit-html.js";
import { lastWork } from "./last-work.js";
import * as store from "./store.js";

/** Show it where the page has a place for it, where there is anything to continue. */
export async function start() {
  const place = /** @type {HTMLElement} */ (document.querySelector("[data-ls-continue]"));
  if (!(await store.open()).kept) return;
  const [last, loose] = /** @type {(string | undefined)[]} */ (await store.recallAll(["last", "loose"]));
  const tab = store.tab("ls-place").split("|")[0];
  for (const visit of new Set([tab, last, loose])) {
    const work = visit && lastWork(await store.entriesOf(visit), visit === loose);
    if (!work) continue;
    const { path, list, opening, site, answers } = work;
    const where = [list, opening, site || message.noVisit()].filter(Boolean).join(" · ");
    const row = linkRow(new URL(path, root), message.title(), list ? message.where({ where, answers }) : site);
    render(html`<ul class="ls-rows">${row}</ul>`, place);
    return;
  }
}

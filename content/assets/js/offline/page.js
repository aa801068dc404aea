/** The page of the saved copy: what is saved, how old it is, and what can be done about it. */
import { around, listed } from "../core/message.js";
import { button, tools } from "../core/parts.js";
import { root } from "../core/place.js";
import { page as message } from "../messages/offline.js";
import { html, nothing, render } from "../vendor/lit-html.js";
import { ask, hindrance, isOld, look, onChange, save } from "./copy.js";

const size = (/** @type {number} */ bytes) => `${(bytes / 1e6).toFixed(2)} MB`;
const ADDRESS = /^(?:[a-z0-9-]+\/)*(?:[a-z0-9-]+)?$/;

const warning = (/** @type {string} */ words) => html`<p class="ls-warn">${words}</p>`;

/** What was done last, why a new version waits, and whether the browser promised to keep what is saved. */
const state = { said: "", held: "", firm: "" };

/** Take over the page. */
export async function start() {
  const place = /** @type {HTMLElement} */ (document.querySelector("[data-ls-copy-page]"));
  const wanted = new URLSearchParams(location.search).get("wanted");
  if (wanted !== null) missing(wanted);
  if (await navigator.storage?.persisted?.().catch(() => false)) state.firm = message.promised();
  place.replaceChildren();
  const show = async () => render(parts(await look(), show), place);
  onChange(show);
  await show();
}

/** Which page was asked for and is not here. @param {string} address */
function missing(address) {
  const place = /** @type {HTMLElement} */ (document.querySelector("[data-ls-wanted]"));
  const words = address ? message.tryAgain({ address }) : message.tryHome();
  const again = ADDRESS.test(address) ? html`<a href=${new URL(address, root).href}>${words}</a>` : nothing;
  place.replaceChildren();
  render(html`<p class="ls-note"><strong>${message.missing()}</strong> ${again}</p>`, place);
}

/**
 * @param {import("./copy.js").Standing} standing
 * @param {() => unknown} show
 */
function parts(standing, show) {
  const { next, trouble, words } = standing;
  const { said, held, firm } = state;
  return html`
    <p class="ls-copy-state" role="status">${around(message.state, { state: html`<strong>${words}</strong>` })}</p>
    ${saved(standing)}
    ${trouble && !hindrance() ? warning(message.brokeOff({ trouble })) : nothing}
    ${next ? html`<p>${message.waiting(next)}</p>` : nothing}
    ${held ? warning(held) : nothing}
    ${said ? html`<p role="status">${said}</p>` : nothing}
    ${firm ? html`<p>${firm}</p>` : nothing}
    ${tools(...ways(standing, show))}
  `;
}

/** What is saved, and how old it is. @param {import("./copy.js").Standing} standing */
function saved({ list, age }) {
  if (!list) return nothing;
  const what = list.everything ? message.everyPage() : message.groups({ groups: listed(list.groups, "unit") });
  const compared = age === null ? message.noAge() : message.compared({ days: age });
  return html`<p>${what} ${compared}</p>${isOld(age) ? warning(message.old()) : nothing}`;
}

/** What can be done. @param {import("./copy.js").Standing} standing @param {() => unknown} show */
function ways({ list, next, state: stands }, show) {
  if (hindrance()) return [];
  const { held, firm } = state;
  const act = (/** @type {string} */ words, /** @type {() => Promise<unknown>} */ work) =>
    button(words, () => work().then(show));
  const made = [];
  if (next) made.push(act(held ? message.useAllTheSame() : message.use(), () => use(Boolean(held))));
  if (list && !list.everything) made.push(act(message.saveEverything({ size: size(list.size.rest) }), everything));
  if (stands === "none" || !list) made.push(act(message.save(), () => save()));
  else made.push(act(message.compare(), compare));
  if (list && !firm) made.push(act(message.askToKeep(), keep));
  return made;
}

async function everything() {
  const answer = await save(true);
  state.said = answer.done ? message.allSaved() : message.notAllSaved({ why: answer.why ?? "" });
  await keep();
}

async function compare() {
  const answer = await ask({ ask: "contact" });
  state.said = answer.done ? message.comparedNow() : message.noAnswer();
}

/** Whether the browser promises to keep what is saved. */
async function keep() {
  const promised = await navigator.storage?.persist?.().catch(() => false);
  state.firm = promised ? message.promised() : message.noPromise();
}

/** @param {boolean} sure */
async function use(sure) {
  const answer = await ask({ ask: "use", sure });
  if (answer.done) return location.reload();
  state.held = answer.held ? message.held({ by: answer.held }) : "";
}

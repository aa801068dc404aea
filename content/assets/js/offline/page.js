/** The page of the saved copy: what is saved, how old it is, and what can be done about it. */
import { button, fill, h } from "../core/dom.js";
import { root } from "../core/place.js";
import { ask, hindrance, isOld, look, onChange, save } from "./copy.js";

const size = (/** @type {number} */ bytes) => `${(bytes / 1e6).toFixed(2)} MB`;
const ADDRESS = /^(?:[a-z0-9-]+\/)*(?:[a-z0-9-]+)?$/;

/** Why the new version waits. */
const HELD = {
  list:
    "A checklist or a visit is in progress, so the new version waits. Finish it first; or change now, and ticks and " +
    "readings are kept.",
  pages: "Other pages of this library are open, so the new version waits. Close them first, or change now.",
};

const warning = (/** @type {string} */ words) => h("p", { class: "ls-warn" }, words);

let said = "";
let held = "";
let firm = "";

/** Take over the page. */
export async function start() {
  const place = /** @type {HTMLElement} */ (document.querySelector("[data-ls-copy-page]"));
  const wanted = new URLSearchParams(location.search).get("wanted");
  if (wanted !== null) missing(wanted);
  if (await navigator.storage?.persisted?.().catch(() => false)) firm = "The browser has promised to keep it.";
  const show = async () => fill(place, ...parts(await look(), show));
  onChange(show);
  await show();
}

/** Which page was asked for and is not here. @param {string} address */
function missing(address) {
  const known = ADDRESS.test(address);
  const place = /** @type {Element} */ (document.querySelector("[data-ls-wanted]"));
  const words = "The page you asked for is not saved on this device, and the site does not answer. ";
  const again = known && h("a", { href: new URL(address, root) }, `Try ${address || "home"} again`);
  fill(place, h("p", { class: "ls-note" }, h("strong", {}, words), again));
}

/**
 * @param {import("./copy.js").Standing} standing
 * @param {() => Promise<void>} show
 */
function parts(standing, show) {
  const { list, next, age, trouble, state } = standing;
  const lines = [h("p", { class: "ls-copy-state", role: "status" }, h("strong", {}, standing.words), ".")];
  if (list) {
    lines.push(h("p", {}, `Saved: ${list.everything ? "every page" : list.groups.join(", ")}. `, compared(age)));
    if (isOld(age))
      lines.push(warning("This copy is old. Open this page where there is signal before you rely on it."));
  }
  if (trouble && !hindrance()) {
    lines.push(warning(`Saving broke off: ${trouble}. What had come is kept; another try goes on from there.`));
  }
  if (next) lines.push(h("p", {}, `Waiting: version ${next.version}, ${next.date}.`));
  if (held) lines.push(warning(held));
  if (said) lines.push(h("p", { role: "status" }, said));
  if (firm) lines.push(h("p", {}, firm));
  return [...lines, h("div", { class: "ls-tools" }, ...tools(standing, state, show))];
}

/** @param {number | null} age */
function compared(age) {
  if (age === null) return "The clock of this device was set back, so its age is not known.";
  const when = ["today", "yesterday"][age] ?? `${age} days ago`;
  return `Last compared with the site ${when}.`;
}

/** @param {import("./copy.js").Standing} standing @param {string} state @param {() => Promise<void>} show */
function tools({ list, next }, state, show) {
  if (hindrance()) return [];
  const act = (/** @type {string} */ words, /** @type {() => Promise<void>} */ work) =>
    button(words, async () => {
      await work();
      await show();
    });
  const made = [];
  const take = held ? "Use the new version all the same" : "Use the new version now";
  if (next) made.push(act(take, () => use(Boolean(held))));
  if (list && !list.everything) {
    const more = list.size.rest;
    made.push(
      act(`Save everything: ${size(more)} more`, async () => {
        const answer = await save(true);
        said = answer.done ? "Every page is saved." : `Not everything is saved: ${answer.why}.`;
        await keep();
      }),
    );
  }
  if (state === "none" || !list) made.push(act("Save it now", async () => void (await save())));
  else made.push(act("Compare with the site now", compare));
  if (list && !firm) made.push(act("Ask the browser to keep it", keep));
  return made;
}

async function compare() {
  const answer = await ask({ ask: "contact" });
  said = answer.done ? "Compared just now." : "The site does not answer.";
}

/** Whether the browser promises to keep what is saved. */
async function keep() {
  const promised = await navigator.storage?.persist?.().catch(() => false);
  firm = promised
    ? "The browser has promised to keep it."
    : "The browser gives no promise to keep it. It stays saved until space is short.";
}

/** @param {boolean} sure */
async function use(sure) {
  const answer = await ask({ ask: "use", sure });
  if (answer.done) return location.reload();
  held = answer.held ? HELD[answer.held] : "";
}

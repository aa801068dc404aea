/**
 * The quick finder: a dialog over any page. Answers come from the site's own small index, with or without a network.
 */
import { button, fill, h } from "../core/dom.js";
import { root } from "../core/place.js";
import { find, prepare } from "./match.js";
import { recent, row } from "./recent.js";

/** @type {Promise<import("./match.js").Index> | null} */
let index = null;
/** @type {{dialog: HTMLDialogElement, input: HTMLInputElement} | null} */
let made = null;

function load() {
  index ??= fetch(new URL("finder.json", root))
    .then((answer) => {
      if (!answer.ok) throw new Error(String(answer.status));
      return answer.json();
    })
    .then(prepare)
    .catch((error) => {
      index = null;
      throw error;
    });
  return index;
}

/** Open it, with words typed in already where there are some. @param {string} query */
export function open(query) {
  made ??= make();
  const { dialog, input } = made;
  if (!dialog.open) dialog.showModal();
  if (query) input.value = query.slice(0, 200);
  input.focus();
  input.select();
  input.dispatchEvent(new Event("input"));
}

function make() {
  const plain = { autocomplete: "off", autocapitalize: "off", spellcheck: "false" };
  const input = h("input", { type: "search", id: "ls-find", ...plain, enterkeyhint: "go" });
  const found = h("ul", { class: "ls-rows" });
  const said = h("p", { role: "status" });
  const close = button("Close", () => dialog.close(), { class: "ls-button ls-quiet" });
  const label = h("label", { for: "ls-find" }, "What do you see, have or need?");
  const line = h("div", { class: "ls-find-line" }, input, close);
  const look = { class: "ls-finder md-typeset", "aria-label": "Find" };
  /** @type {HTMLDialogElement} */
  const dialog = h("dialog", look, label, line, said, found);
  input.addEventListener("input", () => answer(input.value, found, said));
  dialog.addEventListener("keydown", (/** @type {KeyboardEvent} */ event) => keys(event, input, found));
  document.body.append(dialog);
  return { dialog, input };
}

/** @param {string} query @param {Element} found @param {Element} said */
async function answer(query, found, said) {
  if (!query.trim()) {
    const lists = recent();
    fill(said, lists.length ? "Last used:" : "Type a symptom, a device, a word or a checklist.");
    fill(found, ...lists.map(({ address, name }) => row(address, name, "Checklist")));
    load().catch(() => {});
    return;
  }
  let known;
  try {
    known = await load();
  } catch {
    fill(found);
    return fill(said, "The finder's index is not saved on this device, and the site does not answer.");
  }
  const input = made?.input;
  if (input && input.value !== query) return; // something else was typed meanwhile
  const answers = find(known, query);
  fill(said, answers.length ? `${answers.length} found` : "Nothing found. Try fewer words, or say it another way.");
  const under = (/** @type {typeof answers[number]} */ { thing, text }) =>
    text ? `${thing.kind}: ${text}` : thing.kind;
  fill(found, ...answers.map((one) => row(one.thing.address, one.thing.name, under(one))));
  document.documentElement.dataset.lsFound = query;
}

/**
 * Enter opens the first answer, the arrows go from answer to answer, Escape closes.
 * @param {KeyboardEvent} event @param {HTMLElement} input @param {Element} found
 */
function keys(event, input, found) {
  const stops = [input, .../** @type {NodeListOf<HTMLElement>} */ (found.querySelectorAll("a"))];
  const at = stops.indexOf(/** @type {HTMLElement} */ (document.activeElement));
  if (event.key === "Escape") made?.dialog.close();
  else if (event.key === "Enter" && at === 0) stops[1]?.click();
  else if (event.key === "ArrowDown" && at >= 0) stops[Math.min(at + 1, stops.length - 1)].focus();
  else if (event.key === "ArrowUp" && at > 0) stops[at - 1].focus();
  else return;
  event.preventDefault();
}

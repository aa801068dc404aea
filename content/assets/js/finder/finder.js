/**
 * The quick finder: a dialog over any page. Answers come from the site's own small index, with or without a network.
 */
import { h } from "../core/dom.js";
import { quiet } from "../core/parts.js";
import { root } from "../core/place.js";
import { finder as message } from "../messages/finder.js";
import { html, render } from "../vendor/lit-html.js";
import { find, prepare } from "./match.js";
import { recent, row } from "./recent.js";

/** @type {Promise<import("./match.js").Index> | null} */
let index = null;
/** @type {HTMLDialogElement | null} */
let dialog = null;

/**
 * What the finder says and shows.
 * @typedef {{said: string, rows: Part[]}} Answer
 * @typedef {import("../core/parts.js").Part} Part
 */

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
  dialog ??= make();
  if (!dialog.open) dialog.showModal();
  const input = inputOf(dialog);
  if (query) input.value = query.slice(0, 200);
  input.focus();
  input.select();
  input.dispatchEvent(new Event("input"));
}

/** @param {HTMLElement} at */
const inputOf = (at) => /** @type {HTMLInputElement} */ (at.querySelector("input"));

function make() {
  const made = h("dialog", { class: "ls-finder md-typeset", "aria-label": message.find() });
  made.addEventListener("keydown", (event) => keys(event, made));
  show({ said: "", rows: [] }, made);
  document.body.append(made);
  return made;
}

/** @param {Answer} answer @param {HTMLDialogElement} place */
function show({ said, rows }, place) {
  const input = html`
    <input type="search" id="ls-find" autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="go"
      @input=${() => answer(inputOf(place).value, place)}>
  `;
  const parts = html`
    <label for="ls-find">${message.ask()}</label>
    <div class="ls-find-line">${input}${quiet(message.close(), () => place.close())}</div>
    <p role="status">${said}</p>
    <ul class="ls-rows">${rows}</ul>
  `;
  render(parts, place);
}

/** Show what is meant by a query. @param {string} query @param {HTMLDialogElement} place */
async function answer(query, place) {
  if (!query.trim()) {
    const lists = recent();
    load().catch(() => {});
    const rows = lists.map(({ address, name }) => row(address, name, message.checklist()));
    return show({ said: lists.length ? message.lastUsed() : message.type(), rows }, place);
  }
  const known = await load().catch(() => null);
  if (!known) return show({ said: message.noIndex(), rows: [] }, place);
  if (inputOf(place).value !== query) return; // something else was typed meanwhile
  const answers = find(known, query);
  const rows = answers.map(({ thing, text }) => {
    const under = text ? message.under({ kind: thing.kind, text }) : thing.kind;
    return row(thing.address, thing.name, under);
  });
  show({ said: message.found({ answers: answers.length }), rows }, place);
  document.documentElement.dataset.lsFound = query;
}

/**
 * Enter opens the first answer, the arrows go from answer to answer, Escape closes.
 * @param {KeyboardEvent} event @param {HTMLDialogElement} place
 */
function keys(event, place) {
  const stops = [inputOf(place), .../** @type {NodeListOf<HTMLElement>} */ (place.querySelectorAll(".ls-rows a"))];
  const at = stops.indexOf(/** @type {HTMLInputElement} */ (document.activeElement));
  if (event.key === "Escape") place.close();
  else if (event.key === "Enter" && at === 0) stops[1]?.click();
  else if (event.key === "ArrowDown" && at >= 0) stops[Math.min(at + 1, stops.length - 1)].focus();
  else if (event.key === "ArrowUp" && at > 0) stops[at - 1].focus();
  else return;
  event.preventDefault();
}

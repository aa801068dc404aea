/** The finder: over any page, or in the place that a page has for it. Answers come from the site's own file. */
import { h } from "../core/dom.js";
import { root } from "../core/place.js";
import { finder as message } from "../messages/finder.js";
import { render } from "../vendor/lit-html.js";
import { prepare } from "./index.js";
import { addressOf, find, marked } from "./rank.js";
import { recent } from "./recent.js";
import { view } from "./view.js";

/**
 * @typedef {import("./view.js").Answer} Answer
 * @typedef {import("./view.js").State} State
 * @typedef {Pick<State, "said" | "hint" | "answers">} Answered
 */

const LONGEST = 200;
const FEW = 4;
const EMPTY = { said: "", hint: "", answers: [], at: -1 };

/** @type {Promise<import("./index.js").Index> | null} */
let index = null;
/** @type {Finder | null} */
let over = null;

/** The index, made when it is first asked for. */
function load() {
  index ??= fetch(new URL("finder.json", root))
    .then((answer) => {
      if (!answer.ok) throw new Error(String(answer.status));
      return answer.json();
    })
    .then((data) => prepare(data))
    .then((made) => {
      find(made, message.example()); // the first search is the slow one, and nobody should wait for it
      return made;
    })
    .catch((error) => {
      index = null;
      throw error;
    });
  return index;
}

/** Open it over the page, with words typed in already where there are some. @param {string} [query] */
export function open(query) {
  if (!over) {
    const dialog = h("dialog", { class: "ls-finder md-typeset", "aria-label": message.find() });
    document.body.append(dialog);
    over = new Finder(dialog, "ls-find", dialog);
  }
  over.begin(query);
}

/** The finder in a place of the page. @param {HTMLElement} place */
export function settle(place) {
  const settled = new Finder(place, "ls-find-here");
  settled.show();
  return settled;
}

/** A finder in a place, which may be a dialog that it closes. */
class Finder {
  /** @param {HTMLElement} place @param {string} id @param {HTMLDialogElement} [dialog] */
  constructor(place, id, dialog) {
    this.place = place;
    this.dialog = dialog;
    /** @type {State} */
    this.state = { ...EMPTY, id, closes: Boolean(dialog) };
    this.acts = {
      typed: () => this.typed(),
      key: (/** @type {KeyboardEvent} */ event) => this.key(event),
      left: () => this.dialog ?? this.show(EMPTY),
      close: () => this.dialog?.close(),
      chosen: () => (this.dialog ? this.dialog.close() : this.input.blur()),
    };
  }

  get input() {
    return /** @type {HTMLInputElement} */ (this.place.querySelector("input"));
  }

  get options() {
    return /** @type {NodeListOf<HTMLAnchorElement>} */ (this.place.querySelectorAll("[role=option]"));
  }

  /** @param {Partial<State>} [change] */
  show(change) {
    this.state = { ...this.state, ...change };
    render(view(this.state, this.acts), this.place);
    this.options[this.state.at]?.scrollIntoView({ block: "nearest" });
  }

  /** Put the reader into the field. @param {string} [query] words typed in already */
  begin(query) {
    if (!this.place.firstChild) this.show();
    if (this.dialog && !this.dialog.open) this.dialog.showModal();
    if (query) this.input.value = query.slice(0, LONGEST);
    this.input.focus();
    this.input.select();
    this.typed();
  }

  /** Show the little that is meant most by some words, and leave the reader where they are. @param {string} query */
  answer(query) {
    this.input.value = query.slice(0, LONGEST);
    if (query.trim()) this.typed(FEW);
  }

  /** Show what is meant by what stands in the field. @param {number} [most] */
  async typed(most) {
    const query = this.input.value;
    const answered = await answer(query, most);
    if (this.input.value !== query) return; // something else was typed meanwhile
    this.show({ ...answered, at: -1 });
    if (query.trim()) document.documentElement.dataset.lsFound = query;
  }

  /** Enter opens the marked answer or the first, the arrows go round the answers. @param {KeyboardEvent} event */
  key(event) {
    const { at, answers } = this.state;
    if (event.isComposing) return;
    if (event.key === "Enter") this.options[Math.max(at, 0)]?.click();
    else if (event.key === "Escape") this.leave();
    else if (event.key === "ArrowDown") this.show({ at: at + 1 < answers.length ? at + 1 : -1 });
    else if (event.key === "ArrowUp") this.show({ at: at < 0 ? answers.length - 1 : at - 1 });
    else return;
    event.preventDefault();
  }

  leave() {
    if (this.dialog) return this.dialog.close();
    this.input.value = "";
    return this.show(EMPTY);
  }
}

/** What is said and shown for a query. @param {string} query @param {number} [most] @returns {Promise<Answered>} */
async function answer(query, most) {
  if (!query.trim()) {
    load().catch(() => {});
    const answers = recent().map(({ address, name }) => checklist(address, name));
    return { said: answers.length ? message.lastUsed() : message.type(), hint: message.example(), answers };
  }
  const known = await load().catch(() => null);
  if (!known) return { said: message.noIndex(), hint: "", answers: [] };
  const answers = find(known, query).slice(0, most).map(shown);
  return { said: message.found({ answers: answers.length }), hint: answers.length ? "" : message.example(), answers };
}

/** A checklist used before. @param {string} address @param {string} name @returns {Answer} */
const checklist = (address, name) => {
  const title = [{ text: name, hit: false }];
  return { address, name: title, kind: message.checklist(), line: [] };
};

/** @param {import("./rank.js").Found} found @returns {Answer} */
const shown = (found) => ({
  address: addressOf(found),
  name: marked(found.thing.name, found.hits),
  kind: found.thing.shown,
  line: found.line.sort === "name" ? [] : marked(found.line.text, found.hits),
});

/** The calculators: each form shows what its state says, and what is typed changes the state. */
import { render } from "../vendor/lit-html.js";
import { FIGURES } from "./figures.js";
import { asking, opening, turning, turningAll, typing } from "./state.js";
import { view } from "./view.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./view.js").Acts} Acts
 */

const region = document.documentElement;
const imperial = () => region.dataset.region === "north_america";

/** Bring one calculator to life. @param {HTMLFormElement} form */
function start(form) {
  const figure = FIGURES[form.dataset.figure ?? ""];
  if (!figure) return;
  let state = opening(figure, new URLSearchParams(location.search), imperial());
  const show = (/** @type {State} */ next) => {
    state = next;
    render(view(state, acts), form);
  };
  /** @type {Acts} */
  const acts = {
    type: (name, text) => show(typing(state, name, text)),
    turn: (one) => show(turning(state, one)),
    ask: (group, one) => {
      show(asking(state, group, one));
      document.getElementById(`in-${one.name}`)?.focus();
    },
    more: (more) => show({ ...state, more }),
    at: (at) => show({ ...state, at }),
  };
  form.replaceChildren();
  show(state);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.hidden = false;
  document.querySelector("[data-no-script]")?.remove();
  new MutationObserver(() => show(turningAll(state, imperial()))).observe(region, { attributeFilter: ["data-region"] });
}

for (const form of /** @type {NodeListOf<HTMLFormElement>} */ (document.querySelectorAll("form[data-figure]")))
  start(form);

/** What the page of surveys shows: the list, a survey or an opening, and the bar at the foot of the screen. */
import { button, quiet } from "../core/parts.js";
import { pageView as message } from "../messages/survey.js";
import { trialTools } from "../plan/trial-view.js";
import { html, nothing } from "../vendor/lit-html.js";
import { listView } from "./list-view.js";
import { openingFields } from "./model.js";
import { openingName } from "./naming.js";
import { openingView } from "./opening-view.js";
import { isThere, keptNow, nextWithOpen, openNow, shownOpening, shownTrial } from "./state.js";
import { surveyView } from "./survey-view.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./survey.js").Surveys} Acts
 */

/** @param {State} state @param {Acts} acts */
export function page(state, acts) {
  if (!state.key) return listView(state, acts);
  if (!isThere(state)) return html`<div class="ls-survey">${goneView(state, acts)}</div>`;
  return html`<div class="ls-survey">${placeView(state, acts)}</div>${barView(state, acts)}`;
}

/** @param {State} state @param {Acts} acts */
function placeView(state, acts) {
  const { survey } = state;
  const at = shownOpening(state);
  if (at) return openingView(state, at.row, at.index, acts);
  return survey ? surveyView(state, survey, acts) : nothing;
}

/** What the address names is not here. @param {State} state @param {Acts} acts */
function goneView({ key, survey }, acts) {
  const words = survey ? message.openingGone() : message.surveyGone();
  const back = survey ? message.allOpenings() : message.allSurveys();
  return html`<p class="ls-warn">${words}</p>${quiet(back, () => acts.open(survey ? key : ""))}`;
}

/** @param {State} state @param {Acts} acts */
function barView(state, acts) {
  const isEmpty = !state.survey?.openings.length; // then an opening is what comes next
  return html`
    <div class="ls-bar" role="region" aria-label=${message.thisSurvey()}>
      <div class="ls-bar-line">${openingNow(state)}<p class="ls-where" role="status">${keptView(state, acts)}</p></div>
      <div class="ls-tools">${shownTrial(state) ? trialTools(acts) : barTools(state, isEmpty, acts)}</div>
    </div>
  `;
}

/** @param {State} state @param {boolean} isEmpty @param {Acts} acts */
const barTools = (state, isEmpty, acts) => [
  button(message.add(), () => acts.add(), isEmpty ? "ls-main" : "ls-quiet"),
  button(nextWords(state), () => acts.next(), isEmpty ? "ls-quiet" : "ls-main"),
];

/** Which opening is shown, for who has scrolled away from its title. @param {State} state */
function openingNow(state) {
  const at = shownOpening(state);
  if (!at || keptNow(state).sort === "failed") return nothing;
  const opening = openingName(openingFields(state.fields), at.row.data, at.index);
  return html`<p class="ls-bar-at" aria-hidden="true">${message.numbered({ number: at.index + 1, opening })}</p>`;
}

/** Where the way on leads. @param {State} state */
function nextWords(state) {
  const { here, all } = openNow(state);
  if (here) return message.nextLeft({ open: here });
  if (!all) return message.nothingOpen();
  return nextWithOpen(state) ? message.nextOpening({ open: all }) : message.nextSite({ open: all });
}

/** Whether all is stored, in words. @param {State} state @param {Acts} acts */
function keptView(state, acts) {
  const { sort, words, count } = keptNow(state);
  if (sort === "failed")
    return html`<strong class="ls-warn">${words}</strong>${quiet(message.tryAgain(), () => acts.keeper.tryAgain())}`;
  if (shownTrial(state)) return html`<strong>${message.trial()}</strong>`;
  if (sort === "code") return html`<strong class="ls-warn">${message.codeWaits({ answers: count })}</strong>`;
  if (sort === "saved") return message.saved({ at: words });
  if (sort === "saving") return message.saving();
  if (sort === "memory") return message.notStored();
  return sort === "said" ? words : message.kept();
}

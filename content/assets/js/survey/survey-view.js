/** One survey: the site, the panel, the list of openings, and how it leaves the device. */
import { button, quiet, tools } from "../core/parts.js";
import { surveyView as message } from "../messages/survey.js";
import { standingView } from "../plan/opening-view.js";
import { planView } from "../plan/plan-view.js";
import { trialNote } from "../plan/trial-view.js";
import { guard } from "../vendor/guard.js";
import { html, nothing } from "../vendor/lit-html.js";
import { repeat } from "../vendor/repeat.js";
import { siteParts } from "./layout.js";
import { leaveView } from "./leave-view.js";
import { openingFields } from "./model.js";
import { openingName } from "./naming.js";
import { partsView } from "./part-view.js";
import { openNow } from "./state.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./model.js").Survey} Survey
 * @typedef {import("./model.js").OpeningRow} OpeningRow
 * @typedef {import("./survey.js").Surveys} Acts
 */

/** @param {State} state @param {Survey} survey @param {Acts} acts */
export function surveyView(state, survey, acts) {
  const { fields } = state;
  const { openings } = survey;
  return html`
    <div>
      ${quiet(message.allSurveys(), () => acts.open(""))}
      <h2 tabindex="-1">${survey.survey.data.name || message.noName()}</h2>
      <p class="ls-count">${message.count({ openings: openings.length, questions: openNow(state).all })}</p>
      ${planView(state, acts)}
      ${trialNote(state)}
      ${partsView(state, siteParts(fields), survey.survey, acts.form)}
      <h3>${message.walk()}</h3>
      ${openings.length ? nothing : html`<p>${message.none()}</p>`}
      <ol class="ls-rows ls-walk">
        ${repeat(
          openings,
          ({ key }) => key,
          (row, index) => rowView(state, survey, row, index, acts),
        )}
      </ol>
      <div class="ls-gone" role="status">${goneView(state, survey, acts)}</div>
      ${leaveView(state, survey, acts)}
      ${deleteView(state, survey, acts)}
    </div>
  `;
}

/** A row of the walk, made anew where it differs. @param {State} state @param {Survey} survey @param {OpeningRow} row @param {number} index @param {Acts} acts */
function rowView(state, survey, row, index, acts) {
  const found = (state.findings.get(row.key) ?? [])
    .filter(({ kind }) => kind !== "hindrance")
    .map(({ words }) => words);
  const unfolded = state.tools === row.key;
  const last = index === survey.openings.length - 1;
  const one = state.plan.at.get(row.key);
  return guard([row, index, unfolded, last, one?.device?.name, one?.bearing, ...found], () => {
    const opening = openingName(openingFields(state.fields), row.data, index);
    const name = message.numbered({ number: index + 1, opening });
    return html`
      <li>
        <a href="#s=${row.survey}&o=${row.key}"><strong>${name}</strong>${one ? standingView(one) : nothing}<span>${found.join(" · ")}</span></a>
        <button type="button" class="ls-button ls-quiet ls-more" aria-expanded=${String(unfolded)}
          aria-label=${message.moreFor({ opening: name })} data-act="more ${row.key}"
          @click=${() => acts.set({ tools: unfolded ? "" : row.key })}>${message.more()}</button>
        ${unfolded ? rowTools(row.key, index, last, acts) : nothing}
      </li>
    `;
  });
}

/** @param {string} opening @param {number} index @param {boolean} last @param {Acts} acts */
function rowTools(opening, index, last, acts) {
  const tool = (
    /** @type {string} */ id,
    /** @type {string} */ words,
    /** @type {() => unknown} */ act,
    off = false,
  ) => html`
    <button type="button" class="ls-button ls-quiet" ?disabled=${off} data-act="${id} ${opening}" @click=${act}>
      ${words}
    </button>
  `;
  return tools(
    tool("copy", message.copy(), () => acts.add(opening)),
    tool("up", message.up(), () => acts.move(opening, -1), !index),
    tool("down", message.down(), () => acts.move(opening, 1), last),
    tool("away", message.takeAway(), () => acts.takeAway(opening)),
  );
}

/** The opening that was taken away last can be put back. @param {State} state @param {Survey} survey @param {Acts} acts */
function goneView({ fields }, { last, survey }, acts) {
  if (!last) return nothing;
  const name = openingName(openingFields(fields), last.data, survey.gone.at(-1)?.at ?? 0);
  return html`<p>${message.takenAway({ opening: name })}</p>${quiet(message.putBack(), () => acts.putBack())}`;
}

/** Deleting needs a second press. @param {State} state @param {Survey} survey @param {Acts} acts */
function deleteView({ deleting }, { survey, openings }, acts) {
  if (!deleting) return html`<div class="ls-second">${quiet(message.delete(), () => acts.askDelete(true))}</div>`;
  const asked = survey.filed === survey.changed ? message.deleteAskedSaved : message.deleteAsked;
  return html`
    <div class="ls-second">
      <p role="alert">${asked({ openings: openings.length })}</p>
      ${tools(
        quiet(message.leave(), () => acts.askDelete(false)),
        button(message.deleteSure(), () => acts.remove()),
      )}
    </div>
  `;
}

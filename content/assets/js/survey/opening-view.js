/** One opening of a survey: its questions, and what can be done with it. */
import { quiet, tools } from "../core/parts.js";
import { openingView as message } from "../messages/survey.js";
import { openingPlanView } from "../plan/opening-view.js";
import { trialTools, trialView, tryView } from "../plan/trial-view.js";
import { html, nothing } from "../vendor/lit-html.js";
import { openingParts } from "./layout.js";
import { openIn, openingFields } from "./model.js";
import { openingName } from "./naming.js";
import { partsView } from "./part-view.js";
import { shownTrial } from "./state.js";

/**
 * @param {import("./state.js").State} state
 * @param {import("./model.js").OpeningRow} row @param {number} index its place in the walk, from 0
 * @param {import("./survey.js").Surveys} acts
 */
export function openingView(state, row, index, acts) {
  const { key, fields, survey } = state;
  const inner = openingFields(fields);
  const openings = survey?.openings ?? [];
  const after = openings[index + 1]?.key;
  const name = openingName(inner, row.data, index);
  const trial = shownTrial(state);
  return html`
    <div class=${trial ? "ls-trial" : nothing}>
      ${quiet(message.allOpenings(), () => acts.open(key))}
      <h2 tabindex="-1">${message.numbered({ number: index + 1, opening: name })}</h2>
      <p class="ls-count">
        ${message.count({ number: index + 1, openings: openings.length, questions: openIn(inner, row).length })}
      </p>
      ${trial ? trialView(state, trial, acts) : [openingPlanView(state.plan, row.key), tryView(state, acts)]}
      ${partsView(state, openingParts(inner), row, acts.form)}
      ${
        trial
          ? tools(trialTools(acts))
          : tools(
              after && quiet(message.next(), () => acts.open(key, after)),
              quiet(message.copy(), () => acts.add(row.key)),
              quiet(message.allOpenings(), () => acts.open(key)),
              quiet(message.takeAway(), () => acts.takeAway(row.key)),
            )
      }
    </div>
  `;
}

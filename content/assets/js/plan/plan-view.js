/** The plan of a survey as it stands: an offer to make it, why there is none, or what it says. */
import { around, listedParts } from "../core/message.js";
import { button, tools } from "../core/parts.js";
import { planView as message } from "../messages/plan.js";
import { html, nothing } from "../vendor/lit-html.js";
import { visitView } from "./visit-view.js";

/**
 * @typedef {import("./state.js").Plan} Plan
 * @typedef {import("./planner.js").Glance} Glance
 * @typedef {import("../survey/survey.js").Surveys} Acts
 */

/** Why there is no plan. @type {Record<"refused" | "noSignal" | "slow" | "failed", (values: {told: string}) => string>} */
const WHY = { refused: message.refused, noSignal: message.noSignal, slow: message.slow, failed: message.failed };

/** @param {import("../survey/state.js").State} state @param {Acts} acts */
export function planView(state, acts) {
  const { plan, weight } = state;
  const { planning, house } = acts;
  return html`
    <section class="ls-plan" aria-label=${message.plan()}>
      <h3>${message.plan()}</h3>
      ${plan.sort === "off" ? offer(weight, planning) : html`<div role="status">${standing(plan, planning)}</div>${plan.sort === "starting" ? comingView(plan.taken, weight) : nothing}`}
      ${plan.glance ? glanceView(plan, plan.glance, house.text) : nothing}
      ${plan.glance ? visitView(state, acts) : nothing}
    </section>
  `;
}

/** @param {number} weight of what is brought for it; 0 where the build did not say @param {Acts["planning"]} planning */
const offer = (weight, planning) => html`
  <p>${message.offered({ size: weight ? `${(weight / 1e6).toFixed(1)} MB` : "unknown" })}</p>
  ${tools(button(message.offer(), () => planning.begin()))}
`;

/** How much of the planner has come: beside the status, for it is not read out. @param {number} taken @param {number} weight */
const comingView = (taken, weight) =>
  weight && taken
    ? html`<progress aria-hidden="true" max=${weight} .value=${Math.min(taken, weight)}></progress>`
    : nothing;

/** @param {Plan} plan @param {Acts["planning"]} planning */
function standing({ sort, why, told, glance }, planning) {
  if (sort === "starting") return html`<p>${message.starting()}</p>`;
  if (sort === "planning" && !glance) return html`<p>${message.planning()}</p>`;
  if (sort === "there" && !glance) return html`<p>${message.nothingYet()}</p>`;
  if (sort !== "stopped") return nothing;
  return html`<p class="ls-warn">${WHY[why || "failed"]({ told })}</p>${tools(button(message.again(), () => planning.begin()))}`;
}

/** @param {Plan} plan @param {Glance} glance @param {string} own figures of the firm */
function glanceView(plan, glance, own) {
  const { survey, at, waiting, unread, changes } = plan;
  const { openings, problems, questions, zones, days, minutes } = glance;
  const devices = openings.filter(({ device }) => device).length;
  const hours = String(Math.max(0.5, Math.round(minutes / 30) / 2));
  const ofSite = new Set(problems.map(({ found }) => found));
  const against = [
    ...problems.map((one) => problemView(one)),
    ...[...at].flatMap(([key, one]) =>
      one.problems
        .filter(({ found }) => !ofSite.has(found))
        .map((problem) => problemView(problem, one.spoken, `#s=${survey}&o=${key}`)),
    ),
  ];
  return html`
    <p class="ls-count">${message.counts({ openings: openings.length, devices, zones })}. ${message.time({ hours, days })}.</p>
    ${own ? html`<p>${message.own()}</p>` : nothing}
    ${waiting ? html`<p class="ls-warn">${message.waiting({ openings: waiting })}</p>` : nothing}
    ${unread.map((one) => html`<p class="ls-warn">${message.unread(one)}</p>`)}
    ${changesView(changes, true)}
    ${folded(message.against(), message.problems({ count: against.length }), against)}
    ${folded(
      message.ask(),
      message.questions({ count: questions.length }),
      questions.map((one) => askedView(plan, one)),
    )}
  `;
}

/** @param {{found: string, action: string}} problem @param {string} [where] @param {string} [href] of the opening's questions */
const problemView = ({ found, action }, where, href) =>
  html`<li>${where && href ? html`<a href=${href}>${where}</a>: ` : nothing}${found} <span>${action}</span></li>`;

/**
 * A question, which leads to its field: its words to the first, the names of openings each to its own.
 * @param {Plan} plan @param {import("./planner.js").Asked} question
 */
function askedView(plan, { text, decides }) {
  const [first] = decides.flatMap(({ of }) => of);
  const why = decides.map(({ why, of }) =>
    of.some(({ spoken }) => spoken)
      ? around(message.askedOf, { openings: namesView(plan, of), why: html`${why}` })
      : html`${why}`,
  );
  return html`<li><a href=${fieldAddress(plan, first)}><strong>${text}</strong></a><span>${why.map((one) => html`${one} `)}</span></li>`;
}

/** Openings by name, each a link to the field there where they are several. @param {Plan} plan @param {import("./planner.js").AskedOf[]} of */
const namesView = (plan, of) =>
  html`${listedParts(of.map((one) => (of.length > 1 ? html`<a href=${fieldAddress(plan, one)}>${one.spoken}</a>` : html`${one.spoken}`)))}`;

/** @type {Record<string, string>} */
const GROUPS = { site: "site", "control-unit": "control_unit" };

/** The place of a question in the form. @param {Plan} plan @param {import("./planner.js").AskedOf} asked */
function fieldAddress({ survey, keys }, { about, field }) {
  const group = GROUPS[about];
  return group ? `#s=${survey}&f=${group}.${field}` : `#s=${survey}&o=${keys.get(about)}&f=${field}`;
}

/** A list that unfolds, for the form comes right below the plan. @param {string} title @param {string} count @param {import("../core/parts.js").Part[]} rows */
const folded = (title, count, rows) =>
  rows.length
    ? html`<details class="ls-part"><summary><strong>${title}</strong> <span>${count}</span></summary><ul class="ls-told">${rows}</ul></details>`
    : nothing;

/** What the last answer changed. @param {import("./changes.js").Change[]} changes @param {boolean} [everywhere] */
export function changesView(changes, everywhere = false) {
  if (!changes.length) return nothing;
  return html`
    <div class="ls-changed" role="status">
      <h4>${message.changed()}</h4>
      <ul class="ls-told">${changes.map((change) => html`<li>${changeWords(change, everywhere)}</li>`)}</ul>
    </div>
  `;
}

/** @param {import("./changes.js").Change} change @param {boolean} everywhere */
function changeWords({ sort, spoken, what, before, after }, everywhere) {
  if (sort === "problem") {
    const words = { opening: everywhere ? `${spoken}: ` : "", problem: what };
    return after ? message.newProblem(words) : message.settled(words);
  }
  const words = {
    what: sort === "device" ? message.device() : what,
    before: before || message.noDevice(),
    after: after || message.noDevice(),
  };
  return everywhere ? message.changedAt({ opening: spoken, ...words }) : message.changedLine(words);
}

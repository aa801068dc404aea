/** The plan of a survey as it stands: an offer to make it, why there is none, or what it says. */
import { listed } from "../core/message.js";
import { button, tools } from "../core/parts.js";
import { planView as message } from "../messages/plan.js";
import { html, nothing } from "../vendor/lit-html.js";

/**
 * @typedef {import("./state.js").Plan} Plan
 * @typedef {import("./planner.js").Glance} Glance
 * @typedef {import("../survey/survey.js").Surveys} Acts
 */

/** What the planner weighs that is brought for it. */
const SIZE = "7.7 MB";
/** So many problems and questions stand in view; the rest unfold. */
const FEW = 3;
/** Why there is no plan. @type {Record<"refused" | "slow" | "failed", (values: {told: string}) => string>} */
const WHY = { refused: message.refused, slow: message.slow, failed: message.failed };

/** @param {Plan} plan @param {Acts} acts */
export function planView(plan, { planning }) {
  return html`
    <section class="ls-plan" aria-label=${message.plan()}>
      <h3>${message.plan()}</h3>
      ${plan.sort === "off" ? offer(planning) : html`<div role="status">${standing(plan, planning)}</div>`}
      ${plan.glance ? glanceView(plan, plan.glance) : nothing}
    </section>
  `;
}

/** @param {Acts["planning"]} planning */
const offer = (planning) => html`
  <p>${message.offered({ size: SIZE })}</p>
  ${tools(button(message.offer(), () => planning.begin()))}
`;

/** @param {Plan} plan @param {Acts["planning"]} planning */
function standing({ sort, why, told, glance }, planning) {
  if (sort === "starting") return html`<p>${message.starting()}</p>`;
  if (sort === "planning" && !glance) return html`<p>${message.planning()}</p>`;
  if (sort === "there" && !glance) return html`<p>${message.nothingYet()}</p>`;
  if (sort !== "stopped") return nothing;
  return html`<p class="ls-warn">${WHY[why || "failed"]({ told })}</p>${tools(button(message.again(), () => planning.begin()))}`;
}

/** @param {Plan} plan @param {Glance} glance */
function glanceView({ survey, at, waiting, unread, changes }, glance) {
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
    ${waiting ? html`<p class="ls-warn">${message.waiting({ openings: waiting })}</p>` : nothing}
    ${unread.map((one) => html`<p class="ls-warn">${message.unread(one)}</p>`)}
    ${changesView(changes, true)}
    ${few(message.against(), against)}
    ${few(message.ask(), questions.map(askedView))}
  `;
}

/** @param {{found: string, action: string}} problem @param {string} [where] @param {string} [href] of the opening's questions */
const problemView = ({ found, action }, where, href) =>
  html`<li>${where && href ? html`<a href=${href}>${where}</a>: ` : nothing}${found} <span>${action}</span></li>`;

/** @param {import("./planner.js").Asked} question */
const askedView = ({ text, decides }) => html`
  <li>
    <strong>${text}</strong>
    <span>${decides.map(({ why, of }) => (of.join("") ? message.askedOf({ openings: listed(of, "unit"), why }) : why)).join(" ")}</span>
  </li>
`;

/** A list of which the first few stand in view. @param {string} title @param {import("../core/parts.js").Part[]} rows */
function few(title, rows) {
  if (!rows.length) return nothing;
  const rest = rows.slice(FEW);
  const more = html`<details><summary>${message.more({ count: rest.length })}</summary><ul>${rest}</ul></details>`;
  return html`<h4>${title}</h4><ul class="ls-told">${rows.slice(0, FEW)}</ul>${rest.length ? more : nothing}`;
}

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

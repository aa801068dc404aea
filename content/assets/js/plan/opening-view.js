/** What the plan says about one opening, in its row of the walk and over its questions. */
import { openingView as message } from "../messages/plan.js";
import { html, nothing } from "../vendor/lit-html.js";
import { changesView } from "./plan-view.js";

/**
 * @typedef {import("./state.js").Plan} Plan
 * @typedef {import("./planner.js").OpeningGlance} OpeningGlance
 */

const SITE = new URL("../../../", import.meta.url);
const BEARINGS = {
  "no-device-yet": message.bearingNoDeviceYet,
  problem: message.bearingProblem,
  "test-on-site": message.bearingTestOnSite,
  good: message.bearingGood,
  "no-verdict": message.bearingNoVerdict,
};

/** @type {Record<string, keyof typeof BEARINGS>} */
const VERDICTS = { good: "good", "test-on-site": "test-on-site", poor: "problem" };

/** How a figure bears on the job; undefined where it only informs. @param {string} verdict */
const bearingOf = (verdict) => VERDICTS[verdict.replaceAll(" ", "-")];

/** How it stands with an opening: its device and one word. @param {OpeningGlance} one */
export const standingView = ({ device, bearing }) => html`
  <span class="ls-planned">${device ? html`${device.name} ${bears(bearing)}` : message.noDevice()}</span>
`;

/** @param {Plan} plan @param {string} key of the opening */
export function openingPlanView(plan, key) {
  const one = plan.at.get(key);
  if (!one) return plan.sort === "there" ? html`<p class="ls-warn" role="status">${message.waits()}</p>` : nothing;
  const { device, by_lead, figures, problems } = one;
  const name = device ? html`<a href=${new URL(device.address, SITE).href}>${device.name}</a>` : message.noDevice();
  return html`
    <section class="ls-plan" aria-live="polite">
      <p class="ls-planned"><strong>${name}</strong> ${by_lead ? message.byLead() : nothing}
        ${device ? bears(one.bearing) : nothing}</p>
      ${changesView(plan.changes.filter(({ id }) => id === one.id))}
      ${problems.map(({ found, action }) => html`<p class="ls-warn">${found} <span>${action}</span></p>`)}
      ${figures.filter(({ verdict }) => bearingOf(verdict) === "test-on-site").map(doubtView)}
      ${whyView(one)}
    </section>
  `;
}

/** A figure that stands in doubt: what it is, and what to look at. @param {import("./planner.js").Line} line */
const doubtView = ({ name, shown, meaning }) =>
  html`<details class="ls-part"><summary>${bears("test-on-site")} <span>${name}: <strong>${shown}</strong></span></summary><p>${meaning}</p></details>`;

/** The word for how something stands. @param {keyof typeof BEARINGS} bearing */
const bears = (bearing) => html`<em class="ls-bears ls-bears-${bearing}">${BEARINGS[bearing]()}</em>`;

/** @param {OpeningGlance} one */
function whyView({ figures, reasons, against, fixing, expected }) {
  const lines = figures.map(
    ({ name, shown, meaning, verdict }) =>
      html`<dt>${name} ${bearingOf(verdict) ? bears(bearingOf(verdict)) : nothing}</dt><dd><strong>${shown}</strong> ${meaning}</dd>`,
  );
  const readings = expected.map(({ label, shown }) => html`<dt>${label}</dt><dd><strong>${shown}</strong></dd>`);
  const place = fixing
    ? [
        message.sensor({ place: fixing.sensor }),
        fixing.magnet && message.magnet({ place: fixing.magnet }),
        fixing.spacer && message.spacer({ spacer: fixing.spacer }),
        fixing.hold && message.hold({ hold: fixing.hold }),
      ]
    : [];
  return html`
    <details>
      <summary>${message.why()}</summary>
      ${group(message.figures(), lines.length ? html`<dl>${lines}</dl>` : nothing)}
      ${group(message.expected(), readings.length ? html`<dl>${readings}</dl>` : nothing)}
      ${group(message.place(), list(place.filter(Boolean)))}
      ${group(message.reasons(), list(reasons))}
      ${group(message.against(), list(against))}
    </details>
  `;
}

/** @param {string} title @param {import("../core/parts.js").Part} content */
const group = (title, content) => (content === nothing ? nothing : html`<h4>${title}</h4>${content}`);

/** @param {string[]} items */
const list = (items) => (items.length ? html`<ul>${items.map((item) => html`<li>${item}</li>`)}</ul>` : nothing);

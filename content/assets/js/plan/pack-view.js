/** The pack of the job: an offer to make it, and the ways to take it. */
import { around } from "../core/message.js";
import { button, tools } from "../core/parts.js";
import { packView as message } from "../messages/plan.js";
import { html, nothing } from "../vendor/lit-html.js";
import { DOCUMENT, packNow, ZIP } from "./packing.js";

/**
 * @typedef {import("../survey/survey.js").Surveys} Acts
 * @typedef {import("./state.js").Pack} Pack
 */

/** What each file is. @type {Record<string, () => string>} */
const ABOUT = {
  [DOCUMENT]: message.document,
  "zones.csv": message.zones,
  "parts.csv": message.parts,
  "service.ics": message.service,
  "visit.json": message.visit,
  "plan.json": message.plan,
};

/**
 * @param {import("../survey/state.js").State} state @param {import("../survey/model.js").Survey} survey
 * @param {boolean} whole whether nothing keeps the survey from leaving as a file @param {Acts} acts
 */
export function packView(state, survey, whole, { packing, house }) {
  const pack = packNow(state, survey, house.text);
  const offer = [
    html`<p>${around(message.offered, { command: html`<code>latchside plan FILE</code>` })}</p>`,
    whole ? tools(button(message.make(), () => packing.make())) : html`<p>${message.hindered()}</p>`,
  ];
  return html`
    <section class="ls-pack" aria-label=${message.pack()}>
      <h3>${message.pack()}</h3>
      ${pack.sort === "none" || pack.sort === "stopped" ? offer : nothing}
      <div role="status">${standing(pack)}</div>
      ${pack.sort === "there" ? filesView(pack, packing) : nothing}
    </section>
  `;
}

/** @param {Pack} pack */
function standing({ sort, told }) {
  if (sort === "making") return html`<p>${message.making()}</p>`;
  if (sort === "stopped") return html`<p class="ls-warn">${message.stopped({ told })}</p>`;
  return told ? html`<p class="ls-warn">${told}</p>` : nothing;
}

/** @param {Pack} pack @param {Acts["packing"]} packing */
function filesView({ files }, packing) {
  const rows = Object.keys(files)
    .filter((name) => name !== ZIP)
    .map(
      (name) => html`<li>${button(name, () => packing.save(name), "ls-quiet")} <span>${ABOUT[name]?.()}</span></li>`,
    );
  return html`
    ${tools(
      button(message.print(), () => packing.print(), "ls-main"),
      button(message.zip(), () => packing.save(ZIP)),
    )}
    <details class="ls-part ls-each"><summary><strong>${message.each()}</strong> <span>${message.files({ files: rows.length })}</span></summary><ul>${rows}</ul></details>
  `;
}

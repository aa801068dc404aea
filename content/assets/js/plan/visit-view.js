/** The offer to start a visit of the survey, once its plan stands. */
import { button, tools } from "../core/parts.js";
import { visitView as message } from "../messages/plan.js";
import { ofKind } from "../survey/findings.js";
import { html, nothing } from "../vendor/lit-html.js";

/** @param {import("../survey/state.js").State} state @param {import("../survey/survey.js").Surveys} acts */
export function visitView({ begun, findings }, { visiting }) {
  if (ofKind(findings, "hindrance").length) return html`<p>${message.hindered()}</p>`;
  return html`
    ${tools(button(message.start(), () => visiting.start()))}
    <div role="status">
      ${begun.sort === "making" ? html`<p>${message.starting()}</p>` : nothing}
      ${begun.sort === "stopped" ? html`<p class="ls-warn">${message.stopped({ told: begun.told })}</p>` : nothing}
    </div>
  `;
}

/** What the page of a visit has of its job: the survey it came from, the papers that stay with the site, the dates. */
import { download } from "../core/dom.js";
import { button, quiet, tools } from "../core/parts.js";
import { pageJob as message } from "../messages/job.js";
import { html, nothing } from "../vendor/lit-html.js";
import { fileName } from "../visit/record-file.js";
import { fittedPaper } from "./fitted.js";
import { jobOf } from "./job.js";

export class PageJob {
  /** @param {import("../visit/page.js").VisitPage} page */
  constructor(page) {
    this.page = page;
    /** Whether the paper of what was fitted is printed, and with it a certificate to fill in. */
    this.fitted = false;
    this.certificate = false;
    /** @type {import("./taking.js").Taking | null} */
    this.taking = null;
  }

  /** Look for the survey of the visit. @param {import("../visit/entries.js").View} seen */
  async look(seen) {
    if (!jobOf(seen)) return;
    const { Taking } = await import("./taking.js");
    this.taking ??= new Taking(this.page);
    await this.taking.look(seen);
  }

  shown() {
    return this.taking?.view() ?? nothing;
  }

  /** What leaves the device beside the record. */
  leaving() {
    if (!this.page.seen.visit) return nothing;
    const calendar = jobOf(this.page.seen)?.calendar;
    const choose = (/** @type {Event} */ event) => {
      this.certificate = /** @type {HTMLInputElement} */ (event.target).checked;
    };
    return html`
      ${tools(
        button(message.print(), () => this.page.print(true)),
        calendar ? quiet(message.calendar(), () => this.save(calendar)) : null,
      )}
      <label class="ls-item ls-choice"><input type="checkbox" .checked=${this.certificate} @change=${choose}>
        <span class="ls-item-words">${message.certificate()}</span></label>
    `;
  }

  /** @param {string} calendar */
  save(calendar) {
    download(calendar, fileName(this.page.entries, "ics"), "text/calendar");
    this.page.say(message.saved());
  }

  paper() {
    const { seen, all, photographs } = this.page;
    return fittedPaper(seen, all.data, photographs.printed(), this.certificate);
  }
}

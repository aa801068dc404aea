/** What a visit found otherwise than its survey, taken into the survey that is on this device: looked at first. */

import { taking as message } from "../messages/job.js";
import { ids, surveyId } from "../survey/naming.js";
import * as surveys from "../survey/store.js";
import { differences, taken } from "./differences.js";
import { jobOf, openingsOf } from "./job.js";
import { takingView } from "./taking-view.js";

/**
 * @typedef {import("../survey/model.js").Survey} Survey
 * @typedef {import("./differences.js").Difference} Difference
 * @typedef {Object} State
 * @property {Survey | null} survey of the visit, where it is on this device
 * @property {Difference[]} found @property {boolean} open whether they are looked at
 * @property {ReadonlySet<string>} left ids of those that are left out
 * @property {string} said what came of it @property {boolean} warns
 */

export class Taking {
  /** @param {import("../visit/page.js").VisitPage} page */
  constructor(page) {
    this.page = page;
    /** @type {State} */
    this.state = { survey: null, found: [], open: false, left: new Set(), said: "", warns: false };
    this.started = surveys.start();
    surveys.onForeignChange(() => this.isShown && this.look(page.seen).then(() => this.set({})));
  }

  /** @param {Partial<State>} change */
  set(change) {
    this.state = { ...this.state, ...change };
    if (this.isShown) this.page.render();
  }

  /** Whether its visit is still the one that is open. */
  get isShown() {
    return this.page.all.page === this.page;
  }

  /** Show what came of a press, and keep the reader there. @param {Partial<State>} change */
  lead(change) {
    this.set(change);
    /** @type {HTMLElement | null} */ (this.page.place.querySelector(".ls-job :is(input, button)"))?.focus();
  }

  /** Look how the survey stands now. @param {import("../visit/entries.js").View} seen */
  async look(seen) {
    await this.started;
    const survey = surveyOf(seen, await surveys.all().catch(() => []));
    const found = survey ? differences(seen, survey, this.page.all.data) : [];
    this.state = { ...this.state, survey, found };
  }

  view() {
    return takingView(this.state, this, this.page.all.data.devices);
  }

  async open() {
    await this.look(this.page.seen);
    this.lead({ open: true, left: new Set(), said: "" });
  }

  /** @param {string} id @param {boolean} kept */
  keep(id, kept) {
    const left = new Set(this.state.left);
    if (kept) left.delete(id);
    else left.add(id);
    this.set({ left });
  }

  leave() {
    this.lead({ open: false });
  }

  /** Write what is kept into the survey, opening by opening as it stands there. */
  async take() {
    const { survey, found, left } = this.state;
    const kept = found.filter(({ id }) => !left.has(id));
    if (!survey) return;
    try {
      for (const one of kept)
        await surveys.change(survey.survey.key, one.row, (_, row) => ({ opening: taken(row, one) }));
      await this.look(this.page.seen);
      this.lead({ open: this.state.found.length > 0, said: message.taken({ changes: kept.length }), warns: false });
    } catch (error) {
      await this.look(this.page.seen);
      this.set({ said: surveys.inWords(error), warns: true });
    }
  }
}

/**
 * The survey that a visit came from: of its id, and with an opening of the visit.
 * @param {import("../visit/entries.js").View} seen @param {Survey[]} all
 */
function surveyOf(seen, all) {
  const job = jobOf(seen)?.id;
  const openings = openingsOf(seen);
  const fits = (/** @type {Survey} */ one) => [...ids(one).values()].some((id) => openings.has(id));
  return all.find((one) => surveyId(one.survey.data) === job && fits(one)) ?? null;
}

/**
 * Other answers tried on an opening: they live on this page alone, until they are kept or dropped.
 *
 * @typedef {import("../survey/model.js").OpeningRow} OpeningRow
 * @typedef {import("../survey/model.js").Survey} Survey
 * @typedef {Object} Trial
 * @property {string} survey its key
 * @property {OpeningRow} from the opening as it was stored
 * @property {OpeningRow} row the opening as it is tried
 * @property {import("./planner.js").Glance | null} glance the plan with it
 * @property {string} told why there is no such plan
 */
import { findingsOf } from "../survey/findings.js";
import { surveyOf, withTried } from "../survey/model.js";
import { ids } from "../survey/naming.js";
import { shownOpening } from "../survey/state.js";
import { today } from "./day.js";
import { plannable } from "./planning.js";

/** Answers that follow one another this fast are planned together. */
const PAUSE = 250;

export class Trying {
  /** @param {import("../survey/survey.js").Surveys} page @param {import("./planner.js").Planner} planner */
  constructor(page, planner) {
    this.page = page;
    this.planner = planner;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
    /** The text of the survey that was planned last. */
    this.planned = "";
  }

  /** Whether what is answered at an opening is only tried. @param {string} survey @param {string | null} opening */
  covers(survey, opening) {
    const { trial } = this.page.state;
    return trial?.survey === survey && trial.row.key === opening;
  }

  async begin() {
    await this.page.keeper.settle();
    const { key, plan } = this.page.state;
    const row = shownOpening(this.page.state)?.row;
    if (!row) return;
    this.planned = "";
    this.put({ survey: key, from: row, row, glance: plan.glance, told: "" });
    this.page.root.querySelector("h2")?.focus();
  }

  /** @param {Trial | null} trial */
  put(trial) {
    this.page.set({ trial });
  }

  /** An answer is tried. @param {import("../survey/store.js").Change} work */
  change(work) {
    const { trial, survey } = this.page.state;
    if (!trial || !survey) return;
    this.put({ ...trial, row: work(survey.survey, trial.row).opening ?? trial.row });
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.plan(), PAUSE);
  }

  async plan() {
    const { fields, survey, trial } = this.page.state;
    if (!trial || survey?.survey.key !== trial.survey) return;
    const { row } = trial;
    const named = { ...row, data: { ...row.data, id: ids(survey).get(row.key) } }; // it stays the opening that it is
    const tried = surveyOf(survey.survey, new Map(survey.rows).set(row.key, named));
    const { file } = plannable(fields, tried, findingsOf(fields, tried));
    const own = this.page.house.text;
    const text = JSON.stringify([file, own]);
    if (text === this.planned) return;
    this.planned = text;
    const made = await this.planner.ask(file, today(), own, "trial").then(
      ({ glance }) => ({ glance, told: "" }),
      (error) => ({ glance: null, told: String(error.message).trim().split("\n").at(-1) ?? "" }),
    );
    const now = this.page.state.trial;
    if (now && text === this.planned) this.put({ ...now, ...made });
  }

  /** The answers that were tried are those of the opening from now on. */
  async keep() {
    await this.page.keeper.settle();
    const { trial } = this.page.state;
    if (!trial) return;
    const { survey, from, row } = trial;
    this.end();
    await this.page.keeper.change(survey, from.key, (_, stored) => ({ opening: withTried(stored, from, row) }));
  }

  async drop() {
    await this.page.keeper.settle();
    this.end();
  }

  end() {
    const { trial, edits } = this.page.state;
    const left = [...edits].filter(([, { opening }]) => opening !== trial?.row.key);
    clearTimeout(this.timer);
    this.page.set({ trial: null, edits: new Map(left) });
    this.page.root.querySelector("h2")?.focus();
  }
}

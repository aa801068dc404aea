/** Keeps the plan of the survey that is open up to what is answered, once the reader has asked for one. */
import { remember, remembered } from "../core/place.js";
import { fileOf } from "../survey/file.js";
import { ids } from "../survey/naming.js";
import { changesBetween } from "./changes.js";
import { today } from "./day.js";
import { NoPlan, Planner } from "./planner.js";
import { NOTHING_SAID } from "./state.js";

/**
 * @typedef {import("../survey/check.js").Field} Field
 * @typedef {import("../survey/model.js").Survey} Survey
 * @typedef {import("../survey/findings.js").Findings} Findings
 * @typedef {import("./state.js").Plan} Plan
 * @typedef {Object} Page
 * @property {{fields: Field[], survey: Survey | null, findings: Findings, plan: Plan}} state
 * @property {{text: string}} house the firm's own figures
 * @property {(change: {plan: Plan}) => void} set
 */

/** Answers that follow one another this fast are planned together. */
const PAUSE = 250;

/** Remembered once a plan was made here: then the planner lies on this device, and comes without being asked for. */
const MADE = "plans";

export class Planning {
  /** @param {Page} page */
  constructor(page) {
    this.page = page;
    this.planner = new Planner((taken) => this.put({ taken }));
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
    /** The text of the survey that was planned last. */
    this.planned = "";
  }

  /** The reader asks for a plan. */
  begin() {
    this.put({ sort: "starting", why: "", told: "", taken: 0 });
    this.planned = "";
    this.plan();
  }

  /** The survey that is open has changed, or another is open. */
  look() {
    const { plan, survey } = this.page.state;
    if (plan.sort === "off" && survey && remembered(MADE).length) return this.begin();
    if (plan.sort === "off" || plan.sort === "stopped" || !survey) return;
    const key = survey.survey.key;
    if (plan.survey !== key) {
      this.planned = "";
      this.put({ ...NOTHING_SAID, survey: key });
    }
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.plan(), PAUSE);
  }

  /** @param {Partial<Plan>} change */
  put(change) {
    this.page.set({ plan: { ...this.page.state.plan, ...change } });
  }

  async plan() {
    const { fields, survey, findings } = this.page.state;
    if (!survey) return;
    const { file, ids, waiting } = plannable(fields, survey, findings);
    const key = survey.survey.key;
    const own = this.page.house.text;
    const text = JSON.stringify([key, file, own]);
    if (text === this.planned) return;
    this.planned = text;
    if (this.page.state.plan.sort === "there") this.put({ sort: "planning" });
    try {
      const { glance, unread } = await this.planner.ask(file, today(), own);
      if (text !== this.planned) return;
      const before = this.page.state.plan.survey === key ? this.page.state.plan.glance : null;
      const changes = changesBetween(before, glance);
      const told = unread.map(({ path, found }) => ({ where: whereOf(path, file), found }));
      remember(MADE, ["made"]);
      const keys = new Map([...ids].map(([key, id]) => [id, key]));
      const at = new Map(glance?.openings.map((one) => [keys.get(one.id) ?? "", one]));
      this.put({ sort: "there", survey: key, glance, at, keys, waiting, unread: told, changes });
    } catch (error) {
      if (text !== this.planned) return;
      const { sort, message } = error instanceof NoPlan ? error : new NoPlan("failed", String(error));
      const why = sort === "refused" && !navigator.onLine ? "noSignal" : sort;
      this.put({ ...NOTHING_SAID, sort: "stopped", why, told: message.split("\n").at(-1) || message });
    }
  }
}

/** What of a survey can be planned: the openings that nothing needed is missing of. @param {Field[]} fields @param {Survey} survey @param {Findings} findings */
export function plannable(fields, survey, findings) {
  const known = ids(survey);
  const whole = fileOf(fields, survey);
  const hindered = survey.openings.filter(({ key }) => findings.get(key)?.some(({ kind }) => kind === "hindrance"));
  const left = new Set(hindered.map(({ key }) => known.get(key)));
  const openings = whole.openings.filter((/** @type {{id: string}} */ { id }) => !left.has(id));
  return { file: { name: whole.id, ...whole, openings }, ids: known, waiting: hindered.length };
}

/** Where something of a survey stands, in words. @param {(string | number)[]} path @param {any} file */
function whereOf([part, index, ...inner], file) {
  const opening = part === "openings" ? file.openings[index] : null;
  return opening
    ? [opening.place ?? opening.id, ...inner].join(", ")
    : [part, index, ...inner].filter(Boolean).join(", ");
}

/**
 * What the page of surveys shows is made of this state alone. Pure.
 *
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Survey} Survey
 * @typedef {Object} Brought a file that was looked at and is not brought in yet
 * @property {string} file its name
 * @property {string} [fault] why it cannot be brought in
 * @property {any} [data] @property {any[]} [openings] @property {string[]} [aside]
 * @property {boolean} [twin] whether a survey of its id is here already
 * @property {string[]} [suspect] fields whose text looks as if it held a code
 *
 * @typedef {Object} HandedOver a file that was handed over, and has yet to be found where it was put
 * @property {string} file its name
 * @property {number} changed of the survey it was made of
 * @property {ReadonlyMap<string, string>} ids that it gave the openings
 *
 * @typedef {Object} State
 * @property {Field[]} fields of the form
 * @property {string} library its version
 * @property {{kept: boolean, why: string, firm: boolean}} kept whether surveys are kept here, and for good
 * @property {string} key of the survey that is open; empty: the list of all
 * @property {string} opening key of the one that is open; empty: the survey as a whole
 * @property {Survey[]} all the surveys of this device, where the list is shown
 * @property {Survey | null} survey
 * @property {import("./findings.js").Findings} findings on the survey that is open
 * @property {import("./edits.js").Edits} edits what is not stored yet
 * @property {Readonly<Record<string, string>>} units chosen beside boxes, by the id of the question
 * @property {Readonly<Record<string, boolean>>} folds parts that were unfolded or folded, by the address and the name
 * @property {string} here the way of the question that the reader was at last
 * @property {string} tools key of the opening in the list whose tools are shown
 * @property {boolean} deleting whether it was asked if the survey shall be deleted
 * @property {{name: string, warning: string}} start the form for a new survey
 * @property {Brought | null} brought
 * @property {HandedOver | null} handed
 * @property {string} told what came of handing the file over
 * @property {number} running changes that are being stored, besides edits
 * @property {string} at when something was stored last, by the clock
 * @property {string} fault why a change could not be stored
 * @property {string} said in the bar, until the next change
 * @property {import("../plan/state.js").Plan} plan of the survey that is open
 * @property {import("./house.js").Rule[]} rules of the house, as the library has them
 * @property {import("./house.js").Typed} house the firm's own figures for them, as typed
 * @property {string} houseSaid what came of a file of them
 * @property {import("../plan/trying.js").Trial | null} trial of other answers at an opening
 * @property {number} weight of the planner in bytes, as it is brought; 0 where the build did not say
 * @property {import("../plan/state.js").Pack} pack of a survey as it stood
 * @property {import("../plan/state.js").Begun} begun a visit of the survey that is open
 */
import { NO_PACK, NO_PLAN, NOT_BEGUN } from "../plan/state.js";
import { unstored } from "./edits.js";
import { openIn, openInAll, openingFields } from "./model.js";

/** @param {{library: string, fields: Field[], house?: import("./house.js").Rule[], typed?: import("./house.js").Typed, weight?: number}} data @param {{kept: boolean, why: string, firm: boolean}} kept @returns {State} */
export const firstState = ({ library, fields, house = [], typed = {}, weight = 0 }, kept) => ({
  ...{ fields, library, kept, key: "", opening: "", all: [], survey: null, findings: new Map() },
  ...{ edits: new Map(), units: {}, folds: {}, here: "", tools: "", deleting: false },
  ...{ start: { name: "", warning: "" }, brought: null, handed: null, told: "" },
  ...{
    running: 0,
    at: "",
    fault: "",
    said: "",
    plan: NO_PLAN,
    rules: house,
    house: typed,
    houseSaid: "",
    trial: null,
    weight,
    pack: NO_PACK,
    begun: NOT_BEGUN,
  },
});

/** The opening that is shown, and its place in the walk from 0; none where it is not there. @param {State} state */
export function shownOpening({ survey, opening, trial }) {
  const index = survey?.openings.findIndex((row) => row.key === opening) ?? -1;
  if (index < 0) return null;
  const row = trial?.row.key === opening ? trial.row : /** @type {Survey} */ (survey).openings[index];
  return { row, index };
}

/** The trial that is open at the opening that is shown. @param {Pick<State, "trial" | "opening">} state */
export const shownTrial = ({ trial, opening }) => (trial?.row.key === opening ? trial : null);

/** Whether what the address names is there. @param {State} state */
export const isThere = (state) => Boolean(state.survey && (!state.opening || shownOpening(state)));

/**
 * How many questions are open: of the opening that is shown, or of the survey, and of all of it.
 * @param {State} state
 */
export function openNow(state) {
  const { fields, survey } = state;
  if (!survey) return { here: 0, all: 0 };
  const all = openInAll(fields, survey);
  const at = shownOpening(state);
  return { here: at ? openIn(openingFields(fields), at.row).length : all, all };
}

/**
 * The first opening with an open question, from the one that is shown on and then from the beginning; null where there
 * is none.
 * @param {State} state
 */
export function nextWithOpen(state) {
  const { openings = [] } = state.survey ?? {};
  const from = (shownOpening(state)?.index ?? -1) + 1;
  const inner = openingFields(state.fields);
  const order = [...openings.slice(from), ...openings.slice(0, from)];
  return order.find((row) => row.key !== state.opening && openIn(inner, row).length) ?? null;
}

/**
 * How it stands with what was answered: the last word on whether it is stored.
 * @param {State} state
 * @returns {{sort: "failed" | "saving" | "code" | "said" | "saved" | "kept" | "memory", words: string, count: number}}
 */
export function keptNow({ edits, fault, running, said, at, kept }) {
  const open = unstored(edits);
  const failed = open.find((edit) => edit.state === "failed")?.fault ?? fault;
  const waiting = open.filter((edit) => edit.state === "code").length;
  if (failed) return { sort: "failed", words: failed, count: 0 };
  if (running || open.length > waiting) return { sort: "saving", words: "", count: 0 };
  if (waiting) return { sort: "code", words: "", count: waiting };
  if (said) return { sort: "said", words: said, count: 0 };
  if (!kept.kept) return { sort: "memory", words: "", count: 0 };
  return at ? { sort: "saved", words: at, count: 0 } : { sort: "kept", words: "", count: 0 };
}

/** Whether something would be lost if the page were left now. @param {State} state */
export const wouldLose = ({ edits, kept, survey, all }) =>
  unstored(edits).length > 0 || (!kept.kept && (survey !== null || all.length > 0));

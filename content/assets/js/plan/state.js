/**
 * How it stands with the plan of the survey that is open, and with its pack. Pure.
 *
 * @typedef {import("./planner.js").Glance} Glance
 * @typedef {Object} Plan how it stands with the plan of the survey that is open
 * @property {"off" | "starting" | "planning" | "there" | "stopped"} sort
 * @property {string} survey its key
 * @property {"refused" | "noSignal" | "slow" | "failed" | ""} why there is none @property {string} told what was said of it
 * @property {number} taken bytes of the planner that have come
 * @property {Glance | null} glance
 * @property {ReadonlyMap<string, import("./planner.js").OpeningGlance>} at what it says of an opening, by its key
 * @property {ReadonlyMap<string, string>} keys of the openings, by the id that the plan knows them by
 * @property {number} waiting openings that lack what is needed to be planned
 * @property {{where: string, found: string}[]} unread
 * @property {import("./changes.js").Change[]} changes by the last answer
 * @typedef {Object} Pack how it stands with the pack
 * @property {"none" | "making" | "there" | "stopped"} sort
 * @property {string} survey the text of the file that it is made of
 * @property {string} id of that survey
 * @property {string} own the figures of the firm that it was made with, as their file
 * @property {import("./planner.js").PackFiles} files
 * @property {string} told why there is none, or what came of the last press
 * @typedef {{sort: "none" | "making" | "stopped", told: string}} Begun how it stands with a visit of the survey; `told` is
 *   why none was started
 */

/** What a plan says, where there is none. @type {Pick<Plan, "glance" | "at" | "keys" | "waiting" | "unread" | "changes">} */
export const NOTHING_SAID = { glance: null, at: new Map(), keys: new Map(), waiting: 0, unread: [], changes: [] };

/** @type {Plan} */
export const NO_PLAN = { ...NOTHING_SAID, sort: "off", survey: "", why: "", told: "", taken: 0 };

/** @type {Pack} */
export const NO_PACK = { sort: "none", survey: "", id: "", own: "", files: {}, told: "" };

/** @type {Begun} */
export const NOT_BEGUN = { sort: "none", told: "" };

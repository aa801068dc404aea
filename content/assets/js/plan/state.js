/**
 * How it stands with the plan of the survey that is open. Pure.
 *
 * @typedef {import("./planner.js").Glance} Glance
 * @typedef {Object} Plan how it stands with the plan of the survey that is open
 * @property {"off" | "starting" | "planning" | "there" | "stopped"} sort
 * @property {string} survey its key
 * @property {"refused" | "slow" | "failed" | ""} why there is none @property {string} told what was said of it
 * @property {Glance | null} glance
 * @property {ReadonlyMap<string, import("./planner.js").OpeningGlance>} at what it says of an opening, by its key
 * @property {number} waiting openings that lack what is needed to be planned
 * @property {{where: string, found: string}[]} unread
 * @property {import("./changes.js").Change[]} changes by the last answer
 */

/** What a plan says, where there is none. @type {Pick<Plan, "glance" | "at" | "waiting" | "unread" | "changes">} */
export const NOTHING_SAID = { glance: null, at: new Map(), waiting: 0, unread: [], changes: [] };

/** @type {Plan} */
export const NO_PLAN = { ...NOTHING_SAID, sort: "off", survey: "", why: "", told: "" };

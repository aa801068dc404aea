/**
 * Opposites that a query means and a line does not. Pure: no page. "Shows open, is shut" and "shows shut, is open" have
 * the same words; what matters is which of the two the zone shows and which the door is.
 *
 * @typedef {"open" | "shut"} State
 * @typedef {{sign?: State, thing?: State}} States what is shown, and what is the case
 */
import { words } from "./text.js";

/** @param {string} text @returns {string[]} */
const compared = (text) => words(text).map(({ word }) => word);

const OPPOSITES = new Map(
  [
    "open shut",
    "high low",
    "arm disarm",
    "set unset",
    "on off",
    "hot cold",
    "wet dry",
    "wired radio",
    "wired wireless",
    "early late",
    "series parallel",
    "enrol remove",
    "recessed surface",
    "inside outside",
    "fast slow",
  ].flatMap((pair) => {
    const [one, other] = compared(pair);
    return /** @type {[string, string][]} */ ([
      [one, other],
      [other, one],
    ]);
  }),
);
const SIGNS = new Set(compared("zone show read panel keypad system report display input"));
const THINGS = new Set(compared("door window leaf sash gate shutter slider hatch garage"));
/** @type {Record<State, State>} */
const OTHER = { open: "shut", shut: "open" };

/** Less than one where a line says the opposite of a query, more where it says the same of the same. */
const OPPOSED = 0.55;
const LACKING = 0.6;
const UNSAID = 0.9;
const AGREED = 1.08;

/** What is shown as open or shut, and what is so. @param {string[]} line @returns {States} */
export function states(line) {
  /** @type {States} */
  const found = {};
  /** @type {State[]} */
  const free = [];
  line.forEach((word, at) => {
    if (word !== "open" && word !== "shut") return;
    const about = before(line, at) ?? kindOf(line[at + 1] ?? "") ?? kindOf(line[at + 2] ?? "");
    const state = negated(line, at) ? OTHER[word] : word;
    if (about && !found[about]) found[about] = state;
    else free.push(state);
  });
  if (free.length === 1 && found.sign && !found.thing && free[0] !== found.sign) found.thing = free[0];
  if (free.length === 1 && found.thing && !found.sign && free[0] !== found.thing) found.sign = free[0];
  return found;
}

/** Whether it is said that it is not so: "will not close". @param {string[]} line @param {number} at */
const negated = (line, at) => line[at - 1] === "not" || (line[at - 1] === "will" && line[at - 2] === "not");

/** What a state is said of, a few words before it. @param {string[]} line @param {number} at */
function before(line, at) {
  for (let place = at - 1; place >= Math.max(0, at - 3); place--) {
    if (line[place] === "open" || line[place] === "shut") return undefined;
    const kind = kindOf(line[place]);
    if (kind) return kind;
  }
  return undefined;
}

/** @param {string} word @returns {"sign" | "thing" | undefined} */
function kindOf(word) {
  if (SIGNS.has(word)) return "sign";
  return THINGS.has(word) ? "thing" : undefined;
}

/**
 * How far a line is what a query means, where opposites are in play: a factor.
 * @param {string[]} asked @param {States} meant the states of the query @param {string[]} line
 */
export function agreement(asked, meant, line) {
  for (const word of asked) {
    const opposite = OPPOSITES.get(word);
    if (opposite && line.includes(opposite) && !line.includes(word) && !asked.includes(opposite)) return LACKING;
  }
  const sure = asked.includes("not") && !line.includes("not") ? UNSAID : 1;
  if (!meant.sign && !meant.thing) return sure;
  const said = states(line);
  const both = /** @type {const} */ (["sign", "thing"]).filter((kind) => meant[kind] && said[kind]);
  if (both.some((kind) => meant[kind] !== said[kind])) return OPPOSED;
  return both.length ? AGREED : sure;
}

/**
 * Where a run stands after what was answered. Pure: it plays the events over from the start, so that going back,
 * leaving a check out and a reload all come to the same.
 *
 * @typedef {import("./plan.js").Problem} Problem
 * @typedef {{visit?: string, entries?: string[]}} Written what was written of an event, where a visit is open
 * @typedef {Object} Answered what was done
 * @property {"check" | "mend" | "cannot" | "skip" | "pass" | "else"} do `cannot` is a check that cannot be done, `skip`
 *   a remedy; `pass` ended older runs at a remedy
 * @property {string} id
 * @property {string} [result]
 * @property {boolean} [gone]
 * @property {import("../visit/entries.js").Reading} [reading] what was read
 * @property {import("../visit/entries.js").Expected} [expected] what it was judged against
 * @typedef {Answered & Written} Event
 * @typedef {Object} Standing
 * @property {"check" | "mend" | "end"} kind
 * @property {string} id of the check, of the cause to mend, or of the fault to go to
 * @property {string} why an end: gone, go, result, does-not-fit, none-left, not-ours, not-here, pass, else
 * @property {string[]} left causes still possible
 * @property {string[]} ruledOut causes ruled out by what was seen or by a proof that failed
 * @property {string[]} cannot checks left out
 * @property {string[]} skipped causes that could not be fixed here
 * @property {string[]} putBack checks whose protection has to be put back first
 * @property {string[]} setUp set-ups to make ready
 * @property {number} minutes expected from here
 * @property {number} events how many of the events could be played
 */
import { bits, END, Exact, Moves } from "./plan.js";

/**
 * What was worked out for a problem, by the checks and remedies left out.
 * @type {WeakMap<Problem, Map<string, {moves: Moves, exact: Exact}>>}
 */
const planners = new WeakMap();

/** @param {Problem} problem @param {string[]} without checks @param {string[]} skipped remedies */
function planner(problem, without, skipped) {
  const key = `${without.join(" ")}|${skipped.join(" ")}`;
  const known = planners.get(problem) ?? new Map();
  planners.set(problem, known);
  const found = known.get(key);
  if (found) return found;
  const causes = problem.causes.map((cause) => ({ ...cause, here: cause.here && !skipped.includes(cause.id) }));
  const checks = problem.checks.filter((check) => !without.includes(check.id));
  const moves = new Moves({ ...problem, causes, checks });
  const made = { moves, exact: new Exact(moves) };
  known.set(key, made);
  return made;
}

/** @param {Problem} problem @param {Event[]} events @returns {Standing} */
export function standing(problem, events) {
  const leftOut = (/** @type {string} */ what) => {
    const ids = events.filter((event) => event.do === what).map((event) => event.id);
    return [...new Set(ids)].sort();
  };
  const [cannot, skipped] = [leftOut("cannot"), leftOut("skip")];
  const { moves, exact } = planner(problem, cannot, skipped);
  const walk = new Walk(moves);
  const ended = events.some((event) => !walk.play(event)) ? walk.end : null;
  const base = {
    cannot,
    skipped,
    events: walk.played,
    left: walk.names(walk.state.left),
    ruledOut: walk.names(~walk.state.left),
    minutes: 0,
    setUp: [],
  };
  const all = walk.pending.map((k) => moves.problem.checks[k].id).reverse();
  if (ended) return { ...base, kind: "end", ...ended, putBack: all };
  if (!walk.state.left) return { ...base, kind: "end", id: "", why: "none-left", putBack: all };
  const action = exact.choose(walk.state);
  if (action === END) {
    const ours = bits(walk.state.left).some((index) => moves.problem.causes[index].who !== "electrician");
    return { ...base, kind: "end", id: "", why: ours ? "not-here" : "not-ours", putBack: all };
  }
  const minutes = exact.value(walk.state);
  if (action >= moves.checks) {
    const { id } = moves.problem.causes[action - moves.checks];
    return { ...base, kind: "mend", id, why: "", putBack: all, minutes };
  }
  const check = moves.problem.checks[action];
  const due = walk.pending
    .filter((k) => !walk.stays(k, action))
    .map((k) => moves.problem.checks[k].id)
    .reverse();
  const setUp = bits(check.needs & ~walk.state.up).map((index) => moves.problem.set_ups[index].id);
  return { ...base, kind: "check", id: check.id, why: "", putBack: due, setUp, minutes };
}

/** A run played event by event. */
class Walk {
  /** @param {Moves} moves */
  constructor(moves) {
    this.moves = moves;
    this.state = moves.start();
    /** @type {number[]} checks whose protection is still off */
    this.pending = [];
    this.played = 0;
    /** @type {{id: string, why: string} | null} */
    this.end = null;
  }

  /** @param {number} mask @returns {string[]} */
  names(mask) {
    return this.moves.problem.causes.filter((_, index) => (mask >> index) & 1).map((cause) => cause.id);
  }

  /** Whether protection that a check took off stays off for check k. @param {number} before @param {number} k */
  stays(before, k) {
    const { checks, set_ups: setUps } = this.moves.problem;
    const touched = (/** @type {number} */ one) => bits(checks[one].needs).filter((index) => setUps[index].touches);
    return touched(before).some((index) => touched(k).includes(index));
  }

  /**
   * Play an event; false where the run ends with it, or where it is about something that is not there any more.
   * @param {Event} event
   */
  play(event) {
    const { problem } = this.moves;
    if (event.do === "cannot" || event.do === "skip") return this.count();
    if (event.do === "else") return this.stop("else", "");
    if (event.do === "check")
      return this.check(
        problem.checks.findIndex((check) => check.id === event.id),
        event.result ?? "",
      );
    const cause = problem.causes.findIndex((one) => one.id === event.id);
    if (cause < 0) return false;
    this.pending = [];
    if (event.do === "pass") return this.stop("pass", event.id);
    if (event.gone) return this.stop("gone", event.id);
    this.state = this.moves.ruledOut(this.state, cause);
    return this.count();
  }

  /** @param {number} k @param {string} answer */
  check(k, answer) {
    const check = this.moves.problem.checks[k];
    const number = check?.results.findIndex((result) => result.id === answer) ?? -1;
    if (number < 0) return false;
    this.pending = [...this.pending.filter((before) => this.stays(before, k)), ...(check.restore ? [k] : [])];
    const result = check.results[number];
    const fits = (this.state.left & result.leaves) !== 0;
    const after = this.moves.after(this.state, k, number).state;
    if (result.go) return this.stop("go", result.go);
    if (result.escalate) return this.stop("result", "");
    if (!fits) return this.stop("does-not-fit", "");
    this.state = after;
    return this.count();
  }

  count() {
    this.played += 1;
    return true;
  }

  /** @param {string} why @param {string} id */
  stop(why, id) {
    this.played += 1;
    this.end = { why, id };
    return false;
  }
}

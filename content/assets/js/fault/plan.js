/**
 * Which check to do next, so that the fault is gone in the least expected minutes. Pure: no page, no store, no clock.
 * `scripts/latchside/order/` says the same in Python (`states.py`, `exact.py`) and says why it is right; a test holds
 * both to the same answers. Sets of causes and set-ups are bit masks; a state is the causes left, the set-ups in force
 * and the misleading results that still matter.
 *
 * @typedef {{id: string, weight: number, minutes: number, who: string, after: number, here: boolean}} Cause
 * @typedef {{id: string, leaves: number, chance: number[], go: string | null, escalate: boolean}} Result
 * @typedef {{id: string, minutes: number, needs: number, touches: boolean, restore: boolean, results: Result[]}} Check
 * @typedef {{id: string, minutes: number, touches: boolean}} SetUp
 * @typedef {{causes: Cause[], checks: Check[], set_ups: SetUp[]}} Problem
 * @typedef {[check: number, result: number][]} Seen in order; result −1: done, and weighs nothing any more
 * @typedef {{left: number, up: number, seen: Seen, key: string}} State
 * @typedef {{bound: number, tie: number, parts: [number, State, number][]}} Option
 */

import { bits, inTurn, unblocked } from "./precedence.js";

export { bits };
export const END = -1;
const FLAT = -1;
const SAME = 1e-9;

/**
 * What was found for a key, or what `make` makes of it, once.
 * @template Key, Value
 * @param {Map<Key, Value>} known @param {Key} key @param {() => Value} make
 */
function once(known, key, make) {
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = make();
  known.set(key, made);
  return made;
}

const some = (/** @type {number[]} */ values) => new Set(values).size > 1;

/** The states and actions of one problem. Action k below the number of checks is check k; above, a mending. */
export class Moves {
  /** @param {Problem} problem */
  constructor(problem) {
    this.problem = problem;
    this.checks = problem.checks.length;
    this.allUp = (1 << problem.set_ups.length) - 1;
    this.covers = problem.checks.map((check) => check.results.reduce((all, result) => all | result.leaves, 0));
    this.soft = problem.checks.map((check) =>
      check.results.some((result) => result.chance.some((chance) => chance > 0 && chance < 1)),
    );
    this.waits = problem.causes.map((cause) => cause.after);
    this.minutes = problem.causes.map((cause) => cause.minutes);
    /** @type {Map<number, number>} */
    this.wantedOf = new Map();
    /** @type {Map<string, number[]>} */
    this.weightsOf = new Map();
    /** @type {Map<string, [minutes: number, first: number | null]>} */
    this.mendingOf = new Map();
    /** @type {Map<string, number[]>} */
    this.usefulOf = new Map();
    /** @type {Map<string, boolean>} */
    this.hopefulOf = new Map();
    /** @type {Map<number, number>} */
    this.setUpMinutes = new Map();
  }

  start() {
    return this.state(2 ** this.problem.causes.length - 1, 0, []);
  }

  /** @param {number} left @param {number} up @param {Seen} seen @returns {State} */
  state(left, up, seen) {
    const wanted = once(this.wantedOf, left, () => this.stillWanted(left));
    const force = up | (this.allUp & ~wanted);
    const kept = seen.length ? this.kept(left, seen) : seen;
    return { left, up: force, seen: kept, key: `${left} ${force} ${kept.join(" ")}` };
  }

  /** The weight of every cause after misleading results. @param {Seen} seen @returns {number[]} */
  weights(seen) {
    return once(this.weightsOf, seen.join(" "), () => {
      const last = seen.at(-1);
      if (!last) return this.problem.causes.map((cause) => cause.weight);
      const before = this.weights(seen.slice(0, -1));
      if (last[1] === FLAT) return before;
      const { chance } = this.problem.checks[last[0]].results[last[1]];
      return before.map((weight, index) => weight * chance[index]);
    });
  }

  /** @param {number} left @param {Seen} seen */
  weight(left, seen) {
    const weights = this.weights(seen);
    return bits(left).reduce((sum, index) => sum + weights[index], 0);
  }

  /**
   * The checks that may be done and would tell causes left apart.
   * @param {number} left @param {Seen} seen
   * @returns {number[]}
   */
  useful(left, seen) {
    return once(this.usefulOf, `${left} ${seen.join(" ")}`, () =>
      this.undone(seen).filter((k) => !(left & ~this.covers[k]) && this.tells(k, left)),
    );
  }

  /**
   * Whether a check tells causes apart, or will once some are ruled out.
   * @param {number} left @param {Seen} seen @returns {boolean}
   */
  hopeful(left, seen) {
    return once(this.hopefulOf, `${left} ${seen.join(" ")}`, () =>
      this.undone(seen).some((k) => this.tells(k, left & this.covers[k])),
    );
  }

  /** @param {Seen} seen */
  undone(seen) {
    const done = new Set(seen.map(([check]) => check));
    return this.problem.checks.map((_, k) => k).filter((k) => !done.has(k));
  }

  /**
   * Whether some result of check k changes what is thought of the causes left.
   * @param {number} k @param {number} left
   */
  tells(k, left) {
    const { results } = this.problem.checks[k];
    if (this.soft[k]) {
      const causes = bits(left);
      return results.some((result) => some(causes.map((index) => result.chance[index])));
    }
    const known = left & this.covers[k];
    return results.every((result) => (known & ~result.leaves) !== 0);
  }

  /** @param {number} left */
  mendable(left) {
    const { causes } = this.problem;
    return bits(left).filter((index) => causes[index].here && causes[index].who !== "electrician");
  }

  /** The causes left that may be mended now: they wait for none that is left. @param {number} left */
  open(left) {
    return this.mendable(left).filter((index) => !(this.waits[index] & left));
  }

  /** The causes left that will be mended if they are the fault, as a mask. @param {number} left */
  sure(left) {
    const mendable = this.mendable(left).reduce((mask, index) => mask | (1 << index), 0);
    return unblocked(mendable, left, this.waits);
  }

  /** Minutes of check k with the set-ups it still needs. @param {number} k @param {number} up */
  paid(k, up) {
    const { minutes, needs } = this.problem.checks[k];
    const due = needs & ~up;
    const setUps = this.problem.set_ups;
    const more = () => bits(due).reduce((sum, index) => sum + setUps[index].minutes, 0);
    return minutes + once(this.setUpMinutes, due, more);
  }

  /** The state after result `number` of check k. @param {State} state @param {number} k @param {number} number */
  after(state, k, number) {
    const part = state.left & this.problem.checks[k].results[number].leaves;
    /** @type {Seen} */
    const seen = this.soft[k] ? [...state.seen, [k, number]] : state.seen;
    if (this.soft[k]) seen.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
    return { weight: this.weight(part, seen), state: this.state(part, state.up | this.problem.checks[k].needs, seen) };
  }

  /** The results check k can show. @param {State} state @param {number} k */
  branches(state, k) {
    const found = [];
    for (const [number, result] of this.problem.checks[k].results.entries()) {
      const ends = result.escalate || result.go !== null;
      if (state.left & result.leaves) found.push({ number, ends, ...this.after(state, k, number) });
    }
    return found;
  }

  /** The state when the proof after mending a cause has failed. @param {State} state @param {number} cause */
  ruledOut(state, cause) {
    return this.state(state.left & ~(1 << cause), state.up, state.seen);
  }

  /**
   * Minutes of mending what is left in the best order, and the first to mend.
   * @param {number} left @param {Seen} seen @returns {[minutes: number, first: number | null]}
   */
  mending(left, seen) {
    return once(this.mendingOf, `${left} ${seen.join(" ")}`, () => {
      const weights = this.weights(seen);
      const total = this.weight(left, seen);
      const order = inTurn(this.sure(left), weights, this.minutes, this.waits);
      let rest = total;
      let spent = 0;
      for (const index of order) {
        spent += this.minutes[index] * rest;
        rest -= weights[index];
      }
      return [total ? spent / total : 0, order[0] ?? null];
    });
  }

  /** @param {number} left */
  stillWanted(left) {
    let wanted = 0;
    for (const [k, check] of this.problem.checks.entries()) {
      if (check.needs & ~wanted && this.tells(k, left & this.covers[k])) wanted |= check.needs;
    }
    return wanted;
  }

  /** @param {number} left @param {Seen} seen @returns {Seen} */
  kept(left, seen) {
    const causes = bits(left);
    const weighs = (/** @type {number} */ k, /** @type {number} */ result) => {
      if (result === FLAT) return false;
      const { chance } = this.problem.checks[k].results[result];
      return some(causes.map((index) => chance[index]));
    };
    return seen.filter(([k]) => this.tells(k, left)).map(([k, result]) => [k, weighs(k, result) ? result : FLAT]);
  }
}

/** The best action in every state of a problem. */
export class Exact {
  /** @param {Moves} moves */
  constructor(moves) {
    this.moves = moves;
    this.causes = moves.problem.causes;
    this.cheapest = Math.min(...moves.problem.checks.map((check) => check.minutes));
    this.width = moves.checks + this.causes.length;
    /** @type {Map<string, [number, number]>} */
    this.best = new Map();
    /** @type {Map<string, number>} */
    this.floors = new Map();
  }

  /** The least expected minutes until the fault is gone. @param {State} state */
  value = (state) => this.find(state)[0];

  /** The action to take: a tie goes to looking before touching, then to the record's order. @param {State} state */
  choose = (state) => this.find(state)[1];

  /** @param {State} state @returns {[number, number]} */
  find(state) {
    return once(this.best, state.key, () => this.solve(state));
  }

  /** @param {State} state @returns {[number, number]} */
  solve(state) {
    const { left, seen } = state;
    const { moves } = this;
    if (!moves.hopeful(left, seen) || !moves.mendable(left).length) {
      const [minutes, first] = moves.mending(left, seen);
      return [minutes, first === null ? END : moves.checks + first];
    }
    const total = moves.weight(left, seen);
    const options = [...this.checksOf(state, total), ...this.mendingsOf(state, total)];
    options.sort((a, b) => a.bound - b.bound || a.tie - b.tie);
    if (!options.length) return [0, END];
    const slack = SAME * total;
    let best = Number.POSITIVE_INFINITY;
    /** @type {[number, number][]} */
    const tried = [];
    for (const { bound, tie, parts } of options) {
      if (bound > best + slack) break;
      let value = bound;
      for (const [weight, child, least] of parts) {
        value += weight * (this.value(child) - least);
        if (value > best + slack) break;
      }
      if (value > best + slack) continue;
      best = Math.min(best, value);
      tried.push([value, tie]);
    }
    const tie = Math.min(...tried.filter(([value]) => value <= best + slack).map(([, place]) => place));
    return [best / total, tie % this.width];
  }

  /** @param {State} state @param {number} total @returns {Option[]} */
  checksOf(state, total) {
    const { moves } = this;
    return moves.useful(state.left, state.seen).map((k) => {
      let bound = moves.paid(k, state.up) * total;
      /** @type {[number, State, number][]} */
      const parts = [];
      for (const branch of moves.branches(state, k)) {
        const least = branch.ends ? moves.mending(branch.state.left, branch.state.seen)[0] : this.floor(branch.state);
        bound += branch.weight * least;
        if (!branch.ends) parts.push([branch.weight, branch.state, least]);
      }
      return { bound, tie: k + (moves.problem.checks[k].touches ? this.width : 0), parts };
    });
  }

  /** @param {State} state @param {number} total @returns {Option[]} */
  mendingsOf(state, total) {
    const { moves } = this;
    const weights = moves.weights(state.seen);
    return moves.open(state.left).map((index) => {
      const child = moves.ruledOut(state, index);
      const weight = total - weights[index];
      const least = this.floor(child);
      const bound = this.causes[index].minutes * total + weight * least;
      return { bound, tie: this.width + moves.checks + index, parts: [[weight, child, least]] };
    });
  }

  /** A lower bound on the value of a state. @param {State} state @returns {number} */
  floor(state) {
    const { left, up, seen } = state;
    if (up !== this.moves.allUp) return this.value(this.moves.state(left, this.moves.allUp, seen));
    return (
      this.best.get(state.key)?.[0] ?? once(this.floors, `${left} ${seen.join(" ")}`, () => this.least(left, seen))
    );
  }

  /** @param {number} left @param {Seen} seen */
  least(left, seen) {
    const { moves } = this;
    const weights = moves.weights(seen);
    const total = moves.weight(left, seen);
    const first = moves.open(left);
    const sure = bits(moves.sure(left));
    const remedies = sure.reduce((sum, index) => sum + weights[index] * this.causes[index].minutes, 0);
    if (bits(left).length === 1 || !first.length) return remedies / total;
    let least = Math.min(...first.map((index) => this.causes[index].minutes * (total - weights[index])));
    if (moves.hopeful(left, seen)) least = Math.min(least, this.cheapest * total);
    return (remedies + least) / total;
  }
}

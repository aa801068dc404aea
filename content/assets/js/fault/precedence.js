/**
 * The best order of remedies where some have to wait for others. Pure. `scripts/latchside/order/precedence.py` says the
 * same in Python and says why it is right. Sets of causes are bit masks; `after[i]` holds what cause i waits for.
 */

const SAME = 1e-9;

/** The numbers of the bits set, lowest first. @param {number} mask */
export function bits(mask) {
  const found = [];
  for (let rest = mask; rest; rest &= rest - 1) found.push(31 - Math.clz32(rest & -rest));
  return found;
}

/**
 * Probability over minutes, to twelve digits, so that equal rates are equal.
 * @param {number} weight @param {number} minutes
 */
const rate = (weight, minutes) => (minutes ? Number((weight / minutes).toPrecision(12)) : Number.POSITIVE_INFINITY);

/** Highest first; two that are endless are equal. @param {number} a @param {number} b */
const falling = (a, b) => (a === b ? 0 : b - a);

/**
 * Of the causes that can be mended here, those that do not wait for one left that cannot.
 * @param {number} mendable @param {number} left @param {number[]} after
 * @returns {number}
 */
export function unblocked(mendable, left, after) {
  const free = bits(mendable).filter((index) => !(after[index] & left & ~mendable));
  const kept = free.reduce((mask, index) => mask | (1 << index), 0);
  return kept === mendable ? kept : unblocked(kept, left, after);
}

/**
 * Causes that hang together by waiting for each other, each group as a mask.
 * @param {number} causes @param {number[]} after
 */
function groups(causes, after) {
  const found = [];
  for (let rest = causes; rest; ) {
    let group = 0;
    let grown = rest & -rest;
    while (grown !== group) {
      group = grown;
      for (const index of bits(rest)) {
        if ((group >> index) & 1) grown |= after[index] & rest;
        else if (after[index] & group) grown |= 1 << index;
      }
    }
    found.push(group);
    rest &= ~group;
  }
  return found;
}

/**
 * The causes in the order in which mending them costs least.
 * @param {number} causes @param {number[]} weights @param {number[]} minutes @param {number[]} after
 * @returns {number[]}
 */
export function inTurn(causes, weights, minutes, after) {
  const all = bits(causes);
  if (!all.some((index) => after[index] & causes)) {
    return all.sort((a, b) => falling(rate(weights[a], minutes[a]), rate(weights[b], minutes[b])) || a - b);
  }
  const found = groups(causes, after).flatMap((group) =>
    blocks(ordered(group, weights, minutes, after), weights, minutes),
  );
  return found.sort((a, b) => falling(a.rate, b.rate)).flatMap((block) => block.order);
}

/**
 * The best order of causes that hang together.
 * @param {number} group @param {number[]} weights @param {number[]} minutes @param {number[]} after
 */
function ordered(group, weights, minutes, after) {
  /** @type {Map<number, [number, number]>} */
  const best = new Map([[0, [0, -1]]]);
  /** @param {number} rest @returns {[number, number]} */
  const find = (rest) => {
    const known = best.get(rest);
    if (known) return known;
    const total = bits(rest).reduce((sum, index) => sum + weights[index], 0);
    let least = Number.POSITIVE_INFINITY;
    let first = -1;
    for (const index of bits(rest)) {
      if (after[index] & rest) continue;
      const cost = minutes[index] * total + find(rest & ~(1 << index))[0];
      if (cost < least - SAME * total) [least, first] = [cost, index];
    }
    best.set(rest, [least, first]);
    return [least, first];
  };
  const order = [];
  for (let rest = group; rest; ) {
    const first = find(rest)[1];
    if (first < 0) break;
    order.push(first);
    rest &= ~(1 << first);
  }
  return order;
}

/**
 * An order in blocks: each the longest beginning of what is left that has the highest rate.
 * @param {number[]} order @param {number[]} weights @param {number[]} minutes
 */
function blocks(order, weights, minutes) {
  const found = [];
  for (let rest = order; rest.length; ) {
    let [weight, spent, best, length] = [0, 0, 0, 1];
    for (const [at, index] of rest.entries()) {
      weight += weights[index];
      spent += minutes[index];
      const here = rate(weight, spent);
      if (!at || here >= best) [best, length] = [here, at + 1];
    }
    found.push({ rate: best, order: rest.slice(0, length) });
    rest = rest.slice(length);
  }
  return found;
}

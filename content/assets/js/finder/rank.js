/**
 * Which thing a query means, and by which of its lines. Pure: no page. A word that few things have counts for more
 * than one that many have; words side by side and in their order count for more than the same words apart; a name
 * counts for more than a line of the text; what is needed on site comes before what explains it.
 */
import { asked, candidates, likeness } from "./index.js";
import { agreement, states } from "./states.js";
import { words } from "./text.js";

/**
 * @typedef {import("./index.js").Index} Index
 * @typedef {import("./index.js").Asked} Asked
 * @typedef {import("./index.js").Thing} Thing
 * @typedef {import("./index.js").Line} Line
 * @typedef {import("./index.js").Same} Same
 * @typedef {{thing: Thing, line: Line, hits: Set<string>, score: number}} Found `hits` are the words that fit
 * @typedef {Same & {from: number}} Instead other words for those of a query from a place on
 * @typedef {Object} Query
 * @property {string[]} plain its words as they were meant
 * @property {number[]} tells how much each word tells
 * @property {Map<string, [at: number, like: number][]>} likes for each known word those that it fits, and how well
 * @property {Map<string, Instead[]>} instead other words for its own, by their first
 * @property {import("./states.js").States} states
 * @typedef {{fits: number[], places: number[][], used: Set<number>, hits: Set<string>}} Fit
 */

const WORTH = { name: 1, others: 0.96, said: 0.9, lines: 0.7 };
/** Lines that tell more, or less, than others of a text: a cause has a name, and many devices share a figure. */
const OF_ANCHOR = { cause: 0.8, value: 0.55 };
const HEADING = 0.85;
/** Of the kinds, what comes first where all else is equal. */
const KIND = {
  fault: 0.06,
  checklist: 0.06,
  device: 0.04,
  install: 0.02,
  procedure: 0.01,
  caution: 0.01,
  source: -0.05,
  job: -0.05,
};
/** Words of the asking, which tell little of what is asked for. */
const ASKING = "show read still all time how what why when where can get come make will would once again but";
const WEAK = new Set(words(ASKING).map(({ word }) => word));
const OF_WEAK = 0.4;
const LEAST = 0.24;
const BESIDE_BEST = 0.5;

/**
 * What is meant, best first.
 * @param {Index} index @param {string} text @param {number} [most]
 * @returns {Found[]}
 */
export function find(index, text, most = 12) {
  const typed = asked(index, text);
  if (!typed.length) return [];
  const instead = insteadOf(index, typed);
  const others = instead.flatMap(({ meant }) => meant);
  const { things, terms } = candidates(index, typed, [...new Set(others)]);
  const known = typed.map((one) => fitting(one, terms));
  const plain = typed.map(({ word }, at) => spelled(index, word, known[at]));
  const tells = known.map((fits, at) => telling(index, fits, typed[at].word));
  /** @type {Query} */
  const query = {
    plain,
    tells,
    likes: turned(known),
    instead: byFirst(instead),
    states: states(plain),
  };
  const found = things.map((thing) => best(query, thing)).filter(({ score }) => score > LEAST);
  found.sort((a, b) => b.score - a.score || a.thing.rank - b.thing.rank || (a.thing.name < b.thing.name ? -1 : 1));
  return found.filter(({ score }) => score > BESIDE_BEST * found[0].score).slice(0, most);
}

/** @param {Instead[]} instead */
function byFirst(instead) {
  /** @type {Query["instead"]} */
  const found = new Map();
  for (const one of instead) found.set(one.meant[0], [...(found.get(one.meant[0]) ?? []), one]);
  return found;
}

/** @param {Asked} one @param {string[]} terms */
function fitting(one, terms) {
  /** @type {Map<string, number>} */
  const known = new Map();
  for (const term of terms) {
    const value = likeness(one, term);
    if (value) known.set(term, value);
  }
  return known;
}

/**
 * A word as it was meant: the known one that it is nearest to, of several the one that most things have.
 * @param {Index} index @param {string} word @param {Map<string, number>} fits
 */
function spelled(index, word, fits) {
  if (index.counts.has(word)) return word;
  const rank = (/** @type {[string, number]} */ [known, like]) => like + (index.counts.get(known) ?? 0) / 1e4;
  const nearest = [...fits].sort((a, b) => rank(b) - rank(a))[0];
  return nearest ? nearest[0] : word;
}

/** For each known word, the words of the query that it fits. @param {Map<string, number>[]} fits */
function turned(fits) {
  /** @type {Query["likes"]} */
  const likes = new Map();
  fits.forEach((known, at) => {
    for (const [word, like] of known) likes.set(word, [...(likes.get(word) ?? []), [at, like]]);
  });
  return likes;
}

/** How much a word tells: one that few things have tells more. @param {Index} index @param {Map<string, number>} known @param {string} word */
function telling(index, known, word) {
  const most = Math.max(
    0.5,
    ...[...known].filter(([, like]) => like > 0.65).map(([one]) => index.counts.get(one) ?? 0),
  );
  const own = index.counts.get(word) ?? (known.size ? most : 12);
  return Math.log(1 + index.things.length / Math.max(own, 0.5)) * (WEAK.has(word) ? OF_WEAK : 1);
}

/** @param {Index} index @param {Asked[]} typed @returns {Instead[]} */
function insteadOf(index, typed) {
  /** @type {Instead[]} */
  const found = [];
  typed.forEach(({ word }, from) => {
    for (const one of index.same.get(word) ?? []) {
      if (one.typed.every((each, at) => typed[from + at]?.word === each)) found.push({ ...one, from });
    }
  });
  return found;
}

/** The best line of a thing, and how well the thing fits. @param {Query} query @param {Thing} thing @returns {Found} */
function best(query, thing) {
  const whole = query.tells.reduce((sum, one) => sum + one, 0);
  const most = query.tells.map(() => 0);
  let top = { line: thing.lines[0], score: -1, hits: /** @type {Set<string>} */ (new Set()) };
  for (const line of thing.lines) {
    const fit = fitOf(query, line.words);
    if (!fit) continue;
    const worth = worthOf(line, thing.kind);
    const agreed = agreement(query.plain, query.states, line.words);
    fit.fits.forEach((value, at) => {
      most[at] = Math.max(most[at], value * worth * Math.min(1, agreed));
    });
    const score = scored(query, fit, line, whole) * worth * agreed;
    if (score > top.score) top = { line, score, hits: fit.hits };
  }
  const covered = most.reduce((sum, value, at) => sum + value * query.tells[at], 0) / whole;
  const prior = top.line.sort === "lines" ? 0 : (KIND[/** @type {keyof typeof KIND} */ (thing.kind)] ?? 0);
  return { thing, line: top.line, hits: top.hits, score: 0.65 * top.score + 0.35 * covered + prior };
}

/** What a line is worth. @param {Line} line @param {string} kind */
function worthOf({ sort, anchor }, kind) {
  if (sort !== "lines") return WORTH[sort];
  if (kind === "page") return HEADING;
  return OF_ANCHOR[/** @type {keyof typeof OF_ANCHOR} */ (anchor.split("-")[0])] ?? WORTH.lines;
}

/** What of a query a line has, and where; null where it has nothing. @param {Query} query @param {string[]} line */
function fitOf(query, line) {
  if (!line.some((word) => query.likes.has(word) || query.instead.has(word))) return null;
  /** @type {Fit} */
  const fit = { fits: query.plain.map(() => 0), places: query.plain.map(() => []), used: new Set(), hits: new Set() };
  line.forEach((word, place) => {
    for (const [at, like] of query.likes.get(word) ?? []) take(fit, at, like, place, word);
    for (const { from, typed, meant, worth } of query.instead.get(word) ?? []) {
      if (!meant.every((one, offset) => line[place + offset] === one)) continue;
      const last = meant.length - 1;
      typed.forEach((_, offset) => {
        take(fit, from + offset, worth, place + Math.min(offset, last), meant[Math.min(offset, last)]);
      });
      meant.forEach((one, offset) => {
        fit.used.add(place + offset);
        fit.hits.add(one);
      });
    }
  });
  return fit.used.size ? fit : null;
}

/** A word of a query is found. @param {Fit} fit @param {number} at @param {number} like @param {number} place @param {string} word */
function take(fit, at, like, place, word) {
  fit.fits[at] = Math.max(fit.fits[at], like);
  fit.places[at].push(place);
  fit.used.add(place);
  fit.hits.add(word);
}

/** @param {Query} query @param {Fit} fit @param {Line} line @param {number} whole */
function scored({ tells }, { fits, places, used }, line, whole) {
  const covered = fits.reduce((sum, value, at) => sum + value * tells[at], 0) / whole;
  const share = used.size / line.words.length;
  const precise = line.sort === "lines" ? 0.85 + 0.15 * share : 0.7 + 0.3 * share;
  return covered * precise * (0.88 + 0.12 * order(places));
}

/** How far words that were typed side by side stand so too, in their order, from 0 to 1. @param {number[][]} places */
function order(places) {
  if (places.length < 2) return 1;
  let sum = 0;
  for (let at = 1; at < places.length; at++) {
    let least = Number.POSITIVE_INFINITY;
    for (const one of places[at - 1]) {
      for (const other of places[at]) if (other > one) least = Math.min(least, other - one);
    }
    if (least <= 2) sum += 1;
    else if (least <= 5) sum += 0.5;
  }
  return sum / (places.length - 1);
}

/**
 * A text in pieces, of which those that fit are marked.
 * @param {string} text @param {Set<string>} hits
 * @returns {{text: string, hit: boolean}[]}
 */
export function marked(text, hits) {
  const found = words(text).filter(({ word }) => hits.has(word));
  /** @type {{text: string, hit: boolean}[]} */
  const pieces = [];
  let end = 0;
  for (const { from, to } of found) {
    if (from < end) continue;
    if (from > end) pieces.push({ text: text.slice(end, from), hit: false });
    pieces.push({ text: text.slice(from, to), hit: true });
    end = to;
  }
  if (end < text.length) pieces.push({ text: text.slice(end), hit: false });
  return pieces;
}

/** The address that an answer leads to. @param {Found} found */
export const addressOf = ({ thing, line }) => (line.anchor ? `${thing.address}#${line.anchor}` : thing.address);

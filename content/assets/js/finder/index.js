/**
 * The index of the finder, made from the file `finder.json` when it is first needed. Pure: no page. MiniSearch finds
 * the things that have something of a query; `rank.js` says which is meant, and by which line.
 */
import MiniSearch from "../vendor/minisearch.js";
import { distance, words } from "./text.js";

/**
 * @typedef {[kind: number, id: string, name: string, others?: string[], said?: string[], lines?: string[][]]} Entry
 * @typedef {{kinds: [id: string, shown: string, address: string][], entries: Entry[]}} Data the file `finder.json`
 * @typedef {"name" | "others" | "said" | "lines"} Sort
 * @typedef {{sort: Sort, text: string, anchor: string, words: string[]}} Line
 * @typedef {{id: number, address: string, kind: string, shown: string, name: string, rank: number, lines: Line[]}} Thing
 * @typedef {{typed: string[], meant: string[], worth: number}} Same other words for the same
 * @typedef {{word: string, last: boolean, known: boolean}} Asked a word of a query
 * @typedef {Object} Index
 * @property {MiniSearch<Thing>} mini
 * @property {Thing[]} things
 * @property {Map<string, Same[]>} same by their first word
 * @property {Map<string, number>} counts how many things have a word
 */

const BOOST = { name: 4, others: 3, said: 2, lines: 1 };
const MOST = 200;
const CHUNK = 40;

/** A title that was typed is worth more than another name of it. */
const OWN = 0.92;
const OTHER = 0.8;

/** @param {Data} data @param {number} [chunk] things between two breaths @returns {Promise<Index>} */
export async function prepare({ kinds, entries }, chunk = CHUNK) {
  const things = entries.map((entry, id) => thing(kinds, entry, id));
  /** @type {MiniSearch<Thing>} */
  const mini = new MiniSearch({
    fields: Object.keys(BOOST),
    extractField: (one, field) => (field === "id" ? one.id : fieldOf(one, field)),
    tokenize: (text) => text.split(" "),
    processTerm: (word) => word,
    searchOptions: { boost: BOOST, combineWith: "OR", bm25: { k: 1.2, b: 0.5, d: 0.5 } },
  });
  await mini.addAllAsync(things, { chunkSize: chunk });
  return { mini, things, same: others(entries, kinds), counts: counted(things) };
}

/** @param {Data["kinds"]} kinds @param {Entry} entry @param {number} id @returns {Thing} */
function thing(kinds, [rank, name, title, others = [], said = [], lines = []], id) {
  const [kind, shown, address] = kinds[rank];
  const line = (/** @type {Sort} */ sort, /** @type {string} */ text, anchor = "") => ({
    sort,
    text,
    anchor,
    words: [],
  });
  return {
    id,
    address: address.replace("{id}", name),
    kind,
    shown,
    name: title,
    rank,
    lines: [
      line("name", title),
      ...others.map((text) => line("others", text)),
      ...said.map((text) => line("said", text)),
      ...lines.flatMap(([anchor, ...texts]) => texts.map((text) => line("lines", text, anchor))),
    ],
  };
}

/** The words of some lines of a thing, which it keeps. @param {Thing} one @param {string} sort */
function fieldOf({ lines }, sort) {
  const mine = lines.filter((line) => line.sort === sort);
  for (const line of mine) line.words = words(line.text).map(({ word }) => word);
  return mine.map((line) => line.words.join(" ")).join(" ");
}

/** @param {Thing[]} things */
function counted(things) {
  /** @type {Map<string, number>} */
  const counts = new Map();
  for (const { lines } of things) {
    const own = new Set(lines.flatMap((line) => line.words));
    for (const word of own) counts.set(word, (counts.get(word) ?? 0) + 1);
  }
  return counts;
}

/**
 * What else a thing is called: the names of each term, in either direction.
 * @param {Entry[]} entries @param {Data["kinds"]} kinds
 */
function others(entries, kinds) {
  /** @type {Map<string, Same[]>} */
  const same = new Map();
  for (const [rank, , name, also = []] of entries) {
    if (kinds[rank][0] !== "term") continue;
    const names = [name, ...also].map((text) => words(text).map(({ word }) => word)).filter((one) => one.length);
    for (const typed of names) {
      const list = same.get(typed[0]) ?? [];
      same.set(typed[0], list);
      for (const meant of names) {
        if (!within(typed, meant) && !within(meant, typed)) {
          list.push({ typed, meant, worth: meant === names[0] ? OWN : OTHER });
        }
      }
    }
  }
  return same;
}

/** Whether all words of one are in the other. @param {string[]} one @param {string[]} other */
const within = (one, other) => one.every((word) => other.includes(word));

/** The words of a query. @param {Index} index @param {string} query @returns {Asked[]} */
export function asked(index, query) {
  const typed = words(query).slice(0, 14);
  const ended = /[\s.?!]$/.test(query);
  return typed.map(({ word }, at) => ({
    word,
    last: at === typed.length - 1 && !ended,
    known: index.counts.has(word),
  }));
}

/**
 * The things that have something of a query, and the known words that its own may stand for.
 * @param {Index} index @param {Asked[]} query @param {string[]} besides other words for the same
 * @returns {{things: Thing[], terms: string[]}}
 */
export function candidates(index, query, besides) {
  const queries = query.map(({ word, last, known }) => ({
    queries: [word],
    prefix: begins({ word, last, known }),
    fuzzy: known ? false : Math.min(2, 2 * forgiven(word)),
  }));
  const plain = { queries: besides, prefix: false, fuzzy: false };
  const found = index.mini.search({ combineWith: "OR", queries: besides.length ? [...queries, plain] : queries });
  const terms = new Set(found.flatMap((one) => one.terms));
  return { things: found.slice(0, MOST).map(({ id }) => index.things[id]), terms: [...terms] };
}

/** Whether a word may be the beginning of another. @param {Asked} one */
const begins = ({ word, last, known }) => (last ? word.length > 1 : !known && word.length > 3);

/** How many errors of typing are forgiven in a word. @param {string} word */
function forgiven(word) {
  if (word.length < 3 || /\d/.test(word)) return 0;
  return word.length < 8 ? 1 : 2;
}

/** How well a known word fits a typed one, from 0 to 1. @param {Asked} one @param {string} known */
export function likeness(one, known) {
  const { word } = one;
  if (word === known) return 1;
  if (begins(one) && known.startsWith(word)) return one.last && !one.known ? 0.9 : 0.7;
  const errors = one.known ? 0 : forgiven(word);
  if (!errors) return 0;
  const away = distance(word, known, errors);
  if (word.length === 3) return away === 1 && known.length === 4 ? 0.6 : 0; // of so few only one may be left out
  if (away <= errors) return away === 1 ? 0.8 : 0.6;
  const begun = one.last && word.length > 4 && distance(word, known.slice(0, word.length), 1) <= 1;
  return begun ? 0.6 : 0;
}

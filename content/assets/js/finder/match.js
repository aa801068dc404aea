/**
 * Finding things by the reader's own words. Pure: no page. Small typing errors, word endings and the words of either
 * continent are forgiven; a word that few things have counts for more than one that many have.
 *
 * @typedef {[kind: number, id: string, name: string, others?: string[], said?: string[]]} Entry
 * @typedef {{kinds: [shown: string, address: string][], entries: Entry[]}} Data the file `finder.json`
 * @typedef {{address: string, kind: string, name: string, rank: number}} Thing
 * @typedef {{thing: number, text: string, weight: number, length: number}} Phrase
 * @typedef {Object} Index
 * @property {Thing[]} things
 * @property {Phrase[]} phrases
 * @property {Map<string, number[]>} places the phrases that have a word
 * @property {string[]} words
 * @property {number[]} letters which letters each word has
 * @property {[theirs: string, ours: string][]} same words of other places
 */

const NAME = 1;
const OTHER = 0.92;
const SAID = 0.8;
const LEAST = 0.2;
const BESIDE_BEST = 0.5;
const NOT = /^(wont|cant|cannot|dont|doesnt|didnt|isnt|never|no)$/;

/** The words of a text, without accents, apostrophes and endings. @param {string} text @returns {string[]} */
export function words(text) {
  const plain = text
    .slice(0, 200)
    .normalize("NFKD")
    .replace(/[\u0300-\u036f'’]/g, "")
    .toLowerCase();
  return (plain.match(/[\p{L}\p{N}]+/gu) ?? []).map((word) => (NOT.test(word) ? "not" : stem(word)));
}

/** @param {string} word */
function stem(word) {
  if (word.length < 4) return word;
  const one = word.replace(/ies$/, "y").replace(/(sses|shes|ches|xes)$/, (end) => end.slice(0, -2));
  const bare = one.replace(/([^s])s$/, "$1");
  const root = bare.replace(/(ing|ed)$/, "");
  return root !== bare && root.length > 2 && /[aeiouy]/.test(root) ? root.replace(/([^aeiouls])\1$/, "$1") : bare;
}

const spaced = (/** @type {string[]} */ asked) => ` ${asked.join(" ")} `;

/** @param {Data} data @returns {Index} */
export function prepare(data) {
  /** @type {Index} */
  const index = { things: [], phrases: [], places: new Map(), words: [], letters: [], same: [] };
  for (const [kind, id, name, others = [], said = []] of data.entries) {
    const [shown, address] = data.kinds[kind];
    const thing = index.things.push({ address: address.replace("{id}", id), kind: shown, name, rank: kind }) - 1;
    addPhrase(index, thing, name, NAME);
    for (const text of others) addPhrase(index, thing, text, OTHER);
    for (const text of said) addPhrase(index, thing, text, SAID);
    if (shown === "Term") for (const text of others) index.same.push([spaced(words(text)), spaced(words(name))]);
  }
  index.words = [...index.places.keys()];
  index.letters = index.words.map(letters);
  return index;
}

/** @param {Index} index @param {number} thing @param {string} text @param {number} weight */
function addPhrase(index, thing, text, weight) {
  const found = new Set(words(text));
  const phrase = index.phrases.push({ thing, text, weight, length: found.size }) - 1;
  for (const word of found) {
    const list = index.places.get(word);
    if (list) list.push(phrase);
    else index.places.set(word, [phrase]);
  }
}

/** How much a word tells: one that few phrases have tells more. @param {Index} index @param {number} count */
const tells = (index, count) => Math.log(1 + index.phrases.length / Math.max(count, 0.5));

/**
 * What is meant, best first.
 * @param {Index} index @param {string} query @param {number} [most]
 * @returns {{thing: Thing, text: string}[]}
 */
export function find(index, query, most = 12) {
  const asked = words(query).slice(0, 12);
  /** @type {Map<number, {score: number, text: string}>} */
  const best = new Map();
  for (const [variant, worth] of variants(index, asked)) {
    for (const [phrase, score] of scores(index, variant)) {
      const { thing, text, weight } = index.phrases[phrase];
      const value = score * weight * worth;
      if (value > (best.get(thing)?.score ?? LEAST)) best.set(thing, { score: value, text });
    }
  }
  const found = [...best].map(([thing, { score, text }]) => ({ thing: index.things[thing], text, score }));
  found.sort((a, b) => b.score - a.score || a.thing.rank - b.thing.rank || (a.thing.name < b.thing.name ? -1 : 1));
  const shown = found.filter(({ score }) => score > BESIDE_BEST * found[0].score).slice(0, most);
  return shown.map(({ thing, text }) => ({ thing, text: text === thing.name ? "" : text }));
}

/**
 * The query as it stands, and with the words of either continent changed to ours.
 * @param {Index} index @param {string[]} asked
 * @returns {[string[], number][]}
 */
function variants(index, asked) {
  const query = spaced(asked);
  const meant = index.same.filter(([theirs, ours]) => query.includes(theirs) && !query.includes(ours));
  const others = new Set(meant.map(([theirs, ours]) => query.replace(theirs, ours)));
  /** @type {[string[], number][]} */
  const changed = [...others].slice(0, 4).map((other) => [other.trim().split(" "), 0.95]);
  return [[asked, 1], ...changed];
}

/**
 * Every phrase that has something of the query, with how well it fits, from 0 to 1.
 * @param {Index} index @param {string[]} asked
 */
function scores(index, asked) {
  /** @type {Map<number, [number, number]>} phrase → what fits, of the query and of the phrase */
  const sums = new Map();
  let whole = 0;
  asked.forEach((word, position) => {
    const hits = alike(index, word, position === asked.length - 1);
    const most = hits.map(([known]) => tells(index, index.places.get(known)?.length ?? 1));
    whole += hits.length ? Math.max(...most) : tells(index, word.length < 4 ? 200 : 40);
    /** @type {Map<number, number>} */
    const here = new Map();
    for (const [known, likeness] of hits) {
      const list = /** @type {number[]} */ (index.places.get(known));
      const value = likeness * tells(index, list.length);
      for (const phrase of list) if (value > (here.get(phrase) ?? 0)) here.set(phrase, value);
    }
    for (const [phrase, value] of here) {
      const sum = sums.get(phrase);
      if (sum) {
        sum[0] += value;
        sum[1] += 1;
      } else sums.set(phrase, [value, 1]);
    }
  });
  /** @type {[number, number][]} */
  const scored = [];
  for (const [phrase, [value, count]] of sums) {
    const share = Math.min(1, count / index.phrases[phrase].length);
    scored.push([phrase, (value / whole) * (0.7 + 0.3 * share)]);
  }
  return scored;
}

/** Which letters a word has, a bit for each. @param {string} word */
function letters(word) {
  let bits = 0;
  for (let at = 0; at < word.length; at++) bits |= 1 << (word.charCodeAt(at) & 31);
  return bits;
}

/** Whether two sets of letters differ by more than so many. @param {number} bits @param {number} most */
function differ(bits, most) {
  let count = 0;
  for (let left = bits; left; left &= left - 1) if (++count > most) return true;
  return false;
}

/** How many errors of typing are forgiven in a word. @param {string} word */
function forgiven({ length }) {
  if (length < 4) return 0;
  return length < 8 ? 1 : 2;
}

/**
 * Known words that a typed one may stand for, each with its likeness.
 * @param {Index} index @param {string} word @param {boolean} last
 * @returns {[string, number][]}
 */
function alike(index, word, last) {
  /** @type {[string, number][]} */
  const found = index.places.has(word) ? [[word, 1]] : [];
  const begun = word.length > 1 && (last || word.length > 3);
  const errors = found.length ? 0 : forgiven(word);
  const bits = letters(word);
  index.words.forEach((known, at) => {
    if (known === word) return;
    const longer = known.length - word.length;
    if (begun && longer > 0 && known.startsWith(word)) found.push([known, last ? 0.9 : 0.75]);
    else if (errors && Math.abs(longer) <= errors) {
      if (differ(bits ^ index.letters[at], 2 * errors)) return;
      const away = distance(word, known, errors);
      if (away <= errors) found.push([known, away === 1 ? 0.8 : 0.6]);
    } else if (errors && last && longer > 0 && word.length > 4) {
      const start = known.slice(0, word.length);
      if (!differ(bits ^ letters(start), 2) && distance(word, start, 1) <= 1) found.push([known, 0.6]);
    }
  });
  return found;
}

/**
 * Letters left out, added, changed or swapped with their neighbour; one more than `most` where there are more.
 * @param {string} a @param {string} b @param {number} most
 */
export function distance(a, b, most) {
  let before = /** @type {number[]} */ ([]);
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const line = [row];
    let least = row;
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1] ? 0 : 1;
      let value = Math.min(line[column - 1] + 1, above[column] + 1, above[column - 1] + same);
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) value = Math.min(value, before[column - 2] + 1);
      line.push(value);
      if (value < least) least = value;
    }
    if (least > most) return most + 1;
    [before, above] = [above, line];
  }
  return above[b.length];
}

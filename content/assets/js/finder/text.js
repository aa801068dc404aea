/**
 * Words of a text as the finder compares them. Pure: no page. British and American spelling, endings of words, numbers
 * with their units and the words of open and closed come out alike, on either side.
 *
 * @typedef {{word: string, from: number, to: number}} Word a word as it is compared, and where it stands in its text
 */

const LONGEST = 400;
const WORD = /(\d+(?:[.,]\d+)*)([kKMRr](?=\d)\d*)?|[\p{L}\p{N}]+(?:['’]\p{L}+)?|Ω|%/gu;
const STOP = new Set(
  (
    "a an the is are was were be been it its i ive im my we our you your he she they them this that these those of to " +
    "and or as by at just does do did has have had there"
  ).split(" "),
);
const NOT = /^(?:wont|cant|cannot|dont|doesnt|didnt|isnt|never|no|not|without)$/;

/** Units, each with the ways in which it is written; only after a number. */
const UNITS = read({
  mm: "millimetre millimeter millimetres millimeters",
  m: "metre meter metres meters",
  in: "inch inches",
  ft: "foot feet",
  kohm: "k kω kohms kilohm kilohms",
  ohm: "ω ohms r",
  v: "volt volts",
  mhz: "megahertz",
  awg: "ga gauge",
  "%": "percent",
  s: "sec secs second seconds",
  min: "mins minute minutes",
  h: "hr hrs hour hours",
});

/** Words that are one word for the finder: irregular forms, and those of two spellings; after their endings are off. */
const SAME = read({
  shut: "clos closd",
  enrol: "enroll",
  learn: "learnt",
  aluminium: "aluminum",
  colour: "color",
  armour: "armor",
  centr: "center",
  grey: "gray",
  licenc: "licens",
  neighbour: "neighbor",
  vapour: "vapor",
  sill: "cill",
  draught: "draft",
  plough: "plow",
  metallis: "metalis",
  fall: "fell fallen",
  los: "lost loss",
  break: "brok broken",
  stick: "stuck",
  bend: "bent",
  go: "goe went gone",
  hear: "heard",
  show: "say said shown",
  ohm: "ω",
  wide: "wider big bigger large larg larger",
  high: "higher",
  low: "lower",
});

/** @param {Record<string, string>} lists @returns {Map<string, string>} each way of writing → the one that stands */
function read(lists) {
  return new Map(Object.entries(lists).flatMap(([one, others]) => others.split(" ").map((other) => [other, one])));
}

/** The words of a text, without those that say nothing. @param {string} text @returns {Word[]} */
export function words(text) {
  /** @type {Word[]} */
  const found = [];
  let afterNumber = false;
  for (const { 0: all, 1: number, 2: multiple, index } of text.slice(0, LONGEST).matchAll(WORD)) {
    const to = index + all.length;
    if (number !== undefined) {
      const [value, unit] = multiple ? decimal(number, multiple) : [number.replace(",", "."), ""];
      found.push({ word: value, from: index, to });
      if (unit) found.push({ word: unit, from: index, to });
      afterNumber = !unit;
      continue;
    }
    const { plain, word } = known(all);
    const unit = afterNumber ? UNITS.get(plain) : undefined;
    afterNumber = false;
    const twice = plain.startsWith("ohm") && found.at(-1)?.word === "kohm"; // 2.2 k ohms
    if (!twice && (unit || word)) found.push({ word: unit ?? word, from: index, to });
  }
  return found;
}

/** `2k2` is 2.2 kΩ, `4R7` is 4.7 Ω. @param {string} whole @param {string} rest @returns {[string, string]} */
const decimal = (whole, rest) => [
  rest.length > 1 ? `${whole}.${rest.slice(1)}` : whole,
  { k: "kohm", m: "mohm", r: "ohm" }[rest[0].toLowerCase()] ?? "",
];

/** Without accents, apostrophes and capitals. @param {string} word */
const bare = (word) =>
  word
    .normalize("NFKD")
    .replace(/[\u0300-\u036f'’]/g, "")
    .toLowerCase();

/** What is known of words as they are written: texts are long, and their words are few. */
const KNOWN = /** @type {Map<string, {plain: string, word: string}>} */ (new Map());

/** A word as it is written, plain, and as it is compared: empty where it says nothing. @param {string} written */
function known(written) {
  let one = KNOWN.get(written);
  if (!one) {
    const plain = bare(written);
    one = { plain, word: STOP.has(plain) ? "" : compared(plain) };
    KNOWN.set(written, one);
  }
  return one;
}

/** @param {string} plain */
function compared(plain) {
  if (NOT.test(plain)) return "not";
  const root = stem(plain);
  return SAME.get(root) ?? root;
}

/** A word without its ending. @param {string} word */
function stem(word) {
  if (word.length < 4 || /^openings?$/.test(word)) return word.replace(/^openings$/, "opening");
  const one = word.replace(/ies$/, "y").replace(/(sses|shes|ches|xes)$/, (end) => end.slice(0, -2));
  const single = one.replace(/([^su])s$/, "$1");
  const short = single.replace(/(?:ing|ed)$/, "");
  const root = short.length > 2 && /[aeiouy]/.test(short) ? short.replace(/([^aeiouls])\1$/, "$1") : single;
  return root.replace(/(..[^aeiou])e$/, "$1").replace(/(..)iz$/, "$1is");
}

/**
 * Letters left out, added, changed or swapped with their neighbour; one more than `most` where there are more.
 * @param {string} a @param {string} b @param {number} most
 */
export function distance(a, b, most) {
  if (Math.abs(a.length - b.length) > most) return most + 1;
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

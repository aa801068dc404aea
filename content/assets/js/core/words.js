/** Texts a person types: what looks like a code is seen, what a record cannot hold is taken out. */

const LONGEST = 8;
/** How far round digits is looked. */
const NEAR = 80;
const DIGITS = /[0-9]{1,2}(?:,? (?:left|right),? [0-9]{1,2})+|[0-9]{4,}|[0-9](?:[ -][0-9])+|[0-9]{2}[ -][0-9]{2}/gi;
/** Single digits in a row after one of these are what its wheels are set to. */
const DIALLED = /^[0-9](?:[ -][0-9]){3,}$/;
const LOCK = /(?:^|[^A-Za-z])(?:combination|safe|padlock|lock)(?![A-Za-z])/i;
/** A pattern from its parts, of which each may be text with `String.raw`. @param {...string} parts */
const pattern = (...parts) => new RegExp(parts.join(""), "i");
const oneOf = (/** @type {string} */ words) => `(?:${words.replaceAll(" ", "|")})`;

const BEGIN = "(?:^|[^A-Za-z])";
const WORD =
  "(?:codes?|pins?|pin ?codes?|pass ?codes?|pass ?words?|combinations?|combos?|key ?safes?|key ?box|lock ?box)";
const SAID = String.raw`(?:is|was|are|reads|number|no\.?|new|old|now|still|[:=#\u2013\u2014-])`;
const JOINT = String.raw`(?:[ \u00a0]*${SAID})*[ \u00a0"'\u201c\u2018(]*`;
const NAMED = String.raw`(?: [A-Za-z0-9_']+){1,4}?(?: is| was| ?[:=\u2013\u2014]| -) ?`;
const FOR = `(?: ${oneOf("for of to at on by in with")}${NAMED})`;
const BEFORE = pattern(BEGIN, WORD, `(?:${JOINT}|${FOR})$`);
const AFTER = pattern(
  String.raw`^(?:#|["'\u201d\u2019]?,?(?: (?:is|was))?(?: ?[=\u2013\u2014(-])?(?: the| a| our)?`,
  `(?: ?(?:alarm|door|gate|user))? ?${WORD}`,
  String.raw`(?= ?$|[.,;:)!?"'\u201d\u2019]| (?:for|to|of|at|on)(?![A-Za-z])))`,
);
const OPENS = pattern(
  BEGIN,
  "(?:(?:opens?|unlocks?|disarms?|unsets?) (?:it )?with|key ?pads? takes?|(?:enter|type in|key in|punch in)) $",
);
const OPEN_CODES = oneOf(
  "area zip post postal diall?ing country colou?r date error fault event product part order item bar batch model " +
    "stock type",
);
const METAL_PINS = oneOf("hinge roll split dowel drive cotter guide cent(?:re|er)");
/** Codes that tell no secret, and pins that are none. */
const PLAIN = pattern(BEGIN, `(?:${OPEN_CODES}[ -]?codes?|${METAL_PINS}[ -]?pins?)`, `${JOINT}$`);
const RULES = pattern(
  BEGIN,
  oneOf("building fire electrical wiring energy safety local state city national"),
  String.raw` codes?[ \u00a0:]*$`,
);
const YEAR = /^(?:19|20)[0-9]{2}$/;
const PART_OF_MORE = /[0-9_][.,:/-]?$/;
const GOES_ON =
  /^(?:[0-9A-Za-z_]|[.,:/-][0-9]|[ \u00a0]?(?:mm|cm|m|km|ft|in|ohms?|[kM]?\u03a9|V|mV|MHz|h|s|min)(?![A-Za-z0-9]))/;
const ROOM = /(?:room|flat|suite|unit|office|no|number|house|apartment|apt|ward|bay)\.? ?$/i;
const TELLS_NOTHING = oneOf(
  "not never known unknown asked given kept held needed required wanted with in on at the a an to by for from " +
    "set changed said told used written agreed new old still missing there lost no only",
);
const TOLD = pattern(
  BEGIN,
  String.raw`(?:pass|code) ?(?:words?|phrases?)(?: (?:is|was)| ?[:=])+ *["'\u201c\u2018]?`,
  String.raw`(?!${TELLS_NOTHING}(?![A-Za-z]))[A-Za-z0-9][\s\S]*`,
);

/**
 * Whether digits between what stands before and after them are taken for a code.
 * @param {string} before @param {string} digits @param {string} after
 */
function isCode(before, digits, after) {
  const size = digits.replace(/\D/g, "").length;
  if (size < 4 || size > LONGEST) return false;
  if (PART_OF_MORE.test(before) || GOES_ON.test(after) || PLAIN.test(before)) return false;
  if (RULES.test(before) && YEAR.test(digits)) return false;
  if (BEFORE.test(before) || OPENS.test(before) || (DIALLED.test(digits) && LOCK.test(before))) return true;
  return !/[A-Za-z]$/.test(before) && !ROOM.test(before) && AFTER.test(after);
}

/**
 * Where the things that look like codes stand, from start to end.
 * @param {string} text
 * @returns {[number, number][]}
 */
function spans(text) {
  /** @type {[number, number][]} */
  const found = [];
  for (const { 0: digits, index } of text.matchAll(DIGITS)) {
    const end = index + digits.length;
    const before = text.slice(Math.max(0, index - NEAR), index);
    if (isCode(before, digits, text.slice(end, end + NEAR))) found.push([index, end]);
  }
  const told = TOLD.exec(text);
  return told ? [...found.filter(([, end]) => end <= told.index), [told.index, told.index + told[0].length]] : found;
}

/** Whether a text looks as if it held somebody's code; `latchside.library.codes` says the same. @param {string} text */
export const looksLikeCode = (text) => spans(text).length > 0;

/** The text with an ellipsis in the place of each thing in it that looks like a code. @param {string} text */
export const masked = (text) =>
  spans(text).reduceRight((left, [start, end]) => `${left.slice(0, start)}\u2026${left.slice(end)}`, text);

/**
 * A text as a record may hold it: one line, nothing unseen, not too long.
 * @param {string} text @param {number} limit
 */
export function clean(text, limit) {
  const seen = text.replace(/[\p{Cc}\u2028-\u202e\u2066-\u2069\ufeff\ud800-\udfff]/gu, " ");
  const signs = [...seen.replace(/\s+/g, " ").trim()];
  return signs.slice(0, limit).join("").trim();
}

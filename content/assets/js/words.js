/** Texts a person types: what looks like a code is seen, what a record cannot hold is taken out. */

const CODE_WORDS = /\b(pins?|pincode|passcodes?|passwords?|codes?|keysafe|key safe|combination)\b/i;
const DIGITS_ALONE = /(^|[^\p{L}\d.,-])\d{4,8}(?![\p{L}\d-]|[.,]\d|\s?(ohms?|[kM]?\u03a9|mm|m|V|mV|h|s|min)(?!\p{L}))/u;

/** Whether a text looks as if it held somebody's code. @param {string} text */
export const looksLikeCode = (text) => CODE_WORDS.test(text) || DIGITS_ALONE.test(text);

/** A text as a record may hold it: one line, nothing unseen, not too long. @param {string} text @param {number} limit */
export function clean(text, limit) {
  const seen = text.replace(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069\ufeff\ud800-\udfff]/gu, " ");
  return [...seen.replace(/\s+/g, " ").trim()].slice(0, limit).join("").trim();
}

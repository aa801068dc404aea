/** Which entries of a list are meant by what was typed. Pure: no page. */

/** @typedef {{id: string, names: string}} Entry `names` are all it is called */

/** A text without capitals, accents and signs. @param {string} text */
const bare = (text) =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

/**
 * The ids of the entries that have each word typed in one of their names; all of them where nothing was typed.
 * @param {Entry[]} entries @param {string} typed
 */
export function narrowed(entries, typed) {
  const words = bare(typed).split(" ");
  const meant = entries.filter(({ names }) => words.every((word) => bare(names).includes(word)));
  return new Set(meant.map(({ id }) => id));
}

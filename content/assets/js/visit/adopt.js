/** What was ticked before a visit was started, taken into the visit. Pure: the entries to write, and what is there. */

/**
 * @typedef {import("./entries.js").View} View
 * @typedef {import("./entries.js").ItemEntry} ItemEntry
 * @typedef {import("./store.js").Draft} Draft
 */

/**
 * The answers of a list that was run without a visit; those that two entries give differently stay where they are.
 * @param {View} loose how things stand without a visit @param {string} checklist
 * @returns {ItemEntry[]}
 */
export function loosely(loose, checklist) {
  const run = loose.runs.get(`${checklist}|`);
  return [...(run?.items.values() ?? [])].filter(({ heads }) => heads.length === 1).map(({ heads }) => heads[0]);
}

/**
 * The same answers as entries of a visit: made when and by whom they were made.
 * @param {ItemEntry[]} answers @param {string} visit @param {string | null} opening @param {() => string} newId
 * @returns {Draft[]}
 */
export const adopted = (answers, visit, opening, newId) =>
  answers.map(({ n: _, ...answer }) => ({ ...answer, id: newId(), visit, opening, after: [] }));

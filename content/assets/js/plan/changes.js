/**
 * What one plan says otherwise than the one before, opening by opening. Pure.
 *
 * @typedef {import("./planner.js").Glance} Glance
 * @typedef {import("./planner.js").OpeningGlance} OpeningGlance
 * @typedef {Object} Change
 * @property {string} id of the opening
 * @property {string} spoken its name
 * @property {"device" | "figure" | "problem"} sort
 * @property {string} what the figure, or the problem
 * @property {string} before @property {string} after empty: it is not there
 */

/** @param {Glance | null | undefined} before @param {Glance | null} after @returns {Change[]} */
export function changesBetween(before, after) {
  const known = new Map(before?.openings.map((one) => [one.id, one]));
  return (after?.openings ?? []).flatMap((now) => {
    const then = known.get(now.id);
    return then ? changesAt(then, now) : [];
  });
}

/** @param {OpeningGlance} then @param {OpeningGlance} now @returns {Change[]} */
function changesAt(then, now) {
  const { id, spoken } = now;
  /** @type {Change[]} */
  const found = [];
  const [was, is] = [then.device?.name ?? "", now.device?.name ?? ""];
  if (was !== is) found.push({ id, spoken, sort: "device", what: "", before: was, after: is });
  else
    for (const { name, shown } of now.figures) {
      const other = then.figures.find((one) => one.name === name);
      if (other && other.shown !== shown)
        found.push({ id, spoken, sort: "figure", what: name, before: other.shown, after: shown });
    }
  const [gone, come] = [without(then.problems, now.problems), without(now.problems, then.problems)];
  const settled = now.device && !come.length; // else it went with its device, or stands in other words
  for (const what of settled ? gone : []) found.push({ id, spoken, sort: "problem", what, before: what, after: "" });
  for (const what of come) found.push({ id, spoken, sort: "problem", what, before: "", after: what });
  return found;
}

/** @param {{found: string}[]} some @param {{found: string}[]} others */
function without(some, others) {
  const known = new Set(others.map(({ found }) => found));
  return some.map(({ found }) => found).filter((found) => !known.has(found));
}

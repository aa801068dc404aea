/**
 * What two plans of one survey say differently, to be laid side by side. Pure.
 *
 * @typedef {import("./planner.js").Glance} Glance
 * @typedef {Object} Difference
 * @property {string} id of the opening; empty: it concerns the whole job @property {string} spoken its name
 * @property {import("./changes.js").Change["sort"] | "positions" | "minutes" | "days" | "item"} sort
 * @property {string} what the figure or the part
 * @property {string} before @property {string} after empty: it is not there
 */
import { changesBetween } from "./changes.js";

/** @param {Glance} before @param {Glance} after @returns {Difference[]} */
export const differences = (before, after) => [
  ...changesBetween(before, after).map(({ id, spoken, sort, what, before: then, after: now }) => ({
    ...{ id, spoken, sort, before: then, after: now },
    what: sort === "problem" ? "" : what,
  })),
  ...positions(before, after),
  ...sums(before, after),
  ...items(before, after),
];

/** @param {Glance} before @param {Glance} after @returns {Difference[]} */
function positions(before, after) {
  const known = new Map(before.openings.map((one) => [one.id, one.positions.join(", ")]));
  return after.openings.flatMap(({ id, spoken, positions }) =>
    changed({ id, spoken, sort: "positions", what: "" }, known.get(id) ?? "", positions.join(", ")),
  );
}

/** @param {Glance} before @param {Glance} after @returns {Difference[]} */
const sums = (before, after) =>
  /** @type {const} */ (["minutes", "days"]).flatMap((sort) =>
    changed({ id: "", spoken: "", sort, what: "" }, String(before[sort]), String(after[sort])),
  );

/** @param {Glance} before @param {Glance} after @returns {Difference[]} */
function items(before, after) {
  const [then, now] = [before, after].map((one) => new Map(one.items.map(({ name, amount }) => [name, amount])));
  const names = [...new Set([...then.keys(), ...now.keys()])];
  return names.flatMap((what) =>
    changed({ id: "", spoken: "", sort: "item", what }, then.get(what) ?? "", now.get(what) ?? ""),
  );
}

/** @param {Pick<Difference, "id" | "spoken" | "sort" | "what">} about @param {string} before @param {string} after @returns {Difference[]} */
const changed = (about, before, after) => (before === after ? [] : [{ ...about, before, after }]);

/** The parts of the form, in the order of the page, and the way through its open questions. Pure. */
import { layout as message } from "../messages/survey.js";
import { asks, openingFields, wayOf } from "./model.js";
import { shownOpening } from "./state.js";

/**
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Path} Path
 * @typedef {Object} Part questions that stand together
 * @property {string} name
 * @property {Field[]} fields
 * @property {Path} path of the group that they belong to
 * @property {boolean} folded whether it can be folded away
 */

/** The parts of the form for the site: the survey itself, and a part for each group. @param {Field[]} fields @returns {Part[]} */
export function siteParts(fields) {
  const asked = fields.filter(asks);
  const bare = asked.filter((field) => field.ask !== "group");
  const groups = asked
    .filter((field) => field.ask === "group")
    .map((group) => ({
      name: group.label,
      fields: (group.fields ?? []).filter(asks).map((field) => (group.extra ? { ...field, extra: true } : field)),
      path: [group.name],
      folded: true,
    }));
  return [{ name: message.thisSurvey(), fields: bare, path: [], folded: true }, ...groups];
}

/**
 * The parts of the form for an opening, as the marks of its fields divide it; what need not be told comes last, folded
 * away.
 * @param {Field[]} fields
 * @returns {Part[]}
 */
export function openingParts(fields) {
  /** @type {Part[]} */
  const parts = [];
  const asked = fields.filter(asks);
  for (const field of asked.filter((one) => !one.extra)) {
    if (field.part || !parts.length)
      parts.push({ name: field.part ?? message.questions(), fields: [], path: [], folded: false });
    parts[parts.length - 1].fields.push(field);
  }
  const more = asked.filter((field) => field.extra);
  return more.length ? [...parts, { name: message.more(), fields: more, path: [], folded: true }] : parts;
}

/** The parts of what is shown. @param {import("./state.js").State} state */
export const shownParts = (state) =>
  shownOpening(state) ? openingParts(openingFields(state.fields)) : siteParts(state.fields);

/**
 * The next open question after the one that the reader was at; null where there is none.
 * @param {Part[]} parts @param {{path: Path}[]} left the open questions @param {string} here the way of the last one
 * @param {boolean} round whether to begin anew at the end
 * @returns {{part: number, way: string} | null}
 */
export function nextOpen(parts, left, here, round) {
  const open = new Set(left.map(({ path }) => wayOf(path)));
  const all = parts.flatMap(({ fields, path }, part) =>
    fields.map(({ name }) => ({ part, way: wayOf([...path, name]) })),
  );
  const last = all.findIndex(({ way }) => way === here || here.startsWith(`${way}.`));
  const order = [...all.slice(last + 1), ...(round ? all.slice(0, Math.max(last, 0)) : [])];
  return order.find(({ way }) => open.has(way)) ?? null;
}

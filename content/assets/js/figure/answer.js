/** A figure worked out for inputs that are all sound; `latchside.figures.catalogue` does the same. Pure. */
import { answer as message } from "../messages/figure.js";
import { Refused } from "./python.js";

/**
 * @typedef {import("./figures.js").Figure} Figure
 * @typedef {import("./figures.js").Names} Names
 * @typedef {import("./figures.js").Value} Value
 *
 * @typedef {Object} Answer
 * @property {Names} outputs none where it is refused
 * @property {string[]} warnings
 * @property {string[]} refusals why there is no answer
 * @property {string} judgement what it means on site
 */

/** Whether something was given. @param {Value | undefined} value */
export const isThere = (value) => value !== null && value !== undefined;

/**
 * The names that the expressions of a figure are worked out with.
 * @param {Figure} figure @param {Names} given
 * @returns {Names}
 */
function namesOf(figure, given) {
  /** @type {Names} */
  const names = { ...figure.constants };
  for (const one of figure.inputs) {
    const value = given[one.name];
    for (const [word] of one.choices) {
      names[`${one.name}_is_${word.toLowerCase().replaceAll("-", "_")}`] = value === word;
    }
    names[`${one.name}_given`] = isThere(value);
    if (one.many) names[one.name] = value ?? [];
    else if (!one.choices.length) names[one.name] = one.yesNo ? Boolean(value) : (value ?? Number.NaN);
  }
  return names;
}

/**
 * What a model gives beside its outputs, which go among the names.
 * @param {Figure} figure @param {Names} given @param {Names} names
 */
function worked(figure, given, names) {
  if (!figure.model) {
    figure.work(names);
    return { told: [], refused: [] };
  }
  try {
    const { warnings = [], ...found } = figure.model(given);
    Object.assign(names, found);
    return { told: /** @type {string[]} */ (warnings), refused: [] };
  } catch (error) {
    if (error instanceof Refused) return { told: [], refused: [error.message] };
    throw error;
  }
}

/**
 * The answer for inputs that are all sound.
 * @param {Figure} figure @param {Names} given every input by name, null where it is not given
 * @returns {Answer}
 */
export function answer(figure, given) {
  const names = namesOf(figure, given);
  figure.lets(names);
  /** @type {string[]} */
  const warnings = [];
  /** @type {string[]} */
  const refusals = [];
  const hold = (/** @type {boolean} */ late) => {
    const told = figure.limits.filter(
      (limit) => limit.late === late && limit.needs.every((name) => isThere(given[name])),
    );
    for (const { refuses, words, holds } of told) {
      if (!holds(names)) (refuses ? refusals : warnings).push(words);
    }
  };
  hold(false);
  const { told, refused } = refusals.length ? { told: [], refused: [] } : worked(figure, given, names);
  refusals.push(...refused);
  if (!refusals.length) hold(true);
  warnings.push(...told);
  /** @type {Names} */
  const outputs = {};
  for (const one of refusals.length ? [] : figure.outputs) {
    const value = names[one.name];
    outputs[one.name] = typeof value === "number" && !Number.isFinite(value) ? null : value;
    if (outputs[one.name] === null) (one.empty ? warnings : refusals).push(one.empty ?? message.none());
  }
  const judgement = refusals.length ? "" : (figure.judgements.find(({ holds }) => holds(names))?.words ?? "");
  return { outputs: refusals.length ? {} : outputs, warnings, refusals, judgement };
}

/** What a calculator knows: what is typed, in which units, and which of two inputs is asked for. Pure. */
import { state as message } from "../messages/figure.js";
import { isThere } from "./answer.js";
import { acceptedBy, entries, read, readList, turned } from "./typed.js";

/**
 * @typedef {import("./figures.js").Figure} Figure
 * @typedef {import("./figures.js").Input} Input
 * @typedef {import("./figures.js").Names} Names
 * @typedef {import("./figures.js").Value} Value
 *
 * @typedef {Object} State
 * @property {Figure} figure
 * @property {Record<string, string>} typed what each field holds; "true" and "false" for a tick
 * @property {ReadonlySet<string>} other inputs typed in the other system of units
 * @property {Record<string, string>} asked the input that is asked for, by the one in whose place it stands
 * @property {boolean} more whether the inputs that are rarely changed are in view
 * @property {string} at the field last typed in: its range stays in view, so that nothing moves under a tap
 *
 * @typedef {Record<string, string>} Errors what is wrong with an input, by its name
 */

const OF_NORTH_AMERICA = "AWG";

/**
 * The state as a page opens: the inputs of its link, else those of the example that fits the reader.
 * @param {Figure} figure @param {URLSearchParams} link @param {boolean} imperial whether the reader uses inches and feet
 * @returns {State}
 */
export function opening(figure, link, imperial) {
  const linked = figure.inputs.some((one) => link.has(one.name));
  const given = linked ? Object.fromEntries(link) : exampleFor(figure, imperial);
  const other = new Set(imperial ? figure.inputs.filter((one) => one.others.length).map((one) => one.name) : []);
  /** @type {Record<string, string>} */
  const typed = {};
  for (const one of figure.inputs) {
    const stated = Object.hasOwn(given, one.name);
    const text = (stated ? given[one.name] : defaultOf(figure, one, given)).slice(0, 200);
    const known = one.choices.some(([word]) => word === text);
    const held = one.choices.length && !known ? String(one.default ?? "") : listed(one, text);
    const changed = other.has(one.name) ? turned(one, held, false) : held;
    typed[one.name] = changed === held || (linked && stated) ? changed : roughly(changed, one.others[0]);
  }
  const asked = Object.fromEntries(
    pairs(figure).map(([base, ...rest]) => [base.name, first([base, ...rest], typed, imperial)]),
  );
  const changed = linked && figure.inputs.some((one) => one.more && isChanged(one, given[one.name]));
  return { figure, typed, other, asked, more: changed, at: "" };
}

/** An example in the units it was not written in, as somebody would say it. @param {string} text @param {string} [sign] */
const roughly = (text, sign) =>
  entries(text)
    .map(Number)
    .map((number) => String(sign === "in" ? Math.round(number * 100) / 100 || number : Number(number.toPrecision(2))))
    .join("; ");

/** Whether a link gives something else than what stands without it. @param {Input} one @param {string | undefined} text */
const isChanged = (one, text) =>
  Boolean(text) && text !== plainDefault(one) && Number(text) !== Number(plainDefault(one));

/** A list as it is typed with a comma for decimals too. @param {Input} one @param {string} text */
const listed = (one, text) => (one.many && !text.includes(";") ? text.replaceAll(",", "; ") : text);

/** @param {Input} one */
const plainDefault = (one) => (isThere(one.default) ? [one.default].flat().join(";") : "");

/** The example for a reader in one region. @param {Figure} figure @param {boolean} imperial */
function exampleFor({ examples, inputs }, imperial) {
  const gauge = inputs.find((one) => one.unit === OF_NORTH_AMERICA)?.name;
  const fits = (/** @type {Record<string, string>} */ one) => !gauge || Object.hasOwn(one, gauge) === imperial;
  return examples.find(fits) ?? examples[0];
}

/** What stands for an input that nobody gave. @param {Figure} figure @param {Input} one @param {Record<string, string>} given */
function defaultOf(figure, one, given) {
  const others = pairs(figure).find((group) => group.includes(one)) ?? [];
  const replaced = one.insteadOf || others.some((input) => Object.hasOwn(given, input.name));
  return replaced ? "" : plainDefault(one);
}

/** Inputs of which one is given, each group led by the one whose place the others take. @param {Figure} figure */
export const pairs = ({ inputs }) =>
  inputs
    .map((base) => [base, ...inputs.filter((one) => one.insteadOf === base.name)])
    .filter((group) => group.length > 1);

/** @param {Input[]} group @param {Record<string, string>} typed @param {boolean} imperial */
function first(group, typed, imperial) {
  const filled = group.findLast((one) => typed[one.name]);
  const usual = group.find((one) => (one.unit === OF_NORTH_AMERICA) === imperial) ?? group[0];
  return (filled ?? usual).name;
}

/** Whether an input is asked for, by the words of the others. @param {Input} one @param {Names} given */
const asked = (one, given) => Object.entries(one.when).every(([name, word]) => given[name] === word);

/** Whether an input is in view: of two, one alone, unless both are given. @param {State} state @param {Input} one */
export function inView({ figure, typed, asked: chosen }, one) {
  const group = pairs(figure).find((inputs) => inputs.includes(one));
  const here = !group || chosen[group[0].name] === one.name || Boolean(typed[one.name].trim());
  return here && Object.entries(one.when).every(([name, word]) => typed[name] === word);
}

/**
 * Every input as it stands, and what is wrong with some.
 * @param {State} state
 * @returns {{given: Names, errors: Errors}}
 */
export function gather(state) {
  /** @type {Names} */
  const given = {};
  /** @type {Errors} */
  const errors = {};
  for (const one of state.figure.inputs) {
    const { value, error } = taken(one, state.typed[one.name], state.other.has(one.name));
    given[one.name] = value;
    if (error) errors[one.name] = error;
  }
  complete(state, given, errors);
  return { given, errors };
}

/**
 * What a field holds.
 * @param {Input} one @param {string} text @param {boolean} other
 * @returns {{value: Value, error?: string}}
 */
function taken(one, text, other) {
  if (one.yesNo) return { value: text === "true" };
  if (one.choices.length) return { value: text || null };
  if (!text.trim()) return { value: one.many ? [] : null };
  if (one.many) {
    const { values, error } = readList(one, text, other);
    return { value: values, error };
  }
  const { value, error } = read(one, text, other);
  return { value: value ?? null, error };
}

/**
 * Note what is missing, and what is given beside the input it takes the place of.
 * @param {State} state @param {Names} given @param {Errors} errors
 */
function complete({ figure, other, asked: chosen }, given, errors) {
  for (const one of figure.inputs) {
    if (asked(one, given)) continue;
    given[one.name] = null;
    delete errors[one.name];
  }
  const open = (/** @type {Input} */ one) => given[one.name] === null && !errors[one.name];
  for (const one of figure.inputs) {
    if (one.insteadOf || one.optional || !asked(one, given)) continue;
    const group = [one, ...figure.inputs.filter((input) => input.insteadOf === one.name)];
    if (!group.every(open)) continue;
    const place = group.find((input) => input.name === chosen[one.name]) ?? one;
    errors[place.name] = message.missing({ accepts: acceptedBy(place, other.has(place.name)) });
  }
  for (const one of figure.inputs) {
    if (one.insteadOf && given[one.name] !== null && given[one.insteadOf] !== null) {
      errors[one.name] = message.oneOfTwo();
    }
  }
}

/** With another text in a field. @param {State} state @param {string} name @param {string} text @returns {State} */
export const typing = (state, name, text) => ({ ...state, typed: { ...state.typed, [name]: text } });

/** With a field in the other system of units. @param {State} state @param {Input} one @returns {State} */
export function turning(state, one) {
  const other = new Set(state.other);
  const stood = other.has(one.name);
  if (stood) other.delete(one.name);
  else other.add(one.name);
  return { ...typing(state, one.name, turned(one, state.typed[one.name], stood)), other };
}

/** With every field in one system of units. @param {State} state @param {boolean} imperial */
export const turningAll = (state, imperial) =>
  state.figure.inputs
    .filter((one) => one.others.length && state.other.has(one.name) !== imperial)
    .reduce(turning, state);

/** With the other of two inputs asked for, and the first one empty. @param {State} state @param {Input[]} group @param {Input} one */
export function asking(state, group, one) {
  const empty = Object.fromEntries(group.filter((input) => input !== one).map((input) => [input.name, ""]));
  const [base] = group;
  return { ...state, typed: { ...state.typed, ...empty }, asked: { ...state.asked, [base.name]: one.name } };
}

/** The query of a link to this page with the inputs as they stand, in their own units. @param {Figure} figure @param {Names} given */
export function query(figure, given) {
  const made = new URLSearchParams();
  for (const one of figure.inputs) {
    const value = given[one.name];
    if (isThere(value) && asked(one, given)) made.set(one.name, [value].flat().join(";"));
  }
  return String(made);
}

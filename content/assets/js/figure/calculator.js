// The calculators: read what is typed, hold it to its range, work it out, say it in the words of the page.

import { lengthIn } from "../core/lengths.js";
import { calculator as message } from "../messages/figure.js";
import { FIGURES } from "./figures.js";

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/;
const THOUSANDS = /^[+-]?[1-9]\d{0,2}(,\d{3})+$/;
/** @type {Record<string, string>} */
const SUPERSCRIPTS = { "-": "⁻", 0: "⁰", 1: "¹", 2: "²", 3: "³", 4: "⁴", 5: "⁵", 6: "⁶", 7: "⁷", 8: "⁸", 9: "⁹" };

/** A figure with at most four significant digits, as the build writes it. @param {number} value */
export function shown(value) {
  if (!value) return "0";
  const [mantissa, power] = Math.abs(value).toExponential(11).split("e");
  let exponent = Number(power);
  let rounded = Math.floor((Number(mantissa.replace(".", "")) + 50000000) / 100000000);
  if (rounded === 10000) [rounded, exponent] = [1000, exponent + 1];
  const digits = String(rounded);
  const sign = value < 0 ? "−" : "";
  const trimmed = (/** @type {string} */ text) => text.replace(/0+$/, "");
  if (exponent <= -5 || exponent >= 15) {
    const short = trimmed(`${digits[0]}.${digits.slice(1)}`).replace(/\.$/, "");
    return `${sign}${short} × 10${[...String(exponent)].map((one) => SUPERSCRIPTS[one]).join("")}`;
  }
  if (exponent < 0) return `${sign}0.${"0".repeat(-1 - exponent)}${trimmed(digits)}`;
  const whole = digits.slice(0, exponent + 1).padEnd(exponent + 1, "0");
  const rest = trimmed(digits.slice(exponent + 1));
  return `${sign}${whole.replace(/\B(?=(\d{3})+$)/g, ",")}${rest ? `.${rest}` : ""}`;
}

const PLURALS = ["years", "months", "days", "rungs"];

/** A figure with the sign of its unit, kept on one line. @param {number} value @param {string} sign */
function withSign(value, sign) {
  const figure = shown(value);
  if (!sign) return figure;
  const said = figure === "1" && PLURALS.includes(sign) ? sign.slice(0, -1) : sign;
  return sign[0] === "°" ? figure + said : `${figure}\u00a0${said}`;
}

/**
 * @typedef {import("./figures.js").Figure} Figure
 * @typedef {import("./figures.js").Input} Input
 * @typedef {import("./figures.js").Output} Output
 * @typedef {import("./figures.js").Others} Others
 * @typedef {import("./figures.js").Names} Names
 * @typedef {{value?: number, error?: string}} Read
 * @typedef {Record<string, string>} Errors what is wrong with an input, by its name
 */

/** A value in the other system of units. @param {number} value @param {Others} others */
const inOther = (value, [, factor = 1, offset = 0]) => factor * value + offset;

/** A value of the other system in the input's own unit. @param {number} value @param {Others} others */
const fromOther = (value, [, factor = 1, offset = 0]) => (value - offset) / factor;

/** The sign of the unit that an input is typed in. @param {Input} one @param {boolean} other */
const signOf = (one, other) => (other ? (one.others[0] ?? "") : one.sign);

/**
 * What was typed, as a number in the unit it was typed in; null where it is none.
 * @param {string} typed @param {string} sign
 */
const numberIn = (typed, sign) => (NUMBER.test(typed) ? Number(typed.replace(",", ".")) : lengthIn(typed, sign));

/**
 * What was typed, as a number in the input's own unit; a message where it is none.
 * @param {Input} one
 * @param {string} text
 * @param {boolean} other whether it was typed in the other system of units
 * @returns {Read}
 */
function read(one, text, other) {
  const typed = text.trim().replace("−", "-");
  if (THOUSANDS.test(typed)) {
    const plain = typed.replaceAll(",", "");
    const decimal = typed.replace(",", ".");
    const twice = typed.split(",").length === 2;
    return { error: twice ? message.twoWays({ typed, plain, decimal }) : message.thousands({ typed, plain }) };
  }
  const found = numberIn(typed, signOf(one, other));
  if (found === null) return { error: message.noNumber({ typed: text.trim(), accepts: one.accepts }) };
  const number = other ? fromOther(found, one.others) : found;
  if ((one.low !== null && number < one.low) || (one.high !== null && number > one.high)) {
    return { error: message.outOfRange({ value: withSign(number, one.sign), accepts: one.accepts }) };
  }
  if (one.integer && number !== Math.trunc(number)) {
    return { error: message.notWhole({ value: shown(number), accepts: one.accepts }) };
  }
  return { value: number };
}

/**
 * The field of an input; a choice from a list is used as any other.
 * @param {HTMLFormElement} form @param {Input} one
 */
const fieldOf = (form, one) => /** @type {HTMLInputElement} */ (form.elements.namedItem(one.name));

/** A part of the form that is there on every page. @param {HTMLFormElement} form @param {string} selector */
const partOf = (form, selector) => /** @type {HTMLElement} */ (form.querySelector(selector));

/**
 * Every input as it stands in the form, and what is wrong with some.
 * @param {Figure} figure @param {HTMLFormElement} form @param {Set<string>} otherUnits inputs typed in the other system
 */
function gather(figure, form, otherUnits) {
  /** @type {Names} */
  const given = {};
  /** @type {Errors} */
  const errors = {};
  for (const one of figure.inputs) {
    const { value, error } = taken(one, fieldOf(form, one), otherUnits.has(one.name));
    given[one.name] = value;
    if (error) errors[one.name] = error;
  }
  complete(figure, given, errors);
  return { given, errors };
}

/**
 * What a field holds.
 * @param {Input} one @param {HTMLInputElement} field @param {boolean} other
 * @returns {{value: Names[string], error?: string}}
 */
function taken(one, field, other) {
  if (one.yesNo) return { value: field.checked };
  const text = field.value;
  if (one.choices.length) return { value: text };
  if (!text.trim()) return { value: one.many ? [] : null };
  if (!one.many) {
    const { value, error } = read(one, text, other);
    return { value: value ?? null, error };
  }
  const parts = text.split(text.includes(";") ? ";" : /[\s,]+/).filter((part) => part.trim());
  const all = parts.map((part) => read(one, part, other));
  return { value: all.map(({ value }) => value ?? null), error: all.find(({ error }) => error)?.error };
}

/** Whether an input is asked for, by the words of the others. @param {Input} one @param {Names} given */
const asked = (one, given) => Object.entries(one.when).every(([name, word]) => given[name] === word);

/**
 * Note what is missing, and what is given beside the input it takes the place of.
 * @param {Figure} figure @param {Names} given @param {Errors} errors
 */
function complete(figure, given, errors) {
  for (const one of figure.inputs) {
    if (!asked(one, given)) given[one.name] = null;
    if (given[one.name] !== null || errors[one.name] || one.optional || one.insteadOf || !asked(one, given)) continue;
    const stand = figure.inputs.filter((other) => other.insteadOf === one.name);
    if (stand.some((other) => given[other.name] !== null || errors[other.name])) continue;
    errors[one.name] = message.missing({ accepts: one.accepts });
  }
  for (const one of figure.inputs) {
    if (one.insteadOf && given[one.name] !== null && given[one.insteadOf] !== null) {
      errors[one.name] = message.oneOfTwo();
    }
  }
}

const isThere = (/** @type {Names[string] | undefined} */ value) => value !== null && value !== undefined;

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
    for (const word of one.choices) {
      names[`${one.name}_is_${word.toLowerCase().replaceAll("-", "_")}`] = value === word;
    }
    names[`${one.name}_given`] = isThere(value);
    if (one.many) names[one.name] = value ?? [];
    else if (!one.choices.length) names[one.name] = one.yesNo ? Boolean(value) : (value ?? Number.NaN);
  }
  return names;
}

/**
 * The answer for inputs that are all sound: outputs by name, warnings, refusals.
 * @param {Figure} figure @param {Names} given
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
  if (!refusals.length) {
    figure.work(names);
    hold(true);
  }
  /** @type {Names} */
  const outputs = {};
  for (const one of refusals.length ? [] : figure.outputs) {
    const value = names[one.name];
    outputs[one.name] = typeof value === "number" && !Number.isFinite(value) ? null : value;
    if (outputs[one.name] === null) (one.empty ? warnings : refusals).push(one.empty ?? message.noAnswer());
  }
  return { outputs, warnings, refusals };
}

/** An output in the words of the page. @param {Output} one @param {Names[string]} value */
function inWords({ others, sign }, value) {
  if (value === null) return message.none();
  if (typeof value === "boolean") return value ? message.yes() : message.no();
  const number = Number(value);
  const [otherSign] = others;
  const other = otherSign ? ` (${withSign(inOther(number, others), otherSign)})` : "";
  return withSign(number, sign) + other;
}

/**
 * An element with text in it, and nothing else.
 * @param {string} tag @param {string} text @param {string} [name] its class
 */
function element(tag, text, name) {
  const made = document.createElement(tag);
  made.textContent = text;
  if (name) made.className = name;
  return made;
}

/**
 * Show the answer, or what is wrong, beside the field and in the summary with the same words.
 * @param {Figure} figure @param {HTMLFormElement} form @param {Names} given @param {Errors} errors
 */
function show(figure, form, given, errors) {
  for (const one of figure.inputs) {
    const error = errors[one.name] ?? "";
    const place = partOf(form, `#error-${one.name}`);
    place.textContent = error;
    place.hidden = !error;
    fieldOf(form, one).setAttribute("aria-invalid", String(Boolean(error)));
    partOf(form, `[data-input="${one.name}"]`).hidden = !asked(one, given);
  }
  const wrong = figure.inputs.filter((one) => errors[one.name]);
  const lines = wrong.map((one) => element("li", message.wrong({ input: one.label, error: errors[one.name] })));
  const panel = partOf(form, ".ls-answer");
  if (lines.length) {
    const list = document.createElement("ul");
    list.append(...lines);
    panel.replaceChildren(element("p", message.notYet()), list);
  } else panel.replaceChildren(...answerParts(figure, answer(figure, given)));
}

/** @param {Figure} figure @param {ReturnType<typeof answer>} found */
function answerParts(figure, { outputs, refusals, warnings }) {
  const list = element("dl", "", "ls-kit ls-out");
  for (const one of refusals.length ? [] : figure.outputs) {
    list.append(element("dt", one.label), element("dd", inWords(one, outputs[one.name])));
  }
  const refused = refusals.map((words) => element("p", words, "ls-error"));
  const warned = warnings.map((words) => element("p", words, "ls-note"));
  return [...(list.children.length ? [list] : []), ...refused, ...warned];
}

/**
 * What a field holds, changed from one system of units to the other.
 * @param {Input} one @param {string} text @param {boolean} other
 */
function turned(one, text, other) {
  const typed = lengthIn(text, signOf(one, other)) ?? Number(text.replace(",", "."));
  if (!text || one.many || !Number.isFinite(typed)) return null;
  const changed = other ? fromOther(typed, one.others) : inOther(typed, one.others);
  return String(Number(changed.toPrecision(6)));
}

/**
 * Give an input a button that changes its unit, where the other system has one.
 * @param {Input} one @param {HTMLFormElement} form @param {Set<string>} otherUnits @param {() => void} update
 */
function unitButton(one, form, otherUnits, update) {
  const place = form.querySelector(`[data-input="${one.name}"] .ls-unit`);
  if (!place || !one.others.length) return;
  const button = document.createElement("button");
  button.className = "ls-unit";
  button.type = "button";
  const say = () => {
    const other = otherUnits.has(one.name);
    button.textContent = signOf(one, other);
    button.setAttribute(
      "aria-label",
      message.unit({ input: one.label, unit: signOf(one, other), other: signOf(one, !other) }),
    );
  };
  button.addEventListener("click", () => {
    const field = fieldOf(form, one);
    const other = otherUnits.has(one.name);
    field.value = turned(one, field.value.trim(), other) ?? field.value;
    if (other) otherUnits.delete(one.name);
    else otherUnits.add(one.name);
    say();
    update();
  });
  say();
  place.replaceWith(button);
}

/**
 * Put the link's inputs into the form, or those of the page's own example, or the defaults.
 * @param {Figure} figure @param {HTMLFormElement} form
 */
function prefill(figure, form) {
  const carried = new URLSearchParams(location.search);
  const linked = figure.inputs.some((one) => carried.has(one.name));
  for (const one of figure.inputs) {
    const field = fieldOf(form, one);
    const stands = figure.example[one.name] ?? (one.insteadOf || replaced(figure, one) ? null : one.default);
    const value = linked ? carried.get(one.name) : stands;
    if (value === null) continue;
    if (one.yesNo) field.checked = String(value) === "true";
    else if (!one.choices.length) field.value = [value].flat().join("; ").slice(0, 200);
    else if (one.choices.includes(String(value))) field.value = String(value);
  }
}

/** Whether another input of the example stands in the place of this one. @param {Figure} figure @param {Input} one */
const replaced = (figure, one) =>
  figure.inputs.some((other) => other.insteadOf === one.name && other.name in figure.example);

/**
 * The address of this page with the inputs as they stand, in their own units.
 * @param {Figure} figure @param {HTMLFormElement} form @param {Names} given
 */
function carry(figure, form, given) {
  const query = new URLSearchParams();
  for (const one of figure.inputs) {
    const value = given[one.name];
    if (isThere(value) && asked(one, given)) query.set(one.name, [value].flat().join(";"));
  }
  const link = /** @type {HTMLAnchorElement} */ (form.querySelector(".ls-carry"));
  link.href = `?${query}#calculator`;
}

/** Bring one calculator to life. @param {HTMLFormElement} form */
function start(form) {
  const figure = FIGURES[form.dataset.figure ?? ""];
  if (!figure) return;
  /** @type {Set<string>} */
  const otherUnits = new Set();
  const update = () => {
    const { given, errors } = gather(figure, form, otherUnits);
    show(figure, form, given, errors);
    if (!Object.keys(errors).length) carry(figure, form, given);
  };
  prefill(figure, form);
  for (const one of figure.inputs) unitButton(one, form, otherUnits, update);
  form.addEventListener("input", update);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.hidden = false;
  document.querySelector("[data-no-script]")?.remove();
  update();
}

if (globalThis.document) {
  /** @type {NodeListOf<HTMLFormElement>} */
  const forms = document.querySelectorAll("form[data-figure]");
  for (const form of forms) start(form);
}

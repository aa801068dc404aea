// The calculators: read what is typed, hold it to its range, work it out, say it in the words of the page.
import { FIGURES } from "./figures.js";
import { lengthIn } from "./lengths.js";

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/;
const THOUSANDS = /^[+-]?[1-9]\d{0,2}(,\d{3})+$/;
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
  const trimmed = (text) => text.replace(/0+$/, "");
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

/** What was typed, as a number in the input's own unit; a message where it is none. */
function read(one, text, other) {
  const typed = text.trim().replace("−", "-");
  if (THOUSANDS.test(typed)) {
    const plain = typed.replaceAll(",", "");
    const other = typed.split(",").length === 2 ? ` or ${typed.replace(",", ".")}` : "";
    return { error: `“${typed}” could be ${plain}${other}. Write it without the thousands mark.` };
  }
  const length = NUMBER.test(typed) ? null : lengthIn(typed, other ? one.others[0] : one.sign);
  if (length === null && !NUMBER.test(typed)) return { error: `“${text.trim()}” is not a number. Give ${one.accepts}.` };
  let number = length ?? Number(typed.replace(",", "."));
  if (other) number = (number - one.others[2]) / one.others[1];
  if ((one.low !== null && number < one.low) || (one.high !== null && number > one.high)) {
    return { error: `${withSign(number, one.sign)} is out of range. Give ${one.accepts}.` };
  }
  if (one.integer && number !== Math.trunc(number)) return { error: `${shown(number)} is not whole. Give ${one.accepts}.` };
  return { value: number };
}

/** Every input as it stands in the form. */
function gather(figure, form, otherUnits) {
  const given = {};
  const errors = {};
  for (const one of figure.inputs) {
    const field = form.elements[one.name];
    if (one.yesNo) given[one.name] = field.checked;
    else if (one.choices.length) given[one.name] = field.value;
    else if (!field.value.trim()) given[one.name] = one.many ? [] : null;
    else if (one.many) {
      const parts = field.value.split(field.value.includes(";") ? ";" : /[\s,]+/).filter((part) => part.trim());
      const all = parts.map((part) => read(one, part, otherUnits.has(one.name)));
      const wrong = all.find((part) => part.error);
      if (wrong) errors[one.name] = wrong.error;
      given[one.name] = all.map((part) => part.value);
    } else {
      const found = read(one, field.value, otherUnits.has(one.name));
      if (found.error) errors[one.name] = found.error;
      given[one.name] = found.value ?? null;
    }
  }
  complete(figure, given, errors);
  return { given, errors };
}

/** Whether an input is asked for, by the words of the others. */
const asked = (one, given) => Object.entries(one.when).every(([name, word]) => given[name] === word);

/** Note what is missing, and what is given beside the input it takes the place of. */
function complete(figure, given, errors) {
  for (const one of figure.inputs) {
    if (!asked(one, given)) given[one.name] = null;
    if (given[one.name] !== null || errors[one.name] || one.optional || one.insteadOf || !asked(one, given)) continue;
    const stand = figure.inputs.filter((other) => other.insteadOf === one.name);
    if (stand.some((other) => given[other.name] !== null || errors[other.name])) continue;
    errors[one.name] = `Missing. Give ${one.accepts}.`;
  }
  for (const one of figure.inputs) {
    if (one.insteadOf && given[one.name] !== null && given[one.insteadOf] !== null) {
      errors[one.name] = "Give one of the two and leave the other empty.";
    }
  }
}

/** The answer for inputs that are all sound: outputs by name, warnings, refusals. */
export function answer(figure, given) {
  const v = { ...figure.constants };
  for (const one of figure.inputs) {
    const value = given[one.name];
    for (const word of one.choices) v[`${one.name}_is_${word.toLowerCase().replaceAll("-", "_")}`] = value === word;
    v[`${one.name}_given`] = value !== null && value !== undefined;
    if (one.many) v[one.name] = value ?? [];
    else if (!one.choices.length) v[one.name] = one.yesNo ? Boolean(value) : value ?? NaN;
  }
  figure.lets(v);
  const warnings = [];
  const refusals = [];
  const hold = (late) => {
    for (const limit of figure.limits) {
      const there = limit.needs.every((name) => given[name] !== null && given[name] !== undefined);
      if (limit.late === late && there && !limit.holds(v)) (limit.refuses ? refusals : warnings).push(limit.words);
    }
  };
  hold(false);
  if (!refusals.length) {
    figure.work(v);
    hold(true);
  }
  const outputs = {};
  for (const one of refusals.length ? [] : figure.outputs) {
    const value = v[one.name];
    outputs[one.name] = typeof value === "number" && !Number.isFinite(value) ? null : value;
    if (outputs[one.name] === null) (one.empty ? warnings : refusals).push(one.empty ?? "These inputs have no answer.");
  }
  return { outputs, warnings, refusals };
}

/** An output in the words of the page. */
function inWords(one, value) {
  if (value === null) return "none";
  if (typeof value === "boolean") return value ? "yes" : "no";
  const [sign, factor, offset] = one.others;
  const other = sign ? ` (${withSign(factor * value + offset, sign)})` : "";
  return withSign(value, one.sign) + other;
}

/** An element with text in it, and nothing else. */
function element(tag, text, name) {
  const made = document.createElement(tag);
  made.textContent = text;
  if (name) made.className = name;
  return made;
}

/** Show the answer, or what is wrong, beside the field and in the summary with the same words. */
function show(figure, form, given, errors) {
  const panel = form.querySelector(".ls-answer");
  panel.replaceChildren();
  for (const one of figure.inputs) {
    const place = form.querySelector(`#error-${one.name}`);
    place.textContent = errors[one.name] ?? "";
    place.hidden = !errors[one.name];
    form.elements[one.name].setAttribute("aria-invalid", String(Boolean(errors[one.name])));
    form.querySelector(`[data-input="${one.name}"]`).hidden = !asked(one, given);
  }
  if (Object.keys(errors).length) {
    panel.append(element("p", "No answer yet:"));
    const list = document.createElement("ul");
    for (const one of figure.inputs) if (errors[one.name]) list.append(element("li", `${one.label}: ${errors[one.name]}`));
    panel.append(list);
    return;
  }
  const found = answer(figure, given);
  const list = element("dl", "", "ls-kit ls-out");
  for (const one of found.refusals.length ? [] : figure.outputs) {
    list.append(element("dt", one.label), element("dd", inWords(one, found.outputs[one.name])));
  }
  if (list.children.length) panel.append(list);
  for (const words of found.refusals) panel.append(element("p", words, "ls-error"));
  for (const words of found.warnings) panel.append(element("p", words, "ls-note"));
}

/** Give an input a button that changes its unit, where the other system has one. */
function unitButton(one, form, otherUnits, update) {
  const place = form.querySelector(`[data-input="${one.name}"] .ls-unit`);
  if (!place || !one.others.length) return;
  const button = element("button", one.sign, "ls-unit");
  button.type = "button";
  button.setAttribute("aria-label", `${one.label}: unit ${one.sign}, change to ${one.others[0]}`);
  button.addEventListener("click", () => {
    const field = form.elements[one.name];
    const other = otherUnits.has(one.name);
    const text = field.value.trim();
    const typed = lengthIn(text, other ? one.others[0] : one.sign) ?? Number(text.replace(",", "."));
    if (field.value.trim() && !one.many && Number.isFinite(typed)) {
      const changed = other ? (typed - one.others[2]) / one.others[1] : typed * one.others[1] + one.others[2];
      field.value = String(Number(changed.toPrecision(6)));
    }
    if (other) otherUnits.delete(one.name);
    else otherUnits.add(one.name);
    button.textContent = other ? one.sign : one.others[0];
    button.setAttribute("aria-label", `${one.label}: unit ${button.textContent}, change to ${other ? one.others[0] : one.sign}`);
    update();
  });
  place.replaceWith(button);
}

/** Put the link's inputs into the form, or those of the page's own example, or the defaults. */
function prefill(figure, form) {
  const carried = new URLSearchParams(location.search);
  const linked = figure.inputs.some((one) => carried.has(one.name));
  for (const one of figure.inputs) {
    const field = form.elements[one.name];
    const stands = figure.example[one.name] ?? (one.insteadOf || replaced(figure, one) ? null : one.default);
    const value = linked ? carried.get(one.name) : stands;
    if (value === null || value === undefined) continue;
    if (one.yesNo) field.checked = String(value) === "true";
    else if (!one.choices.length) field.value = [value].flat().join("; ").slice(0, 200);
    else if (one.choices.includes(value)) field.value = value;
  }
}

/** Whether another input of the example stands in the place of this one. */
const replaced = (figure, one) => figure.inputs.some((other) => other.insteadOf === one.name && other.name in figure.example);

/** The address of this page with the inputs as they stand, in their own units. */
function carry(figure, form, given) {
  const query = new URLSearchParams();
  for (const one of figure.inputs) {
    const value = given[one.name];
    if (value !== null && value !== undefined && asked(one, given)) query.set(one.name, [value].flat().join(";"));
  }
  form.querySelector(".ls-carry").href = `?${query}#calculator`;
}

/** Bring one calculator to life. @param {HTMLFormElement} form */
function start(form) {
  const figure = FIGURES[form.dataset.figure];
  if (!figure) return;
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

if (globalThis.document) document.querySelectorAll("form[data-figure]").forEach(start);

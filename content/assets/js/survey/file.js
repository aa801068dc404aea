/** A survey as a file: what it holds, and what one that comes in is. Pure. */
import { length } from "../core/lengths.js";
import { masked } from "../core/words.js";
import { file as message } from "../messages/survey.js";
import { Misfit, takeGroup } from "./check.js";
import { unstored } from "./edits.js";
import { concerns, openingFields } from "./model.js";
import { ids, openingName, shown, surveyId } from "./naming.js";

/**
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").Survey} Survey
 */

/** So much of a text is enough to know it by. */
const LONGEST = 60;

/** The survey as its file holds it, fields in the order of the schema. @param {Field[]} fields @param {Survey} whole */
export function fileOf(fields, whole) {
  const { survey, openings } = whole;
  const known = ids(whole);
  const all = openings.map(({ key, data }) => ({ ...data, id: known.get(key) }));
  return sorted(fields, { ...survey.data, id: surveyId(survey.data), openings: all });
}

/** The text of a survey's file, finished or not: a line of a list that nobody filled in says nothing. @param {Field[]} fields @param {Survey} survey */
export const fileText = (fields, survey) => `${JSON.stringify(fileOf(fields, survey), filledIn, 2)}\n`;

/** @param {string} _ @param {any} value */
const filledIn = (_, value) => (Array.isArray(value) ? value.filter((one) => one !== "") : value);

/** @param {Field[]} fields @param {any} data @returns {any} */
function sorted(fields, data) {
  /** @type {Record<string, any>} */
  const made = {};
  for (const field of fields) {
    const value = data[field.name];
    if (value === undefined || !concerns(field, data)) continue;
    const inner = field.item?.fields;
    if (field.ask === "group") made[field.name] = sorted(field.fields ?? [], value);
    else made[field.name] = inner ? value.map((/** @type {any} */ one) => sorted(inner, one)) : value;
  }
  return made;
}

/** What was typed and does not read, and so stays out of the file. @param {Field[]} fields @param {Survey} survey */
export const unread = (fields, survey) =>
  rowsOf(fields, survey).flatMap(({ name, typed }) => Object.values(typed).map((text) => typedAt(name, text)));

/**
 * What was typed or chosen and is not stored, and so stays out of the file; of what looks like a code, not the code.
 * @param {Field[]} fields @param {Survey} survey @param {import("./edits.js").Edits} edits
 */
export const notStored = (fields, survey, edits) =>
  rowsOf(fields, survey).flatMap(({ name, key }) =>
    unstored(edits)
      .filter((edit) => edit.survey === survey.survey.key && edit.opening === key)
      .map(({ state, field, value, text = shown(field, value) }) =>
        typedAt(name, state === "code" ? masked(text) : text),
      ),
  );

/** The site and each opening by name. @param {Field[]} fields @param {Survey} survey */
function rowsOf(fields, { survey, openings }) {
  const inner = openingFields(fields);
  return [
    { name: message.site(), key: null, typed: survey.typed },
    ...openings.map(({ key, data, typed }, index) => ({ name: openingName(inner, data, index), key, typed })),
  ];
}

const typedAt = (/** @type {string} */ name, /** @type {string} */ text) =>
  message.typed({ name, text: text.slice(0, LONGEST) });

/**
 * Give every length its unit, so that nothing hangs on what a bare number means.
 * @param {Field[]} fields @param {any} data is changed @param {boolean} imperial
 */
function giveUnits(fields, data, imperial) {
  for (const { name, ask, units = [], item, fields: inner } of fields) {
    const value = data[name];
    if (value === undefined) continue;
    const unit = units[imperial ? Math.ceil(units.length / 2) : 0];
    if (ask === "length") data[name] = length(String(value), unit) ?? value;
    else if (ask === "group") giveUnits(inner ?? [], value, imperial);
    else if (item?.fields) for (const one of value) giveUnits(item.fields, one, imperial);
  }
}

/**
 * Look at a file before anything is changed.
 * @param {Field[]} fields @param {string} content
 * @returns {{fault: string} | {data: any, openings: any[], aside: string[]}} `aside`: what of it is left out
 */
export function lookAt(fields, content) {
  let raw;
  try {
    raw = JSON.parse(content.replace(/^\ufeff/, ""));
  } catch {
    return { fault: message.noJson() };
  }
  if (raw === null || typeof raw !== "object" || !Array.isArray(raw.openings)) return { fault: message.noSurvey() };
  try {
    return taken(fields.map(unfinished), raw);
  } catch (error) {
    if (error instanceof Misfit) return { fault: message.misfit({ fault: error.message }) };
    throw error;
  }
}

/**
 * The openings of a file may still lack something: the form asks for it, and a survey is carried on from phone to phone.
 * @param {Field} field
 */
const unfinished = (field) => (field.name === "openings" ? lacking(field) : field);

/** The field with nothing in it asked for. @param {Field} field @returns {Field} */
const lacking = ({ item, fields, ...field }) => ({
  ...field,
  required: false,
  least: 0,
  ...(item && { item: lacking(item) }),
  ...(fields && { fields: fields.map(lacking) }),
});

/** @param {Field[]} fields @param {any} raw @throws {Misfit} */
function taken(fields, raw) {
  /** @type {string[]} */
  const aside = [];
  const all = takeGroup(fields, raw, "", aside);
  giveUnits(fields, all, all.units === "imperial");
  const { openings, ...data } = all;
  const seen = new Set();
  for (const one of openings) {
    if (seen.has(one.id)) {
      aside.push(message.secondId({ id: one.id }));
      delete one.id;
    }
    seen.add(one.id);
  }
  return { data, openings, aside };
}

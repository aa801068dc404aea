/**
 * What a survey says, and what it leaves open. Pure: no page, no store.
 *
 * @typedef {import("./check.js").Field} Field
 * @typedef {(string | number)[]} Path the way to an answer: names of fields and places in lists
 * @typedef {{key: string, data: any, typed: Record<string, string>, order: string[], gone: {key: string, at: number}[],
 *   named: Record<string, string>, changed: number, filed: number}} SurveyRow `typed`: what was typed and does not read,
 *   by its way; `named`: the ids that a file gave to openings; `filed`: the change up to which a file holds it all
 * @typedef {{key: string, survey: string, data: any, typed: Record<string, string>}} OpeningRow
 * @typedef {{survey: SurveyRow, openings: OpeningRow[], last: OpeningRow | null}} Survey the openings in the order of
 *   the walk, and the one that was taken away last
 */
import { length } from "../core/lengths.js";
import { Misfit, take } from "./check.js";
import { looksLikeCode, masked } from "../core/words.js";
import { model as message } from "../messages/survey.js";

/** @param {Path} path */
export const wayOf = (path) => path.join(".");

/** The answer at a path. @param {any} data @param {Path} path */
export const at = (data, path) => path.reduce((value, part) => (value !== null && typeof value === "object" && Object.hasOwn(value, part) ? value[part] : undefined), data);

/** Put an answer at a path, or take it out; a group that is left with nothing goes too. @param {any} data @param {Path} path @param {any} value */
export function put(data, [part, ...rest], value) {
  if (rest.length) {
    if (data[part] === null || typeof data[part] !== "object") data[part] = typeof rest[0] === "number" ? [] : {};
    put(data[part], /** @type {any} */ (rest), value);
    if (!Array.isArray(data[part]) && !Array.isArray(data) && !Object.keys(data[part]).length) delete data[part];
  } else if (value === undefined && Array.isArray(data)) data[/** @type {number} */ (part)] = ""; // a place in a list stays
  else if (value === undefined) delete data[part];
  else data[part] = value;
}

/** Take one out of a list, with what was typed for it; what was typed for later ones moves up. @param {{data: any, typed: Record<string, string>}} row @param {Path} path @param {number} index */
export function cutOut(row, path, index) {
  at(row.data, path).splice(index, 1);
  const start = `${wayOf(path)}.`;
  for (const way of Object.keys(row.typed).filter((one) => one.startsWith(start)).sort()) {
    const [place, ...rest] = way.slice(start.length).split(".");
    const text = row.typed[way];
    if (Number(place) >= index) delete row.typed[way];
    if (Number(place) > index) row.typed[start + [Number(place) - 1, ...rest].join(".")] = text;
  }
}

/** Whether a field is asked: what stands fast and what the form fills in is not. @param {Field} field */
export const asks = (field) => field.ask !== "fixed" && !field.kept && field.name !== "openings";

/** Whether a field concerns this opening. @param {Field} field @param {any} data */
export const concerns = (field, data) => !field.kinds || field.kinds.includes(data.kind);

/** The fields that are asked and not answered; a group gives its own. @param {Field[]} fields @param {{data: any, typed: Record<string, string>}} row @param {Path} [path] @returns {{field: Field, path: Path}[]} */
export function open(fields, row, path = []) {
  return fields.flatMap((field) => {
    const here = [...path, field.name];
    if (!asks(field) || field.extra || !concerns(field, row.data)) return [];
    if (field.ask === "group") return open(field.fields ?? [], row, here);
    const typed = Object.keys(row.typed).some((way) => way === wayOf(here) || way.startsWith(`${wayOf(here)}.`));
    return at(row.data, here) === undefined || typed ? [{ field, path: here }] : [];
  });
}

/** The part of the form that says what an opening holds. @param {Field[]} fields @returns {Field[]} */
export const openingFields = (fields) => fields.find((field) => field.name === "openings")?.item?.fields ?? [];

/** What an answer looks like to a reader. @param {Field} field @param {any} value @returns {string} */
export function shown(field, value) {
  if (value === undefined) return "";
  if (field.ask === "group") return (field.fields ?? []).map((one) => shown(one, value?.[one.name])).filter(Boolean).join(", ");
  if (field.ask === "list") return Array.isArray(value) ? value.map((one) => shown(/** @type {Field} */ (field.item), one)).join("; ") || message.none() : "";
  const word = field.choices?.find(([id]) => id === value)?.[1];
  return word ?? `${String(value).replace(/^-/, "\u2212")}${field.unit && typeof value === "number" ? `\u00a0${field.unit}` : ""}`;
}

/** The name of an opening in lists. @param {Field[]} fields @param {any} data @param {number} index */
export function openingName(fields, data, index) {
  const kind = shown(/** @type {Field} */ (fields.find((field) => field.name === "kind")), data.kind);
  const where = [data.place, data.side].filter(Boolean).join(", ");
  return where && kind ? message.openingAt({ place: where, kind }) : where || kind || message.opening({ number: index + 1 });
}

/** A text as an id: small letters and digits, joined by hyphens. @param {string} text @param {string} start where it has no letter to begin with */
export function slug(text, start) {
  const plain = text.replace(/\u00df/g, "ss").replace(/[\u00e6\u00c6]/g, "ae").replace(/[\u00f8\u00d8]/g, "o").normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
  const begun = /^[a-z]/.test(plain) ? plain : plain ? `${start}-${plain}` : start;
  return begun.slice(0, 50).replace(/-+$/, "");
}

/** The id of each opening, by key: its own, the one a file gave it, or one made of place, side and kind. @param {Survey} survey */
export function ids({ survey, openings }) {
  const own = (/** @type {OpeningRow} */ { key, data }) => data.id ?? (Object.hasOwn(survey.named, key) ? survey.named[key] : undefined);
  const taken = new Set(openings.map(own).filter(Boolean));
  const made = new Map();
  const last = new Map(); // the last number tried for a name, so that many of one name cost no more than of different ones
  for (const row of openings) {
    const { key, data } = row;
    const plain = slug(masked([data.place, data.side, data.kind].filter(Boolean).join(" ")), "opening");
    let id = own(row) ?? plain;
    while (own(row) === undefined && taken.has(id)) {
      last.set(plain, (last.get(plain) ?? 1) + 1);
      id = `${plain}-${last.get(plain)}`;
    }
    taken.add(id);
    made.set(key, id);
  }
  return made;
}

/** Give every length its unit, so that nothing hangs on what a bare number means. @param {Field[]} fields @param {any} data @param {boolean} imperial */
export function withUnits(fields, data, imperial) {
  for (const { name, ask, units = [], item, fields: below } of fields) {
    const value = data[name];
    if (value === undefined) continue;
    if (ask === "length") data[name] = length(String(value), units[imperial ? Math.ceil(units.length / 2) : 0]) ?? value;
    else if (ask === "group") withUnits(below ?? [], value, imperial);
    else if (item?.fields) for (const one of value) withUnits(item.fields, one, imperial);
  }
}

/** The survey as its file holds it, fields in the order of the schema. @param {Field[]} fields @param {Survey} whole */
export function fileOf(fields, whole) {
  const { survey, openings } = whole;
  const known = ids(whole);
  const all = openings.map(({ key, data }) => ({ ...data, id: known.get(key) }));
  return sorted(fields, { ...survey.data, id: survey.data.id ?? slug(masked(survey.data.name ?? ""), "site"), openings: all });
}

/** @param {Field[]} fields @param {any} data @returns {any} */
function sorted(fields, data) {
  /** @type {Record<string, any>} */
  const made = {};
  for (const field of fields) {
    const value = data[field.name];
    if (value === undefined || !concerns(field, data)) continue;
    const below = field.item?.fields;
    made[field.name] = field.ask === "group" ? sorted(field.fields ?? [], value) : below ? value.map((/** @type {any} */ one) => sorted(below, one)) : value;
  }
  return made;
}

/**
 * What keeps a survey from leaving as a file, each with the opening it concerns.
 * @param {Field[]} fields @param {Survey} survey @returns {{words: string, opening: string | null}[]}
 */
export function hindrances(fields, survey) {
  const file = fileOf(fields, survey);
  const inner = openingFields(fields);
  const faults = [];
  const item = /** @type {Field} */ ({ name: "opening", label: "", help: "", ask: "group", fields: inner });
  for (const [index, { key, data }] of survey.openings.entries()) {
    faults.push(...wrong(item, file.openings[index], openingName(inner, data, index), key));
  }
  if (!survey.openings.length) faults.push({ words: message.noOpening(), opening: null });
  const head = fields.map((field) => (field.name === "openings" ? { ...field, item: { ...item, fields: [] }, least: 0 } : field));
  faults.push(...wrong(/** @type {any} */ ({ ask: "group", fields: head }), file, "", null));
  const seen = new Set();
  const twice = file.openings.map((/** @type {any} */ one) => one.id).filter((/** @type {string} */ id) => seen.size === seen.add(id).size);
  if (twice.length) faults.push({ words: message.sameId({ id: twice[0] }), opening: survey.openings[file.openings.findLastIndex((/** @type {any} */ one) => one.id === twice[0])].key });
  return faults;
}

/** @param {Field} field @param {any} value @param {string} way @param {string | null} opening */
function wrong(field, value, way, opening) {
  try {
    take(field, value, way, []);
    return [];
  } catch (error) {
    if (error instanceof Misfit) return [{ words: error.message, opening }];
    throw error;
  }
}

/** Openings that share place, side and kind, so that nobody could tell their zones apart. @param {OpeningRow[]} openings */
export function alike(openings) {
  const names = openings.map(({ data }) => data.spoken || [data.place, data.side, data.kind].join("|").toLowerCase());
  const counts = new Map();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return new Set(openings.filter(({ data }, index) => data.place && counts.get(names[index]) > 1).map(({ key }) => key));
}

/** The name of a field in `no_codes`. @param {Path} path */
const nameOf = (path) => path.filter((part) => typeof part === "string").join(".");

/** Whether the text of a field was said to be no code. @param {any} data of the survey, or of the opening @param {Path} path */
export const isNoCode = (data, path) => Boolean(data.no_codes?.includes(nameOf(path)));

/** Note that the text of a field is no code, or forget it where no text of it looks like one any more. @param {any} data @param {Path} path @param {boolean} none */
export function noteNoCode(data, path, none) {
  const texts = [at(data, path.filter((part) => typeof part === "string"))].flat();
  const stays = none || (isNoCode(data, path) && texts.some((text) => typeof text === "string" && looksLikeCode(text)));
  const others = (data.no_codes ?? []).filter((/** @type {string} */ name) => name !== nameOf(path));
  if (stays || others.length) data.no_codes = stays ? [...others, nameOf(path)] : others;
  else delete data.no_codes;
}

/** Texts that look as if they held a code and were not said to be none, by the name of their field. @param {Field[]} fields @param {any} data @param {Path} [path] @param {any} [owner] where it is said @returns {string[]} */
export function codes(fields, data, path = [], owner = data) {
  return fields.flatMap((field) => {
    const value = data?.[field.name];
    const here = [...path, field.name];
    if (value === undefined || field.kept) return [];
    if (field.ask === "group") return codes(field.fields ?? [], value, here, owner);
    if (field.ask === "list") return value.flatMap((/** @type {any} */ one) => (field.item?.fields ? codes(field.item.fields, one) : codes([/** @type {Field} */ ({ ...field.item, name: field.name, label: field.label })], { [field.name]: one }, path, owner)));
    return field.ask === "text" && !field.pattern && looksLikeCode(value) && !isNoCode(owner, here) ? [field.label] : [];
  });
}

/** So many things are open, in words. @param {number} number */
export const openWords = (number) => message.open({ questions: number });

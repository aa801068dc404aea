/** How answers and openings are named, for readers and in the file. Pure. */
import { masked } from "../core/words.js";
import { naming as message } from "../messages/survey.js";

/**
 * @typedef {import("./check.js").Field} Field
 * @typedef {import("./model.js").OpeningRow} OpeningRow
 */

const LONGEST_ID = 50;

/** What an answer looks like to a reader. @param {Field} field @param {any} value @returns {string} */
export function shown(field, value) {
  if (value === undefined) return "";
  if (field.ask === "group")
    return (field.fields ?? [])
      .map((one) => shown(one, value?.[one.name]))
      .filter(Boolean)
      .join(", ");
  if (field.ask === "list")
    return Array.isArray(value)
      ? value.map((one) => shown(/** @type {Field} */ (field.item), one)).join("; ") || message.none()
      : "";
  const word = field.choices?.find(([id]) => id === value)?.[1];
  const unit = field.unit && typeof value === "number" ? `\u00a0${field.unit}` : "";
  return word ?? `${String(value).replace(/^-/, "\u2212")}${unit}`;
}

/** The name of an opening in lists. @param {Field[]} fields of an opening @param {any} data @param {number} index */
export function openingName(fields, data, index) {
  const kind = shown(/** @type {Field} */ (fields.find((field) => field.name === "kind")), data.kind);
  const where = [data.place, data.side].filter(Boolean).join(", ");
  return where && kind
    ? message.openingAt({ place: where, kind })
    : where || kind || message.opening({ number: index + 1 });
}

/**
 * A text as an id: small letters and digits, joined by hyphens.
 * @param {string} text @param {string} start where it has no letter to begin with
 */
export function slug(text, start) {
  const spelt = text
    .replace(/\u00df/g, "ss")
    .replace(/[\u00e6\u00c6]/g, "ae")
    .replace(/[\u00f8\u00d8]/g, "o");
  const plain = spelt
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  if (/^[a-z]/.test(plain)) return cut(plain);
  return cut(plain ? `${start}-${plain}` : start);
}

const cut = (/** @type {string} */ id) => id.slice(0, LONGEST_ID).replace(/-+$/, "");

/**
 * The id of each opening, by key: its own, the one a file gave it, or one made of place, side and kind.
 * @param {{survey: {named: Record<string, string>}, openings: Pick<OpeningRow, "key" | "data">[]}} survey
 * @returns {Map<string, string>}
 */
export function ids({ survey, openings }) {
  const own = (/** @type {Pick<OpeningRow, "key" | "data">} */ { key, data }) =>
    data.id ?? (Object.hasOwn(survey.named, key) ? survey.named[key] : undefined);
  const taken = new Set(openings.map(own).filter(Boolean));
  const made = new Map();
  const last = new Map(); // the last number tried for a name, so that many of one name cost no more than of different ones
  for (const row of openings) {
    const { place, side, kind } = row.data;
    const plain = slug(masked([place, side, kind].filter(Boolean).join(" ")), "opening");
    let id = own(row) ?? plain;
    while (own(row) === undefined && taken.has(id)) {
      last.set(plain, (last.get(plain) ?? 1) + 1);
      id = `${plain}-${last.get(plain)}`;
    }
    taken.add(id);
    made.set(row.key, id);
  }
  return made;
}

/** The id of a survey: its own, or one made of the name of the site. @param {any} data */
export const surveyId = (data) => data.id ?? slug(masked(data.name ?? ""), "site");

/**
 * What a survey says and what it leaves open, and how an answer changes it. Pure: no page, no store; nothing that is
 * handed in is changed.
 *
 * @typedef {import("./check.js").Field} Field
 * @typedef {(string | number)[]} Path the way to an answer: names of fields and places in lists
 * @typedef {Object} Row answers, of the site or of an opening
 * @property {any} data the answers, as the file holds them
 * @property {Record<string, string>} typed what was typed and does not read, by its way
 *
 * @typedef {Object} SiteFields of a survey beside its answers
 * @property {string} key
 * @property {string[]} order the keys of its openings, in the order of the walk
 * @property {{key: string, at: number}[]} gone the openings that were taken away, and where they stood
 * @property {Record<string, string>} named the ids that a file gave to openings, by key
 * @property {number} changed how often it was changed
 * @property {number} filed the change up to which a file holds it all
 *
 * @typedef {Row & SiteFields} SurveyRow
 * @typedef {Row & {key: string, survey: string}} OpeningRow
 * @typedef {Object} Survey
 * @property {SurveyRow} survey
 * @property {OpeningRow[]} openings in the order of the walk
 * @property {OpeningRow | null} last the one that was taken away last
 * @property {ReadonlyMap<string, OpeningRow>} rows every opening by key, those that were taken away too
 */

/** How many openings that were taken away can be put back. */
const MOST_GONE = 20;

/** @param {Path} path */
export const wayOf = (path) => path.join(".");

/** The answer at a path. @param {any} data @param {Path} path */
export const at = (data, path) =>
  path.reduce(
    (value, part) =>
      value !== null && typeof value === "object" && Object.hasOwn(value, part) ? value[part] : undefined,
    data,
  );

/**
 * The answers with one put at a path, or taken out; a group that is left with nothing goes too, a place in a list
 * stays.
 * @template T
 * @param {T} data @param {Path} path @param {any} value undefined takes it out
 * @returns {T}
 */
export function put(data, [part, ...rest], value) {
  const list = Array.isArray(data);
  /** @type {any} */
  const made = list ? [...data] : { ...data };
  const place = list ? Math.min(Number(part), data.length) : part;
  const inner = rest.length ? inside(made[place], rest, value, list) : value;
  if (inner !== undefined) made[place] = inner;
  else if (list) made[place] = "";
  else delete made[place];
  return made;
}

/** @param {any} before @param {Path} rest @param {any} value @param {boolean} list whether it stands in a list */
function inside(before, rest, value, list) {
  const empty = typeof rest[0] === "number" ? [] : {};
  const made = put(before !== null && typeof before === "object" ? before : empty, rest, value);
  return Array.isArray(made) || list || Object.keys(made).length ? made : undefined;
}

/**
 * A row with an answer, or with what was typed in place of one.
 * @template {Row} R
 * @param {R} row @param {Path} path @param {any} value @param {string} [typed] what does not read
 * @returns {R}
 */
export function answered(row, path, value, typed) {
  const way = wayOf(path);
  const { [way]: _, ...others } = row.typed;
  return {
    ...row,
    data: put(row.data, path, value),
    typed: typed === undefined ? others : { ...others, [way]: typed },
  };
}

/**
 * A row with one taken out of a list, and what was typed for it; what was typed for later ones moves up.
 * @template {Row} R
 * @param {R} row @param {Path} path @param {number} index
 * @returns {R}
 */
export function cutOut(row, path, index) {
  const list = at(row.data, path) ?? [];
  const left = list.filter((/** @type {unknown} */ _, /** @type {number} */ place) => place !== index);
  const typed = Object.entries(row.typed).flatMap(([way, text]) => {
    const moved = wayWithout(way, path, index);
    return moved === null ? [] : [[moved, text]];
  });
  return { ...row, data: put(row.data, path, left), typed: Object.fromEntries(typed) };
}

/**
 * Where a way leads once one is taken out of a list; null where it led into that one.
 * @param {string} way @param {Path} path of the list @param {number} index
 */
export function wayWithout(way, path, index) {
  const start = `${wayOf(path)}.`;
  if (!way.startsWith(start)) return way;
  const [place, ...rest] = way.slice(start.length).split(".");
  if (Number(place) < index) return way;
  return Number(place) === index ? null : start + [Number(place) - 1, ...rest].join(".");
}

/** Whether a field is asked: what stands fast and what the form fills in is not. @param {Field} field */
export const asks = (field) => field.ask !== "fixed" && !field.kept && field.name !== "openings";

/** Whether a field is told in another way. @param {Field} field @param {any} data */
const toldOtherwise = (field, data) =>
  field.or !== undefined && data[field.or] !== undefined && data[field.name] === undefined;

/** Whether a field concerns this opening. @param {Field} field @param {any} data */
export const concerns = (field, data) =>
  (!field.kinds || field.kinds.includes(data.kind)) && !toldOtherwise(field, data);

/** Whether the other way to tell the same was asked before it. @param {Field[]} fields @param {number} place */
const askedBefore = (fields, place) => fields.slice(0, place).some(({ name }) => name === fields[place].or);

/**
 * The fields that are asked and not answered; a group gives its own.
 * @param {Field[]} fields @param {Row} row @param {Path} [path]
 * @returns {{field: Field, path: Path}[]}
 */
export function unanswered(fields, row, path = []) {
  return fields.flatMap((field, place) => {
    const here = [...path, field.name];
    if (!asks(field) || field.extra || !concerns(field, row.data) || askedBefore(fields, place)) return [];
    if (field.ask === "group") return unanswered(field.fields ?? [], row, here);
    const typed = Object.keys(row.typed).some((way) => way === wayOf(here) || way.startsWith(`${wayOf(here)}.`));
    return at(row.data, here) === undefined || typed ? [{ field, path: here }] : [];
  });
}

/** @type {WeakMap<Row, {fields: Field[], left: ReturnType<typeof unanswered>}>} */
const known = new WeakMap();

/**
 * The questions that a row leaves open, looked for once for as long as the row stands.
 * @param {Field[]} fields @param {Row} row
 */
export function openIn(fields, row) {
  const before = known.get(row);
  if (before?.fields === fields) return before.left;
  const left = unanswered(fields, row);
  known.set(row, { fields, left });
  return left;
}

/** The part of the form that says what an opening holds. @param {Field[]} fields @returns {Field[]} */
export const openingFields = (fields) => fields.find((field) => field.name === "openings")?.item?.fields ?? [];

/** How many questions of a survey are open. @param {Field[]} fields @param {Survey} survey */
export function openInAll(fields, { survey, openings }) {
  const inner = openingFields(fields);
  return openings.reduce((sum, row) => sum + openIn(inner, row).length, openIn(fields, survey).length);
}

/**
 * A survey of its rows.
 * @param {SurveyRow} survey @param {ReadonlyMap<string, OpeningRow>} rows
 * @returns {Survey}
 */
export const surveyOf = (survey, rows) => ({
  survey,
  openings: survey.order.flatMap((key) => rows.get(key) ?? []),
  last: rows.get(survey.gone.at(-1)?.key ?? "") ?? null,
  rows,
});

/** @param {string[]} list @param {number} place @param {string} one */
const inserted = (list, place, one) => [...list.slice(0, place), one, ...list.slice(place)];

/** @param {string[]} list @param {number} place */
const without = (list, place) => [...list.slice(0, place), ...list.slice(place + 1)];

/** A new survey, with a key for each of its openings. @param {string} key @param {any} data @param {string[]} order @param {boolean} filed whether a file holds it @returns {SurveyRow} */
export const newSurvey = (key, data, order, filed) => ({
  key,
  data,
  typed: {},
  order,
  gone: [],
  named: {},
  changed: 1,
  filed: filed ? 1 : 0,
});

/** With one more opening, at the end or behind another. @param {SurveyRow} survey @param {string} opening @param {string} [behind] @returns {SurveyRow} */
export function withOpening(survey, opening, behind) {
  const place = behind && survey.order.includes(behind) ? survey.order.indexOf(behind) + 1 : survey.order.length;
  return { ...survey, order: inserted(survey.order, place, opening) };
}

/** With an opening one place up or down the walk. @param {SurveyRow} survey @param {string} opening @param {-1 | 1} by @returns {SurveyRow} */
export function moved(survey, opening, by) {
  const from = survey.order.indexOf(opening);
  const to = from + by;
  if (from < 0 || to < 0 || to >= survey.order.length) return survey;
  return { ...survey, order: inserted(without(survey.order, from), to, opening) };
}

/** Without an opening in the walk; its row stays, so that it can be put back. @param {SurveyRow} survey @param {string} opening @returns {SurveyRow} */
export function takenAway(survey, opening) {
  const place = survey.order.indexOf(opening);
  if (place < 0) return survey;
  const gone = [...survey.gone, { key: opening, at: place }].slice(-MOST_GONE);
  return { ...survey, order: without(survey.order, place), gone };
}

/** With the opening that was taken away last where it stood. @param {SurveyRow} survey @returns {SurveyRow} */
export function putBack(survey) {
  const last = survey.gone.at(-1);
  if (!last) return survey;
  const gone = survey.gone.slice(0, -1);
  if (survey.order.includes(last.key)) return { ...survey, gone };
  return { ...survey, gone, order: inserted(survey.order, last.at, last.key) };
}

/**
 * With a note that a file holds it as it stood, and which ids it gave the openings.
 * @param {SurveyRow} survey @param {number} changed when the file was made @param {ReadonlyMap<string, string>} ids
 * @returns {SurveyRow}
 */
export function filed(survey, changed, ids) {
  const now = survey.changed === changed ? survey.changed + 1 : changed; // this change itself counts as one
  return { ...survey, named: Object.fromEntries(ids), filed: now };
}

/**
 * An opening as it is stored now, with what differs between two others of it.
 * @param {OpeningRow} stored @param {OpeningRow} from @param {OpeningRow} to @returns {OpeningRow}
 */
export const withTried = (stored, from, to) => ({
  ...stored,
  data: merged(stored.data, from.data, to.data),
  typed: merged(stored.typed, from.typed, to.typed),
});

/** @param {any} stored @param {any} from @param {any} to */
function merged(stored, from, to) {
  const made = { ...stored };
  for (const name of new Set([...Object.keys(from), ...Object.keys(to)])) {
    if (JSON.stringify(from[name]) === JSON.stringify(to[name])) continue;
    if (to[name] === undefined) delete made[name];
    else made[name] = to[name];
  }
  return made;
}

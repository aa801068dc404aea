/** The printed sheet of a survey: every answer, and what is still open, with room to write it in. */
import { h } from "../core/dom.js";
import { sheet as message } from "../messages/survey.js";
import { asks, concerns, openingFields, wayOf } from "./model.js";
import { openingName, shown } from "./naming.js";

/** @typedef {import("./check.js").Field} Field @typedef {import("./model.js").Survey} Survey */

/** Rows of a group of fields. @param {Field[]} fields @param {any} data @param {Record<string, string>} typed @param {(string | number)[]} path @returns {HTMLElement[]} */
function rows(fields, data, typed, path = []) {
  return fields.flatMap((field) => {
    if (!asks(field) || !concerns(field, data)) return [];
    const here = [...path, field.name];
    const value = data?.[field.name];
    if (field.ask === "group" && !field.extra) return rows(field.fields ?? [], value ?? {}, typed, here);
    const raw = typed[wayOf(here)];
    if (value === undefined && raw === undefined && field.extra) return [];
    const missing = value === undefined && raw === undefined;
    const words = missing ? message.open() : answer(field, value, raw);
    return [h("tr", { class: missing ? "ls-open" : "" }, h("th", { scope: "row" }, field.label), h("td", {}, words))];
  });
}

/** @param {Field} field @param {any} value @param {string | undefined} raw what was typed and does not read */
function answer(field, value, raw) {
  if (raw !== undefined) return message.unread({ typed: raw });
  return field.ask === "group" ? told(field.fields ?? [], value) : shown(field, value);
}

/** The answers of a group, each with its label. @param {Field[]} fields @param {any} data */
const told = (fields, data) =>
  fields
    .filter((one) => data[one.name] !== undefined)
    .map((one) => message.answer({ field: one.label, answer: shown(one, data[one.name]) }))
    .join("; ");

const table = (/** @type {HTMLElement[]} */ made) => h("table", {}, h("tbody", {}, ...made));

/** @param {Field[]} fields @param {Survey} survey @param {string} library */
export function surveySheet(fields, { survey, openings }, library) {
  const inner = openingFields(fields);
  const paper = h(
    "section",
    { class: "ls-sheet ls-survey-sheet" },
    h("h2", {}, survey.data.name ?? message.survey()),
    table(rows(fields, survey.data, survey.typed)),
  );
  for (const [index, row] of openings.entries()) {
    const title = h("h3", {}, message.numbered({ number: index + 1, opening: openingName(inner, row.data, index) }));
    paper.append(h("section", {}, title, table(rows(inner, row.data, row.typed))));
  }
  paper.append(
    h("p", { class: "ls-sign-line" }, message.signature()),
    h("p", {}, message.library({ library, when: new Date().toLocaleString() })),
  );
  return paper;
}

/** The sheet to fill in by hand, as it stands on the page. */
export const blankSheet = () =>
  h("section", { class: "ls-sheet" }, document.querySelector(".ls-blank")?.cloneNode(true));

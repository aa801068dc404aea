/** A survey as a file: out by download or the share sheet, in again after a look, refused where it does not fit. */
import { around, listed } from "../core/message.js";
import { button, download, field, fill, h } from "../core/dom.js";
import { Misfit, takeGroup } from "./check.js";
import { codes, fileOf, hindrances, ids, openingFields, openingName, withUnits } from "./model.js";
import * as store from "./store.js";
import { file as message } from "../messages/survey.js";

/** @typedef {import("./check.js").Field} Field @typedef {import("./model.js").Survey} Survey */

const MOST_BYTES = 5_000_000;
const JSON_TYPE = "application/json";

/** The text of a survey's file. @param {Field[]} fields @param {Survey} survey */
export const fileText = (fields, survey) => `${JSON.stringify(fileOf(fields, survey), null, 2)}\n`;

/** What was typed and does not read, and so stays out of the file. @param {Field[]} fields @param {Survey} survey @returns {string[]} */
export function leftOut(fields, { survey, openings }) {
  const inner = openingFields(fields);
  const words = (/** @type {string} */ name, /** @type {Record<string, string>} */ typed) => Object.values(typed).map((text) => message.typed({ name, text: text.slice(0, 60) }));
  return [...words(message.site(), survey.typed), ...openings.flatMap((row, index) => words(openingName(inner, row.data, index), row.typed))];
}

/**
 * The part of a survey that lets it leave.
 * @param {import("./survey.js").Surveys} all @param {string} key
 */
export function leaveBlock(all, key) {
  const { fields } = all;
  const state = h("div", {});
  const said = h("p", { role: "status" });
  const tools = h("div", { class: "ls-tools" });
  /** @type {Survey | null} */
  let survey = null;
  const file = () => {
    const at = /** @type {Survey} */ (survey);
    const id = fileOf(fields, at).id;
    return { id, text: fileText(fields, at), settled: () => all.act(() => store.filed(key, at.survey.changed, ids(at))).then((done) => done && fill(said, message.noted())) };
  };
  const save = async () => {
    await all.settle();
    const { id, text, settled } = file();
    download(text, `${id}.json`, JSON_TYPE);
    said.replaceChildren(`${message.look({ file: `${id}.json` })} `, button(message.there(), settled));
  };
  const share = async () => {
    await all.settle();
    const { id, text, settled } = file();
    const [type, ending] = /** @type {[string, string]} */ (sharing());
    try {
      await navigator.share({ files: [new File([text], id + ending, { type })], title: id + ending });
      await settled();
    } catch (error) {
      said.textContent = /** @type {any} */ (error)?.name === "AbortError" ? message.notShared() : message.shareRefused();
    }
  };
  const paper = button(message.print(), () => all.print(), { class: "ls-button ls-quiet" });
  const ways = [button(message.save(), save, { class: "ls-button ls-main" }), sharing() && button(message.share(), share)];
  const show = (/** @type {Survey} */ now) => {
    survey = now;
    const missing = hindrances(fields, now);
    const out = leftOut(fields, now);
    const whole = now.survey.filed === now.survey.changed;
    const words = missing.length ? message.hindered() : whole ? message.inFile() : message.onlyHere();
    fill(state, h("p", { class: whole ? "" : "ls-warn" }, words), missing.length > 0 && h("ul", {}, ...missing.map((one) => h("li", {}, ...around(message.hindrance, { fault: one.opening ? h("a", { href: `#s=${key}&o=${one.opening}` }, one.words) : one.words })))), out.length > 0 && h("p", {}, message.leftOut({ answers: out.length, typed: out.join("; ") })));
    fill(tools, ...(missing.length ? [] : ways), paper);
  };
  return { element: h("section", { class: "ls-file", "aria-label": message.take() }, h("h3", {}, message.take()), state, tools, said, h("p", {}, ...around(message.plan, { command: h("code", {}, "latchside plan FILE") }))), show };
}

/** How the share sheet takes a file here: its type and ending, or nothing. @returns {[string, string] | null} */
function sharing() {
  /** @type {[string, string][]} */
  const ways = [[JSON_TYPE, ".json"], ["text/plain", ".json.txt"]];
  return ways.find(([type, ending]) => navigator.canShare?.({ files: [new File(["{}"], `survey${ending}`, { type })] })) ?? null;
}

/**
 * Look at a file before anything is changed.
 * @param {Field[]} fields @param {string} content
 * @returns {{fault: string} | {data: any, openings: any[], aside: string[]}}
 */
export function lookAt(fields, content) {
  let raw;
  try {
    raw = JSON.parse(content.replace(/^\ufeff/, ""));
  } catch {
    return { fault: message.noJson() };
  }
  if (raw === null || typeof raw !== "object" || !Array.isArray(raw.openings)) return { fault: message.noSurvey() };
  /** @type {string[]} */
  const aside = [];
  try {
    const taken = takeGroup(fields, raw, "", aside);
    withUnits(fields, taken, taken.units === "imperial");
    const { openings, ...data } = taken;
    const seen = new Set();
    for (const one of openings) {
      if (seen.has(one.id)) {
        aside.push(message.secondId({ id: one.id }));
        delete one.id;
      }
      seen.add(one.id);
    }
    return { data, openings, aside };
  } catch (error) {
    if (error instanceof Misfit) return { fault: message.misfit({ fault: error.message }) };
    throw error;
  }
}

/** What of a file the form leaves out: the first ten, and how many more. @param {string[]} aside */
function unknown(aside) {
  const fields = aside.slice(0, 10).join("; ");
  return aside.length > 10 ? message.unknownMore({ fields, more: aside.length - 10 }) : message.unknown({ fields });
}

/** Bring a survey in, after a look and a second press. @param {import("./survey.js").Surveys} all */
export function importBlock(all) {
  const said = h("div", { class: "ls-said", role: "status" });
  const choose = h("input", { type: "file", accept: ".json,.txt,application/json,text/plain", change: async (/** @type {any} */ event) => {
    const [file] = event.target.files;
    event.target.value = "";
    if (!file) return;
    const content = file.size > MOST_BYTES ? null : await file.text().catch(() => null);
    const found = content === null ? { fault: message.unreadable() } : lookAt(all.fields, content);
    if ("fault" in found) return said.replaceChildren(h("p", { class: "ls-warn" }, message.unchanged(found)));
    const bring = button(message.bringIn(), async () => {
      try {
        all.open(await store.create(found.data, found.openings, true));
        said.replaceChildren();
      } catch (error) {
        said.replaceChildren(h("p", { class: "ls-warn" }, message.unchanged({ fault: store.inWords(error) })));
      }
    }, { class: "ls-button ls-main" });
    const twin = (await store.all()).some(({ survey }) => survey.data.id === found.data.id);
    const suspect = [...new Set(codes(all.fields, { ...found.data, openings: found.openings }))];
    fill(
      said,
      h("p", {}, message.found({ site: found.data.name, openings: found.openings.length })),
      twin && h("p", {}, message.twin()),
      found.aside.length > 0 && h("p", { class: "ls-warn" }, unknown(found.aside)),
      suspect.length > 0 && h("p", { class: "ls-warn" }, message.codeIn({ fields: listed(suspect, "unit") })),
      h("div", { class: "ls-tools" }, bring, button(message.leave(), () => said.replaceChildren(), { class: "ls-button ls-quiet" })),
    );
  } });
  return h("div", { class: "ls-import" }, field(message.bring(), choose, message.bringHelp()), said);
}

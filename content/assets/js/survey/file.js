/** A survey as a file: out by download or the share sheet, in again after a look, refused where it does not fit. */
import { button, count, download, field, fill, h } from "../core/dom.js";
import { Misfit, takeGroup } from "./check.js";
import { codes, fileOf, hindrances, ids, openingFields, openingName, withUnits } from "./model.js";
import * as store from "./store.js";

/** @typedef {import("./check.js").Field} Field @typedef {import("./model.js").Survey} Survey */

const MOST_BYTES = 5_000_000;
const JSON_TYPE = "application/json";

/** The text of a survey's file. @param {Field[]} fields @param {Survey} survey */
export const fileText = (fields, survey) => `${JSON.stringify(fileOf(fields, survey), null, 2)}\n`;

/** What was typed and does not read, and so stays out of the file. @param {Field[]} fields @param {Survey} survey @returns {string[]} */
export function leftOut(fields, { survey, openings }) {
  const inner = openingFields(fields);
  const words = (/** @type {string} */ name, /** @type {Record<string, string>} */ typed) => Object.values(typed).map((text) => `${name}: \u201c${text.slice(0, 60)}\u201d`);
  return [...words("Site", survey.typed), ...openings.flatMap((row, index) => words(openingName(inner, row.data, index), row.typed))];
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
    return { id, text: fileText(fields, at), settled: () => all.act(() => store.filed(key, at.survey.changed, ids(at))).then((done) => done && fill(said, "Noted: the survey is saved.")) };
  };
  const save = async () => {
    await all.settle();
    const { id, text, settled } = file();
    download(text, `${id}.json`, JSON_TYPE);
    said.replaceChildren(`Look for ${id}.json among the downloads. Is it there? `, button("It is there", settled));
  };
  const share = async () => {
    await all.settle();
    const { id, text, settled } = file();
    const [type, ending] = /** @type {[string, string]} */ (sharing());
    try {
      await navigator.share({ files: [new File([text], id + ending, { type })], title: id + ending });
      await settled();
    } catch (error) {
      said.textContent = /** @type {any} */ (error)?.name === "AbortError" ? "Not shared." : "Sharing was refused. Save it as a file instead.";
    }
  };
  const paper = button("Print the survey", () => all.print(), { class: "ls-button ls-quiet" });
  const ways = [button("Save as a file", save, { class: "ls-button ls-main" }), sharing() && button("Share", share)];
  const show = (/** @type {Survey} */ now) => {
    survey = now;
    const missing = hindrances(fields, now);
    const out = leftOut(fields, now);
    const whole = now.survey.filed === now.survey.changed;
    const words = missing.length ? "Before it can leave as a file:" : whole ? "All of it is in a file that you saved." : "What was changed last is only on this device. Take it with you.";
    fill(state, h("p", { class: whole ? "" : "ls-warn" }, words), missing.length > 0 && h("ul", {}, ...missing.map((one) => h("li", {}, one.opening ? h("a", { href: `#s=${key}&o=${one.opening}` }, one.words) : one.words, "."))), out.length > 0 && h("p", {}, `${count(out.length, "answer does", "answers do")} not read and would stay out of the file: ${out.join("; ")}.`));
    fill(tools, ...(missing.length ? [] : ways), paper);
  };
  return { element: h("section", { class: "ls-file", "aria-label": "Take it with you" }, h("h3", {}, "Take it with you"), state, tools, said, h("p", {}, "On a computer with this library, ", h("code", {}, "latchside plan FILE"), " makes the pack of the job from it.")), show };
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
    return { fault: "The file is damaged, or no survey saved here: it cannot be read as JSON." };
  }
  if (raw === null || typeof raw !== "object" || !Array.isArray(raw.openings)) return { fault: "The file is no survey: it has no list of openings." };
  /** @type {string[]} */
  const aside = [];
  try {
    const taken = takeGroup(fields, raw, "", aside);
    withUnits(fields, taken, taken.units === "imperial");
    const { openings, ...data } = taken;
    const seen = new Set();
    for (const one of openings) {
      if (seen.has(one.id)) {
        aside.push(`a second id ${one.id}`);
        delete one.id;
      }
      seen.add(one.id);
    }
    return { data, openings, aside };
  } catch (error) {
    if (error instanceof Misfit) return { fault: `The survey does not fit this form: ${error.message}.` };
    throw error;
  }
}

/** Bring a survey in, after a look and a second press. @param {import("./survey.js").Surveys} all */
export function importBlock(all) {
  const said = h("div", { class: "ls-said", role: "status" });
  const choose = h("input", { type: "file", accept: ".json,.txt,application/json,text/plain", change: async (/** @type {any} */ event) => {
    const [file] = event.target.files;
    event.target.value = "";
    if (!file) return;
    const content = file.size > MOST_BYTES ? null : await file.text().catch(() => null);
    const found = content === null ? { fault: "The file is too large, or cannot be read." } : lookAt(all.fields, content);
    if ("fault" in found) return said.replaceChildren(h("p", { class: "ls-warn" }, `${found.fault} Nothing was changed.`));
    const bring = button("Bring it in", async () => {
      try {
        all.open(await store.create(found.data, found.openings, true));
        said.replaceChildren();
      } catch (error) {
        said.replaceChildren(h("p", { class: "ls-warn" }, `${store.inWords(error)} Nothing was changed.`));
      }
    }, { class: "ls-button ls-main" });
    const twin = (await store.all()).some(({ survey }) => survey.data.id === found.data.id);
    const suspect = [...new Set(codes(all.fields, { ...found.data, openings: found.openings }))];
    fill(
      said,
      h("p", {}, `${found.data.name}: ${count(found.openings.length, "opening")}.`),
      twin && h("p", {}, "A survey of this id is on this device. Both will stand side by side."),
      found.aside.length > 0 && h("p", { class: "ls-warn" }, `This form does not know, and leaves out: ${found.aside.slice(0, 10).join("; ")}${found.aside.length > 10 ? ` and ${found.aside.length - 10} more` : ""}.`),
      suspect.length > 0 && h("p", { class: "ls-warn" }, `It looks as if a code stood in: ${suspect.join(", ")}. A code never belongs in a survey.`),
      h("div", { class: "ls-tools" }, bring, button("Leave it", () => said.replaceChildren(), { class: "ls-button ls-quiet" })),
    );
  } });
  return h("div", { class: "ls-import" }, field("Bring in a saved survey", choose, "A file that was saved on a page like this one."), said);
}

/** The pack of the survey that is open: made on this device, and taken from it file by file, as one, or on paper. */
import { download } from "../core/dom.js";
import { packing as message } from "../messages/plan.js";
import { fileText } from "../survey/file.js";
import { today } from "./day.js";
import { siteOf } from "./site.js";
import { NO_PACK } from "./state.js";

/**
 * @typedef {import("../survey/check.js").Field} Field
 * @typedef {import("../survey/model.js").Survey} Survey
 * @typedef {import("./state.js").Pack} Pack
 */

export const DOCUMENT = "index.html";
export const ZIP = "pack.zip";
const STYLE = /<style>(.*?)<\/style>/gs;

/** @type {Record<string, string>} */
const TYPES = {
  html: "text/html",
  csv: "text/csv",
  ics: "text/calendar",
  json: "application/json",
  zip: "application/zip",
};

/** @type {WeakMap<Survey, string>} */
const texts = new WeakMap();

/** The text of a survey's file, made once for as long as the survey stands. @param {Field[]} fields @param {Survey} survey */
function textOf(fields, survey) {
  const text = texts.get(survey) ?? fileText(fields, survey);
  texts.set(survey, text);
  return text;
}

/** The pack, where it is that of the survey as it stands. @param {{fields: Field[], pack: Pack}} state @param {Survey} survey @param {string} own as in a pack */
export const packNow = ({ fields, pack }, survey, own) =>
  pack.sort !== "none" && pack.own === own && pack.survey === textOf(fields, survey) ? pack : NO_PACK;

/** What a file is called among the downloads. @param {string} id of the survey @param {string} name */
export const savedAs = (id, name) => (name === DOCUMENT || name === ZIP ? `${id}.${ending(name)}` : `${id}-${name}`);

const ending = (/** @type {string} */ name) => name.split(".").at(-1) ?? "";

export class Packing {
  /**
   * @param {{state: {pack: Pack}, set: (change: {pack: Pack}) => void}} page
   * @param {import("./planner.js").Planner} planner
   * @param {() => Promise<{id: string, text: string}>} file of the survey as it is stored now
   * @param {() => string} own the firm's own figures, as their file
   */
  constructor(page, planner, file, own) {
    this.own = own;
    this.page = page;
    this.planner = planner;
    this.file = file;
  }

  async make() {
    const { id, text } = await this.file();
    const own = this.own();
    const begun = { ...NO_PACK, id, survey: text, own };
    this.page.set({ pack: { ...begun, sort: "making" } });
    /** @type {Pack} */
    const made = await this.planner.pack(text, today(), own, siteOf(import.meta.url)).then(
      (files) => ({ ...begun, sort: "there", files }),
      (error) => ({ ...begun, sort: "stopped", told: String(error.message).trim().split("\n").at(-1) ?? "" }),
    );
    if (this.page.state.pack.survey === text) this.page.set({ pack: made });
  }

  /** @param {string} name */
  save(name) {
    const { id, files } = this.page.state.pack;
    download(files[name], savedAs(id, name), TYPES[ending(name)]);
  }

  /** Show the document on a page of its own, and print it. */
  print() {
    const { pack } = this.page.state;
    const told = printed(new TextDecoder().decode(pack.files[DOCUMENT])) ? "" : message.noPage();
    this.page.set({ pack: { ...pack, told } });
  }
}

/**
 * A document on a page of its own, which has the policy of this page: no script in it runs, and its styles are handed
 * over as a sheet. Whether there is such a page.
 * @param {string} text
 */
function printed(text) {
  const page = /** @type {(Window & typeof globalThis) | null} */ (open("", "_blank"));
  if (!page) return false;
  const { document } = page;
  const read = new DOMParser().parseFromString(text.replace(STYLE, ""), "text/html");
  document.replaceChild(document.importNode(read.documentElement, true), document.documentElement);
  const sheet = new page.CSSStyleSheet();
  sheet.replaceSync([...text.matchAll(STYLE)].map(([, style]) => style).join("\n"));
  document.adoptedStyleSheets = [sheet];
  page.focus();
  page.print();
  return true;
}

/** The page of surveys: all of them side by side, one of them, or one opening of it. */
import { reader } from "../core/ask.js";
import { button, field, fill, h, now } from "../core/dom.js";
import { laySheet } from "../visit/sheet.js";
import { importBlock } from "./file.js";
import { open, openWords, openingFields } from "./model.js";
import { SurveyView } from "./one.js";
import { OpeningView } from "./opening.js";
import { surveySheet } from "./sheet.js";
import * as store from "./store.js";
import { survey as message } from "../messages/survey.js";

/** @typedef {import("./model.js").Survey} Survey @typedef {import("./check.js").Field} Field */

const PLACE = /^#s=([0-9a-f-]{36})(?:&o=([0-9a-f-]{36}))?$/;

/** Take over the page of surveys. */
export async function start() {
  const root = /** @type {HTMLElement} */ (document.querySelector("[data-ls-survey]"));
  const data = JSON.parse(document.getElementById("survey-form")?.textContent ?? "");
  document.body.classList.add("ls-surveying");
  await new Surveys(root, data, await store.start()).start();
  document.documentElement.dataset.lsReady = "survey";
}

export class Surveys {
  /** @param {HTMLElement} root @param {{library: string, fields: Field[]}} data @param {{kept: boolean, why: string}} kept */
  constructor(root, data, kept) {
    this.root = root;
    this.fields = data.fields;
    this.library = data.library;
    this.kept = kept;
    this.list = h("div", {});
    this.tools = h("div", { class: "ls-start" });
    this.place = h("div", { class: "ls-survey" });
    this.status = h("p", { class: "ls-where", role: "status" });
    this.forward = button(message.next(), () => this.next(), { class: "ls-button ls-main" });
    this.another = button(message.add(), () => this.key && this.add(this.key));
    this.bar = h("div", { class: "ls-bar", role: "region", "aria-label": message.thisSurvey() }, this.status, h("div", { class: "ls-tools" }, this.another, this.forward));
    /** @type {SurveyView | OpeningView | null} */
    this.view = null;
    /** @type {Survey | null} */
    this.survey = null;
    this.hash = "";
    this.key = "";
    this.turn = 0;
    /** Whether the next view begins at its first open question. */
    this.ahead = false;
  }

  async start() {
    this.root.append(this.list, this.tools, this.place, this.bar);
    this.tools.append(this.newForm(), importBlock(this), await this.keeping(), button(message.printBlank(), () => this.print(), { class: "ls-button ls-quiet" }));
    addEventListener("hashchange", () => this.show());
    addEventListener("beforeprint", () => this.laySheet());
    addEventListener("pagehide", () => this.settle());
    document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && this.settle());
    store.onChange((key) => (!this.key || key === null || key === this.key) && this.show());
    await this.show();
  }

  /** Go to the list, to a survey or to an opening. @param {string} key @param {string} [opening] @param {boolean} [ahead] to its first open question */
  open(key, opening, ahead = false) {
    this.ahead = ahead;
    location.hash = key ? `s=${key}${opening ? `&o=${opening}` : ""}` : "";
  }

  /** Show what the address names, as it is stored now. */
  async show() {
    this.turn += 1;
    const { turn } = this;
    const hash = location.hash;
    const moved = hash !== this.hash;
    if (moved) await this.settle();
    const [, key = "", opening = ""] = PLACE.exec(hash) ?? [];
    const all = key ? null : await store.all();
    const survey = key ? await store.load(key) : null;
    if (turn !== this.turn) return;
    Object.assign(this, { hash, key, survey });
    this.list.hidden = this.tools.hidden = Boolean(key);
    this.place.hidden = this.bar.hidden = !key;
    document.body.classList.toggle("ls-has-bar", Boolean(key));
    if (all) this.showList(all);
    else this.showOne(key, opening, survey, moved);
  }

  /** @param {string} key @param {string} opening @param {Survey | null} survey @param {boolean} moved */
  showOne(key, opening, survey, moved) {
    if (moved || !this.view) {
      this.view = opening ? new OpeningView(this, key, opening) : new SurveyView(this, key);
      this.place.replaceChildren(this.view.element);
      fill(this.status, message.kept());
    }
    if (!survey || !this.view.show(survey)) {
      const words = survey ? message.openingGone() : message.surveyGone();
      this.bar.hidden = true;
      this.view = null;
      return this.place.replaceChildren(h("p", { class: "ls-warn" }, words), button(survey ? message.allOpenings() : message.allSurveys(), () => this.open(survey ? key : ""), { class: "ls-button ls-quiet" }));
    }
    const left = this.left(survey);
    this.forward.textContent = left ? message.nextLeft({ open: left }) : message.nothingOpen();
    if (!moved) return;
    scrollTo(0, 0);
    const ahead = this.ahead && this.view.next();
    this.ahead = false;
    if (!ahead) this.view.title.focus({ preventScroll: true });
    if (!ahead) this.root.scrollIntoView({ block: "start" });
  }

  /** How many questions of a survey are open. @param {Survey} survey */
  left({ survey, openings }) {
    const inner = openingFields(this.fields);
    return [open(this.fields, survey), ...openings.map((row) => open(inner, row))].flat().length;
  }

  /** @param {Survey[]} all */
  showList(all) {
    this.view = null;
    this.place.replaceChildren();
    const rows = all.sort((a, b) => (b.survey.data.surveyed ?? "9").localeCompare(a.survey.data.surveyed ?? "9") || (a.survey.key < b.survey.key ? -1 : 1)).map((one) => {
      const { data, filed, changed, key } = one.survey;
      const words = [data.surveyed, message.openings({ openings: one.openings.length }), openWords(this.left(one)), filed === changed ? message.inFile() : message.onlyHere()];
      return h("li", {}, h("a", { href: `#s=${key}` }, h("strong", {}, data.name || message.noName()), h("span", {}, words.filter(Boolean).join(" · "))));
    });
    fill(this.list, ...(rows.length ? [h("h2", {}, message.surveys()), h("ul", { class: "ls-rows" }, ...rows)] : [h("p", { class: "ls-none" }, message.none())]));
  }

  newForm() {
    const name = /** @type {Field} */ (this.fields.find((one) => one.name === "name"));
    const site = h("input", { type: "text", maxlength: name.high, required: true, autocomplete: "off" });
    const warning = h("p", { class: "ls-warn", role: "alert" });
    const texts = reader((said) => {
      warning.textContent = said;
    });
    const submit = async (/** @type {Event} */ event) => {
      event.preventDefault();
      const read = texts([site]);
      if (!read) return;
      if ([...read[0]].length < (name.low ?? 1)) warning.textContent = message.giveName();
      else if (await this.act(async () => this.open(await store.create({ name: read[0], surveyed: now().slice(0, 10) }, [], false)), warning)) site.value = "";
      await navigator.storage?.persist?.().catch(() => false);
    };
    return h("form", { class: "ls-new", submit }, h("h2", {}, message.start()), field(name.label, site, name.help), warning, h("button", { type: "submit", class: "ls-button ls-main" }, message.startSurvey()));
  }

  /** Where surveys are kept, and whether the browser promised to keep them. */
  async keeping() {
    const { kept, why } = this.kept;
    if (!kept) return h("p", { class: "ls-warn" }, message.refused({ why }));
    const firm = await navigator.storage?.persisted?.().catch(() => false);
    return h("p", { class: "ls-kept" }, firm ? message.keptPromised() : message.keptNotPromised());
  }

  /** Store an answer; whether it is stored. @param {string} key @param {string | null} opening @param {(row: any) => void} act */
  async save(key, opening, act) {
    return this.act(() => store.change(key, opening, (survey, row) => act(row ?? survey)));
  }

  /** Do what changes the store, and say how it went. @param {() => Promise<any>} work @param {HTMLElement} [place] @returns {Promise<boolean>} */
  async act(work, place = this.status) {
    fill(this.status, message.saving());
    try {
      await work();
      fill(this.status, this.kept.kept ? message.saved({ at: now().slice(11, 16) }) : message.notStored());
      return true;
    } catch (error) {
      fill(place, h("strong", { class: "ls-warn" }, store.inWords(error)), place === this.status && button(message.tryAgain(), () => this.settle(true), { class: "ls-button ls-quiet" }));
      return false;
    }
  }

  /** Store what was typed last. @param {boolean} [anew] */
  async settle(anew = false) {
    await Promise.all((this.view?.singles ?? []).filter((one) => one.dirty).map((one) => one.settle(anew)));
  }

  /** A new opening, empty. @param {string} key */
  add(key) {
    return this.act(async () => this.open(key, await store.addOpening(key, {}), true));
  }

  /** A new opening like another, which differs in what a copy cannot know. @param {string} key @param {string} opening */
  async copy(key, opening) {
    await this.settle();
    const row = (await store.load(key))?.openings.find((one) => one.key === opening);
    if (!row) return;
    const { id, spoken, ...data } = structuredClone(row.data);
    await this.act(async () => this.open(key, await store.addOpening(key, data, opening)));
  }

  /** @param {string} key @param {string} opening */
  async takeAway(key, opening) {
    if (await this.act(() => store.takeAway(key, opening))) this.open(key);
  }

  /** To the next question that is open, here or in the openings that follow. */
  async next() {
    await this.settle();
    if (!this.survey || this.view?.next()) return;
    const { openings } = this.survey;
    const inner = openingFields(this.fields);
    const here = this.view instanceof OpeningView ? openings.findIndex((row) => location.hash.endsWith(row.key)) : -1;
    const next = [...openings.slice(here + 1), ...openings.slice(0, here + 1)].find((row) => open(inner, row).length);
    if (next && !location.hash.endsWith(next.key)) this.open(this.key, next.key, true);
    else if (open(this.fields, this.survey.survey).length) this.open(this.key, "", true);
    else fill(this.status, message.allAnswered());
  }

  /** What printing prints: the survey that is open, or the blank sheet. */
  laySheet() {
    const blank = document.querySelector(".ls-blank")?.cloneNode(true);
    const paper = this.survey ? surveySheet(this.fields, this.survey, this.library) : h("section", { class: "ls-sheet" }, blank);
    laySheet(paper);
  }

  async print() {
    await this.settle();
    this.laySheet();
    print();
  }
}

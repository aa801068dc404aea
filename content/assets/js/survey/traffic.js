/** Surveys come in and go out: begun by name, brought in from a file, handed over as one. */
import { reader } from "../core/ask.js";
import { download, now } from "../core/dom.js";
import { traffic as message } from "../messages/survey.js";
import { codes } from "./codes.js";
import { fileOf, fileText, lookAt } from "./file.js";
import { ids } from "./naming.js";
import * as store from "./store.js";

/** @typedef {import("./model.js").Survey} Survey */

const MOST_BYTES = 5_000_000;
const JSON_TYPE = "application/json";

export class Traffic {
  /** @param {import("./survey.js").Surveys} page @param {import("./keeper.js").Keeper} keeper */
  constructor(page, keeper) {
    this.page = page;
    this.keeper = keeper;
    this.read = reader((warning) => this.warn(warning));
  }

  /** @param {string} warning */
  warn(warning) {
    this.page.set({ start: { ...this.page.state.start, warning } });
  }

  /** @param {string} name of a new survey, as far as it is typed */
  name(name) {
    this.page.set({ start: { name, warning: "" } });
  }

  /** Begin a survey. @param {HTMLInputElement} input for its name @param {number} least letters that it has to have */
  async begin(input, least) {
    const texts = this.read([input]);
    if (!texts) return;
    if ([...texts[0]].length < least) return this.warn(message.giveName());
    try {
      const key = await store.create({ name: texts[0], surveyed: now().slice(0, 10) }, [], false);
      this.page.set({ start: { name: "", warning: "" } });
      this.page.open(key);
    } catch (error) {
      return this.warn(store.inWords(error));
    }
    await navigator.storage?.persist?.().catch(() => false);
  }

  /** Look at a file, which is brought in by a second press. @param {File} file */
  async look(file) {
    const content = file.size > MOST_BYTES ? null : await file.text().catch(() => null);
    const found = content === null ? { fault: message.unreadable() } : lookAt(this.page.state.fields, content);
    if ("fault" in found) return this.page.set({ brought: { file: file.name, fault: found.fault } });
    const { data, openings, aside } = found;
    const twin = data.id !== undefined && (await store.all()).some(({ survey }) => survey.data.id === data.id);
    const suspect = [...new Set(codes(this.page.state.fields, { ...data, openings }))];
    return this.page.set({ brought: { file: file.name, data, openings, aside, twin, suspect } });
  }

  async bringIn() {
    const { brought } = this.page.state;
    if (!brought?.data) return;
    try {
      const key = await store.create(brought.data, brought.openings ?? [], true);
      this.leave();
      this.page.open(key);
    } catch (error) {
      this.page.set({ brought: { file: brought.file, fault: store.inWords(error) } });
    }
  }

  /** Leave the file that was looked at. */
  leave() {
    this.page.set({ brought: null });
  }

  /** The file of the survey as it is stored now. */
  async file() {
    await this.keeper.settle();
    const { fields } = this.page.state;
    const survey = /** @type {Survey} */ (this.page.state.survey);
    const { id } = fileOf(fields, survey);
    return { id, text: fileText(fields, survey), changed: survey.survey.changed, ids: ids(survey) };
  }

  async save() {
    const { id, text, changed, ids } = await this.file();
    const name = `${id}.json`;
    download(text, name, JSON_TYPE);
    this.page.set({ handed: { file: name, changed, ids }, told: "" });
  }

  async share() {
    const { id, text, changed, ids } = await this.file();
    const [type, ending] = /** @type {[string, string]} */ (sharing());
    const name = id + ending;
    try {
      await navigator.share({ files: [new File([text], name, { type })], title: name });
    } catch (error) {
      const left = /** @type {any} */ (error)?.name === "AbortError";
      return this.page.set({ told: left ? message.notShared() : message.shareRefused() });
    }
    this.page.set({ handed: { file: name, changed, ids } });
    return this.page.noteFiled();
  }
}

/** How the share sheet takes a file here: its type and ending; null where it takes none. @returns {[string, string] | null} */
export function sharing() {
  /** @type {[string, string][]} */
  const ways = [
    [JSON_TYPE, ".json"],
    ["text/plain", ".json.txt"],
  ];
  return (
    ways.find(([type, ending]) => navigator.canShare?.({ files: [new File(["{}"], `survey${ending}`, { type })] })) ??
    null
  );
}

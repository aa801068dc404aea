/** What a reader does with the firm's own figures. They are remembered on this device. */
import { download } from "../core/dom.js";
import { remember, remembered } from "../core/place.js";
import { houseActs as message } from "../messages/survey.js";
import { fromFile, houseText } from "./house.js";

const NAME = "house-rules";

/** What was typed before on this device. @returns {import("./house.js").Typed} */
export function typedBefore() {
  try {
    return JSON.parse(remembered(NAME)[0] ?? "{}");
  } catch {
    return {};
  }
}

export class HouseActs {
  /** @param {import("./survey.js").Surveys} page */
  constructor(page) {
    this.page = page;
  }

  /** The text of the file of house rules; empty where the firm has none of its own. */
  get text() {
    const { rules, house } = this.page.state;
    return houseText(rules, house);
  }

  /** @param {string} name @param {string} text */
  type(name, text) {
    this.take({ ...this.page.state.house, [name]: text });
  }

  /** @param {import("./house.js").Typed} house @param {string} [said] */
  take(house, said = "") {
    const typed = Object.fromEntries(Object.entries(house).filter(([, text]) => text.trim()));
    remember(NAME, [JSON.stringify(typed)]);
    this.page.set({ house: typed, houseSaid: said });
    this.page.planning.look();
  }

  save() {
    download(this.text, `${NAME}.json`, "application/json");
  }

  /** @param {File} file */
  async bring(file) {
    const found = fromFile(this.page.state.rules, await file.text().catch(() => ""));
    if ("fault" in found) this.page.set({ houseSaid: message.unchanged({ file: file.name, fault: found.fault }) });
    else this.take(found.typed, message.brought({ file: file.name, figures: Object.keys(found.typed).length }));
  }
}

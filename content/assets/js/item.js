/** One item of a checklist: its row, its three outcomes, and its reading where it has one. */
import { button, clock, fill, h } from "./dom.js";
import { judge, shown } from "./entries.js";
import { Reading } from "./reading.js";

export class Item {
  /** @param {HTMLElement} element @param {any} list the checklist it stands in */
  constructor(element, list) {
    this.element = element;
    this.list = list;
    this.id = element.dataset.item ?? "";
    this.words = element.dataset.words ?? "";
    this.only = (element.dataset.only ?? "").split(" ").filter(Boolean);
    this.box = /** @type {HTMLInputElement} */ (element.querySelector("input[type=checkbox]"));
    this.state = "open";
    /** @type {any[]} */
    this.heads = [];
    this.box.addEventListener("click", (event) => this.tap(event));
    this.outcome = h("div", { class: "ls-outcome" });
    this.asking = h("div", { class: "ls-asking" });
    this.other = button("Not done?", () => this.askOther(), { class: "ls-button ls-quiet" });
    element.querySelector(".ls-how")?.append(this.other);
    element.append(this.outcome, this.asking);
    const place = /** @type {HTMLElement | null} */ (element.querySelector(".ls-reading"));
    this.reading = place && new Reading(place, (outcome, reading, expected) => this.save(outcome, "", reading, expected), (reading, expected) => this.askWhy(reading, expected));
  }

  get isOpen() {
    return ["open", "changed", "differs"].includes(this.state);
  }

  get isAnswered() {
    return ["done", "not-applicable", "problem"].includes(this.state);
  }

  /** @param {import("./entries.js").Outcome | undefined} outcome @param {import("./visit-bar.js").Place} place */
  settle(outcome, place) {
    this.heads = outcome?.heads ?? [];
    const foreign = this.only.length > 0 && place.devices.length > 0 && !this.only.some((device) => place.devices.includes(device));
    if (!outcome) this.state = foreign ? "foreign" : "open";
    else if (this.heads.some((entry) => entry.words !== this.words)) this.state = "changed";
    else this.state = outcome.outcome;
    this.reading?.forDevices(place.devices, place.planned);
  }

  /** @param {boolean} skipped @param {boolean} held */
  render(skipped, held) {
    const drawn = JSON.stringify([this.state, skipped, held, this.heads.map((entry) => entry.id)]);
    if (drawn === this.drawn && this.box.checked === (this.state === "done")) return;
    this.drawn = drawn;
    this.element.dataset.state = this.state;
    this.element.classList.toggle("ls-skipped", skipped && this.isOpen);
    this.box.checked = this.state === "done";
    this.box.disabled = held;
    this.other.disabled = held;
    this.other.textContent = this.isAnswered && this.state !== "done" ? "Change" : "Not done?";
    const lines = this.heads.map((entry) => h("p", {}, line(entry)));
    if (this.state === "changed") lines.unshift(h("p", {}, h("strong", {}, "Open again: "), `this item reads otherwise now. It was: ${this.heads[0].words}`));
    if (this.state === "differs") lines.unshift(h("p", {}, h("strong", {}, "Open: "), "two entries do not agree. Look again, then choose."));
    if (this.state === "open" && skipped) lines.push(h("p", {}, h("strong", {}, "Skipped: still open.")));
    if (this.state === "foreign") lines.push(h("p", {}, "Not for the device at hand."));
    fill(this.outcome, ...lines);
  }

  /** A tap on the row: done, or done taken back. The box shows what is stored and nothing else. @param {Event} event */
  async tap(event) {
    event.preventDefault();
    if (this.busy || /** @type {MouseEvent} */ (event).detail > 1) return; // the second half of a double tap
    this.list.touched(this);
    if (this.state === "done") {
      await this.guarded(() => this.list.takeBack(this.heads.map((entry) => entry.id), "open", `Open again: ${this.words}.`));
    } else if (this.isAnswered) {
      this.list.said.textContent = "This item has an outcome already. Press Change to give it another.";
    } else if (this.reading) {
      this.list.said.textContent = "Type the reading first: it makes this item done.";
      this.reading.input.focus();
    } else await this.save("done", "");
  }

  /** @param {() => Promise<any>} work */
  async guarded(work) {
    this.busy = true;
    const slow = setTimeout(() => this.element.setAttribute("aria-busy", "true"), 200); // each attribute costs a frame
    await work().finally(() => {
      this.busy = false;
      clearTimeout(slow);
      this.element.removeAttribute("aria-busy");
    });
  }

  /** @param {string} outcome @param {string} note @param {any} [reading] @param {any} [expected] */
  async save(outcome, note, reading, expected) {
    const entry = {
      ...this.list.fields, item: this.id, words: this.words, outcome, after: this.heads.map((head) => head.id).slice(-50),
      ...(note && { note }), ...(reading && { reading }), ...(expected && { expected }),
    };
    const said = { done: "Done", problem: "Problem", "not-applicable": "Not applicable" }[outcome];
    this.list.touched(this);
    await this.guarded(async () => {
      if (!(await this.list.write([this.list.bar.draft("item", entry)], `${said}: ${this.words}.`))) return;
      this.asking.replaceChildren();
      this.reading?.clear();
    });
  }

  askOther() {
    if (this.asking.firstChild) return this.asking.replaceChildren();
    const again = () => this.guarded(() => this.list.takeBack(this.heads.map((entry) => entry.id), "open", `Open again: ${this.words}.`));
    this.asking.replaceChildren(h("div", { class: "ls-tools" },
      button("Problem", () => this.askText("What is the problem?", "Save as a problem", (text) => this.save("problem", text, ...this.typed()))),
      button("Not applicable", () => this.askText("Why does it not apply?", "Save as not applicable", (text) => this.save("not-applicable", text))),
      this.isAnswered && this.state !== "done" && button("Open again", again, { class: "ls-button ls-quiet" }),
      this.never()));
  }

  /** @param {string} words @param {string} press @param {(text: string) => Promise<any>} save */
  async askText(words, press, save) {
    const { ask } = await import("./ask.js");
    this.asking.replaceChildren(ask(words, press, save), this.never());
    this.asking.querySelector("input")?.focus();
  }

  /** The reading that stands in the box, to go with a problem. @returns {any[]} */
  typed() {
    const made = this.reading?.input.value ? this.reading.read() : null;
    return made ? [made.reading, made.expected] : [];
  }

  /** @param {any} reading @param {any} expected */
  askWhy(reading, expected) {
    return this.askText("Why does this reading hold here?", "Save as done", (text) => this.save("done", text, reading, expected));
  }

  never() {
    return button("Leave it", () => this.asking.replaceChildren(), { class: "ls-button ls-quiet" });
  }
}

/** What an entry says. @param {any} entry */
function line(entry) {
  const outcome = { done: "Done", problem: "Problem", "not-applicable": "Not applicable" }[/** @type {string} */ (entry.outcome)];
  const parts = [`${outcome}${entry.note ? `: ${entry.note}` : ""}`];
  if (entry.reading) {
    const verdict = judge(entry.reading, entry.expected);
    parts.push(`${shown(entry.reading)}${verdict ? `, ${verdict}: expected ${entry.expected.words}` : ""}`);
  }
  return `${parts.join(". ").replace(/[.]+$/, "")}. ${clock(entry.at)}${entry.by ? `, ${entry.by}` : ""}`;
}

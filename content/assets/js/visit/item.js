/** One item of a checklist: its row, its three outcomes, and its reading where it has one. */
import { button, clock, fill, h } from "../core/dom.js";
import { judge, shown } from "./entries.js";
import { Reading } from "./reading.js";

/**
 * @typedef {import("./entries.js").ItemEntry} ItemEntry
 * @typedef {import("./reading.js").Judged} Judged
 */

const OUTCOMES = { done: "Done", problem: "Problem", "not-applicable": "Not applicable" };

export class Item {
  /** @param {HTMLElement} element @param {import("./checklist.js").Checklist} list the checklist it stands in */
  constructor(element, list) {
    this.element = element;
    this.list = list;
    this.id = element.dataset.item ?? "";
    this.words = element.dataset.words ?? "";
    this.only = (element.dataset.only ?? "").split(" ").filter(Boolean);
    this.box = /** @type {HTMLInputElement} */ (element.querySelector("input[type=checkbox]"));
    /** @type {import("./entries.js").Outcome["outcome"] | "open" | "changed" | "foreign"} */
    this.state = "open";
    /** @type {ItemEntry[]} */
    this.heads = [];
    /** Whether something is being stored. */
    this.busy = false;
    /** What the row shows, in one text. */
    this.drawn = "";
    this.box.addEventListener("click", (event) => this.tap(event));
    this.outcome = h("div", { class: "ls-outcome" });
    this.asking = h("div", { class: "ls-asking" });
    this.other = button("Not done?", () => this.askOther(), { class: "ls-button ls-quiet" });
    element.querySelector(".ls-how")?.append(this.other);
    element.append(this.outcome, this.asking);
    const place = /** @type {HTMLElement | null} */ (element.querySelector(".ls-reading"));
    const save = (/** @type {"done" | "problem"} */ outcome, /** @type {Judged} */ judged) =>
      this.save(outcome, "", judged);
    this.reading = place && new Reading(place, save, (judged) => this.askWhy(judged));
  }

  get isOpen() {
    return ["open", "changed", "differs"].includes(this.state);
  }

  get isAnswered() {
    return ["done", "not-applicable", "problem"].includes(this.state);
  }

  /** @param {import("./entries.js").Outcome | undefined} outcome @param {import("./bar.js").Place} place */
  settle(outcome, place) {
    this.heads = outcome?.heads ?? [];
    const known = this.only.length > 0 && place.devices.length > 0;
    const foreign = known && !this.only.some((device) => place.devices.includes(device));
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
    fill(this.outcome, ...this.lines(skipped));
  }

  /** What is known of this item, line by line. @param {boolean} skipped */
  lines(skipped) {
    const lines = this.heads.map((entry) => h("p", {}, line(entry)));
    if (this.state === "changed") {
      const words = `this item reads otherwise now. It was: ${this.heads[0].words}`;
      lines.unshift(h("p", {}, h("strong", {}, "Open again: "), words));
    }
    if (this.state === "differs") {
      lines.unshift(h("p", {}, h("strong", {}, "Open: "), "two entries do not agree. Look again, then choose."));
    }
    if (this.state === "open" && skipped) lines.push(h("p", {}, h("strong", {}, "Skipped: still open.")));
    if (this.state === "foreign") lines.push(h("p", {}, "Not for the device at hand."));
    return lines;
  }

  /** Take back the outcome that stands. */
  openAgain() {
    const ids = this.heads.map((entry) => entry.id);
    return this.guarded(() => this.list.takeBack(ids, "open", `Open again: ${this.words}.`));
  }

  /** A tap on the row: done, or done taken back. The box shows what is stored and nothing else. @param {Event} event */
  async tap(event) {
    event.preventDefault();
    if (this.busy || /** @type {MouseEvent} */ (event).detail > 1) return; // the second half of a double tap
    this.list.touched(this);
    if (this.state === "done") await this.openAgain();
    else if (this.isAnswered) {
      this.list.said.textContent = "This item has an outcome already. Press Change to give it another.";
    } else if (this.reading) {
      this.list.said.textContent = "Type the reading first: it makes this item done.";
      this.reading.input.focus();
    } else await this.save("done", "");
  }

  /** @param {() => Promise<unknown>} work */
  async guarded(work) {
    this.busy = true;
    const slow = setTimeout(() => this.element.setAttribute("aria-busy", "true"), 200); // each attribute costs a frame
    await work().finally(() => {
      this.busy = false;
      clearTimeout(slow);
      this.element.removeAttribute("aria-busy");
    });
  }

  /** @param {import("./entries.js").Answer} outcome @param {string} note @param {Partial<Judged>} [judged] */
  async save(outcome, note, { reading, expected } = {}) {
    const entry = {
      ...this.list.fields,
      item: this.id,
      words: this.words,
      outcome,
      after: this.heads.map((head) => head.id).slice(-50),
      ...(note && { note }),
      ...(reading && { reading }),
      ...(expected && { expected }),
    };
    this.list.touched(this);
    await this.guarded(async () => {
      const draft = this.list.bar.draft({ kind: "item", ...entry });
      if (!(await this.list.write([draft], `${OUTCOMES[outcome]}: ${this.words}.`))) return;
      this.asking.replaceChildren();
      this.reading?.clear();
    });
  }

  askOther() {
    if (this.asking.firstChild) return this.asking.replaceChildren();
    const problem = () =>
      this.askText("What is the problem?", "Save as a problem", (text) => this.save("problem", text, this.typed()));
    const notApplicable = () =>
      this.askText("Why does it not apply?", "Save as not applicable", (text) => this.save("not-applicable", text));
    const again = button("Open again", () => this.openAgain(), { class: "ls-button ls-quiet" });
    const choices = [button("Problem", problem), button("Not applicable", notApplicable)];
    if (this.isAnswered && this.state !== "done") choices.push(again);
    this.asking.replaceChildren(h("div", { class: "ls-tools" }, ...choices, this.never()));
  }

  /** @param {string} words @param {string} press @param {(text: string) => Promise<void>} save */
  async askText(words, press, save) {
    const { ask } = await import("../core/ask.js");
    this.asking.replaceChildren(ask(words, press, save), this.never());
    this.asking.querySelector("input")?.focus();
  }

  /** The reading that stands in the box, to go with a problem. */
  typed() {
    return (this.reading?.input.value && this.reading.read()) || {};
  }

  /** @param {Judged} judged */
  askWhy(judged) {
    const save = (/** @type {string} */ text) => this.save("done", text, judged);
    return this.askText("Why does this reading hold here?", "Save as done", save);
  }

  never() {
    return button("Leave it", () => this.asking.replaceChildren(), { class: "ls-button ls-quiet" });
  }
}

/** What an entry says. @param {ItemEntry} entry */
function line({ outcome, note, reading, expected, at, by }) {
  const parts = [`${OUTCOMES[outcome]}${note ? `: ${note}` : ""}`];
  if (reading) {
    const verdict = judge(reading, expected);
    parts.push(`${shown(reading)}${verdict ? `, ${verdict}: expected ${expected?.words}` : ""}`);
  }
  return `${parts.join(". ").replace(/[.]+$/, "")}. ${clock(at)}${by ? `, ${by}` : ""}`;
}

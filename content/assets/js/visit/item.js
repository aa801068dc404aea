/** One item of a checklist: its row, its three outcomes, and its reading where it has one. */
import { clock, h } from "../core/dom.js";
import { button, quiet, tools } from "../core/parts.js";
import { item as message } from "../messages/visit.js";
import { html, nothing, render } from "../vendor/lit-html.js";
import { judge, shown } from "./entries.js";
import { Reading } from "./reading.js";

/**
 * @typedef {import("./entries.js").ItemEntry} ItemEntry
 * @typedef {import("./reading.js").Judged} Judged
 * @typedef {import("../core/parts.js").Part} Part
 */

/** Storing takes longer than usual after so many milliseconds, and is then said. */
const SLOW = 200;

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
    /** @type {Part | null} */
    this.asked = null;
    /** Whether something is being stored. */
    this.busy = false;
    /** What the row shows, in one text. */
    this.drawn = "";
    this.box.addEventListener("click", (event) => this.tap(event));
    // A tap on the row of a reading that is being typed is about that reading, and does not leave its field.
    element.querySelector(".ls-item")?.addEventListener("mousedown", (event) => {
      if (this.reading && document.activeElement === this.reading.input) event.preventDefault();
    });
    this.outcome = h("div", { class: "ls-outcome" });
    this.asking = h("div", { class: "ls-asking" });
    this.more = h("div", {});
    const fold = /** @type {HTMLDetailsElement} */ (element.querySelector(".ls-more"));
    fold.append(this.more);
    fold.before(this.outcome);
    fold.after(this.asking);
    fold.addEventListener("toggle", () => this.renderMore(fold.open));
    const place = /** @type {HTMLElement | null} */ (element.querySelector(".ls-reading"));
    const save = (/** @type {"done" | "problem"} */ outcome, /** @type {Judged} */ judged) =>
      this.save(outcome, "", judged);
    this.reading = place && new Reading(place, save, (judged) => this.askWhy(judged));
    this.open = false;
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
  }

  /** @param {boolean} skipped @param {boolean} held */
  render(skipped, held) {
    const drawn = `${this.state} ${skipped && this.isOpen} ${held} ${this.heads.map((entry) => entry.id).join(" ")}`;
    if (drawn === this.drawn) return;
    this.drawn = drawn;
    this.element.dataset.state = this.state;
    this.element.hidden = this.state === "foreign";
    this.element.classList.toggle("ls-skipped", skipped && this.isOpen);
    this.box.checked = this.state === "done";
    this.box.disabled = held;
    this.reading?.hold(held);
    render(this.lines(skipped), this.outcome);
    this.renderMore(this.open);
  }

  /** What stands under *More*, once that is open. @param {boolean} open */
  renderMore(open) {
    this.open = open;
    if (!open) return;
    const words = this.isAnswered && this.state !== "done" ? message.change() : message.notDone();
    const plain = this.isPlain ? html`<p>${line(this.heads[0])}</p>` : nothing;
    const ask = () => this.askOther();
    const other = html`
      ${plain}
      <button type="button" class="ls-button ls-quiet" ?disabled=${this.box.disabled} @click=${ask}>${words}</button>
    `;
    render(other, this.more);
  }

  /** Whether the tick says all that is to be said of the outcome; when and by whom stands under *More*. */
  get isPlain() {
    const [head] = this.heads;
    return this.state === "done" && this.heads.length === 1 && !head.note && !head.reading;
  }

  /** What is known of this item, line by line. @param {boolean} skipped */
  lines(skipped) {
    const { state } = this;
    if (this.isPlain) return nothing;
    const lead = (/** @type {string} */ words, more = "") => html`<p><strong>${words}</strong> ${more}</p>`;
    return [
      state === "changed" ? lead(message.again(), message.reworded({ words: this.heads[0].words })) : nothing,
      state === "differs" ? lead(message.open(), message.differs()) : nothing,
      this.heads.map((entry) => html`<p>${line(entry)}</p>`),
      state === "open" && skipped ? lead(message.skipped()) : nothing,
    ];
  }

  /** Take back the outcome that stands. */
  openAgain() {
    const ids = this.heads.map((entry) => entry.id);
    return this.guarded(() => this.list.takeBack(ids, "open", message.openedAgain({ words: this.words })));
  }

  /**
   * A tap on the row: done, or done taken back. Until it is stored the box shows a dash, which is no tick.
   * @param {Event} event
   */
  async tap(event) {
    event.preventDefault();
    if (this.busy || /** @type {MouseEvent} */ (event).detail > 1) return; // the second half of a double tap
    this.list.touched(this);
    if (this.state === "done") await this.openAgain();
    else if (this.isAnswered) {
      this.list.say(message.answered());
    } else if (this.reading) {
      if (await this.reading.keep()) return;
      this.list.say(message.readingFirst());
      this.reading.input.focus();
    } else await this.save("done", "");
  }

  /** @param {() => Promise<unknown>} work */
  async guarded(work) {
    this.busy = true;
    // After the click itself, for until it is over the browser keeps the box as it was.
    const dash = setTimeout(() => {
      this.box.indeterminate = this.busy;
    });
    const slow = setTimeout(() => this.list.say(message.storing({ words: this.words })), SLOW);
    await work().finally(() => {
      this.busy = false;
      clearTimeout(dash);
      clearTimeout(slow);
      this.box.indeterminate = false;
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
      if (!(await this.list.write([draft], message.stored({ outcome, words: this.words })))) return;
      if (this.asked) this.ask(null);
      this.reading?.clear();
    });
  }

  /** What is asked now, under the item; nothing where nothing is. @param {Part | null} asked */
  ask(asked) {
    this.asked = asked;
    if (this.reading) this.reading.explaining = false;
    render(asked, this.asking);
  }

  askOther() {
    if (this.asked) return this.ask(null);
    const problem = () =>
      this.askText(message.whichProblem(), message.saveProblem(), (text) => this.save("problem", text, this.typed()));
    const notApplicable = () =>
      this.askText(message.whyNot(), message.saveNotApplicable(), (text) => this.save("not-applicable", text));
    const again = this.isAnswered && this.state !== "done" && quiet(message.openAgain(), () => this.openAgain());
    const choices = [button(message.problem(), problem), button(message.notApplicable(), notApplicable)];
    this.ask(tools(...choices, again || null, this.never()));
  }

  /** @param {string} words @param {string} press @param {(text: string) => Promise<void>} save */
  async askText(words, press, save) {
    const { ask } = await import("../core/ask.js");
    this.ask(html`${ask(words, press, save)}${this.never()}`);
    if (this.reading) this.reading.explaining = true;
    this.asking.querySelector("input")?.focus();
  }

  /** The reading that stands in the box, to go with a problem. */
  typed() {
    return (this.reading?.input.value && this.reading.read()) || {};
  }

  /** @param {Judged} judged */
  askWhy(judged) {
    const save = (/** @type {string} */ text) => this.save("done", text, judged);
    return this.askText(message.whyHolds(), message.saveDone(), save);
  }

  never() {
    return quiet(message.leave(), () => this.ask(null));
  }
}

/** What an entry says. @param {ItemEntry} entry */
function line({ outcome, note, reading, expected, at, by }) {
  const parts = [note ? message.outcomeOf({ outcome, words: note }) : message.outcome({ outcome })];
  if (reading) {
    const verdict = judge(reading, expected);
    const read = shown(reading);
    parts.push(verdict ? message.judged({ reading: read, verdict, expected: expected?.words ?? "" }) : read);
  }
  return `${parts.join(". ").replace(/[.]+$/, "")}. ${clock(at)}${by ? `, ${by}` : ""}`;
}

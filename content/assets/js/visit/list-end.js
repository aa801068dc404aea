/** The end of a checklist: what is open, the last line once it is true, the file, paper, and starting anew. */
import { clock, h } from "../core/dom.js";
import { quiet, tools } from "../core/parts.js";
import { listEnd as message } from "../messages/visit.js";
import { html, nothing, render } from "../vendor/lit-html.js";

/**
 * @typedef {import("./entries.js").Run} Run
 * @typedef {import("./checklist.js").Checklist} Checklist
 */

export class ListEnd {
  /** @param {Checklist} list */
  constructor(list) {
    this.list = list;
    this.line = /** @type {HTMLElement} */ (document.querySelector(".ls-complete"));
    this.words = this.line.dataset.words ?? message.complete();
    this.finish = h("div", { class: "ls-finish" });
    this.rest = h("div", { class: "ls-anew" });
    this.line.after(this.finish, this.rest);
    /** What asks for the record once the last line is closed. @type {import("./record-file.js").Leaving | null} */
    this.leaving = null;
    /** What asks before a fresh start, once it is wanted. @type {HTMLElement | null} */
    this.asking = null;
    /** Whether it is asked for which device to print. */
    this.printing = false;
  }

  /** @param {Run} run @param {import("./bar.js").Place} place */
  render(run, place) {
    const { list } = this;
    const done = !list.open.length && run.complete.length > 0;
    this.line.hidden = !done;
    this.line.classList.toggle("ls-is-complete", done);
    this.line.classList.toggle("ls-blank", !run.items.size); // a fresh list is printed with its last line
    const problems = list.items.filter((item) => item.state === "problem").length;
    if (!done) this.leaving = null;
    render(done ? this.done(run, problems) : this.toDo(problems, Boolean(place.hold)), this.finish);
    render(this.tools(), this.rest);
  }

  /** The last line, closed as long as anything is open. @param {number} problems @param {boolean} held */
  toDo(problems, held) {
    const open = this.list.open.length;
    const press = () => this.list.declare(this.words);
    return html`
      <button type="button" class="ls-button ls-main" ?disabled=${open > 0 || held} @click=${press}>
        ${message.completeWith({ problems })}
      </button>
      <p>${open ? message.closed({ open }) : nothing}</p>
    `;
  }

  /** How it was closed, and the file. @param {Run} run @param {number} problems */
  done(run, problems) {
    if (!this.leaving) this.askForFile();
    const [{ at, by }] = run.complete;
    const words = by ? message.completedBy({ at: clock(at), by }) : message.completed({ at: clock(at) });
    const more = problems ? message.withProblems({ problems }) : "";
    const file = this.leaving?.template(this.list.bar.entries, this.list.bar.left);
    return html`<p class="ls-outcome">${words} ${more}</p>${file}`;
  }

  tools() {
    const anew = this.list.liveIds.length ? quiet(message.anew(), () => this.askAnew()) : null;
    const paper = quiet(message.print(), () => this.print());
    if (this.asking) return this.asking;
    if (!this.printing) return tools(paper, anew);
    return html`<p role="status">${message.printWhich()}</p>${tools(
      quiet(message.printAll(), () => print()),
      anew,
    )}`;
  }

  /** Print the list of one device; where none is chosen, lead to the choice first. */
  print() {
    this.printing = this.list.lacksDevice;
    this.list.render();
    if (!this.printing) return print();
    this.list.bar.ask();
  }

  /** Starting anew needs a second press. */
  async askAnew() {
    const { secondPress } = await import("../core/ask.js");
    const { openingName } = this.list.bar.place;
    const question = () => {
      const entries = this.list.liveIds.length;
      return openingName ? message.anewAskedOpening({ entries, opening: openingName }) : message.anewAsked({ entries });
    };
    const over = () => {
      this.asking = null;
      this.list.render();
    };
    this.asking = secondPress(message.anew(), question, message.anewSure(), () => this.list.reset(), over);
    this.list.render();
    this.asking.querySelector("button")?.click();
  }

  /** Once the list is complete, the record should leave the device. */
  async askForFile() {
    const { Leaving } = await import("./record-file.js");
    const { bar } = this.list;
    const changed = () => bar.load().then(() => this.list.render());
    this.leaving ??= new Leaving(bar.place.visit, this.list.list.library, () => this.list.render(), changed);
    await this.leaving.look();
    this.list.render();
  }

  /** Lead to the last line. */
  goThere() {
    this.finish.scrollIntoView({ block: "center" });
    this.finish.querySelector("button")?.focus({ preventScroll: true });
  }
}

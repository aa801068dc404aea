/** The guided run on the page of a fault: one check at a time, down to a remedy or to somebody named. */
import { button, fill, h } from "./dom.js";
import { readingBox } from "./fault-reading.js";
import { Recorder } from "./fault-record.js";
import { standing } from "./fault-steps.js";
import * as store from "./store.js";

/** @typedef {import("./fault-steps.js").Event} Event @typedef {import("./fault-steps.js").Standing} Standing */

const said = (/** @type {Element | null | undefined} */ element) => (element?.textContent ?? "").replace(/\s+/g, " ").trim();

/** Take over the guided run of this page. */
export async function start() {
  const root = /** @type {HTMLElement} */ (document.querySelector("[data-fault-run]"));
  const data = JSON.parse(document.getElementById("fault-data")?.textContent ?? "");
  const run = new Run(root, data, await store.open());
  await run.start();
  document.documentElement.dataset.lsReady = "fault";
}

class Run {
  /** @param {HTMLElement} root @param {any} data @param {{kept: boolean, why: string}} kept */
  constructor(root, data, kept) {
    this.data = data;
    this.key = `fault-run ${data.fault}`;
    /** @type {string | null} null: not asked yet; empty: not known */
    this.device = null;
    /** @type {Event[]} */
    this.events = [];
    this.record = new Recorder(data, root.dataset.visits ?? "./", kept, () => this.shownAt !== this.at && this.render());
    this.place = h("div", { class: "ls-find-step" });
    this.root = root;
    root.replaceChildren(this.place, this.record.element);
    /** What is still being stored; one thing after the other. @type {Promise<any>} */
    this.saving = Promise.resolve();
    /** @type {string | null} */
    this.shownAt = null;
  }

  async start() {
    await this.record.start();
    const kept = await store.recall(this.key).catch(() => null);
    const known = !kept?.device || this.data.listed.includes(kept.device);
    if (kept && known && Array.isArray(kept.events)) {
      this.device = kept.device;
      this.events = kept.events;
      const at = standing(this.problem, this.events);
      this.events = this.events.slice(0, at.events); // what an older library asked and this one does not
    }
    this.render();
  }

  get asksDevice() {
    return Object.keys(this.data.own).length > 0;
  }

  /** The device that counts: chosen here, or that of the opening of the visit. */
  get at() {
    const there = this.record.device;
    return this.device ?? (this.data.listed.includes(there) ? there : null);
  }

  get problem() {
    return this.data.own[this.at ?? ""] ?? this.data.any;
  }

  render() {
    this.shownAt = this.at;
    if (this.asksDevice && this.at === null && !this.events.length) return fill(this.place, ...this.deviceChoice());
    const at = standing(this.problem, this.events);
    const parts = at.kind === "check" ? this.check(at) : at.kind === "mend" ? this.mend(at) : this.end(at);
    fill(this.place, this.heading(at), ...this.putBack(at), ...parts);
  }

  deviceChoice() {
    const choose = (/** @type {string} */ id) => button(id ? this.data.devices[id] : "Not known, or another", () => this.keep([], id), { class: "ls-button ls-answer" });
    return [h("h3", { tabindex: "-1" }, "Which device?"), h("p", {}, "Some causes belong to one kind only."), ...[...this.data.listed, ""].map(choose)];
  }

  /** @param {Standing} at */
  heading(at) {
    const words = at.kind === "end" ? (at.why === "gone" ? "The fault is gone" : at.why === "go" ? "It is another fault" : "Pass it on") : `${at.kind === "mend" ? "Mend" : "Check"} ${this.events.length + 1}`;
    const device = this.at ? `On: ${this.data.devices[this.at]}. ` : "";
    const count = at.left.length;
    const more = at.kind === "end" ? "" : `${count} ${count === 1 ? "cause is" : "causes are"} possible, about ${Math.max(1, Math.round(at.minutes))} min expected from here.`;
    return h("div", {}, h("h3", { tabindex: "-1" }, words), (device || more) && h("p", { class: "ls-needs" }, device, more));
  }

  /** @param {Standing} at */
  putBack(at) {
    const lines = new Set(at.putBack.map((id) => said(document.querySelector(`#check-${id} > .ls-restore`)).replace(/^Put back:\s*/, "")));
    return [...lines].map((line) => h("p", { class: "ls-restore" }, h("span", {}, "Put back first: "), line));
  }

  /** @param {Standing} at */
  check(at) {
    const shown = /** @type {HTMLElement} */ (document.getElementById(`check-${at.id}`));
    const measured = /** @type {HTMLElement | null} */ (shown.querySelector("[data-expect]"));
    const reading = measured && readingBox(measured.dataset.expect ?? "", this.at ?? "");
    const results = this.problem.checks.find((/** @type {any} */ check) => check.id === at.id).results;
    const words = [...shown.querySelectorAll(".ls-results > dt")].map(said);
    const answers = results.map((/** @type {any} */ result, /** @type {number} */ index) => button(words[index], () => this.answer({ do: "check", id: at.id, result: result.id }, { words: said(shown.querySelector(".ls-do")), note: words[index], ...reading?.read() }), { class: "ls-button ls-answer" }));
    const ready = at.setUp.map((id) => this.data.needs[id]).join(", ");
    const copies = copied(shown, (part) => !part.matches(".ls-results, .ls-restore"));
    return [ready && h("p", { class: "ls-ready" }, h("strong", {}, "Make ready: "), ready), ...copies, reading?.element, h("p", { class: "ls-ask-what" }, h("strong", {}, "What do you see?")), ...answers, this.tools(at)];
  }

  /** @param {Standing} at */
  mend(at) {
    const shown = remedy(at.id);
    const name = this.cause(at.id);
    const gone = (/** @type {boolean} */ yes) => button(yes ? "The fault is gone" : "Still there", () => this.answer({ do: "mend", id: at.id, gone: yes }, { words: name, note: yes ? "Mended, and the proof holds." : "Mended, and the fault is still there: ruled out." }), { class: "ls-button ls-answer" });
    return [h("p", { class: "ls-do" }, name), ...copied(shown, () => true), h("p", { class: "ls-ask-what" }, h("strong", {}, "Prove it. What do you see?")), gone(true), gone(false), this.tools(at)];
  }

  /** @param {Standing} at */
  tools(at) {
    const cannot = () => (at.kind === "check"
      ? this.answer({ do: "cannot", id: at.id }, { words: said(document.querySelector(`#check-${at.id} .ls-do`)), note: "Could not be done." })
      : this.answer({ do: "pass", id: at.id }, { words: this.cause(at.id), note: "Likely, but could not be mended here." }));
    return h("div", { class: "ls-tools" },
      this.events.length > 0 && button("Back", () => this.back(), { class: "ls-button ls-quiet" }),
      button("Can't do this one", cannot, { class: "ls-button ls-quiet" }),
      button("Something else", () => this.answer({ do: "else", id: "" }, null), { class: "ls-button ls-quiet" }));
  }

  /** @param {Standing} at */
  end(at) {
    const tools = h("div", { class: "ls-tools" }, button("Back", () => this.back(), { class: "ls-button ls-quiet" }), button("Start anew", () => this.keep([], null), { class: "ls-button" }));
    if (at.why === "gone") return [h("p", { class: "ls-do" }, `It was: ${this.cause(at.id)}.`), ...this.prevention(at.id), ...this.told(at), tools];
    if (at.why === "go") return [h("p", { class: "ls-do" }, "Go on with: ", h("a", { href: `../${at.id}/#find` }, this.data.faults[at.id] ?? at.id)), ...this.told(at), tools];
    const kit = [...(document.querySelector("[data-escalate]")?.children ?? [])].map((part) => part.cloneNode(true));
    const pass = kit.findIndex((part) => said(/** @type {Element} */ (part)) === "Pass it to");
    if (pass >= 0) kit[pass + 1].textContent = this.who(at);
    const why = { "does-not-fit": "That answer fits no cause that is left.", "none-left": "Every known cause is ruled out.", "not-ours": "What is left is work for a licensed electrician.", pass: `Likely: ${this.cause(at.id)}.` };
    return [h("p", { class: "ls-do" }, /** @type {any} */ (why)[at.why] ?? "The plan ends here."), h("dl", { class: "ls-kit" }, ...kit), ...this.told(at), tools];
  }

  /** Who it is passed on to, by name. @param {Standing} at @returns {string} */
  who(at) {
    const mender = this.problem.causes.find((/** @type {any} */ cause) => cause.id === at.id)?.who;
    const to = at.why === "not-ours" ? "electrician" : at.why === "pass" && mender !== "technician" ? mender : this.data.to;
    return this.data.who[to];
  }

  /** What was ruled out, left out and is still possible, for who comes next. @param {Standing} at */
  told(at) {
    const list = (/** @type {string} */ title, /** @type {string[]} */ lines) => (lines.length ? [h("p", {}, h("strong", {}, title)), h("ul", {}, ...lines.map((line) => h("li", {}, line)))] : []);
    const possible = ["gone", "pass"].includes(at.why) ? [] : at.left.map((id) => this.cause(id));
    return [...list("Ruled out", at.ruledOut.map((id) => this.cause(id))), ...list("Not checked", at.cannot.map((id) => said(document.querySelector(`#check-${id} .ls-do`)))), ...list("Still possible", possible)];
  }

  /** The step that prevents a cause. @param {string} id */
  prevention(id) {
    const title = [...(remedy(id)?.querySelectorAll("dt") ?? [])].find((part) => said(part) === "Prevented by");
    const link = title?.nextElementSibling?.firstElementChild?.cloneNode(true);
    return link ? [h("p", {}, "Prevented by: ", link)] : [];
  }

  /** @param {string} id */
  cause(id) {
    return said(document.getElementById(`cause-${id}`));
  }

  /** @param {Event} event @param {{words: string, note: string, reading?: any, expected?: any} | null} what */
  answer(event, what) {
    const events = [...this.events, event];
    const at = standing(this.problem, events);
    const items = what ? [{ item: `${["check", "cannot"].includes(event.do) ? "check" : "cause"}-${event.id}`, outcome: outcomeOf(event), ...what }] : [];
    let end = at.kind === "end" ? "The fault is gone." : "";
    if (at.kind === "end" && at.why !== "gone") {
      end = at.why === "go" ? `It is another fault: ${this.data.faults[at.id]}.` : `Passed on to: ${this.who(at)}.`;
      const ruled = at.ruledOut.map((id) => this.cause(id)).join("; ");
      if (at.why !== "go") items.push({ item: "passed-on", outcome: "problem", words: end, note: ruled ? `Ruled out: ${ruled}.` : "Nothing is ruled out yet." });
    }
    this.keep(events, this.at, async () => Object.assign(event, await this.record.write(items, end)));
  }

  back() {
    const last = this.events.at(-1);
    this.keep(this.events.slice(0, -1), this.device, async () => last && this.record.takeBack(last));
  }

  /** Show the run, and keep it on this device once `first` is done. @param {Event[]} events @param {string | null} device @param {() => Promise<any>} [first] */
  keep(events, device, first) {
    this.events = events;
    this.device = device;
    this.render();
    this.place.querySelector("h3")?.focus({ preventScroll: true });
    this.place.scrollIntoView({ block: "start" });
    delete this.root.dataset.kept;
    this.saving = this.saving.then(first).then(() => store.remember(this.key, { device: this.device, events: this.events })).catch(() => {}).then(() => {
      this.root.dataset.kept = String(this.events.length);
    });
  }
}

/** @param {Event} event */
const outcomeOf = (event) => (event.do === "check" || event.gone ? "done" : event.do === "pass" ? "problem" : "not-applicable");

/** @param {string} id */
const remedy = (id) => document.querySelector(`[data-cause="${id}"]`);

/** Copies of parts of the page, without their ids. @param {Element | null} from @param {(part: Element) => boolean} wanted */
function copied(from, wanted) {
  const copies = [...(from?.children ?? [])].filter(wanted).map((part) => /** @type {Element} */ (part.cloneNode(true)));
  for (const part of copies.flatMap((copy) => [copy, ...copy.querySelectorAll("[id]")])) part.removeAttribute("id");
  return copies;
}

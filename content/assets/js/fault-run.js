/** The guided run on the page of a fault: one check at a time, down to a remedy or to somebody named. */
import { button, count, fill, h } from "./dom.js";
import { narrow, readingBox } from "./fault-reading.js";
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
    /** Where the run that is shown is kept. */
    this.key = "";
    /** @type {string | null} null: not asked yet; empty: not known */
    this.device = null;
    /** @type {Event[]} */
    this.events = [];
    this.record = new Recorder(data, root.dataset.visits ?? "./", kept, () => this.moved());
    this.place = h("div", { class: "ls-find-step" });
    this.root = root;
    root.replaceChildren(this.place, this.record.element);
    /** Whether an answer is being stored: the next tap waits for the next step. */
    this.busy = false;
    /** What could not be stored, in words. */
    this.lost = "";
    /** @type {string | null} */
    this.shownAt = null;
  }

  async start() {
    await this.record.start();
    await this.load();
  }

  /** Each opening of a visit has a run of its own; without a visit there is one. */
  get runKey() {
    return `fault-run ${this.data.fault}${this.record.where}`;
  }

  /** The place to write to has changed: show the run of that place. */
  async moved() {
    if (!this.key || this.busy) return;
    if (this.key !== this.runKey) await this.load();
    else if (this.shownAt !== this.at) this.render();
  }

  /** Take up the run of the place at hand. */
  async load() {
    const key = (this.key = this.runKey);
    const kept = await store.recall(key).catch(() => null);
    if (key !== this.key) return;
    const known = !kept?.device || this.data.listed.includes(kept.device);
    [this.device, this.events] = kept && known && Array.isArray(kept.events) ? [kept.device, kept.events] : [null, []];
    const at = standing(this.problem, this.events);
    this.events = this.events.slice(0, at.events); // what an older library asked and this one does not
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
    return this.data.problems[this.data.own[this.at ?? ""]] ?? this.data.any;
  }

  render() {
    this.shownAt = this.at;
    if (this.asksDevice && this.at === null && !this.events.length) return fill(this.place, ...this.deviceChoice());
    const at = standing(this.problem, this.events);
    const parts = at.kind === "check" ? this.check(at) : at.kind === "mend" ? this.mend(at) : this.end(at);
    fill(this.place, this.lost && h("p", { class: "ls-warn", role: "alert" }, this.lost), this.heading(at), ...this.putBack(at), ...parts, this.soFar());
    if (at.kind !== "end") this.planAhead([...this.events, { do: at.kind === "check" ? "cannot" : "skip", id: at.id }]);
  }

  /** Work out, while nothing else is to do, how it goes on if this one cannot be done. @param {Event[]} events */
  planAhead(events) {
    const { problem } = this;
    (window.requestIdleCallback ?? setTimeout)(() => standing(problem, events));
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
    for (const copy of copies) if (copy.dataset.expect) narrow(copy, copy.dataset.expect, this.at ?? "");
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
      : this.answer({ do: "skip", id: at.id }, { words: this.cause(at.id), note: "Likely, but could not be mended here." }));
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
    const why = { "does-not-fit": "That answer fits no cause that is left.", "none-left": "Every known cause is ruled out.", "not-ours": "What is left is work for a licensed electrician.", "not-here": "What is left could not be mended here.", pass: `Likely: ${this.cause(at.id)}.` };
    return [h("p", { class: "ls-do" }, /** @type {any} */ (why)[at.why] ?? "The plan ends here."), h("dl", { class: "ls-kit" }, ...kit), ...this.told(at), tools];
  }

  /** Who it is passed on to, by name. @param {Standing} at @returns {string} */
  who(at) {
    const of = at.why === "pass" ? [at.id] : at.why === "not-here" ? at.skipped.filter((id) => at.left.includes(id)) : [];
    const menders = new Set(this.problem.causes.filter((/** @type {any} */ cause) => of.includes(cause.id)).map((/** @type {any} */ cause) => cause.who));
    const mender = menders.size === 1 ? [...menders][0] : "technician"; // of several, the one who sees to all of it
    return this.data.who[at.why === "not-ours" ? "electrician" : mender === "technician" ? this.data.to : mender];
  }

  /** What was ruled out, left out and is still possible, for who comes next. @param {Standing} at */
  told(at) {
    const list = (/** @type {string} */ title, /** @type {string[]} */ lines) => (lines.length ? [h("p", {}, h("strong", {}, title)), h("ul", {}, ...lines.map((line) => h("li", {}, line)))] : []);
    const possible = ["gone", "pass"].includes(at.why) ? [] : at.left.map((id) => `${this.cause(id)}${at.skipped.includes(id) ? " (could not be mended here)" : ""}`);
    return [...list("Ruled out", at.ruledOut.map((id) => this.cause(id))), ...list("Not checked", at.cannot.map((id) => said(document.querySelector(`#check-${id} .ls-do`)))), ...list("Still possible", possible)];
  }

  /** What was answered up to here, as long as it is of this library. */
  soFar() {
    const lines = this.events.map(({ do: what, id, result, gone }) => {
      if (what === "mend") return [this.cause(id), gone ? "the fault is gone" : "still there, ruled out"];
      if (what === "skip" || what === "pass") return [this.cause(id), "could not be mended here"];
      if (what === "else") return ["Something else", "the plan was left"];
      const shown = document.getElementById(`check-${id}`);
      const at = this.problem.checks.find((/** @type {any} */ one) => one.id === id)?.results.findIndex((/** @type {any} */ one) => one.id === result);
      return [said(shown?.querySelector(".ls-do")), what === "cannot" ? "could not be done" : said(shown?.querySelectorAll(".ls-results > dt")[at])];
    });
    if (!lines.length) return null;
    return h("details", { class: "ls-so-far" }, h("summary", {}, `So far: ${count(lines.length, "step")}`), h("ol", {}, ...lines.map(([asked, seen]) => h("li", {}, asked, " → ", h("strong", {}, seen)))));
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
    return this.keep(events, this.at, async () => Object.assign(event, await this.record.write(items, end)));
  }

  back() {
    const last = this.events.at(-1);
    return this.keep(this.events.slice(0, -1), this.device, async () => last && this.record.takeBack(last));
  }

  /** Store what `first` writes and the run, then show it. @param {Event[]} events @param {string | null} device @param {() => Promise<any>} [first] */
  async keep(events, device, first) {
    if (this.busy) return;
    this.busy = true;
    this.place.setAttribute("aria-busy", "true");
    delete this.root.dataset.kept;
    this.lost = "";
    try {
      await first?.();
      await store.remember(this.key, { device, events });
    } catch (error) {
      this.lost = `${store.inWords(error)} The run goes on, and is lost when this page is left.`;
    }
    this.busy = false;
    [this.events, this.device] = [events, device];
    this.render();
    this.place.removeAttribute("aria-busy");
    this.place.querySelector("h3")?.focus({ preventScroll: true });
    this.place.scrollIntoView({ block: "start" });
    this.root.dataset.kept = String(events.length);
  }
}

/** @param {Event} event */
const outcomeOf = (event) => (event.do === "check" || event.gone ? "done" : ["pass", "skip"].includes(event.do) ? "problem" : "not-applicable");

/** @param {string} id */
const remedy = (id) => document.querySelector(`[data-cause="${id}"]`);

/** Copies of parts of the page, without their ids. @param {Element | null} from @param {(part: Element) => boolean} wanted */
function copied(from, wanted) {
  const copies = [...(from?.children ?? [])].filter(wanted).map((part) => /** @type {Element} */ (part.cloneNode(true)));
  for (const part of copies.flatMap((copy) => [copy, ...copy.querySelectorAll("[id]")])) part.removeAttribute("id");
  return copies;
}

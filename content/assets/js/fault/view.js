/** What the guided run shows: the check or remedy at hand, or the end, in the words that stand on the page. */
import { button, h } from "../core/dom.js";
import { around } from "../core/message.js";
import { view as message } from "../messages/fault.js";
import { narrow, readingBox } from "./reading.js";

/**
 * @typedef {import("./run.js").Run} Run
 * @typedef {import("./steps.js").Event} Event
 * @typedef {import("./steps.js").Standing} Standing
 * @typedef {import("../core/dom.js").Child} Child
 */

const QUIET = { class: "ls-button ls-quiet" };
const ANSWER = { class: "ls-button ls-answer" };

/** The text of a part of the page. @param {Element | null | undefined} element */
const said = (element) => (element?.textContent ?? "").replace(/\s+/g, " ").trim();

/** The words of a cause. @param {string} id */
export const cause = (id) => said(document.getElementById(`cause-${id}`));

/** What a check tells to do. @param {string} id */
const toDo = (id) => said(document.querySelector(`#check-${id} .ls-do`));

/** @param {string} id */
const remedy = (id) => document.querySelector(`[data-cause="${id}"]`);

const asked = (/** @type {string} */ words) => h("p", { class: "ls-ask-what" }, h("strong", {}, words));

/**
 * Copies of parts of the page, without their ids.
 * @param {Element | null} from @param {(part: Element) => boolean} wanted
 */
function copied(from, wanted) {
  const copies = [...(from?.children ?? [])]
    .filter(wanted)
    .map((part) => /** @type {Element} */ (part.cloneNode(true)));
  for (const part of copies.flatMap((copy) => [copy, ...copy.querySelectorAll("[id]")])) part.removeAttribute("id");
  return copies;
}

/** @param {Run} run */
export function deviceChoice(run) {
  const { devices, listed } = run.data;
  const choices = [...listed, ""].map((id) =>
    button(id ? devices[id] : message.noDevice(), () => run.keep([], id), ANSWER),
  );
  const title = h("h3", { tabindex: "-1" }, message.whichDevice());
  return [title, h("p", {}, message.someCauses()), ...choices];
}

/** The step at hand. @param {Run} run @param {Standing} at @returns {Child[]} */
export function step(run, at) {
  const parts = { check, mend, end }[at.kind](run, at);
  return [heading(run, at), ...putBack(at), ...parts, soFar(run)];
}

/** @param {Run} run @param {Standing} at */
function title(run, at) {
  const number = run.events.length + 1;
  if (at.kind !== "end") return at.kind === "mend" ? message.fix({ number }) : message.check({ number });
  if (at.why === "gone") return message.gone();
  return at.why === "go" ? message.another() : message.pass();
}

/** @param {Run} run @param {Standing} at */
function heading(run, at) {
  const device = run.at ? `${message.on({ device: run.data.devices[run.at] })} ` : "";
  const minutes = Math.max(1, Math.round(at.minutes));
  const more = at.kind === "end" ? "" : message.causes({ causes: at.left.length, minutes });
  const words = h("h3", { tabindex: "-1" }, title(run, at));
  return h("div", {}, words, (device || more) && h("p", { class: "ls-needs" }, device, more));
}

/** @param {Standing} at */
function putBack(at) {
  const restored = at.putBack.map((id) => said(document.querySelector(`#check-${id} > .ls-restore`)));
  const lines = new Set(restored.map((words) => words.replace(message.putBackLabel(), "").trim()));
  return [...lines].map((line) => h("p", { class: "ls-restore" }, h("span", {}, message.putBack()), ` ${line}`));
}

/** The check of a problem. @param {Run} run @param {string} id */
const checkOf = (run, id) => run.problem.checks.find((one) => one.id === id);

/** @param {Run} run @param {Standing} at @returns {Child[]} */
function check(run, at) {
  const { id } = at;
  const shown = /** @type {HTMLElement} */ (document.getElementById(`check-${id}`));
  const device = run.at ?? "";
  /** @type {HTMLElement | null} */
  const measured = shown.querySelector("[data-expect]");
  const reading = measured && readingBox(measured.dataset.expect ?? "", device);
  const words = [...shown.querySelectorAll(".ls-results > dt")].map(said);
  const answers = (checkOf(run, id)?.results ?? []).map((result, index) => {
    const found = () => ({ words: toDo(id), note: words[index], ...reading?.read() });
    return button(words[index], () => run.answer({ do: "check", id, result: result.id }, found()), ANSWER);
  });
  const ready = at.setUp.map((need) => run.data.needs[need]).join(", ");
  const copies = copied(shown, (part) => !part.matches(".ls-results, .ls-restore"));
  for (const copy of copies) {
    if (copy instanceof HTMLElement && copy.dataset.expect) narrow(copy, copy.dataset.expect, device);
  }
  return [
    ready && h("p", { class: "ls-ready" }, h("strong", {}, message.ready()), ` ${ready}`),
    ...copies,
    reading?.element,
    asked(message.whatSeen()),
    ...answers,
    tools(run, at),
  ];
}

/** @param {Run} run @param {Standing} at @returns {Child[]} */
function mend(run, at) {
  const { id } = at;
  const words = cause(id);
  const gone = { words, note: message.fixed() };
  const still = { words, note: message.fixedStill() };
  return [
    h("p", { class: "ls-do" }, words),
    ...copied(remedy(id), () => true),
    asked(message.prove()),
    button(message.gone(), () => run.answer({ do: "mend", id, gone: true }, gone), ANSWER),
    button(message.stillThere(), () => run.answer({ do: "mend", id, gone: false }, still), ANSWER),
    tools(run, at),
  ];
}

/** @param {Run} run @param {Standing} at */
function tools(run, { kind, id }) {
  const cannot = () =>
    kind === "check"
      ? run.answer({ do: "cannot", id }, { words: toDo(id), note: message.couldNot() })
      : run.answer({ do: "skip", id }, { words: cause(id), note: message.couldNotFix() });
  return h(
    "div",
    { class: "ls-tools" },
    run.events.length > 0 && button(message.back(), () => run.back(), QUIET),
    button(message.cannot(), cannot, QUIET),
    button(message.else(), () => run.answer({ do: "else", id: "" }, null), QUIET),
  );
}

/** @param {Run} run @param {Standing} at @returns {Child[]} */
function end(run, at) {
  const back = button(message.back(), () => run.back(), QUIET);
  const anew = button(message.anew(), () => run.keep([], null));
  const last = [...told(at), h("div", { class: "ls-tools" }, back, anew)];
  if (at.why === "gone") {
    return [h("p", { class: "ls-do" }, message.itWas({ cause: cause(at.id) })), ...prevention(at.id), ...last];
  }
  if (at.why === "go") {
    const other = h("a", { href: `../${at.id}/#find` }, run.data.faults[at.id] ?? at.id);
    return [h("p", { class: "ls-do" }, ...around(message.goOn, { fault: other })), ...last];
  }
  const why = at.why === "pass" ? message.likely({ cause: cause(at.id) }) : message.why(at);
  return [h("p", { class: "ls-do" }, why), h("dl", { class: "ls-kit" }, ...kit(run, at)), ...last];
}

/** What the page says of passing on, with the name of who it goes to. @param {Run} run @param {Standing} at */
function kit(run, at) {
  const parts = copied(document.querySelector("[data-escalate]"), () => true);
  const pass = parts.findIndex((part) => said(part) === message.passTo());
  if (pass >= 0) parts[pass + 1].textContent = passedTo(run, at);
  return parts;
}

/** The causes that somebody else has to mend. @param {Standing} at */
function othersWork(at) {
  if (at.why === "pass") return [at.id];
  return at.why === "not-here" ? at.skipped.filter((id) => at.left.includes(id)) : [];
}

/** Who it is passed on to, by name. @param {Run} run @param {Standing} at @returns {string} */
export function passedTo(run, at) {
  const { who, to } = run.data;
  if (at.why === "not-ours") return who.electrician;
  const work = othersWork(at);
  const menders = new Set(run.problem.causes.filter(({ id }) => work.includes(id)).map((one) => one.who));
  const mender = menders.size === 1 ? [...menders][0] : "technician"; // of several, the one who sees to all of it
  return who[mender === "technician" ? to : mender];
}

/** @param {string} words @param {string[]} lines */
function listed(words, lines) {
  if (!lines.length) return [];
  return [h("p", {}, h("strong", {}, words)), h("ul", {}, ...lines.map((line) => h("li", {}, line)))];
}

/** What was ruled out, left out and is still possible, for who comes next. @param {Standing} at */
function told(at) {
  const left = ["gone", "pass"].includes(at.why) ? [] : at.left;
  const named = (/** @type {string} */ id) =>
    at.skipped.includes(id) ? message.notFixedHere({ cause: cause(id) }) : cause(id);
  return [
    ...listed(message.ruledOut(), at.ruledOut.map(cause)),
    ...listed(message.notChecked(), at.cannot.map(toDo)),
    ...listed(message.possible(), left.map(named)),
  ];
}

/**
 * What was done and what was seen, in words.
 * @param {Run} run @param {Event} event
 * @returns {[asked: string, seen: string]}
 */
function eventWords(run, { do: what, id, result, gone }) {
  if (what === "mend") return [cause(id), gone ? message.seenGone() : message.seenStill()];
  if (what === "skip" || what === "pass") return [cause(id), message.seenNotFixed()];
  if (what === "else") return [message.else(), message.seenElse()];
  if (what === "cannot") return [toDo(id), message.seenCannot()];
  const at = checkOf(run, id)?.results.findIndex((one) => one.id === result) ?? -1;
  return [toDo(id), said(document.querySelectorAll(`#check-${id} .ls-results > dt`)[at])];
}

/** What was answered up to here, as long as it is of this library. @param {Run} run */
function soFar(run) {
  if (!run.events.length) return null;
  const lines = run.events.map((event) => eventWords(run, event));
  const rows = lines.map(([words, seen]) => h("li", {}, words, " → ", h("strong", {}, seen)));
  const summary = h("summary", {}, message.soFar({ steps: lines.length }));
  return h("details", { class: "ls-so-far" }, summary, h("ol", {}, ...rows));
}

/** The step that prevents a cause. @param {string} id */
function prevention(id) {
  const titles = [...(remedy(id)?.querySelectorAll("dt") ?? [])];
  const title = titles.find((part) => said(part) === message.preventedBy());
  const link = title?.nextElementSibling?.firstElementChild?.cloneNode(true);
  return link ? [h("p", {}, ...around(message.prevented, { step: link }))] : [];
}

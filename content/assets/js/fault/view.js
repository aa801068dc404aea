/** What the guided run shows, as a function of its state: a step, a question about an answer, or the end. */
import { button, quiet, tools } from "../core/parts.js";
import { view as message } from "../messages/fault.js";
import { html, nothing } from "../vendor/lit-html.js";
import { shown } from "../visit/entries.js";
import { end } from "./end.js";
import { expectedIn, narrow, readingBox } from "./reading.js";
import { cause, checkPart, copied, expectations, remedyPart, results, said, toDo } from "./words.js";

/**
 * @typedef {import("./run.js").Run} Run
 * @typedef {import("./steps.js").Event} Event
 * @typedef {import("./steps.js").Standing} Standing
 * @typedef {import("../core/parts.js").Part} Part
 */

/** An answer to tap. @param {string} words @param {() => unknown} press @param {boolean} [chosen] */
function answer(words, press, chosen = false) {
  const once = (/** @type {MouseEvent} */ event) => event.detail > 1 || press(); // not the second half of a double tap
  return html`
    <button type="button" class="ls-button ls-answer" aria-pressed=${chosen ? "true" : nothing} @click=${once}>
      ${words}
    </button>
  `;
}

const asked = (/** @type {string} */ words) => html`<p class="ls-ask-what"><strong>${words}</strong></p>`;

/** @param {string} words */
export const title = (words) => html`<h3 tabindex="-1">${words}</h3>`;

/** What the run shows. @param {Run} run */
export function shownOf(run) {
  if (!run.begun) return html`<p>${button(message.find(), () => run.begin(), "ls-main ls-lead")}</p>`;
  if (run.asksDevice) return deviceChoice(run);
  const lost = run.lost ? html`<p class="ls-warn" role="alert">${run.lost}</p>` : nothing;
  const dropped = run.dropped ? html`<p role="status">${message.dropped({ steps: run.dropped })}</p>` : nothing;
  const { opened } = run;
  if (opened) return html`${lost}${openedStep(run, opened)}${soFar(run)}`;
  const at = run.standing;
  const parts = at.kind === "end" ? end(run, at) : step(run, at);
  return html`${lost}${dropped}${heading(run, at)}${putBack(at)}${parts}${soFar(run)}`;
}

/** @param {Run} run */
function deviceChoice(run) {
  const { devices, listed } = run.data;
  const choices = [...listed, ""].map((id) => answer(id ? devices[id] : message.noDevice(), () => run.choose(id)));
  return html`${title(message.whichDevice())}<p>${message.someCauses()}</p>${choices}`;
}

/** @param {Run} run @param {Standing} at */
function heading(run, at) {
  const device = run.at ? `${message.on({ device: run.data.devices[run.at] })} ` : "";
  const minutes = Math.max(1, Math.round(at.minutes));
  const more = at.kind === "end" ? "" : message.causes({ causes: at.left.length, minutes });
  const about = device || more ? html`<p class="ls-needs">${device}${more}</p>` : nothing;
  return html`<div>${title(titleOf(run, at))}${about}</div>`;
}

/** @param {Run} run @param {Standing} at */
function titleOf(run, at) {
  const number = run.events.length + 1;
  if (at.kind !== "end") return at.kind === "mend" ? message.fix({ number }) : message.check({ number });
  if (at.why === "gone") return message.gone();
  return at.why === "go" ? message.another() : message.pass();
}

/** @param {Standing} at */
function putBack(at) {
  const restored = at.putBack.map((id) => said(document.querySelector(`#check-${id} > .ls-restore`)));
  const lines = new Set(restored.map((words) => words.replace(message.putBackLabel(), "").trim()));
  return [...lines].map((line) => html`<p class="ls-restore"><span>${message.putBack()}</span> ${line}</p>`);
}

/** The step at hand. @param {Run} run @param {Standing} at */
function step(run, at) {
  const ready = at.setUp.map((need) => run.data.needs[need]).join(", ");
  const first = ready ? html`<p class="ls-ready"><strong>${message.ready()}</strong> ${ready}</p>` : nothing;
  const cannot = () => run.answer({ do: at.kind === "check" ? "cannot" : "skip", id: at.id });
  const others = tools(
    run.events.length ? quiet(message.back(), () => run.back()) : null,
    quiet(message.cannot(), cannot),
    quiet(message.else(), () => run.answer({ do: "else", id: "" })),
  );
  return html`${first}${at.kind === "check" ? check(run, at.id) : mend(run, at.id)}${others}`;
}

/** A step that was done, to be answered anew. @param {Run} run @param {Event} event */
function openedStep(run, event) {
  const parts = ["check", "cannot"].includes(event.do) ? check(run, event.id, event) : mend(run, event.id, event);
  return html`
    ${title(message.again({ number: (run.changing ?? 0) + 1 }))}
    ${parts}
    ${tools(quiet(message.leave(), () => run.open(null)))}
  `;
}

/** @param {Run} run @param {string} id @param {Event} [before] how it was answered */
function check(run, id, before) {
  const device = run.at ?? "";
  const wanted = (/** @type {Element} */ part) => !part.matches(".ls-results, .ls-restore");
  const copies = copied(`${id} ${device}`, checkPart(id), wanted, (part) => narrow(part, expectations(id), device));
  const figures = run.figures(id);
  const box = figures ? readingBox(figures, run.typed[id], (typed) => run.type(id, typed)) : nothing;
  return html`${copies}${box}${run.doubt?.id === id ? question(run) : answers(run, id, before)}`;
}

/** @param {Run} run @param {string} id @param {Event} [before] */
function answers(run, id, before) {
  const words = results(id);
  const fitting = run.answersOf(id);
  const choices = fitting.map(({ index, result }) =>
    answer(words[index], () => run.tap(id, result), before?.do === "check" && before.result === result),
  );
  const all = fitting.length < words.length ? quiet(message.allAnswers(), () => run.showAll()) : nothing;
  return html`${asked(message.whatSeen())}${choices}${all}`;
}

/** An answer that what was typed contradicts, or that says a reading is right which nobody took. @param {Run} run */
function question(run) {
  const { id, result, why, reads } = /** @type {import("./run.js").Question} */ (run.doubt);
  const words = results(id)[run.answerNumber(id, result)];
  const read = run.read(id);
  const again = (/** @type {string} */ shows) => answer(shows, () => run.typeAgain());
  if (why === "unread" || !read) {
    const cannot = answer(message.notRead(), () => run.answer({ do: "cannot", id }));
    return html`<div role="alert">${asked(message.unread({ answer: words }))}</div>${again(message.typeIt())}${cannot}`;
  }
  const expected = expectedIn(run.figures(id) ?? [], read.reading.unit);
  const reading = shown(read.reading);
  const ways = [
    answer(message.readingRight({ reading }), () => run.trust()),
    reads === "inside"
      ? again(message.typeAgain({ answer: words }))
      : answer(message.answerRight({ answer: words }), () => run.settle(id, result, null)),
  ];
  return html`<div role="alert">${asked(message.which({ reading, expected }))}</div>${ways}`;
}

/** @param {Run} run @param {string} id @param {Event} [before] */
function mend(run, id, before) {
  const told = (/** @type {boolean} */ gone) => () => run.answer({ do: "mend", id, gone });
  return html`
    <p class="ls-do">${cause(id)}</p>
    ${copied(`remedy ${id}`, remedyPart(id), () => true)}
    ${asked(message.prove())}
    ${answer(message.gone(), told(true), before?.gone === true)}
    ${answer(message.stillThere(), told(false), before?.gone === false)}
  `;
}

/**
 * What was done and what was seen, in words.
 * @param {Run} run @param {Event} event
 * @returns {[asked: string, seen: string]}
 */
function eventWords(run, { do: what, id, result, gone, reading }) {
  if (what === "mend") return [cause(id), gone ? message.seenGone() : message.seenStill()];
  if (what === "skip" || what === "pass") return [cause(id), message.seenNotFixed()];
  if (what === "else") return [message.else(), message.seenElse()];
  if (what === "cannot") return [toDo(id), message.seenCannot()];
  const answered = results(id)[run.answerNumber(id, result ?? "")] ?? "";
  if (reading) return [toDo(id), message.seenRead({ answer: answered, reading: shown(reading) })];
  const unread = run.data.reads[id]?.[result ?? ""] === "inside";
  return [toDo(id), unread ? message.seenUnread({ answer: answered }) : answered];
}

/** What was answered up to here: each step can be opened and answered anew. @param {Run} run */
function soFar(run) {
  if (!run.events.length) return nothing;
  const rows = run.events.map((event, number) => {
    const [words, seen] = eventWords(run, event);
    const open = ["check", "cannot", "mend", "skip"].includes(event.do)
      ? tools(quiet(message.change({ number: number + 1 }), () => run.open(number)))
      : nothing;
    return html`<li>${words} → <strong>${seen}</strong>${open}</li>`;
  });
  return html`
    <details class="ls-so-far">
      <summary>${message.soFar({ steps: rows.length })}</summary>
      <ol>${rows}</ol>
    </details>
  `;
}

/** The end of a guided run: what it was or who goes on, what they have to know, and what comes next on this visit. */
import { around } from "../core/message.js";
import { linkRow, quiet, tools } from "../core/parts.js";
import { end as message } from "../messages/fault.js";
import { html, nothing } from "../vendor/lit-html.js";
import { cause, copied, remedyPart, said, toDo } from "./words.js";

/**
 * @typedef {import("./run.js").Run} Run
 * @typedef {import("./steps.js").Standing} Standing
 */

/** @param {Run} run @param {Standing} at */
export function end(run, at) {
  const last = tools(
    quiet(message.back(), () => run.back()),
    quiet(message.anew(), () => run.anew()),
  );
  return html`${told(run, at)}${at.why === "go" ? nothing : next(run, at)}${left(at)}${last}`;
}

/** @param {Run} run @param {Standing} at */
function told(run, at) {
  if (at.why === "gone") {
    const step = preventedBy(at.id);
    const prevented = step ? html`<p>${around(message.prevented, { step })}</p>` : nothing;
    return html`<p class="ls-do">${message.itWas({ cause: cause(at.id) })}</p>${prevented}`;
  }
  if (at.why === "go") {
    const fault = html`<a href="../${at.id}/#find">${run.data.faults[at.id] ?? at.id}</a>`;
    return html`<p class="ls-do">${around(message.goOn, { fault })}</p>`;
  }
  const why = at.why === "pass" ? message.likely({ cause: cause(at.id) }) : message.why(at);
  return html`<p class="ls-do">${why}</p>${kit(run, at)}`;
}

/** The step that prevents a cause. @param {string} id */
function preventedBy(id) {
  const titles = [...(remedyPart(id)?.querySelectorAll("dt") ?? [])];
  const link = titles.find((part) => said(part) === message.preventedBy())?.nextElementSibling?.firstElementChild;
  return link instanceof HTMLAnchorElement ? html`<a href=${link.href}>${said(link)}</a>` : null;
}

/** Who it is passed on to, what they are told and how it is left. @param {Run} run @param {Standing} at */
function kit(run, at) {
  const rows = copied("escalate", document.querySelector("[data-escalate]"), () => true);
  const to = rows.findIndex((part) => said(part) === message.passTo());
  const rest = rows.slice(to + 2); // before it stands when to stop, which claims readings that this run may not have
  return html`<dl class="ls-kit"><dt>${message.passTo()}</dt><dd>${passedTo(run, at)}</dd>${rest}</dl>`;
}

/** What comes next on this visit: prove it, write it down, go off test. @param {Run} run @param {Standing} at */
function next(run, at) {
  const { prove, offTest, visits } = run.links;
  const { visit, loose, name } = run.record.bar.place;
  const rows = [
    at.why === "gone" && prove && linkRow(prove, message.proveIt(), message.proveWhy()),
    loose
      ? linkRow(visits, message.write(), message.writeNone())
      : linkRow(`${visits}#v=${visit}`, message.write(), message.written({ visit: name })),
    offTest && linkRow(offTest, message.offTest(), message.offTestWhy()),
  ];
  return html`<p class="ls-ask-what"><strong>${message.next()}</strong></p><ul class="ls-rows">${rows.filter(Boolean)}</ul>`;
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
  if (!lines.length) return nothing;
  return html`<p><strong>${words}</strong></p><ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>`;
}

/** What was ruled out, left out and is still possible, for who comes next. @param {Standing} at */
function left(at) {
  const open = ["gone", "pass"].includes(at.why) ? [] : at.left;
  const named = (/** @type {string} */ id) =>
    at.skipped.includes(id) ? message.notFixedHere({ cause: cause(id) }) : cause(id);
  return html`
    ${listed(message.ruledOut(), at.ruledOut.map(cause))}
    ${listed(message.notChecked(), at.cannot.map(toDo))}
    ${listed(message.possible(), open.map(named))}
  `;
}

/** What a run says in the record of a visit: of each step, and of its end. */
import { findings as message } from "../messages/fault.js";
import { passedTo } from "./end.js";
import { standing } from "./steps.js";
import { cause, results, toDo } from "./words.js";

/**
 * @typedef {import("./run.js").Run} Run
 * @typedef {import("./steps.js").Event} Event
 * @typedef {import("./steps.js").Standing} Standing
 * @typedef {import("./record.js").Found} Found
 * @typedef {import("./record.js").Finding} Finding
 */

/** What a step found; nothing where the run was only left. @param {Run} run @param {Event} event @returns {Finding[]} */
export function findingsOf(run, event) {
  const found = foundBy(run, event);
  const about = ["check", "cannot"].includes(event.do) ? "check" : "cause";
  return found ? [{ item: `${about}-${event.id}`, outcome: outcomeOf(event), ...found }] : [];
}

/** @param {Run} run @param {Event} event @returns {Found | null} */
function foundBy(run, { do: what, id, result, gone, reading, expected }) {
  if (what === "check") {
    const note = results(id)[run.answerNumber(id, result ?? "")] ?? "";
    return { words: toDo(id), note, ...(reading && { reading }), ...(expected && { expected }) };
  }
  if (what === "cannot") return { words: toDo(id), note: message.couldNot() };
  if (what === "skip") return { words: cause(id), note: message.couldNotFix() };
  if (what === "mend") return { words: cause(id), note: gone ? message.fixed() : message.fixedStill() };
  return null;
}

/** What an event is in the record. @param {Event} event @returns {import("./record.js").Answer} */
function outcomeOf(event) {
  if (event.do === "check" || event.gone) return "done";
  return event.do === "pass" || event.do === "skip" ? "problem" : "not-applicable";
}

/**
 * How the run ends after these steps, and what is passed on with it; nothing where it goes on.
 * @param {Run} run @param {Event[]} events
 * @returns {{words: string, items: Finding[]} | null}
 */
export function endOf(run, events) {
  const at = standing(run.problem, events);
  if (at.kind !== "end") return null;
  const words = endWords(run, at);
  if (["gone", "go"].includes(at.why)) return { words, items: [] };
  const ruled = at.ruledOut.map(cause).join("; ");
  const note = ruled ? message.ruledOut({ causes: ruled }) : message.noneRuledOut();
  return { words, items: [{ item: "passed-on", outcome: "problem", words, note }] };
}

/** @param {Run} run @param {Standing} at */
function endWords(run, at) {
  if (at.why === "gone") return message.gone();
  if (at.why === "go") return message.another({ fault: run.data.faults[at.id] });
  return message.passedOn({ who: passedTo(run, at) });
}

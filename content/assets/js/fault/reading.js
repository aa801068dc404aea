/** The reading of a check in the guided run: judged as it is typed, kept with the answer. */
import { h, inBoth } from "../core/dom.js";
import { around, listed } from "../core/message.js";
import { button, choice, labelled, tools } from "../core/parts.js";
import { reading as message } from "../messages/fault.js";
import { html, nothing } from "../vendor/lit-html.js";
import { figuresOf, judge, readingOf, shown } from "../visit/entries.js";

/**
 * @typedef {import("../visit/reading.js").Figure} Figure
 * @typedef {import("../visit/reading.js").Judged} Judged
 * @typedef {{text: string, over: boolean, unit: string}} Typed what stands in the box
 * @typedef {Judged & {verdict: "inside" | "outside" | null}} Read null: it fits one of several figures, or none is known
 */

/**
 * What a reading is judged against on a device.
 * @param {string} expectations as JSON @param {string} device the device at hand, where it is known
 */
export const figuresFor = (expectations, device) =>
  figuresOf(expectations).filter((one) => !one.device || !device || one.device === device);

/**
 * Of the figures typical of several devices, leave that of the device at hand.
 * @param {Element} copy of the measure @param {string} expectations as JSON @param {string} device
 */
export function narrow(copy, expectations, device) {
  const own = figuresOf(expectations).filter((one) => one.device && one.device === device);
  const words = copy.querySelector(".ls-expect");
  const [reading, typical] = (words?.textContent ?? "").split(`${message.typical()} `);
  if (!words || !typical || !own.length) return;
  const each = own.flatMap(({ both, words: alone }) => ["; ", both ? inBoth(both) : alone]).slice(1);
  words.replaceChildren(...around(message.typicalOf, { reading, figures: h("span", {}, ...each) }));
}

/** @param {Figure[]} figures */
const unitsOf = (figures) => [...new Set(figures.flatMap((figure) => figure.scales.map((scale) => scale.unit)))];

/** @param {Figure[]} figures @param {Typed | undefined} typed @returns {Typed} */
const inBox = (figures, typed) => typed ?? { text: "", over: false, unit: unitsOf(figures)[0] ?? "" };

/** Whether anything was typed. @param {Typed | undefined} typed */
export const isTyped = (typed) => Boolean(typed && (typed.over || typed.text.trim()));

/** What the figures expect, in short and in one unit. @param {Figure[]} figures @param {string} unit */
export function expectedIn(figures, unit) {
  const ranges = figures.flatMap(({ scales }) => scales.find((scale) => scale.unit === unit)?.ranges ?? []);
  return listed([...new Set(ranges.map(rangeWords))], "disjunction");
}

/** @param {import("../visit/entries.js").Range} range */
function rangeWords({ low, high }) {
  const [least, most] = [low, high].map((value) => (value === undefined ? "" : shown({ value, unit: "" })));
  if (least && most) return message.range({ low: least, high: most });
  return least ? message.least({ low: least }) : message.most({ high: most });
}

/**
 * What was read, and how it is judged; null where nothing sensible was typed.
 * @param {Figure[]} figures @param {Typed | undefined} typed
 * @returns {Read | null}
 */
export function readOf(figures, typed) {
  const { text, over, unit } = inBox(figures, typed);
  const reading = readingOf(text, over, unit);
  if (!reading) return null;
  const fitting = figures.flatMap(({ words, device, scales }) => {
    const scale = scales.find((one) => one.unit === unit);
    return scale ? [{ words, unit, ranges: scale.ranges, ...(device && { device }) }] : [];
  });
  const inside = fitting.filter((one) => judge(reading, one) === "inside");
  if (fitting.length === 1) return { reading, expected: fitting[0], verdict: inside.length ? "inside" : "outside" };
  if (inside.length) return { reading, expected: inside[0], verdict: null };
  // of several figures none is the one that was meant, so none goes into the record
  return { reading, verdict: fitting.length ? "outside" : null };
}

/**
 * The box for a reading, with its verdict.
 * @param {Figure[]} figures @param {Typed | undefined} typed @param {(typed: Typed) => void} change
 */
export function readingBox(figures, typed, change) {
  const box = inBox(figures, typed);
  const units = unitsOf(figures);
  const type = (/** @type {Event} */ event) =>
    change({ ...box, over: false, text: /** @type {HTMLInputElement} */ (event.target).value });
  const input = html`
    <input id="ls-run-reading" type="text" inputmode="decimal" autocomplete="off" .value=${box.text} @input=${type}>
  `;
  const unit = (/** @type {string} */ value) => change({ ...box, unit: value });
  return html`
    <div class="ls-reading">
      ${labelled("ls-run-reading", message.reading(), input)}
      ${tools(
        units.length > 1
          ? choice(
              "ls-run-unit",
              message.unit(),
              units.map((one) => [one, one]),
              box.unit,
              unit,
            )
          : nothing,
        units.some((one) => one.endsWith("\u03a9"))
          ? button(message.overRange(), () => change({ ...box, text: "", over: true }))
          : nothing,
      )}
      ${verdict(readOf(figures, box), box, figures)}
    </div>
  `;
}

/** @param {Read | null} read @param {Typed} box @param {Figure[]} figures */
function verdict(read, box, figures) {
  const kind = read && (read.expected ? judge(read.reading, read.expected) : read.verdict);
  const expected = read?.expected?.words ?? (kind ? expectedIn(figures, box.unit) : "");
  return html`<p class="ls-verdict ls-is-${kind ?? "read"}" role="status">${words(read, kind, expected, box)}</p>`;
}

/** @param {Read | null} read @param {"inside" | "outside" | null} kind @param {string} expected @param {Typed} box */
function words(read, kind, expected, box) {
  if (!read) return box.text.trim() ? message.noNumber() : "";
  const title = kind ? { inside: message.inside(), outside: message.outside() }[kind] : message.read();
  const reading = shown(read.reading);
  return html`<strong>${title}</strong> ${expected ? message.expected({ reading, expected }) : reading}`;
}

/** The one script of every page: looks at what the page holds and loads what that needs. */

const holds = (/** @type {string} */ chosen) => document.querySelector(chosen);

if (holds("[data-ls-checklist]")) import("./checklist.js").then(({ start }) => start());
if (holds("[data-ls-visits]")) import("./visits.js").then(({ start }) => start());
if (holds("[data-ls-survey]")) import("./survey.js").then(({ start }) => start());
if (holds("[data-fault-run]")) import("./fault-run.js").then(({ start }) => start());
if (holds("[data-figure]")) import("./calculator.js");
import("./strip.js").then(({ start }) => start());

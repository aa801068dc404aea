/** The one script of every page: looks at what the page holds and loads what that needs, the tool of the page first. */

const PATIENCE = 3000;
const TOOLS = {
  ".ls-fold, .ls-was": "core/folds",
  "[data-ls-checklist]": "visit/checklist",
  "[data-ls-visits]": "visit/visits",
  "[data-ls-survey]": "survey/survey",
  "[data-fault-run]": "fault/run",
  "[data-ls-continue]": "visit/go-on",
};

const holds = (/** @type {string} */ chosen) => document.querySelector(chosen);

/** @param {string} name */
const begin = async (name) => (await import(`./${name}.js`)).start();

/** The script of the theme, which the page names and does not load. */
function theme() {
  const later = /** @type {HTMLElement | null} */ (holds("[data-ls-later]"));
  if (later) document.body.append(Object.assign(document.createElement("script"), { src: later.dataset.lsLater }));
}

const tools = Object.entries(TOOLS)
  .filter(([chosen]) => holds(chosen))
  .map(([, name]) => begin(name));
if (holds("[data-figure]")) tools.push(import("./figure/calculator.js"));
const long = new Promise((done) => tools.length && setTimeout(done, PATIENCE));
Promise.race([Promise.allSettled(tools), long]).then(() => {
  begin("finder/start");
  begin("strip");
  begin("region");
  theme();
});
for (const tool of tools) tool.catch((error) => reportError(error));

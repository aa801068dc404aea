/** The one script of every page: looks at what the page holds and loads what that needs, the tool of the page first. */

const PATIENCE = 3000;
const TOOLS = {
  "[data-ls-narrow]": "entries/entries",
  ".ls-fold, .ls-was": "core/folds",
  "[data-ls-checklist]": "visit/checklist",
  "[data-ls-visits]": "visit/visits",
  "[data-ls-survey]": "survey/survey",
  "[data-fault-run]": "fault/run",
  "[data-ls-continue]": "visit/go-on",
  "[data-ls-components]": "maintain/components",
};

const holds = (/** @type {string} */ chosen) => document.querySelector(chosen);

/** @param {string} name */
const begin = async (name) => (await import(`./${name}.js`)).start();

const scope = new URL("../../", import.meta.url).pathname;

/** What the script of the theme remembers things with. Each page would bring it along; the build takes it out there. */
const remembering = {
  /** @param {string} text */
  __md_hash: (text) => [...text].reduce((hash, sign) => (hash << 5) - hash + sign.charCodeAt(0), 0),
  /** @param {string} key */
  __md_get: (key, store = localStorage) => JSON.parse(store.getItem(`${scope}.${key}`) ?? "null"),
  /** @param {string} key @param {unknown} value */
  __md_set(key, value, store = localStorage) {
    try {
      store.setItem(`${scope}.${key}`, JSON.stringify(value));
    } catch {} // a full or forbidden storage remembers nothing
  },
};

/** The script of the theme, which the page names and does not load. */
function theme() {
  Object.assign(window, remembering);
  const later = /** @type {HTMLElement | null} */ (holds("[data-ls-later]"));
  if (later) document.body.append(Object.assign(document.createElement("script"), { src: later.dataset.lsLater }));
}

const tools = Object.entries(TOOLS)
  .filter(([chosen]) => holds(chosen))
  .map(([, name]) => begin(name));
if (holds("[data-figure]")) tools.push(import("./figure/calculator.js"));
const long = new Promise((done) => tools.length && setTimeout(done, PATIENCE));
Promise.race([Promise.allSettled(tools), long]).then(() => {
  for (const name of ["finder/start", "strip", "region"])
    begin(name).catch((error) => navigator.onLine && reportError(error)); // a page is whole without them
  theme();
});
holds(".ls-tell")?.addEventListener("toggle", () => begin("report/report"), { once: true });
for (const tool of tools) tool.catch((error) => reportError(error));

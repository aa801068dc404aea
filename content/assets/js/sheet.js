/** The printed sheet of a visit: every list that was run, open items marked, readings with what they were judged against. */
import { clock, h } from "./dom.js";
import { judge, shown } from "./entries.js";

const MARKS = { done: "Done", "not-applicable": "Not applicable", problem: "PROBLEM", differs: "OPEN: entries differ" };

/**
 * How a list stands in a run.
 * @param {any} list @param {import("./entries.js").Run | undefined} run @param {string[]} devices
 */
export function standing(list, run, devices) {
  const asked = list.items.filter((/** @type {any} */ item) => run?.items.has(item.id) || !item.only || !devices.length || item.only.some((/** @type {string} */ device) => devices.includes(device)));
  const rows = asked.map((/** @type {any} */ item) => {
    const outcome = run?.items.get(item.id);
    const reworded = outcome?.heads.some((/** @type {any} */ entry) => entry.words !== item.words);
    const state = !outcome || reworded ? "open" : outcome.outcome === "differs" ? "differs" : outcome.outcome;
    return { item, state, heads: outcome?.heads ?? [] };
  });
  const known = new Set(list.items.map((/** @type {any} */ item) => item.id));
  for (const [id, outcome] of run?.items ?? []) {
    if (!known.has(id)) rows.push({ item: { id, words: /** @type {any} */ (outcome.heads[0]).words, gone: true }, state: outcome.outcome, heads: outcome.heads });
  }
  const open = rows.filter((/** @type {any} */ row) => row.state === "open" || row.state === "differs");
  const problems = rows.filter((/** @type {any} */ row) => row.state === "problem");
  return { rows, open, problems, started: Boolean(run?.items.size), complete: !open.length && Boolean(run?.complete.length) };
}

/** What was read and noted. @param {any} entry */
export function findingsOf(entry) {
  const parts = [];
  if (entry.reading) {
    const verdict = judge(entry.reading, entry.expected);
    parts.push(`${shown(entry.reading)}${verdict ? ` – ${verdict}, expected ${entry.expected.words}` : ""}`);
  }
  if (entry.note) parts.push(entry.note);
  return parts.join(". ");
}

/** @param {ReturnType<import("./entries.js").view>} seen @param {any} data what the page knows of the library @param {string} library */
export function sheet(seen, data, library) {
  const { visit, openings, runs, notes } = seen;
  const paper = h("section", { class: "ls-sheet" }, h("h2", {}, visit ? visit.site : "Lists run without a visit"));
  if (visit) paper.append(h("p", {}, `${visit.date}${visit.who ? ` · ${visit.who}` : ""}`));
  for (const [key, run] of runs) {
    const [id, opening] = key.split("|");
    const list = data.checklists.find((/** @type {any} */ one) => one.id === id) ?? { id, name: /** @type {any} */ ([...run.items.values()][0]?.heads[0] ?? run.complete[0]).list_name, items: [] };
    const device = openings.get(opening)?.device;
    const state = standing(list, run, device ? [device] : []);
    if (!state.started && !run.complete.length) continue;
    const head = h("tr", {}, ...["", "Item", "Reading, note", "Time, by"].map((words) => h("th", { scope: "col" }, words)));
    const rows = state.rows.map(({ item, state: mark, heads }) => h("tr", { class: mark === "open" || mark === "differs" ? "ls-open" : "" },
      h("td", {}, /** @type {Record<string, string>} */ (MARKS)[mark] ?? "☐ OPEN"), h("td", {}, item.words),
      h("td", {}, heads.map(findingsOf).filter(Boolean).join(" / ")), h("td", {}, heads.map((/** @type {any} */ entry) => `${clock(entry.at)} ${entry.by}`).join(" / "))));
    const end = state.complete ? `Complete, ${clock(run.complete[0].at)} ${run.complete[0].by}` : `NOT COMPLETE: ${state.open.length} open`;
    paper.append(h("h3", {}, `${list.name}${opening ? `: ${openings.get(opening)?.name ?? "an opening"}` : ""}`), h("table", {}, h("thead", {}, head), h("tbody", {}, ...rows)), h("p", { class: "ls-end" }, end));
  }
  if (notes.length) paper.append(h("h3", {}, "Notes"), h("ul", {}, ...notes.map((/** @type {any} */ note) => h("li", {}, `${openings.get(note.opening)?.name ? `${openings.get(note.opening).name}: ` : ""}${note.note} (${clock(note.at)} ${note.by})`))));
  paper.append(h("p", { class: "ls-sign-line" }, "Name, date, signature: "), h("p", {}, `Library ${library}. Printed ${new Date().toLocaleString()}.`));
  return paper;
}

/** Lay a sheet ready: from now on, printing prints it and nothing else; without one, the page again. @param {HTMLElement | null} paper */
export function laySheet(paper) {
  document.querySelector("body > .ls-sheet")?.remove();
  document.body.classList.toggle("ls-printing", Boolean(paper));
  if (paper) document.body.append(paper);
}

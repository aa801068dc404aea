/** The words of a fault, as its page has them: the run says them again, and never in other words. */

/** The text of a part of the page. @param {Element | null | undefined} element */
export const said = (element) => (element?.textContent ?? "").replace(/\s+/g, " ").trim();

/** The words of a cause. @param {string} id */
export const cause = (id) => said(document.getElementById(`cause-${id}`));

/** What a check tells to do. @param {string} id */
export const toDo = (id) => said(document.querySelector(`#check-${id} .ls-do`));

/** What each result of a check shows. @param {string} id */
export const results = (id) => [...document.querySelectorAll(`#check-${id} .ls-results > dt`)].map(said);

/** @param {string} id */
export const checkPart = (id) => document.getElementById(`check-${id}`);

/** @param {string} id */
export const remedyPart = (id) => document.querySelector(`[data-cause="${id}"]`);

/** What the page knows of good readings of a check, as JSON; empty where it measures nothing. @param {string} id */
export function expectations(id) {
  /** @type {HTMLElement | null | undefined} */
  const measured = checkPart(id)?.querySelector("[data-expect]");
  return measured?.dataset.expect ?? "";
}

/** @type {Map<string, Element[]>} */
const copies = new Map();

/**
 * Copies of parts of the page, without their ids; the same ones each time for the same name.
 * @param {string} name @param {Element | null} from @param {(part: Element) => boolean} wanted
 * @param {(part: Element) => void} [change]
 */
export function copied(name, from, wanted, change = () => {}) {
  const known = copies.get(name);
  if (known) return known;
  const made = [...(from?.children ?? [])].filter(wanted).map((part) => /** @type {Element} */ (part.cloneNode(true)));
  for (const part of made.flatMap((copy) => [copy, ...copy.querySelectorAll("[id]")])) part.removeAttribute("id");
  made.forEach(change);
  copies.set(name, made);
  return made;
}

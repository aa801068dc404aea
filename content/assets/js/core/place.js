/** Where this page stands in the site, and the few things remembered without a database. */

/** The root of the site. */
export const root = new URL("../../../", import.meta.url);

/** The address of this page, seen from the root: `checklists/position/`. */
export const here = location.pathname.startsWith(root.pathname)
  ? location.pathname.slice(root.pathname.length).replace(/index\.html$/, "")
  : "";

const name = (/** @type {string} */ key) => `latchside ${root.pathname} ${key}`;

/**
 * What is remembered under a key: a list of texts, empty where there is none.
 * @param {string} key
 * @returns {string[]}
 */
export function remembered(key) {
  try {
    const list = JSON.parse(localStorage.getItem(name(key)) ?? "[]");
    return Array.isArray(list) ? list.filter((one) => typeof one === "string") : [];
  } catch {
    return [];
  }
}

/** @param {string} key @param {string[]} list */
export function remember(key, list) {
  try {
    localStorage.setItem(name(key), JSON.stringify(list));
  } catch {
    // storage refused or full: then it is not remembered
  }
}

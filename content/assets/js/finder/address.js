/** What an address at which nothing stands may have meant. Pure: no page. */

/**
 * The words of an address at which nothing stands, without the folder that says of what kind it is:
 * `faults/reads-hihg/` is about `reads hihg`.
 * @param {string} path
 */
export function wordsOf(path) {
  const steps = path.split("/").filter((step) => step && step !== "404.html");
  const words = (steps.length > 1 ? steps.slice(1) : steps).join(" ").replace(/\.[a-z]+$/, "");
  try {
    return decodeURIComponent(words).replace(/[-_+\s]+/g, " ");
  } catch {
    return ""; // signs that no address can hold
  }
}

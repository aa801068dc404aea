/** What the list of visits says of photographs that no file holds. */
import { list as message } from "../messages/photo.js";

/**
 * @param {Map<string, string[]>} photographs ids by visit
 * @param {Map<string, Set<string>>} saved ids that a file holds, by visit
 * @returns {Map<string, string>} words by visit, where there are such
 */
export function unsavedWords(photographs, saved) {
  const left = [...photographs].map(([visit, ids]) => {
    const unsaved = ids.filter((id) => !saved.get(visit)?.has(id));
    return /** @type {[string, number]} */ ([visit, unsaved.length]);
  });
  return new Map(
    left.filter(([, count]) => count).map(([visit, count]) => [visit, message.onlyHere({ photographs: count })]),
  );
}

/** What came out otherwise than it was planned, in words for the papers of a visit. Pure. */
import { deviations as message } from "../messages/job.js";
import { judge } from "../visit/entries.js";
import { findingsOf } from "../visit/sheet.js";
import { answersAt, plannedOf } from "./job.js";

/**
 * @typedef {import("../visit/entries.js").View} View
 * @typedef {import("../visit/entries.js").ItemEntry} ItemEntry
 * @typedef {import("../visit/sheet.js").Known} Known
 */

/** What came out otherwise than it was planned, and each problem, in words. @param {View} seen @param {Known} data @returns {string[]} */
export function deviations(seen, data) {
  const planned = plannedOf(seen);
  const ofSite = answersAt(seen, "").filter(isOff).map(readingOf);
  const atOpenings = [...seen.openings.values()].flatMap((one) => {
    const { name: opening, device, removed } = one;
    const plan = planned.get(one.opening);
    if (removed) return plan ? [message.takenOff({ opening })] : [];
    const other = plan && plan.device !== device;
    const added = !plan && planned.size ? [message.added({ opening, device: nameOf(data, device) })] : [];
    const devices = { opening, planned: nameOf(data, plan?.device ?? null), fitted: nameOf(data, device) };
    const answers = answersAt(seen, one.opening).filter(isOff);
    return [
      ...added,
      ...(other ? [message.other(devices)] : []),
      ...answers.map((entry) => message.at({ opening, found: readingOf(entry) })),
    ];
  });
  return [...atOpenings, ...ofSite];
}

/** Whether an answer is a problem or a reading outside. @param {ItemEntry} entry */
const isOff = ({ outcome, reading, expected }) =>
  outcome === "problem" || Boolean(reading && judge(reading, expected) === "outside");

/** An answer, with what was read and noted. @param {ItemEntry} entry */
export const readingOf = (entry) => message.found({ item: entry.words, found: findingsOf(entry) });

/** What a device class is called. @param {Known} data @param {string | null} device */
export const nameOf = ({ devices }, device) =>
  devices.find(({ id }) => id === device)?.name ?? device ?? message.noDevice();

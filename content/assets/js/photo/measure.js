/** The sums about photographs: how far one is scaled, how many there is room for, what its file is called. Pure. */

/** Pixels of the longer side, of what is kept and of the small one that is shown. */
export const LONGEST = 1600;
export const SMALL = 360;

/** Bytes that stay free for the record itself, which must never lack room because of photographs. */
export const RESERVE = 2_000_000;
/** Bytes of a photograph where none is known yet. */
const TYPICAL = 500_000;
/** With room for fewer than these it is time to warn. */
export const FEW = 20;

/** @typedef {{usage?: number, quota?: number}} Estimate what the browser says of its room */

/**
 * The size a picture is scaled to: never larger than it is, its sides as they were to each other.
 * @param {number} width @param {number} height @param {number} longest
 */
export function fitted(width, height, longest) {
  const scale = Math.min(1, longest / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** Bytes that photographs may still take; null where the browser does not say. @param {Estimate} estimate */
export function roomOf({ usage, quota }) {
  return usage === undefined || quota === undefined ? null : Math.max(0, quota - usage - RESERVE);
}

/**
 * How many more photographs there is room for, as large as those that are here; null where the browser does not say.
 * @param {Estimate} estimate @param {number[]} sizes bytes of those that are here
 */
export function roomFor(estimate, sizes) {
  const room = roomOf(estimate);
  const mean = sizes.length ? sizes.reduce((sum, size) => sum + size, 0) / sizes.length : TYPICAL;
  return room === null ? null : Math.floor(room / Math.max(1, mean));
}

/** @param {{opening: string, number: number, what: string}} photograph */
export const fileOf = ({ opening, number, what }) => `photographs/${opening}-${number}-${what}.jpg`;

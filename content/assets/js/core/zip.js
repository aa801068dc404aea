/** Files put together as one ZIP, as they are: pictures are small already. Pure. */

/** @typedef {{name: string, at: string, bytes: Uint8Array<ArrayBuffer>}} ZipFile `at` as `2026-11-25T14:05:00…` */

const MOST_FILES = 0xffff;
const MOST_BYTES = 0xffffffff;
const VERSION = 20;
/** Names are UTF-8. */
const FLAGS = 0x0800;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  return sum;
});

/** The check sum of a file, CRC-32. @param {Uint8Array} bytes */
export function crc32(bytes) {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (sum >>> 8) ^ TABLE[(sum ^ byte) & 0xff];
  return ~sum >>> 0;
}

/** Numbers one after another, the lowest byte first. @param {...[bytes: 2 | 4, value: number]} fields */
function packed(...fields) {
  const made = new Uint8Array(fields.reduce((size, [bytes]) => size + bytes, 0));
  const view = new DataView(made.buffer);
  let at = 0;
  for (const [bytes, value] of fields) {
    if (bytes === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += bytes;
  }
  return made;
}

/** A moment as a ZIP holds it: to two seconds, not before 1980, without its zone. @param {string} at */
function stamp(at) {
  const [year, month, day, hour, minute, second] = (at.match(/\d+/g) ?? []).map(Number);
  const date = ((year - 1980) << 9) | (month << 5) | day;
  return year >= 1980 ? { date, time: (hour << 11) | (minute << 5) | (second >> 1) } : { date: 33, time: 0 };
}

/** What the head of a file and its line in the list at the end have in common. @param {ZipFile} file */
function headOf({ name, at, bytes }) {
  const called = new TextEncoder().encode(name);
  const { date, time } = stamp(at);
  const common = packed(
    [2, VERSION],
    [2, FLAGS],
    [2, 0],
    [2, time],
    [2, date],
    [4, crc32(bytes)],
    [4, bytes.length],
    [4, bytes.length],
    [2, called.length],
    [2, 0],
  );
  return { called, common };
}

/**
 * A ZIP of these files, in parts to be put one after another.
 * @param {ZipFile[]} files
 * @returns {Uint8Array<ArrayBuffer>[]}
 */
export function zipped(files) {
  const parts = [];
  const list = [];
  let at = 0;
  for (const file of files) {
    const { called, common } = headOf(file);
    list.push(packed([4, 0x02014b50], [2, VERSION]), common, packed([2, 0], [2, 0], [2, 0], [4, 0], [4, at]), called);
    const own = [packed([4, 0x04034b50]), common, called, file.bytes];
    parts.push(...own);
    at += sizeOf(own);
  }
  const size = sizeOf(list);
  if (files.length > MOST_FILES || at + size > MOST_BYTES) throw new Error("too much for one ZIP");
  const { length } = files;
  const end = packed([4, 0x06054b50], [2, 0], [2, 0], [2, length], [2, length], [4, size], [4, at], [2, 0]);
  return [...parts, ...list, end];
}

/** @param {Uint8Array[]} parts */
const sizeOf = (parts) => parts.reduce((sum, part) => sum + part.length, 0);

/** The text that tells of an error on a page. Pure: no page. */
import { text as message } from "../messages/report.js";

/**
 * @typedef {Object} Facts
 * @property {string} title of the page
 * @property {string} address
 * @property {string} version of the content; empty where it is not known
 * @property {string} date
 * @property {string} region
 */

const CONTROL = /[\p{Cc}\u2028-\u202e\u2066-\u2069\ufeff]/gu;
const line = (/** @type {string} */ text) => text.replace(CONTROL, " ").replace(/\s+/g, " ").trim();

/** What goes above a letter. @param {Facts} facts */
export const subject = ({ title }) => message.subject({ title: line(title) });

/** Which page it is, and below it the reader's own words. @param {Facts} facts @param {string} own */
export function report({ title, address, version, date, region }, own) {
  const words = own.split("\n").map(line).join("\n").trim();
  return [
    message.page({ title: line(title) }),
    message.address({ address: line(address) }),
    version ? message.content({ version, date }) : message.contentUnknown(),
    message.region({ region }),
    "",
    message.wrong(),
    words,
  ].join("\n");
}

/** A letter that is written but not sent. @param {string} to @param {Facts} facts @param {string} own */
export function letter(to, facts, own) {
  const body = report(facts, own).replaceAll("\n", "\r\n");
  return `mailto:${encodeURIComponent(to).replace("%40", "@")}?subject=${encodeURIComponent(subject(facts))}&body=${encodeURIComponent(body)}`;
}

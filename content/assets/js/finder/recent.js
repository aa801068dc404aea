/** The checklists opened last, the latest first. */
import { linkRow, rowsUnder } from "../core/parts.js";
import { here, remember, remembered, root } from "../core/place.js";
import { recent as message } from "../messages/finder.js";
import { html, render } from "../vendor/lit-html.js";

const CHECKLIST = /^checklists\/[a-z0-9-]+\/$/;
const MOST = 5;

/** @returns {{address: string, name: string}[]} */
export function recent() {
  const lists = remembered("lists").map((one) => {
    const [address, ...name] = one.split("|");
    return { address, name: name.join("|") };
  });
  return lists.filter(({ address, name }) => CHECKLIST.test(address) && name).slice(0, MOST);
}

/** Remember this page, where it is a checklist. */
export function rememberThis() {
  if (!CHECKLIST.test(here)) return;
  const name = document.querySelector("article h1")?.textContent?.trim() || here;
  const others = recent().filter(({ address }) => address !== here);
  remember(
    "lists",
    [{ address: here, name }, ...others].slice(0, MOST).map((one) => `${one.address}|${one.name}`),
  );
}

/** A row that leads to a page. @param {string} address @param {string} name @param {string} under */
export const row = (address, name, under) => linkRow(new URL(address, root), name, under);

/** Show them in a place of the page; nothing where there are none. @param {HTMLElement} place */
export function showRecent(place) {
  const rows = recent().map(({ address, name }) => row(address, name, message.checklist()));
  if (rows.length) place.replaceChildren(); // what stands there for want of them
  render(rowsUnder(html`<h2>${message.lastUsed()}</h2>`, rows), place);
}

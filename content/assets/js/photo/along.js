/** How photographs leave the device: with the record of their visit, in one ZIP. */
import { download, now } from "../core/dom.js";
import { button, tools } from "../core/parts.js";
import { zipped } from "../core/zip.js";
import { along as message } from "../messages/photo.js";
import { html } from "../vendor/lit-html.js";
import { fileName, recordText } from "../visit/record-file.js";
import { exported } from "../visit/store.js";
import { soundEntries } from "../visit/store-visits.js";
import { fileOf } from "./measure.js";
import { isWhole, largeOf, rowsOf } from "./store.js";

export class Along {
  /** @param {import("../visit/record-file.js").Leaving} leaving how the record leaves */
  constructor(leaving) {
    this.leaving = leaving;
    /** The photographs of the visit. @type {string[]} */
    this.ids = [];
    /** How many of them no file holds. */
    this.left = 0;
  }

  /** @param {string[]} ids */
  async look(ids) {
    const saved = new Set((await exported(this.leaving.visit))?.ids);
    this.ids = ids;
    this.left = ids.filter((id) => !saved.has(id)).length;
  }

  /** What is said where the record itself is in a file and photographs are not. @param {number} entries */
  words = (entries) => message.notAll({ entries, photographs: this.left });

  /** @param {string} site */
  onlyHere = (site) => message.onlyHere({ site, photographs: this.left });

  /** @param {number} entries */
  wipeAsked = (entries) => message.wipeAsked({ entries, photographs: this.ids.length });

  template() {
    const kind = this.left ? "ls-main" : "";
    return html`
      ${tools(button(message.save({ photographs: this.ids.length }), () => this.save(), kind))}
      <p>${message.again()}</p>
    `;
  }

  async save() {
    const { visit, library } = this.leaving;
    const entries = await soundEntries(visit);
    const text = new TextEncoder().encode(recordText(visit, entries, library));
    const files = [{ name: fileName(entries, "json"), at: now(), bytes: text }];
    const rows = await rowsOf(visit);
    for (const one of rows.filter(isWhole)) {
      const bytes = new Uint8Array((await largeOf(one)).bytes);
      if (bytes.length) files.push({ name: fileOf(one), at: one.at, bytes });
    }
    const type = "application/zip";
    const name = fileName(entries, "zip");
    download(new Blob(zipped(files), { type }), name, type);
    const lost = rows.length + 1 - files.length; // damaged: no file can ever hold them
    const photographs = rows.map(({ id }) => id);
    this.leaving.say(message.look({ file: name, lost }), { entries, photographs });
  }
}

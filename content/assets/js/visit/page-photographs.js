/** The photographs of a visit, for its page. Their code comes where there are some, or once one is to be taken. */
import { pagePhotographs as message } from "../messages/visit.js";
import { html, nothing } from "../vendor/lit-html.js";

/** @typedef {import("./entries.js").Opening} Opening */

export class PagePhotographs {
  /** @param {import("./page.js").VisitPage} page */
  constructor(page) {
    this.page = page;
    /** The ids of all of them. */
    this.ids = "";
    /** @type {import("../photo/view.js").Photographs | null} */
    this.part = null;
  }

  /** Show what is kept by now; whether those are others than before. @param {string[]} ids of the photographs */
  async look(ids) {
    const known = this.ids;
    this.ids = ids.join();
    if (ids.length) await this.fetch();
    await this.part?.load();
    return this.ids !== known;
  }

  async fetch() {
    const { Photographs } = await import("../photo/view.js");
    const { page } = this;
    this.part ??= new Photographs(
      page.visit,
      () => page.all.by,
      () => page.render(),
    );
    return this.part;
  }

  /** What an opening has, and what takes another. @param {Opening} one @param {boolean} archived */
  at({ opening, name }, archived) {
    const { part } = this;
    const shown = part?.shown(opening, !archived) ?? nothing;
    if (archived) return shown;
    const open = String(part?.desk(opening).open ?? false);
    const toggle = () => this.toggle(opening);
    return html`
      <div class="ls-photographing">
        ${shown}
        <button type="button" class="ls-button ls-quiet" aria-expanded=${open} @click=${toggle}>
          ${message.photograph({ opening: name })}
        </button>
        ${part?.form(opening) ?? nothing}
      </div>
    `;
  }

  /** Those at openings that were taken off the list. */
  elsewhere() {
    const { archived, openingsThere, seen } = this.page;
    const there = new Set(openingsThere.map(({ opening }) => opening));
    return this.part?.elsewhere(there, seen.openings, !archived) ?? nothing;
  }

  /** @param {string} opening */
  async toggle(opening) {
    const part = await this.fetch();
    await part.load();
    part.toggle(opening);
    this.page.render();
  }

  /** Photographs that were not kept because the visit was put away meanwhile. */
  get stranded() {
    return this.part?.stranded() ?? nothing;
  }

  /** For the printed sheet. */
  printed() {
    return this.part?.printed(this.page.seen.openings) ?? [];
  }
}

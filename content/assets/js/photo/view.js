/** Photographs at the openings of a visit: taking one, seeing them small and large, taking one off, on paper. */
import { secondPress } from "../core/ask.js";
import { clock, download, h, now, uuid } from "../core/dom.js";
import { button, choice, labelled, quiet, tools } from "../core/parts.js";
import { view as message } from "../messages/photo.js";
import { html, nothing } from "../vendor/lit-html.js";
import { exported, nameOf } from "../visit/store.js";
import { FEW, roomFor, roomOf } from "./measure.js";
import { addressOf, pictureOf } from "./picture.js";
import { add, largeOf, photographsOf, remove, VisitGone, WHATS } from "./store.js";

/**
 * @typedef {import("./store.js").Photograph} Photograph
 * @typedef {import("./store.js").What} What
 * @typedef {{what: What, at: string, picture: import("./picture.js").Picture}} Held a photograph that is not kept yet
 * @typedef {{open: boolean, what: What | "", said: string, warns: boolean, held: Held | null}} Desk what is being done
 * @typedef {import("../visit/entries.js").View["openings"]} Openings
 */

/** What the browser says of its room; nothing where it does not. @returns {Promise<StorageEstimate>} */
const estimated = async () => (await navigator.storage?.estimate?.().catch(() => undefined)) ?? {};

export class Photographs {
  /** @param {string} visit @param {() => string} by who takes them @param {() => unknown} render */
  constructor(visit, by, render) {
    this.visit = visit;
    this.by = by;
    this.render = render;
    /** @type {Photograph[]} */
    this.rows = [];
    /** Those that a file holds. @type {Set<string>} */
    this.saved = new Set();
    /** How many more there is room for; null where the browser does not say. @type {number | null} */
    this.room = null;
    this.turn = 0;
    /** What is being done, by opening. @type {Map<string, Desk>} */
    this.desks = new Map();
    /** Large pictures that are shown, by id. @type {Map<string, string>} */
    this.large = new Map();
    /** What takes a photograph off, which takes a second press. @type {Map<string, Node>} */
    this.presses = new Map();
  }

  async load() {
    this.turn += 1;
    const { turn, visit } = this;
    const [rows, file, estimate] = await Promise.all([photographsOf(visit), exported(visit), estimated()]);
    if (turn !== this.turn) return;
    this.rows = rows;
    const there = new Set(rows.map(({ id }) => id));
    for (const id of this.large.keys()) if (!there.has(id)) this.large.delete(id);
    this.saved = new Set(file?.ids);
    const sizes = rows.map(({ size }) => size);
    this.room = roomFor(estimate, sizes);
  }

  /** @param {string} opening @returns {Desk} */
  desk(opening) {
    const desk = this.desks.get(opening) ?? { open: false, what: "", said: "", warns: false, held: null };
    this.desks.set(opening, desk);
    return desk;
  }

  /** @param {string} opening */
  toggle(opening) {
    const desk = this.desk(opening);
    desk.open = !desk.open;
  }

  /** @param {Desk} desk @param {string} said @param {boolean} [warns] */
  say(desk, said, warns = false) {
    Object.assign(desk, { said, warns });
    this.render();
  }

  /** The photographs at an opening. @param {string} opening @param {boolean} editable */
  shown(opening, editable) {
    const rows = this.rows.filter((row) => row.opening === opening);
    return rows.length ? html`<ul class="ls-photographs">${rows.map((row) => this.row(row, editable))}</ul>` : nothing;
  }

  /**
   * Those at openings that are no longer on the list.
   * @param {Set<string>} there @param {Openings} known @param {boolean} editable
   */
  elsewhere(there, known, editable) {
    const openings = [...new Set(this.rows.map(({ opening }) => opening))].filter((id) => !there.has(id));
    return openings.map((id) => html`<h4>${nameAt(id, known)}</h4>${this.shown(id, editable)}${this.form(id)}`);
  }

  /** @param {Photograph} row @param {boolean} editable */
  row(row, editable) {
    const large = this.large.get(row.id);
    const press = () => this.enlarge(row);
    return html`
      <li>
        <figure>
          <button type="button" aria-expanded=${String(Boolean(large))} @click=${press}>
            <img src=${large ?? row.small} alt=${message.photographOf(row)}>
          </button>
          <figcaption>${captionOf(row)}</figcaption>
        </figure>
        ${editable ? this.press(row) : nothing}
      </li>
    `;
  }

  /** @param {Photograph} row */
  press(row) {
    const saved = Number(this.saved.has(row.id));
    const key = `${row.id} ${saved}`;
    const take = () => this.takeOff(row);
    const asked = () => message.takeOffAsked({ saved });
    const known = this.presses.get(key) ?? secondPress(message.takeOff(), asked, message.takeOffSure(), take);
    this.presses.set(key, known);
    return known;
  }

  /** @param {Photograph} row */
  async takeOff(row) {
    const desk = this.desk(row.opening);
    try {
      await remove(row);
      await this.load();
      this.say(desk, message.takenOff());
    } catch (error) {
      this.say(desk, refusal(error), true);
    }
  }

  /** Show one large, or small again. @param {Photograph} row */
  async enlarge(row) {
    if (!this.large.delete(row.id)) {
      const { bytes } = await largeOf(row);
      if (bytes.byteLength) this.large.set(row.id, await addressOf(bytes));
      else this.say(this.desk(row.opening), message.lost(), true);
    }
    this.render();
  }

  /** What takes a photograph at an opening, where it is unfolded, and how that went. @param {string} opening */
  form(opening) {
    const desk = this.desk(opening);
    const { held } = desk;
    const said = html`<p class=${desk.warns ? "ls-warn" : ""} role="status">${desk.said}</p>`;
    return html`${desk.open && !held ? this.fields(opening, desk) : nothing}${said}${held ? this.rescue(opening, held) : nothing}`;
  }

  /** @param {string} opening @param {Desk} desk */
  fields(opening, desk) {
    const id = `ls-photograph-${opening}`;
    /** @type {[value: string, words: string][]} */
    const choices = [
      ["", message.choose()],
      ...WHATS.map((what) => /** @type {[string, string]} */ ([what, message.shows({ what })])),
    ];
    const chosen = (/** @type {string} */ value) => {
      desk.what = /** @type {What | ""} */ (value);
      this.render();
    };
    const take = (/** @type {Event} */ event) => this.take(opening, /** @type {HTMLInputElement} */ (event.target));
    const off = !desk.what;
    const camera = html`
      <input type="file" id="${id}-take" accept="image/*" capture="environment" ?disabled=${off} @change=${take}>
    `;
    const files = html`<input type="file" id="${id}-file" accept="image/*" ?disabled=${off} @change=${take}>`;
    return html`
      <p><strong>${message.keepOut()}</strong></p>
      ${this.room !== null && this.room < FEW ? html`<p class="ls-warn">${message.fewLeft({ left: this.room })}</p>` : nothing}
      ${choice(id, message.what(), choices, desk.what, chosen)}
      ${labelled(`${id}-take`, message.take(), camera)}
      ${labelled(`${id}-file`, message.file(), files)}
    `;
  }

  /** What was not kept, where its opening is no longer shown. */
  stranded() {
    const held = [...this.desks].filter(([, desk]) => desk.held);
    return held.map(([opening]) => this.form(opening));
  }

  /** What can be done with a photograph that was not kept. @param {string} opening @param {Held} held */
  rescue(opening, held) {
    const save = () => download(held.picture.bytes, `photograph-${held.what}.jpg`, "image/jpeg");
    const leave = () => {
      this.desk(opening).held = null;
      this.say(this.desk(opening), "");
    };
    return tools(
      button(message.again(), () => this.keep(opening, held)),
      button(message.saveOne(), save),
      quiet(message.leave(), leave),
    );
  }

  /** @param {string} opening @param {HTMLInputElement} input */
  async take(opening, input) {
    const [file] = input.files ?? [];
    const desk = this.desk(opening);
    const { what } = desk;
    if (!file || !what) return;
    const at = now();
    this.say(desk, message.working());
    const picture = await pictureOf(file);
    input.value = ""; // the same one may be chosen again
    if (picture) await this.keep(opening, { what, at, picture });
    else this.say(desk, message.noPicture({ file: file.name }), true);
  }

  /** @param {string} opening @param {Held} held */
  async keep(opening, held) {
    const desk = this.desk(opening);
    const { visit } = this;
    const { what, at, picture } = held;
    this.say(desk, message.working());
    const room = roomOf(await estimated());
    try {
      if (room !== null && picture.bytes.byteLength + picture.small.length > room) throw new DOMException("", FULL);
      await add({ id: uuid(), visit, opening, what, at, by: this.by() }, picture);
    } catch (error) {
      desk.held = held;
      return this.say(desk, refusal(error), true);
    }
    desk.held = null;
    desk.what = "";
    await this.load();
    this.say(desk, message.kept({ what }));
  }

  /** For the printed sheet: by opening, small. @param {Openings} openings */
  printed(openings) {
    const ids = [...new Set(this.rows.map(({ opening }) => opening))];
    return ids.flatMap((id) => {
      const rows = this.rows.filter(({ opening }) => opening === id);
      const figures = rows.map((row) =>
        h(
          "figure",
          {},
          h("img", { src: row.small, alt: message.photographOf(row) }),
          h("figcaption", {}, captionOf(row)),
        ),
      );
      const title = message.photographsAt({ opening: nameAt(id, openings) });
      return [h("h3", {}, title), h("div", { class: "ls-photographs" }, ...figures)];
    });
  }
}

const FULL = "QuotaExceededError";

/** Why a photograph was not kept. @param {unknown} error */
function refusal(error) {
  if (error instanceof VisitGone) return message.gone();
  return nameOf(error) === FULL ? message.full() : message.refused({ why: nameOf(error) });
}

/** @param {Photograph} row */
const captionOf = ({ what, at, by }) =>
  by ? message.captionBy({ what, at: clock(at), by }) : message.caption({ what, at: clock(at) });

/** @param {string} id @param {Openings} openings */
const nameAt = (id, openings) => openings.get(id)?.name ?? message.anOpening();

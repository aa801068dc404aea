/** The planner as a page asks it: one worker, the newest survey first, and an end to whatever takes too long. */

/**
 * @typedef {{ about: string, spoken: string, field: string }} AskedOf an opening by its id, `site` or `control-unit`
 * @typedef {{ text: string, decides: { why: string, of: AskedOf[] }[] }} Asked
 * @typedef {{ found: string, action: string }} Problem
 * @typedef {{ name: string, shown: string, verdict: string, meaning: string, action: string }} Line
 * @typedef {{
 *   id: string, spoken: string, positions: string[], device: { name: string, address: string } | null, by_lead: boolean,
 *   reasons: string[], against: string[],
 *   bearing: "no-device-yet" | "problem" | "test-on-site" | "good" | "no-verdict", figures: Line[],
 *   problems: Problem[],
 *   fixing: { sensor: string, magnet: string, spacer: string, hold: string } | null,
 *   expected: { label: string, shown: string }[],
 * }} OpeningGlance
 * @typedef {{
 *   openings: OpeningGlance[], problems: Problem[], questions: Asked[], zones: number, days: number, minutes: number,
 *   items: { name: string, amount: string }[],
 * }} Glance
 * @typedef {{ survey: string, today: string, own: string, done: (planned: Planned) => void, not: (error: unknown) => void }} Waiting
 * @typedef {Record<string, Uint8Array<ArrayBuffer>>} PackFiles
 * @typedef {{ glance: Glance | null, unread: { path: (string | number)[], found: string, action: string }[] }} Planned
 */

/** How long nothing may be heard of it. */
const START_PATIENCE = 120_000;
const PLAN_PATIENCE = 60_000;
const PACK_PATIENCE = 120_000;
const MOST_MEMORY = 300_000_000;

/** A plan that was not made: `sort` is why. */
export class NoPlan extends Error {
  /** @param {"refused" | "slow" | "failed"} sort @param {string} [told] what the browser or the planner said */
  constructor(sort, told = "") {
    super(told || sort);
    this.sort = sort;
  }
}

/** A worker that has this page's policy: it starts from text of the page itself. @param {string} script */
function fromHere(script) {
  const text = `import ${JSON.stringify(new URL(script, import.meta.url).href)};`;
  const address = URL.createObjectURL(new Blob([text], { type: "text/javascript" }));
  const worker = new Worker(address, { type: "module" });
  worker.addEventListener("message", () => URL.revokeObjectURL(address), { once: true });
  return worker;
}

export class Planner {
  /** @type {Worker | null} */
  #worker = null;
  /** @type {Promise<void> | null} */
  #ready = null;
  /** What waits to be planned, by what it is for. @type {Map<string, Waiting>} */
  #next = new Map();
  /** Whatever is asked waits for what was asked before. @type {Promise<unknown>} */
  #last = Promise.resolve();
  #number = 0;

  /** @param {(taken: number) => void} coming told how many bytes of it have come */
  constructor(coming) {
    this.coming = coming;
  }

  /** Bring the planner; it is there when this is done. */
  start() {
    this.#ready ??= this.#started().catch((error) => {
      this.stop();
      throw error;
    });
    return this.#ready;
  }

  /** Let it go, with whatever it works on. */
  stop() {
    this.#worker?.terminate();
    this.#worker = this.#ready = null;
  }

  /**
   * The plan of a survey. One that is asked for while another is made waits for it, and only the newest is made: the
   * promise of one that was overtaken gives the plan of the newest.
   *
   * @param {unknown} survey data that fits the schema of surveys
   * @param {string} today the day that a survey without one is planned for
   * @param {string} own the firm's own figures, as their file; empty: it has none
   * @param {"plan" | "trial"} what it is for: neither overtakes the other
   * @returns {Promise<Planned>}
   */
  ask(survey, today, own, what = "plan") {
    const before = this.#next.get(what);
    /** @type {Promise<Planned>} */
    const asked = new Promise((done, not) => {
      this.#next.set(what, { survey: JSON.stringify(survey), today, own, done, not });
    });
    if (before) asked.then(before.done, before.not);
    else this.#inTurn(() => this.#newest(what));
    return asked;
  }

  /**
   * The files of the pack that the command writes, content by name.
   * @param {string} survey the text of its file @param {string} today @param {string} own as above
   * @param {string} site where its links lead; empty: nowhere
   * @returns {Promise<PackFiles>}
   */
  pack(survey, today, own, site) {
    return this.#inTurn(() => this.#made({ sort: "pack", survey, today, own, site }, PACK_PATIENCE));
  }

  /** The visit file of that pack. @param {string} survey the text of its file @param {string} today @param {string} own as above @returns {Promise<string>} */
  visit(survey, today, own) {
    return this.#inTurn(() => this.#made({ sort: "visit", survey, today, own }, PACK_PATIENCE));
  }

  /** @template T @param {() => Promise<T>} work @returns {Promise<T>} */
  #inTurn(work) {
    const done = this.#last.then(work);
    this.#last = done.catch(() => {});
    return done;
  }

  async #started() {
    let worker;
    try {
      worker = fromHere("./worker.js");
    } catch (error) {
      throw new NoPlan("refused", String(error));
    }
    this.#worker = worker;
    const first = await this.#told((data) => data.ready || data.failed, START_PATIENCE);
    if (first.failed) throw new NoPlan("refused", first.failed);
  }

  /** @param {string} what */
  async #newest(what) {
    const { survey, today, own, done, not } = /** @type {Waiting} */ (this.#next.get(what));
    this.#next.delete(what);
    await this.#made({ sort: "plan", survey, today, own }, PLAN_PATIENCE).then((made) => done(JSON.parse(made)), not);
  }

  /** What the worker makes of what it is asked. @param {{sort: "plan" | "visit" | "pack", survey: string, today: string, own: string, site?: string}} asked @param {number} patience */
  async #made(asked, patience) {
    await this.start();
    const number = ++this.#number;
    const answer = this.#told((data) => data.number === number, patience);
    this.#worker?.postMessage({ number, ...asked });
    const { made, failed, memory } = await answer;
    if (memory > MOST_MEMORY) this.stop(); // the next plan begins with a fresh one
    if (failed) throw new NoPlan("failed", failed);
    return made;
  }

  /** The first word of the worker that fits; each other one begins the wait anew. @param {(data: any) => unknown} fits @param {number} patience */
  #told(fits, patience) {
    const worker = /** @type {Worker} */ (this.#worker);
    return new Promise((done, not) => {
      const end = (/** @type {() => void} */ then) => {
        clearTimeout(timer);
        worker.removeEventListener("message", hear);
        worker.removeEventListener("error", fail);
        then();
      };
      const hear = (/** @type {MessageEvent} */ { data }) => {
        if (fits(data)) return end(() => done(data));
        clearTimeout(timer);
        timer = setTimeout(late, patience);
        if (data.taken) this.coming(data.taken);
      };
      const fail = (/** @type {ErrorEvent} */ event) => end(() => not(new NoPlan("refused", event.message)));
      const late = () => {
        this.stop();
        end(() => not(new NoPlan("slow")));
      };
      let timer = setTimeout(late, patience);
      worker.addEventListener("message", hear);
      worker.addEventListener("error", fail);
    });
  }
}

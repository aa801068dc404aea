/** A visit of the survey that is open, started on this device with what the plan expects at each opening. */
import { root } from "../core/place.js";
import { today } from "./day.js";
import { NOT_BEGUN } from "./state.js";

/** @typedef {import("./state.js").Begun} Begun */

export class Visiting {
  /**
   * @param {{state: {begun: Begun}, set: (change: {begun: Begun}) => void}} page
   * @param {import("./planner.js").Planner} planner
   * @param {() => Promise<{id: string, text: string}>} file of the survey as it is stored now
   * @param {() => string} own the firm's own figures, as their file
   */
  constructor(page, planner, file, own) {
    this.page = page;
    this.planner = planner;
    this.file = file;
    this.own = own;
  }

  /** Start a visit, or find the one of this job that is here, and go to it. */
  async start() {
    if (this.page.state.begun.sort === "making") return;
    this.page.set({ begun: { sort: "making", told: "" } });
    try {
      const { id, text } = await this.file();
      const { startVisit } = await import("../job/begin.js");
      const openings = JSON.parse(text).openings.map((/** @type {{id: string}} */ one) => one.id);
      const visit = await startVisit(id, openings, () => this.planner.visit(text, today(), this.own()));
      this.page.set({ begun: NOT_BEGUN }); // the page may be come back to as it is
      location.assign(new URL(`visits/#v=${visit}`, root));
    } catch (error) {
      const told =
        String(/** @type {Error} */ (error).message)
          .trim()
          .split("\n")
          .at(-1) ?? "";
      this.page.set({ begun: { sort: "stopped", told } });
    }
  }
}

/** A switch that keeps the screen on. */
import { screen as message } from "../messages/visit.js";
import { html } from "../vendor/lit-html.js";

/** Where the browser can. */
export class Screen {
  /** @param {() => void} render */
  constructor(render) {
    this.render = render;
    /** @type {WakeLockSentinel | null} */
    this.lock = null;
    this.wanted = false;
    document.addEventListener("visibilitychange", () => this.wanted && this.take());
  }

  template() {
    if (!("wakeLock" in navigator)) return null;
    const held = this.lock ? message.on() : message.refused();
    const words = this.wanted ? held : message.keep();
    const turn = () => this.turn();
    return html`
      <button type="button" class="ls-button ls-quiet" aria-pressed=${String(this.wanted)} @click=${turn}>
        ${words}
      </button>
    `;
  }

  async take() {
    const seen = this.wanted && document.visibilityState === "visible";
    this.lock = seen ? await navigator.wakeLock.request("screen").catch(() => null) : null;
    this.render();
  }

  async turn() {
    this.wanted = !this.wanted;
    if (!this.wanted) await this.lock?.release().catch(() => {});
    await this.take();
  }
}

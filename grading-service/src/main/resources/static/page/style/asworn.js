// The sleeve as it is worn, beside the flat pieces. What it needs is loaded when it is opened for the first time.

import { h } from "../common/dom.js";
import { say } from "../common/words.js";

export class AsWorn {
  #panel = null;

  constructor(uses) {
    this.uses = uses;
    this.element = h("section", { class: "worn3d", id: "worn3d", "aria-label": say("worn3d.name"), hidden: true });
  }

  /** Shown or not, and in step with what was drafted. */
  async refresh() {
    const open = this.uses.store.view.worn === true;
    this.element.hidden = !open;
    if (!open) return;
    if (this.#panel === null) {
      this.element.textContent = say("worn3d.loading");
      this.#panel = import("../worn/panel.js").then(({ Panel }) => {
        const panel = new Panel(this.uses);
        this.element.replaceChildren(panel.element);
        return panel;
      });
      this.#panel.catch(() => {
        this.#panel = null;
        this.element.textContent = say("worn3d.notLoaded");
      });
    }
    (await this.#panel.catch(() => null))?.refresh();
  }

  /** The page is built anew: nothing goes on in its place. */
  async dispose() {
    (await this.#panel?.catch(() => null))?.dispose();
  }
}

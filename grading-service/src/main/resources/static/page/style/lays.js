// What to buy, cloth by cloth, and the lay of the one that is chosen.

import { h } from "../common/dom.js";
import { figuresTable } from "../common/figurestable.js";
import { number, show } from "../common/units.js";
import { count, find, say } from "../common/words.js";

const PERCENT = 100;

const pairsOf = (pairs) => {
  const sizes = Object.entries(pairs);
  return sizes.length === 1 && sizes[0][1] === 1 ? say("sizesOf", { a: sizes[0][0] }) : sizes.map(([size, n]) => `${n} × ${size}`).join(", ");
};

export class Lays {
  #chosen = 0;
  #address = "";

  constructor() {
    this.element = h("div", { class: "lays" });
  }

  clear() {
    this.answer = null;
    this.element.replaceChildren();
  }

  stale(on) {
    this.element.classList.toggle("stale", on);
  }

  show(answer) {
    const first = !this.answer;
    this.answer = answer;
    this.stale(false);
    const { cloths, trimmings, unit } = answer;
    if (this.#chosen >= cloths.length) this.#chosen = 0;
    const length = (value) => `${show(value, unit)}`;
    this.figure = h("figure", { class: "lay" });
    this.buttons = cloths.map((cloth, i) =>
      h("button", { type: "button", class: "rowname", "aria-pressed": String(i === this.#chosen), onclick: () => this.#choose(i, true) }, pairsOf(cloth.pairs)),
    );
    this.element.replaceChildren(
      h("h2", null, say("cloth.buy")),
      figuresTable(
        say("cloth.buyCaption", { unit: say("unit." + unit) }),
        [say("cloth.forPairs"), say("cloth.cloth"), say("cloth.width"), say("cloth.length"), say("cloth.layLength"), say("cloth.used")],
        cloths.map((cloth, i) => [
          this.buttons[i],
          find("sewing.materials")[cloth.material] ?? cloth.material,
          length(cloth.width),
          h("strong", null, length(cloth.length)),
          length(cloth.layLength),
          number(cloth.utilisation * PERCENT, 0) + " %",
        ]),
        "buy-table",
      ),
      this.figure,
      trimmings.length === 0
        ? ""
        : figuresTable(
            say("cloth.trimmingCaption", { unit: say("unit." + unit) }),
            [say("cloth.forPairs"), say("cloth.hem"), say("cloth.edge"), say("cloth.length")],
            trimmings.map((each) => [pairsOf(each.pairs), length(each.hem), length(each.attachedEdge), h("strong", null, length(each.length))]),
          ),
      h("p", { class: "quiet-words" }, say("cloth.how")),
    );
    this.#choose(this.#chosen, first);
  }

  /** The picture of a lay, brought into view when somebody asked for it; its words are those of the row. */
  #choose(i, wanted) {
    this.#chosen = i;
    const { cloths, unit } = this.answer;
    const cloth = cloths[i];
    this.buttons.forEach((button, at) => {
      button.setAttribute("aria-pressed", String(at === i));
      button.closest("tr").classList.toggle("lit", at === i);
    });
    if (!cloth?.picture) return this.figure.replaceChildren();
    if (this.#address) URL.revokeObjectURL(this.#address);
    this.#address = URL.createObjectURL(new Blob([cloth.picture], { type: "image/svg+xml" }));
    const words = {
      pairs: pairsOf(cloth.pairs),
      material: find("sewing.materials")[cloth.material] ?? cloth.material,
      pieces: count("cloth.pieces", cloth.pieces),
      width: show(cloth.width, unit),
      length: show(cloth.layLength, unit),
      unit,
    };
    const { figure } = this;
    const bring = () => wanted && figure.scrollIntoView({ block: "nearest" });
    return figure.replaceChildren(
      h("figcaption", null, h("strong", null, words.material), ` ${words.pairs} · ${words.pieces}`),
      h("div", { class: "lay-sheet", tabindex: "0", role: "group", "aria-label": say("cloth.lay") }, h("img", { onload: bring, src: this.#address, alt: say("cloth.layText", words) })),
    );
  }
}

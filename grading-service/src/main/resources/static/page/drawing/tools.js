// The strip above the drawing: which piece, which sizes, on which point they lie, and how large.

import { h, s } from "../common/dom.js";
import { find, say } from "../common/words.js";

const LAYERS = ["net", "marks", "words", "handles"];

export class Tools {
  #chips = "";
  #pieces = "";

  constructor(store, drawing) {
    this.store = store;
    this.drawing = drawing;
    this.piece = h("select", { id: "piece", onchange: () => store.look((view) => (view.piece = this.piece.value)) });
    this.align = h(
      "select",
      { id: "align", onchange: () => store.change("", (style) => (style.align = this.align.value)) },
      ["fold", "apex", "underarm"].map((word) => h("option", { value: word }, find("drawing.alignments")[word])),
    );
    this.sizes = h("div", { class: "chips", role: "group", "aria-label": say("drawing.sizes") });
    const button = (name, sign, click) =>
      h("button", { type: "button", class: "quiet square", "aria-label": say(name), title: say(name), onclick: click }, sign);
    this.boxes = LAYERS.map((layer) =>
      h("input", {
        type: "checkbox",
        id: "layer-" + layer,
        onchange: (event) =>
          store.look((view) => {
            view.without = event.target.checked ? view.without.filter((each) => each !== layer) : [...view.without, layer];
          }),
      }),
    );
    this.layers = h(
      "details",
      { class: "layers" },
      h("summary", null, say("drawing.layers")),
      h(
        "div",
        { class: "layer-list" },
        h("div", { class: "tool" }, h("label", { for: "align" }, say("drawing.align")), this.align),
        this.boxes.map((box, i) => h("div", { class: "switch" }, box, h("label", { for: box.id }, say("drawing." + LAYERS[i])))),
      ),
    );
    this.layers.addEventListener("keydown", (event) => {
      if (event.key !== "Escape") return;
      this.layers.open = false;
      this.layers.firstChild.focus();
    });
    this.layers.addEventListener("focusout", (event) => {
      if (event.relatedTarget && !this.layers.contains(event.relatedTarget)) this.layers.open = false;
    });
    drawing.sheet.addEventListener("pointerdown", () => (this.layers.open = false));
    this.element = h(
      "div",
      { class: "tools" },
      h("div", { class: "tool" }, h("label", { for: "piece" }, say("drawing.piece")), this.piece),
      this.sizes,
      this.layers,
      (this.worn = h("button", { type: "button", id: "as-worn", onclick: () => store.look((view) => (view.worn = view.worn !== true)) }, say("worn3d.name"))),
      h(
        "div",
        { class: "zoom" },
        button("drawing.zoomOut", "−", () => drawing.window.zoom(0.8)),
        button("drawing.zoomIn", "+", () => drawing.window.zoom(1.25)),
        h("button", { type: "button", class: "quiet", onclick: () => drawing.fit() }, say("drawing.fit")),
      ),
    );
  }

  refresh() {
    const { style, view } = this.store;
    const names = this.drawing.pieceNames();
    if (names.join() !== this.#pieces && names.length > 0) {
      this.#pieces = names.join();
      this.piece.replaceChildren(
        ...["all", ...names].map((name) => h("option", { value: name }, find("pieces")[name] ?? name)),
      );
    }
    this.piece.value = names.includes(view.piece) ? view.piece : "all";
    this.align.value = style.align ?? "fold";
    this.boxes.forEach((box, i) => (box.checked = !view.without.includes(LAYERS[i])));
    this.worn.setAttribute("aria-pressed", String(view.worn === true));
    this.#showSizes();
  }

  #showSizes() {
    const { style, view } = this.store;
    const strokes = style.sizes.map((size) => this.drawing.strokeOf(size));
    const now = JSON.stringify([style.sizes, view.hidden, strokes]);
    if (now === this.#chips) return;
    this.#chips = now;
    const focused = document.activeElement?.dataset?.chip;
    this.sizes.replaceChildren(
      ...style.sizes.map((size, i) =>
        h(
          "button",
          {
            type: "button",
            class: "chip",
            "data-chip": size,
            "aria-pressed": String(!view.hidden.includes(size)),
            onclick: () =>
              this.store.look((each) => {
                each.hidden = each.hidden.includes(size) ? each.hidden.filter((label) => label !== size) : [...each.hidden, size];
              }),
          },
          s(
            "svg",
            { viewBox: "0 0 22 6", "aria-hidden": "true" },
            s("path", {
              d: "M1 3h20",
              stroke: strokes[i].colour,
              "stroke-width": size === style.baseSize ? 3 : 2.2,
              "stroke-dasharray": strokes[i].dashes,
            }),
          ),
          size,
        ),
      ),
    );
    if (focused !== undefined) this.sizes.querySelector(`[data-chip="${CSS.escape(focused)}"]`)?.focus();
  }
}

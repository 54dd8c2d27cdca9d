// The server's own drawing on the table: which piece and which sizes are seen, what lights up, and what is read off.

import { h, s } from "../common/dom.js";
import { Handles } from "./handles.js";
import { fromMm, show } from "../common/units.js";
import { drawTapes, TAPE_WIDTH } from "./tape.js";
import { find, say } from "../common/words.js";
import { Window } from "./window.js";

const parser = new DOMParser();

/** Below so many pixels to the millimetre the lines of neighbouring sizes run together: only the base size then shows its seam lines and marks. */
const FAR = 1.2;

export class Drawing {
  #svg = null;
  #mark = -1;

  constructor({ store, drafted, light }) {
    this.store = store;
    this.light = light;
    this.tapes = h("canvas", { class: "tapes", "aria-hidden": "true" });
    this.holder = h("div", { class: "cloth" });
    this.readout = h("p", { class: "readout", "aria-live": "polite" });
    this.sheet = h(
      "div",
      { class: "sheet", id: "sheet", tabindex: "0", role: "group", "aria-label": say("drawing.name"), "aria-describedby": "sheet-help" },
      this.tapes,
      this.holder,
    );
    this.help = h("p", { id: "sheet-help", class: "unseen" }, say("drawing.help"));
    this.element = h("div", { class: "board" }, this.sheet, this.help, this.readout);
    this.window = new Window(this.sheet, () => this.#aim(), TAPE_WIDTH);
    this.handles = new Handles({ store, drafted, drawing: this });
    this.sheet.addEventListener("keydown", (event) => this.#key(event));
    this.sheet.addEventListener("pointermove", (event) => this.#read(event));
    this.sheet.addEventListener("pointerleave", () => this.readout.replaceChildren());
    new ResizeObserver(() => (this.window.fitted ? this.fit() : this.#aim())).observe(this.sheet);
    this.readout.append(say("drawing.none"));
  }

  /** Puts a new drawing in the place of the last. */
  put(text) {
    const parsed = parser.parseFromString(text, "image/svg+xml").documentElement;
    if (parsed.nodeName !== "svg") return;
    const first = this.#svg === null;
    const before = this.#zero();
    this.#svg = document.importNode(parsed, true);
    // Names in a file are not names on a page, where several drawings may stand.
    for (const part of this.#svg.querySelectorAll("[id]")) part.removeAttribute("id");
    this.#svg.removeAttribute("width");
    this.#svg.removeAttribute("height");
    this.#svg.setAttribute("role", "none");
    for (const part of this.#svg.querySelectorAll("g.header, g.test-square, g.size, g.words")) part.setAttribute("aria-hidden", "true");
    this.#svg.querySelector(":scope > title")?.remove();
    this.holder.replaceChildren(this.#svg);
    this.#mark = -1;
    if (first) this.readout.replaceChildren();
    this.look(false);
    if (this.window.fitted) this.fit();
    else {
      const after = this.#zero();
      this.window.left += after.x - before.x;
      this.window.top += after.y - before.y;
      this.#aim();
    }
  }

  get pieces() {
    return this.#svg ? [...this.#svg.querySelectorAll("g.piece")] : [];
  }

  pieceNames() {
    return this.pieces.map((piece) => piece.dataset.piece);
  }

  /** How the line of a size is drawn: colour and dashes. */
  strokeOf(size) {
    const path = this.#svg?.querySelector(`g.size[data-size="${CSS.escape(size)}"] > path.cut`);
    return { colour: path?.getAttribute("stroke") ?? "#000000", dashes: path?.getAttribute("stroke-dasharray") ?? "" };
  }

  /** Shows what the view says is to be seen. */
  look(refit = true) {
    if (!this.#svg) return;
    const { view, style } = this.store;
    const names = this.pieceNames();
    const piece = names.includes(view.piece) ? view.piece : "all";
    for (const group of this.pieces) {
      group.classList.toggle("away", piece !== "all" && group.dataset.piece !== piece);
      for (const size of group.querySelectorAll(":scope > g.size")) {
        size.classList.toggle("away", view.hidden.includes(size.dataset.size));
        size.classList.toggle("base", size.dataset.size === style.baseSize);
      }
    }
    for (const layer of ["net", "marks", "words"]) this.holder.classList.toggle("no-" + layer, view.without.includes(layer));
    this.handles.place();
    this.shine(this.lit);
    if (refit) this.fit();
  }

  fit() {
    const box = this.#box();
    if (box) this.window.fit(box);
  }

  #box() {
    return boxOf(this.pieces.filter((piece) => !piece.classList.contains("away")));
  }

  #zero() {
    const piece = this.pieces.find((each) => !each.classList.contains("away"));
    return piece ? origin(piece) : { x: 0, y: 0 };
  }

  #aim() {
    const { window } = this;
    this.holder.classList.toggle("far", window.pixels < FAR);
    if (this.#svg) {
      this.#svg.setAttribute(
        "viewBox",
        `${window.left} ${window.top} ${window.width / window.pixels} ${window.height / window.pixels}`,
      );
    }
    const zero = this.#zero();
    drawTapes(
      this.tapes,
      { left: window.left, top: window.top, pixels: window.pixels, zeroX: zero.x, zeroY: zero.y },
      this.store.style.units,
    );
    this.handles.size(window.pixels);
  }

  #key(event) {
    if (event.target !== this.sheet) return;
    let known = true;
    if (event.key === "0") this.fit();
    else if (event.key === "Escape") this.light.put();
    else if (event.key === "n" || event.key === "N") this.#step(1);
    else if (event.key === "p" || event.key === "P") this.#step(-1);
    else known = this.window.key(event);
    if (known) event.preventDefault();
  }

  /** Steps through the marks that are seen, and says which it is. */
  #step(by) {
    const marks = this.pieces
      .filter((piece) => !piece.classList.contains("away"))
      .flatMap((piece) => [...piece.querySelectorAll("g.size.base > .mark, g.size.base > .notch")]);
    if (marks.length === 0) return;
    for (const mark of marks) mark.classList.remove("lit");
    this.#mark = (this.#mark + by + marks.length) % marks.length;
    const mark = marks[this.#mark];
    mark.classList.add("lit");
    this.readout.replaceChildren(`${find("pieces")[mark.closest(".piece").dataset.piece]}${say("colon")}${mark.querySelector("title")?.textContent ?? ""}`);
  }

  #read(event) {
    if (!this.#svg) return;
    const box = this.sheet.getBoundingClientRect();
    const at = this.window.place(event.clientX - box.left, event.clientY - box.top);
    const over = document.elementFromPoint(event.clientX, event.clientY);
    const piece = over?.closest?.("g.piece") ?? this.#nearest(at.x);
    if (!piece) return;
    const zero = origin(piece);
    const unit = this.store.style.units;
    const write = (mm) => show(fromMm(mm, unit), unit) + " " + unit;
    const title = over?.querySelector?.(":scope > title")?.textContent;
    this.readout.setAttribute("aria-live", "off");
    this.readout.replaceChildren(
      h("strong", null, find("pieces")[piece.dataset.piece] ?? piece.dataset.piece),
      " ",
      title ? title + " · " : "",
      say("drawing.at", { x: write(at.x - zero.x), y: write(zero.y - at.y) }),
    );
  }

  #nearest(x) {
    const seen = this.pieces.filter((piece) => !piece.classList.contains("away"));
    return seen.filter((piece) => origin(piece).x <= x).pop() ?? seen[0];
  }

  /** Lights up a measure, an edge or sizes: {guides: [{piece, points|segments}], sizes}. Nothing given puts the light out. */
  shine(what) {
    this.lit = what;
    if (!this.#svg) return;
    for (const old of this.#svg.querySelectorAll("g.guide")) old.remove();
    const sizes = what?.sizes ?? [];
    this.holder.classList.toggle("some-lit", sizes.length > 0);
    for (const size of this.#svg.querySelectorAll("g.size")) size.classList.toggle("lit", sizes.includes(size.dataset.size));
    for (const guide of what?.guides ?? []) {
      const piece = this.#svg.querySelector(`g.piece[data-piece="${guide.piece}"]`);
      if (!piece) continue;
      piece.append(s("g", { class: "guide" }, s("path", { d: guide.path })));
    }
  }

  /** The group of a piece, if it is drawn and seen. */
  seen(id) {
    return this.pieces.find((piece) => piece.dataset.piece === id && !piece.classList.contains("away"));
  }
}

/** Where a group's own zero lies in its parent. */
export function origin(group) {
  const found = /translate\(\s*(-?[\d.e-]+)[\s,]+(-?[\d.e-]+)/.exec(group.getAttribute("transform") ?? "");
  return found ? { x: Number(found[1]), y: Number(found[2]) } : { x: 0, y: 0 };
}

/** What the cut lines of pieces take up, in the drawing's millimetres; nothing if none is seen. */
export function boxOf(pieces) {
  let box = null;
  for (const piece of pieces) {
    const zero = origin(piece);
    for (const cut of piece.querySelectorAll(":scope > g.size:not(.away) > path.cut")) {
      const part = cut.getBBox();
      const shift = origin(cut.parentNode);
      const x = part.x + zero.x + shift.x;
      const y = part.y + zero.y + shift.y;
      box = box
        ? { x: Math.min(box.x, x), y: Math.min(box.y, y), right: Math.max(box.right, x + part.width), bottom: Math.max(box.bottom, y + part.height) }
        : { x, y, right: x + part.width, bottom: y + part.height };
    }
  }
  return box && { x: box.x, y: box.y, width: box.right - box.x, height: box.bottom - box.y };
}

// Handles on the main points of the base size. Each is a slider along one line of the draft: dragged, or moved by the arrow keys.

import { s } from "./dom.js";
import { get, has, put } from "./pointer.js";
import { fromMm, show, toMm } from "./units.js";
import { find } from "./words.js";

const RADIUS = 8;

/** Where each handle lies (mm, y up, zero at fold and bicep line) and which way its field grows. */
const HANDLES = [
  { path: "/overlay/rise", piece: "overlay-main", at: (d) => [0, d.capHeight + d.rise], up: 1, least: 0, greatest: 800 },
  { path: "/overlay/length", piece: "overlay-main", at: (d) => [0, d.capHeight - d.overlayLength], up: -1, least: 20, greatest: 2000 },
  { path: "/sleeve/capHeight", piece: "under-sleeve", at: (d) => [0, d.capHeight], up: 1, least: 10, greatest: 500 },
  { path: "/sleeve/length", piece: "under-sleeve", at: (d) => [0, d.capHeight - d.length], up: -1, least: 20, greatest: 2000 },
];

const STEP = { mm: 1, cm: 0.1, in: 0.0625 };

export class Handles {
  #held = null;
  #made = new Map();
  #pixels = 1;

  constructor(page, drawing) {
    this.page = page;
    this.drawing = drawing;
  }

  /** The base size's dimensions in mm: those given, or else those last drafted. */
  #dimensions() {
    const { style } = this.page.store;
    const { answer } = this.page;
    const base = answer?.sizes.find((size) => size.label === answer.baseSize);
    const mm = {};
    for (const [name, value] of Object.entries(base?.dimensions ?? {})) mm[name] = toMm(value, answer.unit);
    for (const [name, path] of [
      ["capHeight", "/sleeve/capHeight"],
      ["rise", "/overlay/rise"],
      ["overlayLength", "/overlay/length"],
      ["length", "/sleeve/length"],
    ]) {
      const value = get(style, path);
      if (typeof value === "number") mm[name] = toMm(value, style.units);
    }
    return mm;
  }

  /** Puts the handles on the drawing anew; the one that is held stays the same element, so that the drag goes on. */
  place() {
    const { style, view } = this.page.store;
    const dimensions = this.#dimensions();
    const focused = document.activeElement?.dataset?.handle;
    for (const handle of HANDLES) {
      const piece = this.drawing.seen(handle.piece);
      const [x, y] = handle.at(dimensions);
      const off = !piece || !has(style, handle.path) || view.without.includes("handles") || Number.isNaN(x + y);
      let made = this.#made.get(handle.path);
      if (off) {
        made?.remove();
        continue;
      }
      if (!made) {
        made = this.#make(handle);
        this.#made.set(handle.path, made);
      }
      made.setAttribute("transform", `translate(${x} ${-y})`);
      made.setAttribute("aria-valuenow", get(style, handle.path));
      made.setAttribute("aria-valuetext", `${show(get(style, handle.path), style.units)} ${style.units}`);
      if (made.parentNode !== piece) piece.append(made);
    }
    if (focused) this.#made.get(focused)?.focus({ preventScroll: true });
    this.size(this.#pixels);
  }

  /** Keeps the handles one size on the screen. */
  size(pixels) {
    this.#pixels = pixels;
    for (const made of this.#made.values()) made.firstChild.setAttribute("transform", `scale(${1 / pixels})`);
  }

  #make(handle) {
    const { style } = this.page.store;
    const element = s(
      "g",
      {
        class: "handle",
        "data-handle": handle.path,
        tabindex: "0",
        role: "slider",
        "aria-orientation": "vertical",
        "aria-label": find("handles")[handle.path],
        "aria-valuemin": fromMm(handle.least, style.units),
        "aria-valuemax": fromMm(handle.greatest, style.units),
      },
      s("g", null, s("circle", { r: 14, class: "reach" }), s("circle", { r: RADIUS, class: "knob" }), s("path", { d: "M0-4v8M-2.5-1.8 0-4.3 2.5-1.8M-2.5 1.8 0 4.3 2.5 1.8" })),
    );
    element.addEventListener("keydown", (event) => {
      const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 10, PageDown: -10 }[event.key];
      if (by === undefined) return;
      event.preventDefault();
      event.stopPropagation();
      const { units } = this.page.store.style;
      const grows = event.key === "ArrowUp" || event.key === "ArrowDown" ? handle.up : 1;
      this.#take(handle, get(this.page.store.style, handle.path) + by * grows * STEP[units]);
    });
    element.addEventListener("pointerdown", (event) => {
      event.preventDefault();
      event.stopPropagation();
      element.focus({ preventScroll: true });
      this.#held = { handle, y: event.clientY, from: get(this.page.store.style, handle.path), units: this.page.store.style.units };
      const move = (e) => this.#drag(e);
      const up = () => {
        this.#held = null;
        window.removeEventListener("pointermove", move);
        window.removeEventListener("pointerup", up);
        window.removeEventListener("pointercancel", up);
      };
      window.addEventListener("pointermove", move);
      window.addEventListener("pointerup", up);
      window.addEventListener("pointercancel", up);
    });
    return element;
  }

  #drag(event) {
    const { handle, y, from, units } = this.#held;
    const moved = ((y - event.clientY) / this.#pixels) * handle.up;
    this.#take(handle, from + fromMm(moved, units));
  }

  #take(handle, value) {
    const { units } = this.page.store.style;
    const step = STEP[units];
    const least = fromMm(handle.least, units);
    const greatest = fromMm(handle.greatest, units);
    const next = Number((Math.round(Math.min(greatest, Math.max(least, value)) / step) * step).toFixed(4));
    this.page.store.change(handle.path, (style) => put(style, handle.path, next));
    this.place();
  }
}

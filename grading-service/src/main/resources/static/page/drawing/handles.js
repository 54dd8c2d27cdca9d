// Handles on the main points of the base size. Each is a slider along one line of the draft: dragged, or moved by the arrow keys.

import { s } from "../common/dom.js";
import { get, has, put } from "../common/pointer.js";
import { rangeOf, shownRange, within } from "../common/ranges.js";
import { fromMm, show, toMm } from "../common/units.js";
import { find } from "../common/words.js";

const RADIUS = 8;

/** From the apex to the back underarm point of the sleeve beneath the overlay, mm. */
const guide = (d) => [d.bicep - (d.frontWidth ?? d.bicep / 2) + (d.extraWidth ?? 0), -d.capHeight];

/** Where each handle lies (mm, y up, zero at fold and bicep line) and how it moves while its field grows by one: by a millimetre, or by the whole for a share. */
const HANDLES = [
  { path: "/overlay/rise", piece: "overlay-main", at: (d) => [0, d.capHeight + d.rise], along: () => [0, 1] },
  { path: "/overlay/length", piece: "overlay-main", at: (d) => [0, d.capHeight - d.overlayLength], along: () => [0, -1] },
  {
    path: "/overlay/join",
    piece: "overlay-main",
    share: true,
    usual: 0.75,
    at: (d) => [guide(d)[0] * d.join, d.capHeight * (1 - d.join)],
    along: guide,
  },
  { path: "/sleeve/capHeight", piece: "under-sleeve", at: (d) => [0, d.capHeight], along: () => [0, 1] },
  { path: "/sleeve/length", piece: "under-sleeve", at: (d) => [0, d.capHeight - d.length], along: () => [0, -1] },
];

const SHARE_STEP = 0.01;

const STEP = { mm: 1, cm: 0.1, in: 0.0625 };

export class Handles {
  #held = null;
  #made = new Map();
  #pixels = 1;

  constructor({ store, drafted, drawing }) {
    this.store = store;
    this.drafted = drafted;
    this.drawing = drawing;
  }

  /** The base size's dimensions in mm: those given, or else those last drafted. */
  #dimensions() {
    const { style } = this.store;
    const { answer, base } = this.drafted;
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
    mm.join = get(style, "/overlay/join") ?? 0.75;
    return mm;
  }

  /** Puts the handles on the drawing anew; the one that is held stays the same element, so that the drag goes on. */
  place() {
    const { style, view } = this.store;
    const dimensions = this.#dimensions();
    const focused = document.activeElement?.dataset?.handle;
    for (const handle of HANDLES) {
      const piece = this.drawing.seen(handle.piece);
      const [x, y] = handle.at(dimensions);
      const off = !piece || !(handle.share || has(style, handle.path)) || view.without.includes("handles") || Number.isNaN(x + y);
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
      const value = this.#value(handle);
      made.setAttribute("aria-valuenow", value);
      made.setAttribute("aria-valuetext", handle.share ? `${Math.round(100 * value)} %` : `${show(value, style.units)} ${style.units}`);
      const [ax, ay] = handle.along(dimensions);
      made.firstChild.lastChild.setAttribute("transform", `rotate(${(Math.atan2(ax, ay) * 180) / Math.PI})`);
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

  #value(handle) {
    return get(this.store.style, handle.path) ?? handle.usual;
  }

  #range(handle) {
    return shownRange(rangeOf(handle.path), handle.share ? "" : this.store.style.units);
  }

  #make(handle) {
    const element = s(
      "g",
      {
        class: "handle",
        "data-handle": handle.path,
        tabindex: "0",
        role: "slider",
        "aria-orientation": "vertical",
        "aria-label": find("handles")[handle.path],
        "aria-valuemin": this.#range(handle).least,
        "aria-valuemax": this.#range(handle).greatest,
      },
      s("g", null, s("circle", { r: 14, class: "reach" }), s("circle", { r: RADIUS, class: "knob" }), s("path", { d: "M0-4v8M-2.5-1.8 0-4.3 2.5-1.8M-2.5 1.8 0 4.3 2.5 1.8" })),
    );
    element.addEventListener("keydown", (event) => {
      const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 10, PageDown: -10 }[event.key];
      if (by === undefined) return;
      event.preventDefault();
      event.stopPropagation();
      const upward = event.key === "ArrowUp" || event.key === "ArrowDown";
      const grows = upward && handle.along(this.#dimensions())[1] < 0 ? -1 : 1;
      this.#take(handle, this.#value(handle) + by * grows * this.#step(handle));
    });
    element.addEventListener("pointerdown", (event) => {
      event.preventDefault();
      event.stopPropagation();
      element.focus({ preventScroll: true });
      this.#held = { handle, x: event.clientX, y: event.clientY, from: this.#value(handle), along: handle.along(this.#dimensions()) };
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

  #step(handle) {
    return handle.share ? SHARE_STEP : STEP[this.store.style.units];
  }

  /** The way of the pointer along the line of the handle, in units of its field. */
  #drag(event) {
    const { handle, x, y, from, along } = this.#held;
    const across = (event.clientX - x) / this.#pixels;
    const up = (y - event.clientY) / this.#pixels;
    const moved = (across * along[0] + up * along[1]) / (along[0] * along[0] + along[1] * along[1]);
    this.#take(handle, from + (handle.share ? moved : fromMm(moved, this.store.style.units)));
  }

  #take(handle, value) {
    const step = this.#step(handle);
    const next = Number((Math.round(within(this.#range(handle), value) / step) * step).toFixed(4));
    this.store.change(handle.path, (style) => put(style, handle.path, next));
    this.place();
  }
}

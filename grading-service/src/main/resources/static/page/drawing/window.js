// The window through which the drawing is seen: where it lies and how large, moved by pointer, wheel, pinch and keys.

const ZOOM_STEP = 1.25;
const MOST_PIXELS = 60;
const LEAST_PIXELS = 0.05;

export class Window {
  left = 0;
  top = 0;
  pixels = 1;

  /** Whether it still shows everything, so that it follows the drawing. */
  fitted = true;

  constructor(element, changed, room) {
    this.element = element;
    this.changed = changed;
    this.room = room;
    this.#listen();
  }

  get width() {
    return this.element.clientWidth;
  }

  get height() {
    return this.element.clientHeight;
  }

  /** Shows a box of the drawing, in millimetres, as large as it goes beside the tapes. */
  fit(box) {
    if (this.width === 0 || box.width <= 0 || box.height <= 0) return;
    const border = 14;
    const width = this.width - this.room - 2 * border;
    const height = this.height - this.room - 2 * border;
    this.pixels = Math.min(MOST_PIXELS, Math.max(LEAST_PIXELS, Math.min(width / box.width, height / box.height)));
    this.left = box.x - (this.room + border + (width - box.width * this.pixels) / 2) / this.pixels;
    this.top = box.y - (this.room + border + (height - box.height * this.pixels) / 2) / this.pixels;
    this.fitted = true;
    this.changed();
  }

  /** Zooms so that the place under a point of the element stays where it is; the middle if none is given. */
  zoom(factor, at = { x: this.width / 2, y: this.height / 2 }) {
    const next = Math.min(MOST_PIXELS, Math.max(LEAST_PIXELS, this.pixels * factor));
    this.left += at.x / this.pixels - at.x / next;
    this.top += at.y / this.pixels - at.y / next;
    this.pixels = next;
    this.fitted = false;
    this.changed();
  }

  move(dx, dy) {
    this.left -= dx / this.pixels;
    this.top -= dy / this.pixels;
    this.fitted = false;
    this.changed();
  }

  /** The drawing's millimetres at a point of the element. */
  place(x, y) {
    return { x: this.left + x / this.pixels, y: this.top + y / this.pixels };
  }

  #listen() {
    const { element } = this;
    const down = new Map();
    const point = (event) => {
      const box = element.getBoundingClientRect();
      return { x: event.clientX - box.left, y: event.clientY - box.top };
    };
    element.addEventListener(
      "wheel",
      (event) => {
        event.preventDefault();
        const lines = event.deltaMode === 1 ? 16 : 1;
        this.zoom(Math.exp((-event.deltaY * lines) / 500), point(event));
      },
      { passive: false },
    );
    element.addEventListener("pointerdown", (event) => {
      if (event.button !== 0 || event.target.closest("[data-handle]")) return;
      down.set(event.pointerId, point(event));
      element.setPointerCapture(event.pointerId);
      element.classList.add("held");
    });
    element.addEventListener("pointermove", (event) => {
      const before = down.get(event.pointerId);
      if (!before) return;
      const now = point(event);
      const others = [...down].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
      down.set(event.pointerId, now);
      if (others.length === 0) {
        if (now.x !== before.x || now.y !== before.y) this.move(now.x - before.x, now.y - before.y);
        return;
      }
      const other = others[0];
      const apart = (a, b) => Math.max(10, Math.hypot(a.x - b.x, a.y - b.y));
      this.zoom(apart(now, other) / apart(before, other), { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 });
    });
    const up = (event) => {
      down.delete(event.pointerId);
      if (down.size === 0) element.classList.remove("held");
    };
    element.addEventListener("pointerup", up);
    element.addEventListener("pointercancel", up);
    element.addEventListener("dblclick", (event) => this.zoom(ZOOM_STEP * ZOOM_STEP, point(event)));
  }

  /** Keys that move and zoom; tells whether it was one of them. */
  key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    const far = event.shiftKey ? 160 : 40;
    const moves = { ArrowLeft: [far, 0], ArrowRight: [-far, 0], ArrowUp: [0, far], ArrowDown: [0, -far] };
    if (moves[event.key]) this.move(...moves[event.key]);
    else if (event.key === "+" || event.key === "=") this.zoom(ZOOM_STEP);
    else if (event.key === "-") this.zoom(1 / ZOOM_STEP);
    else return false;
    return true;
  }
}

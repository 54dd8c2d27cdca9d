// What the page holds: the style (the very body of POST /v1/size-runs) and how it is looked at. Changes to the style can be undone.

const TOGETHER = 900;
const MOST_STEPS = 200;

export class Store {
  #past = [];
  #future = [];
  #listeners = [];
  #lastKey = "";
  #lastTime = 0;

  constructor(style, view) {
    this.style = style;
    this.view = view;
  }

  /** Listeners are told what changed: "style" or "view". */
  listen(listener) {
    this.#listeners.push(listener);
  }

  #tell(what) {
    for (const listener of this.#listeners) listener(what);
  }

  /** Changes the style. Changes of the same place shortly after one another are undone as one. */
  change(place, edit) {
    const next = structuredClone(this.style);
    edit(next);
    if (JSON.stringify(next) === JSON.stringify(this.style)) return;
    const now = performance.now();
    if (place === "" || place !== this.#lastKey || now - this.#lastTime > TOGETHER) {
      this.#past.push(this.style);
      if (this.#past.length > MOST_STEPS) this.#past.shift();
    }
    this.#future = [];
    this.#lastKey = place;
    this.#lastTime = now;
    this.style = next;
    this.#tell("style");
  }

  look(edit) {
    edit(this.view);
    this.#tell("view");
  }

  get canUndo() {
    return this.#past.length > 0;
  }

  get canRedo() {
    return this.#future.length > 0;
  }

  undo() {
    this.#move(this.#past, this.#future);
  }

  redo() {
    this.#move(this.#future, this.#past);
  }

  #move(from, to) {
    const style = from.pop();
    if (!style) return;
    to.push(this.style);
    this.style = style;
    this.#lastKey = "";
    this.#tell("style");
  }
}

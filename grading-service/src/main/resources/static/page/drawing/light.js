// What is lit: a point of measure by its code, and sizes. Drawing and tables show it, and a press on either changes it.

export class Light {
  code = "";
  sizes = [];
  #listeners = [];

  listen(listener) {
    this.#listeners.push(listener);
  }

  /** Lights a code and sizes; nothing at all puts the light out. */
  put(code = "", sizes = []) {
    this.code = code;
    this.sizes = sizes;
    for (const listener of this.#listeners) listener();
  }

  /** The same, or out if just that is lit. */
  toggle(code, sizes = []) {
    if (this.code === code && this.sizes.join() === sizes.join()) this.put();
    else this.put(code, sizes);
  }
}

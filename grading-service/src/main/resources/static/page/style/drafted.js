// What the service last answered of the style on the bench; nothing before the first answer.

import { convert } from "../common/units.js";

export class Drafted {
  answer = null;

  /** The base size as it was drafted. */
  get base() {
    return this.answer?.sizes.find((size) => size.label === this.answer.baseSize);
  }

  /** A dimension of the base size in a unit of length, or undefined. */
  length(name, unit) {
    const value = this.base?.dimensions[name];
    return value === undefined ? undefined : convert(value, this.answer.unit, unit);
  }
}

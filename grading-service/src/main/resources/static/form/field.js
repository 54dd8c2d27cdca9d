// One measurement: how it is taken, what was typed, and what is to be said of it.

import { h } from "../page/common/dom.js";
import { number, parseLength, show } from "../page/common/units.js";
import { DRAWN, measurePicture } from "../page/wearer/figures.js";
import { find, say } from "./words.js";

/** A length that shows how one is written. */
const EXAMPLE = 31.5;

/** Figures about people are no finer than a tape is laid. */
const COARSE = { mm: 0, cm: 1 };

const coarse = (length, unit) => (unit in COARSE ? number(length, COARSE[unit]) : show(length, unit));

export class Field {
  constructor({ dimension, least, greatest, definition }, unit, language, changed) {
    const [label, how] = find(language, "body")[dimension] ?? [dimension, definition];
    this.dimension = dimension;
    this.name = label;
    this.unit = unit;
    this.language = language;
    this.range = { least, greatest };
    this.touched = false;
    this.input = h("input", { id: dimension, type: "text", inputmode: "decimal", autocomplete: "off", spellcheck: "false", "aria-describedby": `${dimension}-says ${dimension}-how` });
    this.says = h("p", { class: "says", id: dimension + "-says" });
    this.element = h(
      "div",
      { class: "measure", part: "measure" },
      DRAWN.includes(dimension) ? measurePicture(dimension) : null,
      h(
        "div",
        null,
        h("label", { for: dimension }, label),
        h("span", { class: "box" }, this.input, h("span", { class: "unit", "aria-hidden": "true" }, unit)),
        this.says,
        h("p", { class: "how", id: dimension + "-how" }, how, " ", say(language, "range", { ...this.#written(this.range), unit })),
      ),
    );
    this.input.addEventListener("input", () => changed());
    this.input.addEventListener("blur", () => {
      this.touched ||= this.input.value.trim() !== "";
      this.refresh();
    });
  }

  #written = (lengths) => Object.fromEntries(Object.entries(lengths).map(([name, length]) => [name, show(length, this.unit)]));

  #coarse = (lengths) => Object.fromEntries(Object.entries(lengths).map(([name, length]) => [name, coarse(length, this.unit)]));

  /** The length that was typed, NaN for what is none, undefined for nothing. */
  get value() {
    const text = this.input.value.trim();
    return text === "" ? undefined : parseLength(text, this.unit);
  }

  /** What is wrong with what was typed, before the service is asked. */
  get slip() {
    const { value, unit } = this;
    if (value === undefined) return "";
    if (Number.isNaN(value)) return say(this.language, "notNumber", { example: number(EXAMPLE) });
    const { least, greatest } = this.range;
    return value < least || value > greatest ? say(this.language, "outOfRange", { ...this.#written({ value, least, greatest }), unit }) : "";
  }

  clear() {
    this.input.value = "";
    this.touched = false;
    this.refresh();
  }

  /** Says what the service knows of it: that it is doubted, wrong, needed, or estimated. Nothing if nothing. */
  refresh(known = this.known) {
    this.known = known;
    const [kind, words] = this.#judged();
    this.says.textContent = words;
    this.says.className = "says " + kind;
    this.element.dataset.judged = kind;
    if (kind === "wrong") this.input.setAttribute("aria-invalid", "true");
    else this.input.removeAttribute("aria-invalid");
    this.input.placeholder = kind === "estimated" ? "≈ " + coarse(known.estimate.value, this.unit) : "";
  }

  /** Whether it keeps the order back. */
  get wrong() {
    return this.element.dataset.judged === "wrong";
  }

  #judged() {
    const { language, unit, known, slip } = this;
    const typed = this.value !== undefined;
    // Half a number is no slip yet.
    if (slip) return this.touched ? ["wrong", slip] : ["", ""];
    if (typed && known?.question) return ["doubtful", this.#bounds(known.question, "unusual", "unusualAlone")];
    if (typed && known?.violation) return ["wrong", this.#limits(known.violation)];
    if (!typed && known?.violation && this.touched) return ["wrong", say(language, "needed")];
    if (!typed && known?.estimate) {
      const { value, low, high } = known.estimate;
      return ["estimated", say(language, "estimated", { ...this.#coarse({ value, low, high }), unit })];
    }
    return ["", ""];
  }

  #bounds({ minimum, maximum }, both, none) {
    if (typeof minimum !== "number" || typeof maximum !== "number") return say(this.language, none);
    return say(this.language, both, { ...this.#coarse({ low: minimum, high: maximum }), unit: this.unit });
  }

  #limits({ minimum: least, maximum: greatest }) {
    const { language, unit } = this;
    const given = { least: typeof least === "number", greatest: typeof greatest === "number" };
    if (given.least && given.greatest) return say(language, "between", { ...this.#written({ least, greatest }), unit });
    if (given.least) return say(language, "atLeast", { ...this.#written({ least }), unit });
    return given.greatest ? say(language, "atMost", { ...this.#written({ greatest }), unit }) : say(language, "notSewn");
  }
}

// A measurement with its picture, and an ease.

import { h } from "../common/dom.js";
import { rangeOf, shownRange, within } from "../common/ranges.js";
import { bounds, parse, parseLength, show } from "../common/units.js";
import { sentence } from "../common/violations.js";
import { questioned } from "./fitted.js";
import { find, say } from "../common/words.js";

/** The hand is measured for the opening of the under-sleeve, everything else for the sleeve itself. */
export const placeOf = (name) => (name === "handGirth" ? "/underSleeve/handGirth" : "/wearer/" + name);

const rangeFor = (name, unit) => shownRange(rangeOf(placeOf(name)), unit);

const STEP = { mm: 5, cm: 0.5, in: 0.25 };

const near = (value, step) => Number((Math.round(value / step) * step).toFixed(4));

export class MeasureField {
  constructor(desk, name, picture) {
    this.desk = desk;
    this.name = name;
    const [label, how] = find("body")[name];
    const id = "w-" + name;
    this.unit = h("span", { class: "unit", "aria-hidden": "true" });
    this.input = h("input", { id, type: "text", inputmode: "decimal", autocomplete: "off", spellcheck: "false", "aria-describedby": `${id}-how ${id}-says` });
    this.how = h("p", { class: "how", id: id + "-how" }, how);
    this.says = h("p", { class: "card-says", id: id + "-says" });
    this.confirm = h("input", { type: "checkbox", id: id + "-confirm", onchange: () => this.#confirm() });
    this.confirmBox = h("div", { class: "switch", hidden: true }, this.confirm, h("label", { for: this.confirm.id }, say("wearer.confirm")));
    this.element = h(
      "div",
      { class: "card", "data-measure": name },
      picture,
      h("div", { class: "card-field" }, h("div", { class: "head" }, h("label", { for: id }, label), this.unit), this.input, this.says, this.confirmBox, this.how),
    );
    this.input.addEventListener("input", () => this.#typed());
    this.input.addEventListener("blur", () => this.refresh(this.violation, this.estimate));
    this.input.addEventListener("keydown", (event) => this.#key(event));
  }

  get value() {
    return this.name === "handGirth" ? this.desk.state.hand : this.desk.state.values[this.name];
  }

  #put(value) {
    const { name } = this;
    this.desk.take((state) => {
      if (name === "handGirth") state.hand = value;
      else if (value === undefined) delete state.values[name];
      else state.values[name] = value;
      state.confirmed = state.confirmed.filter((each) => each !== name);
    });
  }

  #typed() {
    const text = this.input.value.trim();
    const value = parseLength(text, this.desk.units);
    const bad = text !== "" && Number.isNaN(value);
    this.#say(bad ? say("notNumber") : "", bad ? "error" : "");
    this.input.toggleAttribute("data-bad", bad);
    this.desk.unread(placeOf(this.name), bad ? text : "");
    if (!bad) this.#put(text === "" ? undefined : value);
  }

  #key(event) {
    if (event.key === "Escape") this.#readable(this.value === undefined ? "" : show(this.value, this.desk.units));
    const by = { ArrowUp: 1, ArrowDown: -1, PageUp: 5, PageDown: -5 }[event.key];
    const from = this.value ?? this.estimate?.value;
    if (by === undefined || from === undefined) return;
    event.preventDefault();
    const unit = this.desk.units;
    const value = within(rangeFor(this.name, unit), near(from + by * STEP[unit], STEP[unit]));
    this.#put(value);
    this.#readable(show(value, unit));
  }

  /** Writes what can be read in the place of what could not. */
  #readable(text) {
    this.input.value = text;
    this.input.removeAttribute("data-bad");
    this.#say("", "");
    this.desk.unread(placeOf(this.name), "");
  }

  #confirm() {
    const { name } = this;
    const on = this.confirm.checked;
    this.desk.take((state) => (state.confirmed = [...state.confirmed.filter((each) => each !== name), ...(on ? [name] : [])]));
  }

  #say(text, kind) {
    this.says.textContent = text;
    this.says.className = "card-says " + kind;
  }

  /** Brings the field up to date with what the service said of it: what is wrong, or what it was estimated to be. */
  refresh(violation, estimate) {
    this.violation = violation;
    this.estimate = estimate;
    const unit = this.desk.units;
    const { value } = this;
    const range = rangeFor(this.name, unit);
    const [least, greatest] = bounds(range.least, range.greatest, unit);
    const write = (length) => show(length, unit);
    this.unit.textContent = unit;
    this.how.textContent = find("body")[this.name][1] + (least === undefined ? "" : " " + say("range", { least, greatest, unit }));
    if (this.desk.isUnread(placeOf(this.name))) return;
    if (document.activeElement !== this.input) this.input.value = value === undefined ? "" : write(value);
    this.input.placeholder = value === undefined && estimate ? "≈ " + write(estimate.value) : "";
    const confirmed = this.desk.state.confirmed.includes(this.name);
    const doubted = violation !== undefined && value !== undefined && questioned(violation);
    this.confirmBox.hidden = !doubted && !confirmed;
    this.confirm.checked = confirmed;
    this.input.toggleAttribute("data-bad", violation !== undefined && value !== undefined && !doubted);
    this.element.classList.toggle("doubted", doubted);
    this.element.classList.toggle("estimated", value === undefined && estimate !== undefined);
    if (estimate && value === undefined) {
      this.#say(say("wearer.estimated", { value: write(estimate.value), low: write(estimate.low), high: write(estimate.high), unit }), "guess");
    } else if (doubted) this.#say(say("wearer.unusual", { low: write(violation.minimum), high: write(violation.maximum), unit }), "doubt");
    else if (violation && value === undefined) this.#say(say("wearer.needed"), "guess");
    else if (violation) {
      this.#say(sentence(violation), "error");
    } else this.#say("", "");
  }
}

export class EaseField {
  constructor(desk, name) {
    this.desk = desk;
    this.name = name;
    const [label, about] = find("wearer.eases")[name];
    const id = "w-ease-" + name;
    this.unit = h("span", { class: "unit", "aria-hidden": "true" });
    this.input = h("input", { id, type: "text", autocomplete: "off", "aria-describedby": `${id}-about ${id}-error` });
    this.error = h("p", { class: "error", id: id + "-error" });
    this.element = h(
      "div",
      { class: "field" },
      h("div", { class: "head" }, h("label", { for: id }, label), this.unit),
      this.input,
      h("p", { class: "how", id: id + "-about" }, about),
      this.error,
    );
    this.input.addEventListener("input", () => this.#typed());
    this.input.addEventListener("blur", () => this.refresh(this.violation));
    this.input.addEventListener("keydown", (event) => this.#key(event));
  }

  #typed() {
    const text = this.input.value.trim();
    const share = text.endsWith("%");
    const value = share ? parse(text.slice(0, -1)) : parseLength(text, this.desk.units);
    const bad = Number.isNaN(value);
    this.desk.unread("/ease/" + this.name, bad ? text || "–" : "");
    this.input.toggleAttribute("data-bad", bad);
    this.error.textContent = bad ? say("notNumber") : "";
    if (!bad) this.desk.take((state) => (state.ease[this.name] = share ? value + "%" : value));
  }

  #key(event) {
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    const now = this.desk.state.ease[this.name];
    const share = typeof now === "string";
    const step = share ? 0.5 : STEP[this.desk.units] / 5;
    const next = near((share ? parseFloat(now) : now) + by * step, step);
    this.desk.unread("/ease/" + this.name, "");
    this.desk.take((state) => (state.ease[this.name] = share ? next + "%" : next));
    this.#write();
  }

  #write() {
    const value = this.desk.state.ease[this.name];
    this.input.value = typeof value === "number" ? show(value, this.desk.units) : value;
    this.unit.textContent = typeof value === "number" ? this.desk.units : "";
  }

  refresh(violation) {
    this.violation = violation;
    if (this.desk.isUnread("/ease/" + this.name)) return;
    if (document.activeElement !== this.input) this.#write();
    this.input.toggleAttribute("data-bad", violation !== undefined);
    this.error.textContent = violation ? sentence(violation) : "";
  }
}

// A style of one's own, from five questions with pictures, in one's own units and size names.

import { tableOf } from "../common/bodies.js";
import { h } from "../common/dom.js";
import { ask, once, sizeRun } from "../common/service.js";
import { convert, parseLength, show, UNITS } from "../common/units.js";
import { why } from "../common/violations.js";
import { find, say } from "../common/words.js";
import { composed, HEIGHTS, HEMS, SLEEVES, WIDTHS } from "./composed.js";
import { picture } from "./pictures.js";

const FIGURES = ["upperArmGirth", "armhole", "armLength"];

/** Where nothing is known yet, cm. */
const USUAL = { upperArmGirth: 30, armhole: 45, armLength: 59 };

/** An armhole to the girth over the shoulder and through the armpit. Common practice, no source. */
const OVER_ARMSCYE = 1.08;

const QUESTIONS = [
  ["height", Object.keys(HEIGHTS), "raised"],
  ["width", Object.keys(WIDTHS), "most"],
  ["hem", HEMS, "vee"],
  ["sleeve", SLEEVES, "tapered"],
];

/** Opens the questions; take is given the style that comes of them. */
export class Start {
  #own = new Set();

  constructor({ units, take, demo, empty }) {
    this.units = units;
    this.take = take;
    this.unit = h("select", { id: "start-units", onchange: () => this.#turn(this.unit.value) }, UNITS.map((unit) => h("option", { value: unit, selected: unit === units }, say("unit." + unit))));
    this.name = h("input", { type: "text", id: "start-name", autocomplete: "off", maxlength: "80" });
    this.sizes = h("input", { type: "text", id: "start-sizes", autocomplete: "off", value: "36 38 40 42 44 46", oninput: () => this.#labels() });
    this.base = h("select", { id: "start-base", onchange: () => this.#fill() });
    this.table = h("select", { id: "start-table", onchange: () => this.#fill() }, h("option", { value: "" }, say("noTable")));
    this.figures = FIGURES.map((figure) => h("input", { type: "text", inputmode: "decimal", autocomplete: "off", id: "start-" + figure, value: show(convert(USUAL[figure], "cm", units), units), oninput: () => this.#own.add(figure) }));
    this.says = h("p", { class: "error", id: "start-says", role: "alert" });
    this.radios = QUESTIONS.map(([question, answers, usual]) => ({ question, boxes: answers.map((answer) => h("input", { type: "radio", name: "start-" + question, id: `start-${question}-${answer}`, value: answer, checked: answer === usual, onchange: () => this.#show() })) }));
    const tool = (input, words) => h("div", { class: "field" }, h("div", { class: "head" }, h("label", { for: input.id }, words)), input);
    this.element = h(
      "dialog",
      { class: "start", id: "start", "aria-labelledby": "start-title" },
      h(
        "form",
        { method: "dialog", onsubmit: (event) => (event.preventDefault(), this.#make()) },
        h("h2", { id: "start-title" }, say("start.title")),
        h("p", { class: "quiet-words" }, say("start.lead")),
        h(
          "fieldset",
          { class: "start-question" },
          h("legend", null, "1. " + say("start.arm")),
          h("div", { class: "start-arm" }, picture("arm"), h("div", { class: "start-fields" }, tool(this.name, find("fields")["/name"][0]), tool(this.unit, say("units")), tool(this.sizes, find("fields")["/sizes"][0]), tool(this.base, find("fields")["/baseSize"][0]), tool(this.table, say("start.table")), this.figures.map((input, i) => tool(input, say("start.figures." + FIGURES[i]))))),
        ),
        this.radios.map(({ question, boxes }, i) =>
          h(
            "fieldset",
            { class: "start-question", id: "start-q-" + question },
            h("legend", null, `${i + 2}. ${say("start." + question)}`),
            h("div", { class: "start-cards" }, boxes.map((box) => [box, h("label", { for: box.id }, picture(box.value), h("span", null, find("start.answers")[question][box.value]))])),
          ),
        ),
        this.says,
        h("div", { class: "buttons" }, h("button", { type: "submit", class: "main", id: "start-make" }, say("start.make")), h("button", { type: "button", id: "start-empty", onclick: () => (this.element.close(), empty()) }, say("start.empty")), h("button", { type: "button", id: "start-demo", onclick: () => (this.element.close(), demo()) }, say("start.demo")), h("button", { type: "button", id: "start-close", onclick: () => this.element.close() }, say("start.close"))),
      ),
    );
    once("v1/size-tables")
      .then(({ sizeTables }) => this.table.append(...sizeTables.filter((info) => info.kind === "body" && info.key && info.dimensions.includes("upperArmGirth")).map((info) => h("option", { value: info.id }, info.title))))
      .catch(() => undefined);
    this.element.addEventListener("close", () => this.element.remove());
    this.#labels();
    this.#show();
  }

  open() {
    document.body.append(this.element);
    this.element.showModal();
    this.name.focus();
  }

  get #chosen() {
    return Object.fromEntries(this.radios.map(({ question, boxes }) => [question, boxes.find((box) => box.checked).value]));
  }

  /** Without an overlay there is nothing to ask of it. */
  #show() {
    const none = this.#chosen.height === "none";
    for (const question of ["width", "hem"]) this.element.querySelector("#start-q-" + question).disabled = none;
  }

  #turn(units) {
    const before = this.units;
    this.units = units;
    for (const input of this.figures) {
      const value = parseLength(input.value, before);
      if (!Number.isNaN(value)) input.value = show(convert(value, before, units), units);
    }
  }

  #labels() {
    const labels = this.sizes.value.split(/[\s,;]+/).filter((label) => label !== "");
    const before = this.base.value;
    this.base.replaceChildren(...labels.map((label) => h("option", { value: label }, label)));
    this.base.value = labels.includes(before) ? before : (labels[Math.floor((labels.length - 1) / 2)] ?? "");
    this.labels = labels;
    this.#fill();
  }

  /** What the table says of the base size, where nobody wrote anything else. */
  async #fill() {
    const table = await tableOf({ sizeTable: this.table.value }).catch(() => null);
    if (!table || table.info.id !== this.table.value) return;
    const size = table.labels[this.base.value] ?? this.base.value;
    const of = (dimension) => table.rows.find((row) => row.dimension === dimension)?.values.find((each) => each.size === size)?.value;
    const told = [of("upperArmGirth"), of("armscyeGirth") * OVER_ARMSCYE, of("armLength")];
    this.figures.forEach((input, i) => {
      if (told[i] > 0 && !this.#own.has(FIGURES[i])) input.value = show(convert(told[i], table.unit, this.units), this.units);
    });
  }

  async #make() {
    this.says.textContent = "";
    const arm = Object.fromEntries(FIGURES.map((figure, i) => [figure, parseLength(this.figures[i].value, this.units)]));
    const wrong = FIGURES.findIndex((figure) => !(arm[figure] > 0));
    if (wrong >= 0) return this.#refuse(`${say("start.figures." + FIGURES[wrong])}${say("colon")}${say("notNumber")}`, this.figures[wrong]);
    if (this.labels.length === 0) return this.#refuse(say("start.noSizes"), this.sizes);
    const style = composed({ name: this.name.value.trim(), units: this.units, sizes: this.labels, baseSize: this.base.value, sizeTable: this.table.value, arm, ...this.#chosen });
    try {
      if (style.sizeTable) {
        const graded = await ask("v1/grade-rules", { sizeRun: style }, "application/json").then((response) => response.json());
        style.grade = graded.grade;
      }
    } catch {
      // The table does not know these sizes; they begin alike.
    }
    try {
      await sizeRun(style, "text/csv");
    } catch (error) {
      return this.#refuse(why(error), this.figures[0]);
    }
    this.element.close();
    this.take(style);
  }

  #refuse(words, input) {
    this.says.textContent = words;
    input.focus();
  }
}

// Jumps derived from a published table of bodies by the service, with how each came about; and the chart of both.

import { BODY_OF, bodyGrowth } from "../common/bodies.js";
import { jumpChart } from "./chart.js";
import { h } from "../common/dom.js";
import { growing } from "./fields.js";
import { figuresTable } from "../common/figurestable.js";
import { requestShown } from "../common/request.js";
import { gradeName } from "../common/names.js";
import { ask, once } from "../common/service.js";
import { jumps } from "./style.js";
import { why } from "../common/violations.js";
import { convert, parseLength, show, signed } from "../common/units.js";
import { find, say } from "../common/words.js";

/** Grids that a hand can cut to. */
const GRIDS = { mm: ["1 mm", "2.5 mm", "5 mm"], cm: ["0.1 cm", "0.25 cm", "0.5 cm"], in: ["1/16 in", "1/8 in", "1/4 in"] };

const EASES = ["constant", "percent", "growing"];
const LENGTHS = ["", "held", "asTheArm", "stated"];

/** What a growth is to begin with, in millimetres per size. */
const EASE_GROWTH = 1;
const LENGTH_GROWTH = 5;

export class Derive {
  #built = "";
  #charted = "bicep";
  #choice = { ease: "constant", easeGrowth: EASE_GROWTH, length: "", lengthGrowth: LENGTH_GROWTH, capEase: "length", grid: 0 };

  constructor(store) {
    this.store = store;
    this.form = h("div", { class: "derive-form" });
    this.says = h("p", { class: "says", role: "status" });
    this.account = h("div", { class: "account" });
    this.chart = h("div");
    this.element = h(
      "section",
      { class: "derive", "aria-label": say("grade.derive") },
      h("h2", null, say("grade.derive")),
      h("p", { class: "quiet-words" }, say("grade.deriveLead")),
      this.form,
      requestShown(say("request.rules"), () => ({ path: "v1/grade-rules", accept: "application/json", body: this.#request() })),
      this.says,
      this.account,
      this.chart,
    );
  }

  refresh(table) {
    const { style } = this.store;
    this.table = table;
    const now = JSON.stringify([style.units, style.sizeTable ?? "", document.documentElement.lang]);
    if (now !== this.#built) {
      this.#build(style);
      this.#built = now;
    }
    this.#showChart(style);
  }

  /** A choice, kept until the page is closed. */
  #select(id, key, options) {
    const select = h(
      "select",
      {
        id,
        onchange: () => {
          this.#choice[key] = typeof this.#choice[key] === "number" ? Number(select.value) : select.value;
          this.#showGrowths();
        },
      },
      options.map(([value, words]) => h("option", { value, selected: String(value) === String(this.#choice[key]) }, words)),
    );
    return select;
  }

  /** A growth per size, kept in millimetres. */
  #growth(id, key) {
    const { units } = this.store.style;
    const input = h("input", {
      id,
      type: "text",
      inputmode: "decimal",
      class: "jump",
      value: show(convert(this.#choice[key], "mm", units), units),
      oninput: () => {
        const value = parseLength(input.value, units);
        input.toggleAttribute("data-bad", Number.isNaN(value));
        if (!Number.isNaN(value)) this.#choice[key] = convert(value, units, "mm");
      },
    });
    return h("div", { class: "tool" }, h("label", { for: id }, say("grade.perSize")), input, h("span", { class: "unit" }, units));
  }

  #build(style) {
    const focused = document.activeElement?.id;
    const tool = (select, words) => h("div", { class: "tool" }, h("label", { for: select.id }, words), select);
    const table = h("select", {
      id: "derive-table",
      onchange: () =>
        this.store.change("", (each) => {
          if (table.value === "") delete each.sizeTable;
          else each.sizeTable = table.value;
        }),
    });
    once("v1/size-tables")
      .then(({ sizeTables }) => {
        table.replaceChildren(
          h("option", { value: "" }, say("noTable")),
          ...sizeTables.filter((info) => info.kind === "body" && info.key).map((info) => h("option", { value: info.id }, info.title)),
        );
        table.value = style.sizeTable ?? "";
      })
      .catch(() => undefined);
    const named = (words, values) => values.map((value) => [value, find(words)[value || "usual"]]);
    this.easeGrowth = this.#growth("derive-ease", "easeGrowth");
    this.lengthGrowth = this.#growth("derive-length-growth", "lengthGrowth");
    this.form.replaceChildren(
      tool(table, say("grade.table")),
      tool(this.#select("derive-policy", "ease", named("grade.eases", EASES)), say("grade.ease")),
      this.easeGrowth,
      tool(this.#select("derive-length", "length", named("grade.lengths", LENGTHS)), say("grade.length")),
      this.lengthGrowth,
      tool(this.#select("derive-cap", "capEase", named("grade.capEases", ["length", "share"])), say("grade.capEase")),
      tool(this.#select("derive-grid", "grid", GRIDS[style.units].map((grid, i) => [i, grid])), say("grade.grid")),
      h("button", { type: "button", class: "main", id: "derive-take", disabled: !style.sizeTable, onclick: () => this.#take() }, say("grade.take")),
    );
    this.#showGrowths();
    if (focused && this.form.querySelector("#" + CSS.escape(focused))) document.getElementById(focused).focus();
  }

  #showGrowths() {
    this.easeGrowth.hidden = this.#choice.ease !== "growing";
    this.lengthGrowth.hidden = this.#choice.length !== "stated";
  }

  #request() {
    const { materials, ...style } = this.store.style;
    const { ease, easeGrowth, length, lengthGrowth, capEase, grid } = this.#choice;
    const grown = (mm) => convert(mm, "mm", style.units);
    return {
      sizeRun: style,
      ease: { policy: ease, ...(ease === "growing" ? { perSize: grown(easeGrowth) } : {}) },
      ...(length === "" ? {} : { length: { policy: length, ...(length === "stated" ? { perSize: grown(lengthGrowth) } : {}) } }),
      capEase,
      grid: GRIDS[style.units][grid],
    };
  }

  /** Takes the derived jumps into the style; it can be undone. */
  async #take() {
    const { style } = this.store;
    this.says.textContent = say("file.making");
    this.account.replaceChildren();
    try {
      const answer = await (await ask("v1/grade-rules", this.#request(), "application/json")).json();
      if (this.store.style !== style) return;
      this.store.change("", (each) => (each.grade = answer.grade));
      this.says.textContent = say("grade.taken");
      this.#tell(answer);
    } catch (error) {
      this.says.textContent = say("file.failed", { why: why(error) });
    }
  }

  /** How each jump came about. */
  #tell({ derivations, unit, sizes }) {
    const grown = (list) => list.slice(1).map((value, i) => signed(value - list[i], unit)).join("  ");
    this.account.replaceChildren(
      h(
        "details",
        { open: true },
        h("summary", null, say("grade.account")),
        figuresTable(
          say("grade.accountCaption", { unit: say("unit." + unit), sizes: sizes.join(", ") }),
          [say("grade.dimension"), say("jumps"), say("check.bodyOf"), say("grade.how")],
          derivations.map((each) => [
            gradeName(each.dimension),
            grown(each.rounded),
            each.body ? (find("body")[each.body]?.[0] ?? each.body) : "–",
            h("span", null, each.words, each.estimated.length > 0 ? h("em", { class: "guess" }, ` (${say("grade.estimated", { sizes: each.estimated.join(", ") })})`) : null),
          ]),
          "words-table",
        ),
        h("p", { class: "source", lang: "en" }, [...new Set(derivations.map((each) => each.source))].join(" · ")),
      ),
    );
  }

  #showChart(style) {
    const focused = document.activeElement?.id;
    const found = this.table
      ? growing(style)
          .filter((name) => name in BODY_OF)
          .map((name) => ({ name, growth: bodyGrowth(this.table, style, name) }))
          .filter(({ growth }) => growth.length > 0 && growth.every((each) => each !== null))
      : [];
    if (found.length === 0) {
      const sizes = this.table ? Object.keys(this.table.labels).join(", ") || this.table.sizes.join(", ") : "";
      this.chart.replaceChildren(h("p", { class: "quiet-words" }, this.table ? say("grade.noFigures", { sizes }) : say("grade.pickTable")));
      return;
    }
    if (!found.some(({ name }) => name === this.#charted)) this.#charted = found[0].name;
    const charted = found.find(({ name }) => name === this.#charted);
    const choice = h(
      "select",
      {
        id: "chart-for",
        onchange: () => {
          this.#charted = choice.value;
          this.#showChart(this.store.style);
        },
      },
      found.map(({ name }) => h("option", { value: name, selected: name === this.#charted }, gradeName(name))),
    );
    this.chart.replaceChildren(
      h("div", { class: "tool" }, h("label", { for: "chart-for" }, say("grade.chartFor")), choice),
      jumpChart(style, gradeName(charted.name), jumps(style, charted.name), charted.growth),
      h("p", { class: "source", lang: "en" }, this.table.info.title, " · ", this.table.info.source),
    );
    if (focused === "chart-for") choice.focus();
  }
}

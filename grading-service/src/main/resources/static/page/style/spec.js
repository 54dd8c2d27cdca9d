// The spec table: what every size measures, or what it grows by.

import { h } from "../common/dom.js";
import { exact, number, show, signed } from "../common/units.js";
import { pointName, say } from "../common/words.js";

/** Changes that follow one another within this time (ms) are told as one. */
const TOGETHER = 2000;

export class Spec {
  #growth = false;
  #was = null;
  #now = null;
  #at = -Infinity;

  constructor({ drafted, light }) {
    this.drafted = drafted;
    this.light = light;
    this.body = h("div", { class: "scroll", tabindex: "0", role: "group", "aria-label": say("spec") });
    const radio = (id, growth) =>
      h("input", { type: "radio", name: "spec-shown", id, checked: growth === this.#growth, onchange: () => this.#turn(growth) });
    this.element = h(
      "section",
      { class: "panel", id: "panel-spec", "aria-label": say("spec") },
      h(
        "fieldset",
        { class: "alternatives inline" },
        h("legend", null, say("table.shown")),
        h(
          "div",
          { class: "pills" },
          radio("spec-values", false),
          h("label", { for: "spec-values" }, say("table.values")),
          radio("spec-growth", true),
          h("label", { for: "spec-growth" }, say("table.growth")),
        ),
      ),
      this.body,
    );
  }

  /** A new answer: what it moved is lit, with the figure of the base size before and after, and scrolled to. */
  answered() {
    const { answer } = this.drafted;
    const now = performance.now();
    if (now - this.#at > TOGETHER || !this.#was) this.#was = this.#now;
    this.#at = now;
    this.#now = answer.specTable;
    this.refresh();
    const moved = this.body.querySelector("tr.moved");
    if (moved && this.body.offsetParent && !this.body.contains(document.activeElement)) moved.scrollIntoView({ block: "nearest" });
  }

  /** What a row measured in the base size before the last change, if it was another figure. */
  #before(row, table) {
    const was = this.#was;
    if (!was || was.unit !== table.unit || was.baseSize !== table.baseSize) return undefined;
    const figure = (each, of) => each.rounded[of.sizes.indexOf(of.baseSize)];
    const before = was.rows.find((each) => each.code === row.code);
    return before && figure(before, was) !== figure(row, table) ? [figure(before, was), figure(row, table)] : undefined;
  }

  #turn(growth) {
    this.#growth = growth;
    this.refresh();
  }

  refresh() {
    const table = this.drafted.answer?.specTable;
    if (!table) return;
    const unit = table.unit;
    const heads = this.#growth ? table.sizes.slice(1).map((size, i) => `${table.sizes[i]}–${size}`) : table.sizes;
    const focused = document.activeElement?.dataset?.code;
    const caption = this.#growth
      ? say("table.growthCaption", { unit: say("unit." + unit) })
      : say("table.caption", { unit: say("unit." + unit), base: table.baseSize }) +
        ` (${say("table.rounded", { step: unit === "in" ? show(table.roundedTo, unit) : number(table.roundedTo, 3), unit })})`;
    this.body.replaceChildren(
      h(
        "table",
        { class: "figures" },
        h("caption", null, h("span", null, caption)),
        h(
          "thead",
          null,
          h(
            "tr",
            null,
            h("th", { scope: "col" }, say("table.measure")),
            heads.map((head) => h("th", { scope: "col", class: head === table.baseSize ? "base" : "" }, head)),
            h("th", { scope: "col", class: "soft" }, h("abbr", { title: say("table.toleranceName") }, "±")),
          ),
        ),
        h("tbody", null, table.rows.map((row) => this.#row(row, table, unit))),
      ),
    );
    if (focused) this.body.querySelector(`[data-code="${focused}"]`)?.focus();
  }

  #row(row, table, unit) {
    const lit = this.light.code === row.code;
    const moved = this.#before(row, table);
    const cells = this.#growth ? row.jumps.map((jump) => signed(jump, unit)) : row.values.map((value, i) => show(exact(value, unit) ? value : row.rounded[i], unit));
    return h(
      "tr",
      { class: [lit ? "lit" : "", moved ? "moved" : ""].join(" ").trim() },
      h(
        "th",
        { scope: "row" },
        h(
          "button",
          {
            type: "button",
            class: "rowname",
            "data-code": row.code,
            "aria-pressed": String(lit),
            title: row.definition,
            onclick: () => this.light.put(lit ? "" : row.code),
          },
          pointName(row),
        ),
        moved ? h("span", { class: "moved-from" }, `${show(moved[0], unit)} → ${show(moved[1], unit)}`) : "",
      ),
      cells.map((text, i) => h("td", { class: !this.#growth && table.sizes[i] === table.baseSize ? "base" : "" }, text)),
      h("td", { class: "soft", title: row.toleranceSource }, show(row.tolerance, unit)),
    );
  }
}

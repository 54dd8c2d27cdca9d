// The jump table: what each dimension grows by from size to size, beside what the body grows by.

import { BODY_OF, bodyGrowth, tableOf } from "./bodies.js";
import { jumpChart } from "./chart.js";
import { h } from "./dom.js";
import { growing } from "./fields.js";
import { put } from "./pointer.js";
import { gradeName } from "./problems.js";
import { jumps, putJumps } from "./style.js";
import { number, parse, show, signed } from "./units.js";
import { say } from "./words.js";

/** What jumps taken from bodies are rounded to: a hand cannot cut finer. */
const ROUNDED_TO = { mm: 1, cm: 0.1, in: 1 / 16 };
const STEP = { mm: 1, cm: 0.1, in: 1 / 16 };

export class Grade {
  #built = "";
  #cells = new Map();
  #table = null;
  #ease = 0;
  #taken = new Set(["bicep"]);
  #charted = "bicep";

  constructor(page) {
    this.page = page;
    this.body = h("div", { class: "scroll", tabindex: "0", role: "group", "aria-label": say("jumps") });
    this.adding = h("div", { class: "adding" });
    this.derive = h("section", { class: "derive", "aria-label": say("grade.derive") });
    this.element = h("section", { class: "panel", id: "panel-jumps", "aria-label": say("jumps") }, this.body, this.adding, this.derive);
  }

  async refresh() {
    const style = this.page.store.style;
    this.#show();
    const table = await tableOf(style).catch(() => null);
    if (this.page.store.style.sizeTable !== style.sizeTable) return;
    this.#table = table;
    this.#show();
    this.#showDerive();
  }

  #graded(style) {
    const possible = growing(style);
    const given = Object.keys(style.grade ?? {});
    return [...possible.filter((name) => given.includes(name)), ...given.filter((name) => !possible.includes(name))];
  }

  #show() {
    const style = this.page.store.style;
    const names = this.#graded(style);
    const now = JSON.stringify([names, style.sizes, style.units, this.#table?.info.id ?? ""]);
    if (now !== this.#built) {
      const focused = document.activeElement?.id;
      this.#build(style, names);
      this.#built = now;
      if (focused) document.getElementById(focused)?.focus();
    }
    for (const [id, { read }] of this.#cells) {
      const input = document.getElementById(id);
      if (input && input.dataset.own !== "yes") input.value = read(style);
    }
  }

  #build(style, names) {
    this.#cells.clear();
    const intervals = style.sizes.slice(1).map((size, i) => [style.sizes[i], size]);
    const free = growing(style).filter((name) => !names.includes(name));
    this.body.replaceChildren(
      names.length === 0
        ? h("p", { class: "quiet-words" }, say("grade.none"))
        : h(
            "table",
            { class: "figures jumps" },
            h("caption", null, h("span", null, say("grade.caption", { unit: say("unit." + style.units) }))),
            h(
              "thead",
              null,
              h(
                "tr",
                null,
                h("th", { scope: "col" }, say("grade.dimension")),
                h("th", { scope: "col" }, say("grade.every")),
                intervals.map(([from, to]) => h("th", { scope: "col" }, `${from}–${to}`)),
                h("td", null),
              ),
            ),
            h("tbody", null, names.map((name) => this.#rows(style, name, intervals))),
          ),
    );
    const select = h("select", { id: "grade-add" }, free.map((name) => h("option", { value: name }, gradeName(name))));
    this.adding.replaceChildren(
      ...(free.length === 0
        ? []
        : [
            h("label", { for: "grade-add" }, say("grade.add")),
            select,
            h(
              "button",
              { type: "button", onclick: () => this.page.store.change("", (each) => put(each, "/grade/" + select.value, 0)) },
              say("grade.addButton"),
            ),
          ]),
    );
  }

  #rows(style, name, intervals) {
    const label = gradeName(name);
    const growth = this.#table ? bodyGrowth(this.#table, style, name) : [];
    const errorId = "f-grade-" + name + "-error";
    const row = h(
      "tr",
      { class: "jump-row", "data-grade": name },
      h("th", { scope: "row" }, label, h("span", { class: "jump-error error", id: errorId })),
      h(
        "td",
        null,
        this.#cell(
          "f-grade-" + name,
          `${label}, ${say("grade.every")}`,
          (each) => {
            const list = jumps(each, name);
            return list.every((jump) => jump === list[0]) ? show(list[0] ?? 0, each.units) : "";
          },
          (each, value) => put(each, "/grade/" + name, value),
          name,
          errorId,
          say("grade.breaks"),
        ),
      ),
      intervals.map(([from, to], i) =>
        h(
          "td",
          null,
          this.#cell(
            `f-grade-${name}-${i}`,
            `${label}, ${say("grade.interval", { from, to })}`,
            (each) => show(jumps(each, name)[i] ?? 0, each.units),
            (each, value) => {
              const list = [...jumps(each, name)];
              list[i] = value;
              putJumps(each, name, list);
            },
            name,
            errorId,
          ),
        ),
      ),
      h(
        "td",
        null,
        h(
          "button",
          {
            type: "button",
            class: "quiet square",
            "aria-label": say("grade.remove", { name: label }),
            title: say("grade.remove", { name: label }),
            onclick: () => this.page.store.change("", (each) => put(each, "/grade/" + name, undefined)),
          },
          "×",
        ),
      ),
    );
    if (!growth.some((each) => each !== null)) return row;
    return [
      row,
      h(
        "tr",
        { class: "body-row" },
        h("th", { scope: "row" }, say("grade.body")),
        h("td", null),
        growth.map((each) => h("td", null, each === null ? "–" : signed(each, style.units))),
        h("td", null),
      ),
    ];
  }

  #cell(id, label, read, write, name, errorId, placeholder) {
    this.#cells.set(id, { read });
    const take = (value) => this.page.store.change("/grade/" + name + id, (style) => write(style, value));
    const input = h("input", {
      id,
      class: "jump",
      type: "text",
      inputmode: "decimal",
      autocomplete: "off",
      "aria-label": label,
      "aria-describedby": errorId,
      placeholder,
      oninput: () => {
        input.dataset.own = "yes";
        const value = parse(input.value);
        const bad = Number.isNaN(value);
        input.toggleAttribute("data-bad", bad);
        if (!bad) take(value);
      },
      onblur: () => {
        input.removeAttribute("data-own");
        input.removeAttribute("data-bad");
        input.value = read(this.page.store.style);
      },
      onkeydown: (event) => {
        const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
        if (by === undefined) return;
        event.preventDefault();
        const one = STEP[this.page.store.style.units];
        const from = parse(input.value);
        input.removeAttribute("data-own");
        take(Number((Math.round(((Number.isNaN(from) ? 0 : from) + by * one) / one) * one).toFixed(4)));
      },
    });
    return input;
  }

  /** Jumps from published bodies, and the chart of both. */
  #showDerive() {
    const style = this.page.store.style;
    const focused = document.activeElement?.id;
    const heading = h("h2", null, say("grade.derive"));
    if (!this.#table) {
      this.derive.replaceChildren(heading, h("p", { class: "quiet-words" }, say("grade.pickTable")));
      return;
    }
    const possible = growing(style).filter((name) => name in BODY_OF);
    const found = possible
      .map((name) => ({ name, growth: bodyGrowth(this.#table, style, name) }))
      .filter(({ growth }) => growth.length > 0 && growth.every((each) => each !== null));
    if (found.length === 0) {
      const sizes = Object.keys(this.#table.labels).join(", ") || this.#table.sizes.join(", ");
      this.derive.replaceChildren(heading, h("p", { class: "quiet-words" }, say("grade.noFigures", { sizes })));
      return;
    }
    const grid = ROUNDED_TO[style.units];
    const rounded = (value) => Number((Math.round(value / grid) * grid).toFixed(4));
    const ease = h("input", {
      id: "derive-ease",
      type: "text",
      inputmode: "decimal",
      class: "jump",
      value: show(this.#ease, style.units),
      oninput: (event) => {
        const value = parse(event.target.value);
        if (!Number.isNaN(value)) this.#ease = value;
      },
    });
    if (!found.some(({ name }) => name === this.#charted)) this.#charted = found[0].name;
    const charted = found.find(({ name }) => name === this.#charted);
    const chartChoice = h(
      "select",
      {
        id: "chart-for",
        onchange: () => {
          this.#charted = chartChoice.value;
          this.#showDerive();
        },
      },
      found.map(({ name }) => h("option", { value: name, selected: name === this.#charted }, gradeName(name))),
    );
    this.derive.replaceChildren(
      heading,
      h("p", { class: "quiet-words" }, say("grade.deriveLead"), " ", say("grade.step", { step: style.units === "in" ? show(grid, "in") : number(grid), unit: style.units })),
      h("p", { class: "source", lang: "en" }, this.#table.info.title, " · ", this.#table.info.source),
      h(
        "div",
        { class: "derive-form" },
        h(
          "fieldset",
          { class: "alternatives inline" },
          h("legend", null, say("grade.which")),
          found.map(({ name }) => {
            const box = h("input", {
              type: "checkbox",
              id: "derive-" + name,
              checked: this.#taken.has(name),
              onchange: () => (box.checked ? this.#taken.add(name) : this.#taken.delete(name)),
            });
            return h("div", { class: "switch" }, box, h("label", { for: box.id }, gradeName(name)));
          }),
        ),
        h("div", { class: "tool" }, h("label", { for: "derive-ease" }, say("grade.ease")), ease, h("span", { class: "unit" }, style.units)),
        h(
          "button",
          {
            type: "button",
            class: "main",
            id: "derive-take",
            onclick: () =>
              this.page.store.change("", (each) => {
                for (const { name, growth } of found) {
                  if (this.#taken.has(name)) putJumps(each, name, growth.map((jump) => rounded(jump + this.#ease)));
                }
              }),
          },
          say("grade.take"),
        ),
      ),
      h("div", { class: "tool" }, h("label", { for: "chart-for" }, say("grade.chartFor")), chartChoice),
      jumpChart(style, gradeName(charted.name), jumps(style, charted.name), charted.growth),
    );
    if (focused && this.derive.querySelector("#" + CSS.escape(focused))) document.getElementById(focused).focus();
  }
}

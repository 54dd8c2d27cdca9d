// The jump table: what each dimension grows by from size to size, beside what the body grows by.

import { bodyGrowth, tableOf } from "../common/bodies.js";
import { Derive } from "./derive.js";
import { h } from "../common/dom.js";
import { staying } from "../common/inputs.js";
import { growing } from "./fields.js";
import { put } from "../common/pointer.js";
import { gradeName } from "../common/names.js";
import { jumps, putJumps } from "./style.js";
import { about, parse, parseLength, signed } from "../common/units.js";
import { say } from "../common/words.js";

const STEP = { mm: 1, cm: 0.1, in: 1 / 16 };

export class Grade {
  #built = "";
  #cells = new Map();
  #table = null;

  constructor({ store, complain }) {
    this.store = store;
    this.complain = complain;
    this.body = h("div", { class: "scroll", tabindex: "0", role: "group", "aria-label": say("jumps") });
    this.adding = h("div", { class: "adding" });
    this.derive = new Derive(store);
    this.element = h("section", { class: "panel", id: "panel-jumps", "aria-label": say("jumps") }, this.body, this.adding, this.derive.element);
  }

  async refresh() {
    const style = this.store.style;
    this.#show();
    const table = await tableOf(style).catch(() => null);
    if (this.store.style.sizeTable !== style.sizeTable) return;
    this.#table = table;
    this.#show();
    this.derive.refresh(table);
  }

  #graded(style) {
    const possible = growing(style);
    const given = Object.keys(style.grade ?? {});
    return [...possible.filter((name) => given.includes(name)), ...given.filter((name) => !possible.includes(name))];
  }

  #show() {
    const style = this.store.style;
    const names = this.#graded(style);
    const now = JSON.stringify([names, growing(style), style.sizes, style.units, this.#table?.info.id ?? ""]);
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
              { type: "button", onclick: () => this.store.change("", (each) => put(each, "/grade/" + select.value, 0)) },
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
            return list.every((jump) => jump === list[0]) ? about(list[0] ?? 0, each.units) : "";
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
            (each) => about(jumps(each, name)[i] ?? 0, each.units),
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
            onclick: () => this.store.change("", (each) => put(each, "/grade/" + name, undefined)),
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
    const take = (value) => this.store.change("/grade/" + name + id, (style) => write(style, value));
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
        const value = parseLength(input.value, this.store.style.units);
        wrong(Number.isNaN(value) ? say("notNumber") : "");
        if (!Number.isNaN(value)) take(value);
      },
      onkeydown: (event) => {
        const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
        if (by === undefined) return;
        event.preventDefault();
        const one = STEP[this.store.style.units];
        const from = parse(input.value);
        wrong("");
        input.removeAttribute("data-own");
        take(Number((Math.round(((Number.isNaN(from) ? 0 : from) + by * one) / one) * one).toFixed(4)));
      },
    });
    const wrong = staying(input, { path: id.slice(1).replaceAll("-", "/") }, this.complain, () => (input.value = read(this.store.style)));
    return input;
  }
}

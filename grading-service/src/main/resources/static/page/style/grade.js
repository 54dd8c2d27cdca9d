// The jump table: what each dimension grows by from size to size, beside what the body grows by.

import { bodyGrowth, tableOf } from "../common/bodies.js";
import { Derive } from "./derive.js";
import { h, quietly, s } from "../common/dom.js";
import { staying } from "../common/inputs.js";
import { growing } from "./fields.js";
import { put } from "../common/pointer.js";
import { gradeName } from "../common/names.js";
import { checked, judged, mend, nearest, place } from "./judged.js";
import { spoken } from "../common/spoken.js";
import { jumps, putJumps } from "./style.js";
import { about, bounds, parse, parseLength, show, signed } from "../common/units.js";
import { say } from "../common/words.js";

const STEP = { mm: 1, cm: 0.1, in: 1 / 16 };

/** From where to where a jump passes, in words. */
function passing(known, unit) {
  const [least, greatest] = bounds(known.least, known.greatest, unit);
  return say("grade.passes", { least, greatest, unit });
}

/** A jump within what passes, drawn small. */
function bar(jump, { least, greatest }) {
  const margin = 0.35 * (greatest - least) || 1;
  const [from, to] = [Math.min(jump, least) - margin, Math.max(jump, greatest) + margin];
  const x = (length) => (70 * (length - from)) / (to - from);
  return s(
    "svg",
    { viewBox: "0 0 70 8", class: "jump-bar", "aria-hidden": "true" },
    s("path", { class: "reach", d: "M0 4H70" }),
    s("rect", { class: "passing", x: x(least), y: 1.5, width: Math.max(1.5, x(greatest) - x(least)), height: 5, rx: 1.5 }),
    s("path", { class: "at", d: `M${x(jump)} 0V8` }),
  );
}

/** What a sleeve grows more or less than the body by, in steps of heat: each 2 mm. */
const HEAT = { mm: 2, cm: 0.2, in: 2 / 25.4 };

function warmth(more, unit) {
  const steps = Math.max(-3, Math.min(3, Math.round(more / HEAT[unit])));
  return steps === 0 ? "heat-0" : steps > 0 ? "heat-more-" + steps : "heat-less-" + -steps;
}

/** Keeps as much room as was ever needed. */
function holdRoom(element, height) {
  const held = Math.max(height, parseFloat(element.style.getPropertyValue("--room")) || 0);
  element.style.setProperty("--room", held + "px");
}

export class Grade {
  #built = "";
  #cells = new Map();
  #marks = new Map();
  #heat = [];
  #table = null;

  constructor({ store, complain }) {
    this.store = store;
    this.complain = complain;
    this.body = h("div", { class: "scroll", tabindex: "0", role: "group", "aria-label": say("jumps") });
    this.adding = h("div", { class: "adding" });
    this.derive = new Derive(store);
    this.says = h("p", { class: "says", role: "status" });
    this.judgeSoon = quietly(250, () => this.#judge());
    this.element = h("section", { class: "panel", id: "panel-jumps", "aria-label": say("jumps") }, this.body, this.says, this.adding, this.derive.element);
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

  /** Holds the jumps against the checks, once the table is looked at. */
  judge() {
    if (this.store.view.tab === "jumps") this.judgeSoon();
  }

  /** At once: the view was just turned to. */
  judgeNow() {
    if (this.store.view.tab === "jumps") this.#judge();
  }

  /** Asks beforehand, so that the table has its marks from the beginning when it is turned to. */
  foresee() {
    checked(this.store.style).catch(() => undefined);
  }

  async #judge() {
    const { style } = this.store;
    try {
      const answer = await checked(style);
      if (this.store.style === style) this.#mark(style, judged(style, answer));
    } catch {
      // The run says itself what is wrong with it.
    }
  }

  /**
   * Every jump between its bounds; the culprit ringed, with its reason and a way to mend it. What needed room once keeps it as long as the table has the same rows, so that nothing slides
   * away under the hand that types.
   */
  #mark(style, cells) {
    const said = new Map();
    for (const [key, mark] of this.#marks) {
      const known = cells.get(key) ?? {};
      const [dimension, at] = key.split("/");
      const interval = Number(at);
      const jump = jumps(style, dimension)[interval];
      const { finding } = known;
      mark.closest("td").classList.toggle("culprit", finding !== undefined || known.cure !== undefined);
      mark.closest("td").classList.toggle("stop", finding?.severity === "stop");
      const [from, to] = [style.sizes[interval], style.sizes[interval + 1]];
      mark.replaceChildren(...(known.least === undefined ? [] : [bar(jump, known), h("span", { class: "unseen" }, passing(known, style.units))]));
      const value = finding || known.cure !== undefined ? nearest(jump, known, style.units) : undefined;
      if (value !== undefined) {
        mark.append(
          h(
            "button",
            {
              type: "button",
              class: "mend",
              id: "mend-" + dimension + "-" + interval,
              "aria-label": say("grade.mendName", { name: gradeName(dimension), from, to, value: show(value, style.units), unit: style.units }),
              onclick: () => this.#mend(dimension, interval, value),
            },
            "→ " + show(value, style.units),
          ),
        );
      }
      if (finding) {
        said.set(dimension, [...(said.get(dimension) ?? []), h("li", null, `${from}–${to}${say("colon")}${spoken(finding.message)}`)]);
      }
      if (value !== undefined) holdRoom(mark.closest("tr"), mark.getBoundingClientRect().height);
    }
    for (const row of this.body.querySelectorAll(".reason-row")) {
      const items = said.get(row.dataset.reasons);
      row.classList.toggle("past", items === undefined);
      if (items === undefined) continue;
      row.hidden = false;
      const list = row.querySelector("ul");
      list.replaceChildren(...items);
      holdRoom(list, list.getBoundingClientRect().height);
    }
  }

  /** Mends a jump, and with it whatever the service then still finds that must not be cut. */
  async #mend(dimension, interval, value) {
    const { style } = this.store;
    const mended = structuredClone(style);
    mend(mended, dimension, interval, value);
    let more = [];
    try {
      const { whatIf, summary } = await checked(mended);
      if (summary.stop > 0 && whatIf && whatIf.changes.length > 0) {
        mended.grade = whatIf.grade;
        more = [...new Set(whatIf.changes.map((each) => gradeName(each.dimension)))];
      }
    } catch {
      // Then this jump alone is mended.
    }
    if (this.store.style !== style) return;
    const [from, to] = [style.sizes[interval], style.sizes[interval + 1]];
    this.store.change("", (each) => (each.grade = mended.grade));
    const words = { name: gradeName(dimension), from, to, old: show(jumps(style, dimension)[interval], style.units), next: show(jumps(mended, dimension)[interval], style.units), unit: style.units, more: more.join(", ") };
    this.says.textContent = say(more.length > 0 ? "grade.mendedMore" : "grade.mended", words);
    document.getElementById(`f-grade-${dimension}-${interval}`)?.focus();
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
    for (const { cell, growth, name, interval } of this.#heat) cell.className = warmth(jumps(style, name)[interval] - growth, style.units);
  }

  #build(style, names) {
    this.#cells.clear();
    this.#marks.clear();
    this.#heat = [];
    const intervals = style.sizes.slice(1).map((size, i) => [style.sizes[i], size]);
    const free = growing(style).filter((name) => !names.includes(name));
    this.body.replaceChildren(
      names.length === 0
        ? h("p", { class: "quiet-words" }, say("grade.none"))
        : h(
            "table",
            { class: "figures jumps" },
            h("caption", null, h("span", null, say("grade.caption", { unit: say("unit." + style.units) }), this.#table ? " " + say("grade.heat") : "")),
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
          this.#markOf(name, i),
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
    const reasons = h("tr", { class: "reason-row", "data-reasons": name, hidden: true }, h("td", { colspan: intervals.length + 3 }, h("ul", { class: "jump-reasons" })));
    if (!growth.some((each) => each !== null)) return [row, reasons];
    return [
      row,
      reasons,
      h(
        "tr",
        { class: "body-row" },
        h("th", { scope: "row" }, say("grade.body")),
        h("td", null),
        growth.map((each, i) => this.#heated(each, name, i, style.units)),
        h("td", null),
      ),
    ];
  }

  #heated(growth, name, interval, unit) {
    const cell = h("td", null, growth === null ? "–" : signed(growth, unit));
    if (growth !== null) this.#heat.push({ cell, growth, name, interval });
    return cell;
  }

  #markOf(name, interval) {
    const mark = h("div", { class: "jump-mark" });
    this.#marks.set(place(name, interval), mark);
    return mark;
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

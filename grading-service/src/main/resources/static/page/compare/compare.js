// Two styles side by side: the figures of a size with their differences, and the pieces over one another.

import { h } from "../common/dom.js";
import { figuresTable } from "../common/figurestable.js";
import * as kept from "../common/kept.js";
import { overlaid } from "./overlaid.js";
import { sizeRun } from "../common/service.js";
import { inUnits, opened } from "../style/style.js";
import { why } from "../common/violations.js";
import { show, signed } from "../common/units.js";
import { find, pointName, say } from "../common/words.js";

const BENCH = "bench";
const SIDES = ["first", "second"];

/** Differences below a hundredth of a millimetre are the dust of sums. */
const DUST = { mm: 0.01, cm: 0.001, in: 0.0004 };

const fresh = () => ({ first: BENCH, second: "", size: "", piece: "", files: {} });

export class Compare {
  #flight = new AbortController();
  #asked = "";

  constructor(store, state) {
    this.store = store;
    this.state = state ?? fresh();
    this.answers = {};
    this.selects = Object.fromEntries(SIDES.map((side) => [side, h("select", { id: "compare-" + side, onchange: () => this.#take(side, this.selects[side].value) })]));
    this.size = h("select", { id: "compare-size", onchange: () => this.#take("size", this.size.value) });
    this.piece = h("select", { id: "compare-piece", onchange: () => this.#take("piece", this.piece.value) });
    this.opener = h("input", { type: "file", id: "compare-file", class: "unseen", accept: ".json,application/json", "aria-label": say("compare.open"), onchange: () => this.#open() });
    this.says = h("p", { class: "says", role: "status" });
    this.result = h("div", { class: "compare-result" });
    this.element = h("div", { class: "compare" }, this.#form(), this.result);
  }

  #form() {
    const tool = (input, words, swatch) => h("div", { class: "field" }, h("div", { class: "head" }, h("label", { for: input.id }, swatch ? h("span", { class: "line-swatch " + swatch }) : null, words)), input);
    return h(
      "section",
      { class: "compare-form", "aria-label": find("tasks").compare },
      h("h2", null, say("compare.title")),
      h("p", { class: "quiet-words" }, say("compare.lead")),
      h(
        "div",
        { class: "fields" },
        tool(this.selects.first, say("compare.first"), "first"),
        tool(this.selects.second, say("compare.second"), "second"),
        tool(this.size, say("compare.size")),
        tool(this.piece, say("drawing.piece")),
      ),
      h(
        "div",
        { class: "buttons" },
        h("button", { type: "button", id: "compare-open", onclick: () => this.opener.click() }, say("compare.open")),
        this.opener,
        h("button", { type: "button", id: "compare-swap", onclick: () => this.#swap() }, say("compare.swap")),
      ),
      this.says,
    );
  }

  /** Everything that can be chosen: the style on the bench, those kept, those opened from files. */
  #choices() {
    const bench = this.store.style;
    return [
      [BENCH, say("compare.bench", { name: bench.name ?? say("pieces.base-sleeve") }), bench],
      ...Object.entries(kept.styles()).map(([name, style]) => ["kept:" + name, say("compare.kept", { name }), style]),
      ...Object.entries(this.state.files).map(([name, style]) => ["file:" + name, name, style]),
    ];
  }

  #take(key, value) {
    this.state[key] = value;
    this.refresh();
  }

  #swap() {
    const { first, second } = this.state;
    Object.assign(this.state, { first: second, second: first });
    this.refresh();
  }

  async #open() {
    const [file] = this.opener.files;
    if (!file) return;
    try {
      const body = JSON.parse(await file.text());
      if (typeof body?.sleeve !== "object" || !Array.isArray(body.sizes)) throw new TypeError();
      this.state.files[file.name] = opened(body);
      this.says.textContent = say("file.opened", { name: file.name });
      this.state.second = "file:" + file.name;
      this.refresh();
    } catch {
      this.says.textContent = say("file.unreadable", { name: file.name });
    }
    this.opener.value = "";
  }

  refresh() {
    const choices = this.#choices();
    const ids = choices.map(([id]) => id);
    const { state } = this;
    if (!ids.includes(state.first) && state.first !== "") state.first = BENCH;
    if (!ids.includes(state.second)) state.second = ids.find((id) => id !== state.first) ?? "";
    for (const side of SIDES) {
      this.selects[side].replaceChildren(
        ...(state[side] === "" ? [h("option", { value: "" }, say("compare.choose"))] : []),
        ...choices.map(([id, words]) => h("option", { value: id }, words)),
      );
      this.selects[side].value = state[side];
    }
    const styleOf = (side) => choices.find(([id]) => id === state[side])?.[2];
    const styles = SIDES.map(styleOf);
    if (styles.some((style) => !style)) {
      this.#asked = "";
      this.#options([], this.size, "");
      this.#options([], this.piece, "");
      this.result.replaceChildren(h("p", { class: "compare-wait" }, say("compare.waiting")));
      return;
    }
    const { units } = this.store.style;
    const bodies = styles.map((style) => {
      const body = opened(style);
      inUnits(body, units);
      delete body.materials;
      return body;
    });
    const asked = JSON.stringify(bodies);
    if (asked === this.#asked) this.#show();
    else this.#ask(bodies, asked);
  }

  async #ask(bodies, asked) {
    this.#flight.abort();
    const flight = new AbortController();
    this.#flight = flight;
    this.#asked = asked;
    try {
      const answers = await Promise.all(bodies.map(async (body) => (await sizeRun(body, "application/json", flight.signal)).json()));
      if (flight.signal.aborted) return;
      this.answers = { first: answers[0], second: answers[1] };
      this.#show();
    } catch (error) {
      if (flight.signal.aborted) return;
      this.#asked = "";
      this.result.replaceChildren(h("p", { class: "error" }, say("compare.failed", { why: why(error) })));
    }
  }

  #options(values, select, now, words = (value) => value) {
    select.replaceChildren(...values.map((value) => h("option", { value }, words(value))));
    select.disabled = values.length === 0;
    select.value = values.includes(now) ? now : (values[0] ?? "");
    return select.value;
  }

  #show() {
    const { first, second } = this.answers;
    if (!first || !second) return;
    const sizes = first.sizes.map((each) => each.label).filter((label) => second.sizes.some((each) => each.label === label));
    if (sizes.length === 0) {
      this.result.replaceChildren(h("p", { class: "compare-wait" }, say("compare.noSize")));
      return;
    }
    const size = this.#options(sizes, this.size, sizes.includes(this.state.size) ? this.state.size : first.baseSize);
    const [one, other] = [first, second].map((answer) => answer.sizes.find((each) => each.label === size));
    const pieces = [...new Set([...one.pieces, ...other.pieces].map((piece) => piece.id))];
    const piece = this.#options(pieces, this.piece, this.state.piece, (id) => find("pieces")[id] ?? id);
    // Two of one name are told apart by where they come from.
    const alike = first.name === second.name;
    const names = [first.name, second.name].map((name, i) => (alike ? this.selects[SIDES[i]].selectedOptions[0].textContent : name || say("compare." + SIDES[i])));
    const parts = [one, other].map((each) => each.pieces.find((part) => part.id === piece));
    this.result.replaceChildren(
      h(
        "figure",
        { class: "compare-drawing" },
        h("figcaption", null, h("strong", null, find("pieces")[piece] ?? piece), ` ${say("sizesOf", { a: size })} · `, SIDES.map((side, i) => [h("span", { class: "line-swatch " + side }), names[i], " "])),
        overlaid(parts, say("compare.picture", { piece: find("pieces")[piece] ?? piece, size, first: names[0], second: names[1] })),
        h("p", { class: "quiet-words" }, say("compare.align")),
      ),
      h("div", { class: "compare-figures" }, this.#figures(size, names), this.#growth(names)),
    );
  }

  #rows(cell) {
    const { first, second } = this.answers;
    const codes = [...new Set([...first.specTable.rows, ...second.specTable.rows].map((row) => row.code))];
    return codes.map((code) => {
      const rows = [first, second].map((answer) => answer.specTable.rows.find((row) => row.code === code));
      return [pointName(rows[0] ?? rows[1]), ...cell(rows)];
    });
  }

  #difference(a, b) {
    const { unit } = this.answers.first;
    if (a === undefined || b === undefined) return "–";
    const differs = Math.abs(b - a) > DUST[unit];
    return differs ? h("strong", { class: "differs" }, signed(b - a, unit)) : "=";
  }

  #figures(size, names) {
    const { first, second } = this.answers;
    const { unit } = first;
    const at = [first, second].map((answer) => answer.specTable.sizes.indexOf(size));
    const value = (row, side) => (row ? row.values[at[side]] : undefined);
    const write = (length) => (length === undefined ? "–" : show(length, unit));
    return figuresTable(
      say("compare.figures", { size, unit: say("unit." + unit) }),
      [say("table.measure"), names[0], names[1], say("wearer.difference")],
      this.#rows((rows) => {
        const [a, b] = rows.map(value);
        return [write(a), write(b), this.#difference(a, b)];
      }),
    );
  }

  /** What each grows by over the sizes that both have. */
  #growth(names) {
    const { first, second } = this.answers;
    const { unit } = first;
    const common = first.specTable.sizes.filter((label) => second.specTable.sizes.includes(label));
    if (common.length < 2) return h("span");
    const [from, to] = [common[0], common[common.length - 1]];
    const grown = (row, side) => {
      const { sizes } = (side === 0 ? first : second).specTable;
      return row ? row.values[sizes.indexOf(to)] - row.values[sizes.indexOf(from)] : undefined;
    };
    const write = (length) => (length === undefined ? "–" : signed(length, unit));
    return figuresTable(
      say("compare.growth", { from, to, unit: say("unit." + unit) }),
      [say("table.measure"), names[0], names[1], say("wearer.difference")],
      this.#rows((rows) => {
        const [a, b] = rows.map(grown);
        return [write(a), write(b), this.#difference(a, b)];
      }),
    );
  }
}

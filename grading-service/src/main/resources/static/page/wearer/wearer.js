// One wearer: measurements, what is added to them, and the sleeve that follows. What is entered here is nobody else's business: it is neither in the address nor
// kept by the browser, and gone when the page is closed.

import { quietly, h } from "../common/dom.js";
import { DRAWN, measurePicture } from "./figures.js";
import { EaseField, MeasureField, placeOf } from "./wearerfields.js";
import { easesOf, order } from "./order.js";
import { Fitted, questioned } from "./fitted.js";
import { ask, once, Refused } from "../common/service.js";
import { convert } from "../common/units.js";
import { find, say } from "../common/words.js";

const FIRST = ["upperArmGirth", "armLength", "elbowGirth", "wristGirth", "armscyeGirth", "handGirth", "bustGirth", "stature"];
const MORE = DRAWN.filter((name) => !FIRST.includes(name));

/** What the service asks where an order names no survey. */
const USUAL_SURVEY = "ansur-1988-women";

const EASE = { bicep: 7, armhole: "14%", capEase: "4%", length: 1, elbow: "15%", wrist: 6 };

const fresh = (style) => ({
  units: "cm",
  values: {},
  hand: undefined,
  confirmed: [],
  ease: { ...EASE, ...(typeof style.sleeve?.capEase === "string" ? { capEase: style.sleeve.capEase } : {}) },
  table: style.sizeTable ?? "women-en-13402-3-bust",
  survey: "",
  name: "",
});

export class Wearer {
  #flight = new AbortController();

  /** What was typed and is no number, by place: nothing is drafted from a guess in its stead. */
  #unread = new Map();

  constructor(store, state) {
    this.store = store;
    this.state = state ?? fresh(store.style);
    this.soon = quietly(150, () => this.#ask());
    this.fields = new Map([...FIRST, ...MORE].map((name) => [name, new MeasureField(this, name, measurePicture(name))]));
    this.eases = new Map(Object.keys(EASE).map((name) => [name, new EaseField(this, name)]));
    this.fitted = new Fitted(() => this.body(), store);
    this.element = h("div", { class: "wearer" }, this.#form(), this.fitted.element);
    this.#tables();
  }

  #form() {
    const list = (names) => h("div", { class: "cards" }, names.map((name) => this.fields.get(name).element));
    this.table = h("select", { id: "wearer-table", onchange: () => this.take((state) => (state.table = this.table.value)) });
    this.survey = h(
      "select",
      { id: "wearer-survey", onchange: () => this.take((state) => (state.survey = this.survey.value)) },
      Object.entries(find("wearer.surveys")).map(([id, text]) => [id === USUAL_SURVEY ? "" : id, text]).map(([value, text]) => h("option", { value, selected: value === this.state.survey }, text)),
    );
    this.name = h("input", { id: "wearer-name", type: "text", autocomplete: "off", maxlength: 20, value: this.state.name, oninput: () => this.take((state) => (state.name = this.name.value.trim())) });
    const tool = (input, words) => h("div", { class: "field" }, h("div", { class: "head" }, h("label", { for: input.id }, words)), input);
    return h(
      "section",
      { class: "wearer-form", "aria-label": say("wearer.measurements") },
      h("h2", null, say("wearer.measurements")),
      h("p", { class: "private" }, say("wearer.private")),
      h("p", { class: "quiet-words" }, say("wearer.lead")),
      list(FIRST),
      h("details", { class: "more-measures" }, h("summary", null, say("wearer.more")), list(MORE)),
      h("h2", null, say("wearer.ease")),
      h("p", { class: "quiet-words" }, say("wearer.easeLead")),
      h("div", { class: "fields ease-fields" }, [...this.eases.values()].map((field) => field.element)),
      h("h2", null, say("wearer.compared")),
      h("div", { class: "fields" }, tool(this.table, say("wearer.table")), tool(this.survey, say("wearer.survey")), tool(this.name, say("wearer.order"))),
      h("div", { class: "buttons" }, h("button", { type: "button", id: "wearer-clear", onclick: () => this.#clear() }, say("wearer.clear"))),
    );
  }

  #tables() {
    once("v1/size-tables")
      .then(({ sizeTables }) => {
        const bodies = sizeTables.filter((info) => info.kind === "body" && info.key);
        this.table.replaceChildren(h("option", { value: "" }, say("noTable")), ...bodies.map((info) => h("option", { value: info.id }, info.title)));
        this.table.value = this.state.table;
      })
      .catch(() => undefined);
  }

  #clear() {
    const { ease, table, survey } = this.state;
    Object.assign(this.state, { values: {}, hand: undefined, confirmed: [], name: "", ease, table, survey });
    this.name.value = "";
    this.#unread.clear();
    this.answer = null;
    this.refresh();
  }

  /** Changes what was entered and asks anew. */
  take(edit) {
    edit(this.state);
    this.element.classList.add("asking");
    this.soon();
  }

  /** What cannot be read in the field of a place; nothing once it can. */
  unread(place, text) {
    if (text === "") this.#unread.delete(place);
    else this.#unread.set(place, text);
    this.take(() => undefined);
  }

  isUnread = (place) => this.#unread.has(place);

  get units() {
    return this.store.style.units;
  }

  /** The style or its unit changed. */
  refresh() {
    const { state, units } = this;
    if (state.units !== units) {
      const other = (value) => (typeof value === "number" ? convert(value, state.units, units) : value);
      for (const each of [state.values, state.ease]) for (const name of Object.keys(each)) each[name] = other(each[name]);
      state.hand = other(state.hand);
      state.units = units;
    }
    const needed = easesOf(this.store.style);
    for (const [name, field] of this.eases) field.element.hidden = !needed.includes(name);
    this.fields.get("handGirth").element.hidden = !this.store.style.underSleeve;
    this.#show([]);
    this.soon();
  }

  get empty() {
    return Object.keys(this.state.values).length === 0;
  }

  body() {
    return order(this.store.style, this.state);
  }

  #show(violations) {
    const of = (pointer) => violations.find((each) => each.field === pointer);
    for (const [name, field] of this.fields) {
      field.refresh(of(placeOf(name)), this.answer?.estimates.find((each) => each.dimension === name));
    }
    for (const [name, field] of this.eases) field.refresh(of("/ease/" + name));
  }

  async #ask() {
    this.#flight.abort();
    const flight = new AbortController();
    this.#flight = flight;
    if (this.#unread.size > 0) {
      this.element.classList.remove("asking");
      this.fitted.refuse([...this.#unread].map(([place, value]) => ({ field: place, value, reason: say("notNumber") })));
      return;
    }
    if (this.empty) {
      this.answer = null;
      this.element.classList.remove("asking");
      this.#show([]);
      this.fitted.wait();
      return;
    }
    const body = this.body();
    this.element.classList.add("asking");
    let drafted;
    try {
      const answer = await (await ask("v1/made-to-measure", body, "application/json", flight.signal)).json();
      drafted = { answer, svg: await (await ask("v1/made-to-measure", body, "image/svg+xml", flight.signal)).text() };
    } catch (error) {
      if (flight.signal.aborted) return;
      this.element.classList.remove("asking");
      const violations = error instanceof Refused ? (error.problem.violations ?? []) : [];
      this.answer = null;
      this.#show(violations);
      this.fitted.refuse(
        error instanceof Refused ? violations : [{ field: "", reason: say("wearer.silent") }],
        violations.some((each) => each.field.startsWith("/wearer/") && this.state.values[each.field.slice(8)] !== undefined && questioned(each)),
      );
      return;
    }
    if (flight.signal.aborted) return;
    this.element.classList.remove("asking");
    this.answer = drafted.answer;
    this.#show([]);
    this.fitted.show(drafted.answer, drafted.svg);
  }
}

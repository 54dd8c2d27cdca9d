// Cloth: on what the pieces are laid, what is to be bought, and the lays drawn. The service searches for a while, so it is asked only while this is seen.

import { clothFields, effortField, orderFields, trimmingFields } from "./clothfields.js";
import { h, quietly } from "../common/dom.js";
import { eventsOf } from "../common/events.js";
import { Lays } from "./lays.js";
import { fromMm } from "../common/units.js";
import { requestShown } from "../common/request.js";
import { ask } from "../common/service.js";
import { why } from "../common/violations.js";
import { find, say } from "../common/words.js";

const MATERIALS = ["main", "lining", "interfacing"];

/** A usual cloth to begin with, in millimetres and shares. */
const USUAL = {
  main: { width: 1400, shrinkageLengthwise: 0.03, waste: 0.05 },
  lining: { width: 1400, shrinkageLengthwise: 0.02, waste: 0.05 },
  interfacing: { width: 900, waste: 0.05 },
};

const usual = (style, material) => ({ material, laying: "folded", nap: "without", ...USUAL[material], width: Number(fromMm(USUAL[material].width, style.units).toFixed(0)) });

export class Cloth {
  #flight = new AbortController();
  #built = "";
  #controls = [];
  #asked = "";
  #cancelled = false;

  constructor(uses) {
    this.uses = uses;
    this.store = uses.store;
    this.soon = quietly(350, () => this.#ask());
    this.form = h("div", { class: "cloth-form" });
    this.bar = h("progress", { "aria-label": say("cloth.busy") });
    this.wait = h("div", { class: "cloth-wait", hidden: true }, this.bar, h("span", null, say("cloth.busy")), h("button", { type: "button", id: "cloth-cancel", onclick: () => this.#cancel() }, say("file.cancel")));
    this.says = h("p", { class: "says", role: "status" });
    this.lays = new Lays();
    this.element = h(
      "section",
      { class: "panel", id: "panel-cloth", "aria-label": say("cloth.name") },
      h("div", { class: "cloth-bench" }, this.form, h("div", null, this.wait, this.says, this.lays.element)),
      requestShown(say("request.cloth"), () => ({ path: "v1/materials", accept: "application/json", body: this.store.style })),
    );
  }

  get seen() {
    return this.store.view.tab === "cloth";
  }

  /** The tab came into view. */
  turnedTo() {
    if (this.#cancelled) this.#asked = "";
    this.refresh();
  }

  /** The style changed. */
  refresh() {
    const { style } = this.store;
    const fabrics = style.materials?.fabrics ?? [];
    const now = JSON.stringify([fabrics.map((each) => each.material), style.materials !== undefined, style.sizes, style.overlay !== undefined]);
    if (now !== this.#built) {
      const focused = document.activeElement?.id;
      this.#build(style, fabrics);
      this.#built = now;
      if (focused && this.form.querySelector("#" + CSS.escape(focused))) document.getElementById(focused).focus();
    }
    for (const control of this.#controls) control.refresh(style);
    if (style.materials === undefined) {
      this.#flight.abort();
      this.wait.hidden = true;
      this.#asked = "";
      this.says.textContent = "";
      this.lays.clear();
    } else if (this.seen) this.soon();
  }

  /** The materials that the pieces of the style are cut from. */
  #used() {
    const found = this.uses.drafted.answer?.sizes[0]?.pieces.map((piece) => piece.material) ?? MATERIALS;
    return MATERIALS.filter((material) => found.includes(material));
  }

  #build(style, fabrics) {
    this.#controls = [];
    if (style.materials === undefined) {
      this.form.replaceChildren(
        h("h2", null, say("cloth.title")),
        h("p", { class: "quiet-words" }, say("cloth.lead")),
        h(
          "div",
          { class: "buttons" },
          h(
            "button",
            {
              type: "button",
              class: "main",
              id: "cloth-start",
              onclick: () => {
                this.store.change("", (each) => (each.materials = { fabrics: this.#used().map((material) => usual(each, material)) }));
                this.form.querySelector("input")?.focus();
              },
            },
            say("cloth.start"),
          ),
        ),
      );
      return;
    }
    const use = (controls) => {
      this.#controls.push(...controls);
      return controls.map((control) => control.element);
    };
    const open = new Set([...this.form.querySelectorAll("details[open]")].map((details) => details.id));
    const more = (id, summary, controls) => h("details", { id, open: open.has(id) }, h("summary", null, summary), h("div", { class: "fields" }, use(controls)));
    const select = h("select", { id: "cloth-add" }, MATERIALS.map((material) => h("option", { value: material }, find("sewing.materials")[material])));
    this.form.replaceChildren(
      h("h2", null, say("cloth.title")),
      h(
        "div",
        { class: "fabrics" },
        fabrics.map((fabric, i) => {
          const { first, rest } = clothFields(i, this.uses);
          const name = find("sewing.materials")[fabric.material] ?? fabric.material;
          return h(
            "fieldset",
            { class: "fabric" },
            h("legend", null, name),
            h("button", { type: "button", class: "quiet square", "aria-label": say("cloth.remove", { name }), onclick: () => this.#remove(i) }, "×"),
            h("div", { class: "fields" }, use(first)),
            more("cloth-more-" + i, say("cloth.more"), rest),
          );
        }),
      ),
      h(
        "div",
        { class: "adding" },
        h("label", { for: "cloth-add" }, say("cloth.add")),
        select,
        h("button", { type: "button", id: "cloth-add-button", onclick: () => this.store.change("", (each) => each.materials.fabrics.push(usual(each, select.value))) }, say("grade.addButton")),
      ),
      h("fieldset", { class: "pairs" }, h("legend", null, say("cloth.order")), h("p", { class: "how" }, say("cloth.orderLead")), h("div", { class: "pair-fields" }, use(orderFields(style.sizes, this.uses)))),
      h("div", { class: "fields" }, use([effortField(this.uses)])),
      style.overlay === undefined ? "" : more("cloth-trimming", say("cloth.trimming"), trimmingFields(this.uses)),
    );
  }

  #remove(i) {
    this.store.change("", (style) => {
      style.materials.fabrics.splice(i, 1);
      if (style.materials.fabrics.length === 0) delete style.materials;
    });
    (this.form.querySelector(".fabric button") ?? this.form.querySelector("#cloth-start"))?.focus();
  }

  #cancel() {
    this.#flight.abort();
    this.wait.hidden = true;
    // Not asked for again by what is still on its way, but once the style changes or the tab is turned to anew.
    this.#asked = JSON.stringify(this.store.style);
    this.#cancelled = true;
    this.says.textContent = say("file.cancelled");
    this.form.querySelector("input")?.focus();
  }

  /** What is answered in the end; how far it is shows meanwhile. */
  async #laid(style, signal) {
    const { body } = await ask("v1/materials/events", style, "text/event-stream", signal);
    for await (const { event, data } of eventsOf(body)) {
      if (event === "done") return data;
      if (!signal.aborted) this.bar.value = data.done;
    }
    throw new TypeError("the answer broke off");
  }

  async #ask() {
    const { style } = this.store;
    if (!this.seen || style.materials === undefined) return;
    const asked = JSON.stringify(style);
    if (asked === this.#asked) return;
    this.#asked = asked;
    this.#cancelled = false;
    this.#flight.abort();
    const flight = new AbortController();
    this.#flight = flight;
    this.bar.removeAttribute("value");
    this.wait.hidden = false;
    this.says.textContent = "";
    this.lays.stale(true);
    try {
      const answer = await this.#laid(style, flight.signal);
      if (flight.signal.aborted) return;
      this.lays.show(answer);
    } catch (error) {
      if (flight.signal.aborted) return;
      this.#asked = "";
      this.says.textContent = why(error);
    }
    this.wait.hidden = true;
  }
}

// <sleeve-measure style="choir-gown" key="…">: the form by which a shop takes an order by measurements.
//
// Nothing that is typed is kept by the browser. It goes to the service alone: while it is typed, to be judged and sketched, which keeps nothing, and with the order.

import { h, quietly } from "../page/common/dom.js";
import { writeComma } from "../page/common/units.js";
import { worn } from "../page/style/worn.js";
import { Calls, orderName, Refused } from "./calls.js";
import { Field } from "./field.js";
import look from "./look.js";
import { count, find, say, spokenIn } from "./words.js";

/** How long typing pauses before the service is asked, ms. */
const PAUSE = 300;

const WATCHED = ["style", "style-id", "key", "lang", "service", "measures", "heading"];

const sheet = new CSSStyleSheet();
sheet.replaceSync(look);

/** Where this script came from; the service is there as well. */
const HOME = document.currentScript?.src ? new URL(document.currentScript.src).origin + new URL(document.currentScript.src).pathname.replace(/\/form\/[^/]*$/, "") : location.origin;

class SleeveMeasure extends HTMLElement {
  static observedAttributes = WATCHED;

  #root = this.attachShadow({ mode: "open" });
  #flight = new AbortController();
  #fields = [];
  #name = orderName();
  #begin = quietly(0, () => this.#open());
  #soon = quietly(PAUSE, () => this.#sending || this.#try());
  #sending = false;

  connectedCallback() {
    this.#root.adoptedStyleSheets = [sheet];
    this.#begin();
  }

  disconnectedCallback() {
    this.#flight.abort();
  }

  attributeChangedCallback() {
    if (this.isConnected) this.#begin();
  }

  get #language() {
    return spokenIn(this.getAttribute("lang") ?? this.closest("[lang]")?.lang ?? "en");
  }

  #say = (key, values) => say(this.#language, key, values);

  /** A flight of its own for what is asked next; what was asked before is of no use any more. */
  #next() {
    this.#flight.abort();
    this.#flight = new AbortController();
    return this.#flight.signal;
  }

  async #open() {
    const language = this.#language;
    writeComma(language === "fr");
    const service = (this.getAttribute("service") ?? HOME).replace(/\/$/, "");
    this.calls = new Calls(service, this.getAttribute("style-id") ?? this.getAttribute("style") ?? "", this.getAttribute("key") ?? "", language);
    const signal = this.#next();
    try {
      const asked = await this.calls.asked(signal);
      if (asked.ease) this.#build(asked);
      else this.#shut(this.#say("shut", { reason: this.#say("noEase") }), null);
    } catch (error) {
      if (signal.aborted) return;
      const shut = error instanceof Refused && error.status < 500 && error.status !== 429;
      const again = shut ? null : h("button", { type: "button", onclick: () => this.#open() }, this.#say("again"));
      this.#shut(this.#reason(error), again);
    }
  }

  #shut(words, button) {
    this.#root.replaceChildren(h("div", { class: "form", part: "form", lang: this.#language }, h("p", { role: "alert" }, words), button));
  }

  #reason(error) {
    if (!(error instanceof Refused)) return this.#say("silent");
    if (error.status === 429 || error.status >= 500) return this.#say("busy");
    return this.#say("shut", { reason: error.message });
  }

  #heading(words) {
    const level = Math.min(6, Math.max(1, Number(this.getAttribute("heading")) || 2));
    return h("h" + level, { class: "title", part: "title", id: "title", tabindex: "-1" }, words);
  }

  #build({ name, unit, measurements }) {
    const language = this.#language;
    const wanted = (this.getAttribute("measures") ?? "").split(/\s+/).filter((each) => each);
    const asked = wanted.length === 0 ? measurements : wanted.map((each) => measurements.find(({ dimension }) => dimension === each)).filter((each) => each);
    this.unit = unit;
    this.#fields = asked.map((each) => new Field(each, unit, language, () => this.#typed()));
    this.room = h("div", { class: "room" }, this.#say("empty"));
    this.status = h("p", { class: "status", role: "status", part: "status" });
    this.button = h("button", { type: "submit", part: "order" }, this.#say("order"));
    const form = h(
      "form",
      { novalidate: true, autocomplete: "off", "aria-labelledby": "title" },
      h(
        "div",
        { class: "bench" },
        h("div", { class: "measures" }, this.#fields.map((field) => field.element)),
        h("div", { class: "preview", part: "preview" }, h("figure", null, this.room, h("figcaption", { class: "small" }, this.#say("sketch")))),
      ),
      h("div", { class: "foot" }, h("p", { class: "small" }, this.#say("private")), this.status, this.button),
    );
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#order();
    });
    this.#root.replaceChildren(
      h("div", { class: "form", part: "form", lang: language }, this.#heading(this.#say("title", { name })), h("p", null, this.#say("lead")), h("p", { class: "small" }, this.#say("unit", { unit })), form),
    );
    this.#name = orderName();
  }

  get #typedFields() {
    return this.#fields.filter((field) => field.value !== undefined);
  }

  #body() {
    const reference = this.getAttribute("reference");
    return { ...(reference ? { reference } : {}), units: this.unit, wearer: Object.fromEntries(this.#typedFields.map((field) => [field.dimension, field.value])) };
  }

  #typed() {
    // Another order, which is not the one that may have been sent before.
    this.#name = orderName();
    for (const field of this.#fields) if (field.slip === "" || !field.touched) field.refresh();
    this.#soon();
  }

  /** Asks what the order would be, and says so. */
  async #try() {
    const signal = this.#next();
    if (this.#typedFields.length === 0) {
      for (const field of this.#fields) field.refresh(undefined);
      this.#sketch(null);
      this.status.textContent = "";
      return false;
    }
    this.room.classList.add("behind");
    if (this.#fields.some((field) => field.slip)) return false;
    try {
      const answer = await this.calls.tried(this.#body(), signal);
      for (const field of this.#fields) {
        const of = (list) => list.find((each) => each.field === "/wearer/" + field.dimension);
        field.refresh({ question: of(answer.questions), estimate: answer.estimates.find((each) => each.dimension === field.dimension) });
      }
      this.#sketch(answer);
      const doubtful = this.#fields.filter((field) => field.element.dataset.judged === "doubtful").length;
      this.status.textContent = doubtful > 0 ? count(this.#language, "doubtful", doubtful) : this.#say("fine");
      return true;
    } catch (error) {
      if (!signal.aborted) this.#refused(error);
      return false;
    }
  }

  #refused(error) {
    this.#sketch(null);
    const violations = error instanceof Refused ? error.violations : [];
    for (const field of this.#fields) field.refresh({ violation: violations.find((each) => each.field === "/wearer/" + field.dimension) });
    const wrong = this.#fields.filter((field) => field.wrong).length;
    const elsewhere = violations.some((each) => !this.#fields.some((field) => each.field === "/wearer/" + field.dimension));
    if (violations.length === 0) this.status.textContent = this.#reason(error);
    else this.status.textContent = wrong > 0 ? count(this.#language, "toMend", wrong) : elsewhere ? this.#say("noSleeve") : "";
  }

  #sketch(answer) {
    this.room.classList.remove("behind");
    if (answer === null) {
      this.room.replaceChildren(this.#say("empty"));
      return;
    }
    const { dimensions, pieces, hem, join, pleats } = answer.sleeve;
    const size = { label: "", dimensions, pieces: pieces.map((id) => ({ id })), pleats: pleats && { span: pleats.span, folds: pleats.folds.map((finished) => ({ finished })) } };
    this.room.replaceChildren(worn({ unit: answer.unit }, size, { overlay: { hem, join } }, this.#say));
  }

  async #order() {
    if (this.#sending) return;
    for (const field of this.#fields) {
      field.touched = true;
      field.refresh();
    }
    if (this.#typedFields.length === 0) {
      this.status.textContent = this.#say("empty");
      this.#fields[0]?.input.focus();
      return;
    }
    this.#sending = true;
    try {
      if (!(await this.#try())) {
        const wrong = this.#fields.filter((field) => field.wrong);
        if (wrong.length > 0) this.status.textContent = count(this.#language, "toMend", wrong.length);
        wrong[0]?.input.focus();
        return;
      }
      this.status.textContent = this.#say("ordering");
      this.#taken(await this.calls.order(this.#body(), this.#name));
    } catch (error) {
      this.#refused(error);
    } finally {
      this.#sending = false;
    }
  }

  #taken({ order, questions }) {
    const names = questions.map(({ field }) => find(this.#language, "body")[field.split("/").pop()]?.[0] ?? field);
    const title = this.#heading(order.state === "questioned" ? this.#say("held", { list: names.join(", ") }) : this.#say("taken"));
    this.#fields.forEach((field) => field.clear());
    const another = h("button", { type: "button", onclick: () => this.#open().then(() => this.#root.getElementById("title")?.focus()) }, this.#say("another"));
    this.#root.replaceChildren(h("div", { class: "form", part: "form", lang: this.#language }, title, h("p", { class: "small" }, this.#say("number", { id: order.id })), another));
    title.focus();
    this.dispatchEvent(new CustomEvent("sleeve-order", { bubbles: true, composed: true, detail: { id: order.id, state: order.state, style: order.style, revision: order.revision } }));
  }
}

customElements.define("sleeve-measure", SleeveMeasure);

// Orders of the day as the workroom goes through them: those in question first, then those to cut. Measurements are not shown here; the service has them.

import { h, quietly } from "../common/dom.js";
import { bodyName, caller } from "../common/names.js";
import { call, look, Refused } from "../common/service.js";
import { hand } from "../common/take.js";
import { show } from "../common/units.js";
import { why } from "../common/violations.js";
import { current, find, say } from "../common/words.js";

const PAGE = 50;

/** What may come after a state. */
const NEXT = { taken: ["confirmed", "cut", "cancelled"], questioned: ["confirmed", "cancelled"], confirmed: ["cut", "cancelled"] };

/** States in which an order gives its files. */
const DRAWN = ["taken", "confirmed", "cut"];

/** The list is looked at again when one comes back to the page, at most this often, ms. */
const FRESH = 5000;

const DAY = 24 * 3600 * 1000;

/** Midnight of the reader's own day, so many days ago, as the service reads times. */
function midnight(ago) {
  const day = new Date(Date.now() - ago * DAY);
  day.setHours(0, 0, 0, 0);
  return day.toISOString();
}

const SINCE = { today: () => "&from=" + midnight(0), week: () => "&from=" + midnight(6), always: () => "" };

export class Orders {
  #flight = new AbortController();
  #seen = 0;

  constructor(store, state) {
    this.state = state ?? { since: "today", state: "", reference: "" };
    const option = (words, chosen) => Object.entries(words).map(([value, text]) => h("option", { value: value === "any" ? "" : value, selected: (value === "any" ? "" : value) === chosen }, text));
    this.since = h("select", { id: "orders-since", onchange: () => this.#take("since", this.since.value) }, option(find("orders.since"), this.state.since));
    this.only = h("select", { id: "orders-state", onchange: () => this.#take("state", this.only.value) }, option({ any: say("orders.any"), ...find("orders.states") }, this.state.state));
    const soon = quietly(300, () => this.#take("reference", this.reference.value.trim()));
    this.reference = h("input", { id: "orders-reference", type: "text", autocomplete: "off", maxlength: 40, value: this.state.reference, oninput: soon });
    this.says = h("p", { class: "says", role: "status" });
    this.lists = h("div", { class: "order-lists" });
    const tool = (input, words) => h("div", { class: "field" }, h("div", { class: "head" }, h("label", { for: input.id }, words)), input);
    this.element = h(
      "div",
      { class: "orders" },
      h(
        "section",
        { class: "orders-find", "aria-label": say("orders.find") },
        h("h2", null, say("orders.title")),
        h("p", { class: "quiet-words" }, say("orders.lead")),
        h("div", { class: "fields" }, tool(this.since, say("orders.taken")), tool(this.only, say("orders.state")), tool(this.reference, say("orders.reference"))),
        h("div", { class: "buttons" }, h("button", { type: "button", id: "orders-again", onclick: () => this.#list() }, say("orders.again"))),
        this.says,
      ),
      this.lists,
    );
    addEventListener("focus", () => this.element.isConnected && Date.now() - this.#seen > FRESH && this.#list());
    this.#list();
  }

  refresh() {
    // The list does not depend on the style.
  }

  #take(key, value) {
    this.state[key] = value;
    this.#list();
  }

  #words(error) {
    const status = error instanceof Refused ? error.problem.status : 0;
    if (status === 503) return say("shelf.off");
    if (status === 401) return say("signIn.needed");
    return status === 403 ? say("signIn.notAllowed") : why(error);
  }

  /** Questioned orders of any day come first, as nothing of them is cut until somebody looks; unless one asked for something else. */
  async #list() {
    this.#flight.abort();
    const flight = new AbortController();
    this.#flight = flight;
    const { since, state, reference } = this.state;
    const named = reference ? "&reference=" + encodeURIComponent(reference) : "";
    const page = (query, cursor) => look(`v1/orders?limit=${PAGE}${query}${named}${cursor ? "&cursor=" + encodeURIComponent(cursor) : ""}`, flight.signal);
    try {
      const first = state === "" ? await page("&state=questioned") : { orders: [] };
      const query = SINCE[since]() + (state ? "&state=" + state : "");
      const rest = await page(query);
      if (flight.signal.aborted) return;
      this.#seen = Date.now();
      const questioned = new Set(first.orders.map((order) => order.id));
      const others = (orders) => orders.filter((order) => !questioned.has(order.id));
      this.lists.replaceChildren(
        first.orders.length > 0 ? this.#section("questioned", first.orders, first.next && ((cursor) => page("&state=questioned", cursor)), first.next) : "",
        this.#section("rest", others(rest.orders), (cursor) => page(query, cursor).then((more) => ({ ...more, orders: others(more.orders) })), rest.next),
      );
      this.says.textContent = "";
    } catch (error) {
      if (flight.signal.aborted) return;
      this.lists.replaceChildren();
      this.says.textContent = this.#words(error);
    }
  }

  #section(kind, orders, more, next) {
    const list = h("ul", { class: "order-list" }, orders.map((order) => this.#row(order)));
    const button = h("button", { type: "button", class: "orders-more", hidden: !next }, say("orders.more"));
    let cursor = next;
    button.addEventListener("click", async () => {
      const page = await more(cursor);
      list.append(...page.orders.map((order) => this.#row(order)));
      cursor = page.next;
      button.hidden = !cursor;
    });
    return h(
      "section",
      { class: "order-section " + kind, "aria-label": say("orders.sections." + kind) },
      h("h2", null, say("orders.sections." + kind)),
      orders.length === 0 ? h("p", { class: "quiet-words" }, say("orders.none")) : null,
      list,
      button,
    );
  }

  #time = (text) => new Intl.DateTimeFormat(current(), { dateStyle: "short", timeStyle: "short" }).format(new Date(text));

  #row(order) {
    const row = h("li", { class: "shop-order", "data-order": order.id, "data-state": order.state });
    this.#fill(row, order);
    return row;
  }

  #fill(row, order) {
    const title = "order-" + order.id;
    const says = h("p", { class: "says", role: "status" });
    const inside = h("div", { class: "order-inside" });
    const look1 = h("button", { type: "button", class: "order-look", "aria-expanded": "false", "aria-describedby": title, onclick: () => this.#inside(order, inside, look1, says) }, say("orders.look"));
    row.dataset.state = order.state;
    row.replaceChildren(
      h(
        "div",
        { class: "order-line" },
        h("span", { class: "order-state " + order.state }, find("orders.states")[order.state]),
        h("strong", { id: title, class: "order-name" }, order.reference ?? say("orders.number", { id: order.id.slice(0, 8) })),
        h("span", { class: "quiet-words" }, `${order.style}, ${say("orders.revision", { n: order.revision })}, ${order.size ? say("orders.size", { size: order.size }) : say("orders.measured")}, ${this.#time(order.takenAt)}${order.remakeOf ? ", " + say("orders.remake") : ""}${order.erasedAt ? ", " + say("orders.erased") : ""}`),
        h("div", { class: "order-buttons" }, look1, order.erasedAt ? null : (NEXT[order.state] ?? []).map((state) => this.#changer(row, order, state, title, says))),
      ),
      says,
      inside,
    );
    if (order.state === "questioned") this.#inside(order, inside, look1, says);
  }

  /** Brings an order on. To cancel asks again first: nothing brings an order back. */
  #changer(row, order, state, title, says) {
    const words = find("orders.to")[state];
    const button = h("button", { type: "button", class: "order-to " + state, "aria-describedby": title }, words);
    button.addEventListener("blur", () => (button.textContent = words));
    button.addEventListener("click", async () => {
      if (state === "cancelled" && button.textContent === words) {
        button.textContent = say("orders.sure");
        return;
      }
      try {
        const answer = await (await call(`v1/orders/${order.id}/states`, { method: "POST", headers: { "Content-Type": "application/json", Accept: "application/json" }, body: JSON.stringify({ state }) })).json();
        this.#fill(row, answer.order);
        row.querySelector(".order-look").focus();
        this.says.textContent = say("orders.now", { name: order.reference ?? order.id.slice(0, 8), state: find("orders.states")[answer.order.state] });
      } catch (error) {
        says.textContent = error instanceof Refused && error.problem.status === 409 ? say("orders.overtaken") : this.#words(error);
      }
    });
    return button;
  }

  /** What there is of an order: its questions, its files, its history. Pressed again it closes. */
  async #inside(order, place, button, says) {
    const open = place.childElementCount === 0;
    button.setAttribute("aria-expanded", String(open));
    button.textContent = say(open ? "orders.close" : "orders.look");
    if (!open) return place.replaceChildren();
    try {
      const { history, files, questions } = await look("v1/orders/" + order.id);
      const drawn = DRAWN.includes(order.state) && files.length > 0;
      place.replaceChildren(
        questions.length > 0 ? h("div", { class: "order-questions" }, h("h3", null, say("orders.questions")), h("ul", null, questions.map((each) => h("li", null, this.#question(each))))) : "",
        h(
          "div",
          { class: "order-files" },
          h("h3", null, say("orders.files")),
          drawn
            ? h("div", { class: "buttons" }, [...files.map((file) => file.format), "zip"].map((format) => h("button", { type: "button", class: "order-file", "data-format": format, "aria-label": say("orders.fetch", { format: format.toUpperCase() }), onclick: () => this.#fetch(order, format, says) }, format.toUpperCase())))
            : h("p", { class: "quiet-words" }, say(order.erasedAt ? "orders.filesErased" : order.state === "questioned" ? "orders.filesHeld" : "orders.filesNone")),
        ),
        h("div", { class: "order-history" }, h("h3", null, say("orders.history")), h("ol", null, history.map((step) => h("li", null, `${find("orders.states")[step.state]}${say("colon")}${this.#time(step.at)}, ${caller(step.by)}`)))),
      );
    } catch (error) {
      place.replaceChildren(h("p", null, this.#words(error)));
    }
  }

  #question({ field, value, unit, minimum, maximum }) {
    const name = bodyName(field.split("/").pop());
    const write = (length) => (unit ? show(length, unit) : String(length));
    return typeof minimum === "number" && typeof maximum === "number"
      ? say("orders.question", { name, value: write(value), low: write(minimum), high: write(maximum), unit: unit ?? "" })
      : `${name}${say("colon")}${value === undefined ? "" : write(value)} ${unit ?? ""}`;
  }

  async #fetch(order, format, says) {
    try {
      const response = await call(`v1/orders/${order.id}/files/${format}`);
      hand(await response.blob(), `${order.reference?.replace(/[^\p{L}\p{N}]+/gu, "-") ?? "order"}-${order.id.slice(0, 8)}.${format}`);
      says.textContent = say("orders.fetched", { format: format.toUpperCase() });
    } catch (error) {
      says.textContent = this.#words(error);
    }
  }
}

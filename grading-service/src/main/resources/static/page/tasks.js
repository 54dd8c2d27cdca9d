// What one comes for: the style itself, and the tasks beside it. Each of those is fetched when it is first opened.

import { h } from "./common/dom.js";
import { find, say } from "./common/words.js";

const MODULES = {
  wearer: () => import("./wearer/wearer.js").then((module) => module.Wearer),
  check: () => import("./check/check.js").then((module) => module.Check),
  compare: () => import("./compare/compare.js").then((module) => module.Compare),
  shelf: () => import("./shelf/shelf.js").then((module) => module.Shelf),
  orders: () => import("./orders/orders.js").then((module) => module.Orders),
};

/** When a first visit has had its drawing for a while, ms. */
const AT_LEISURE = 1500;

const NAMES = ["style", ...Object.keys(MODULES)];

export class Tasks {
  /** What was typed is kept while the page is open, so that a change of language does not lose it. */
  static #desks = new Map();
  #shown = "";

  /** uses: what a task may do with the bench. */
  constructor(store, uses) {
    this.store = store;
    this.uses = uses;
    this.buttons = NAMES.map((name) =>
      h("button", { type: "button", class: "task", "data-task": name, onclick: () => store.look((view) => (view.task = name)) }, find("tasks")[name]),
    );
    this.nav = h("nav", { class: "tasks", "aria-label": say("tasks.name") }, this.buttons);
    this.element = h("main", { class: "desk", id: "desk", tabindex: "-1", hidden: true });
  }

  /** The style changed, or what is chosen in the view: brings the open task up to date. */
  async refresh() {
    const { view } = this.store;
    const name = NAMES.includes(view.task) ? view.task : "style";
    document.getElementById("page").dataset.task = name;
    for (const button of this.buttons) {
      if (button.dataset.task === name) {
        button.setAttribute("aria-current", "page");
        // On a phone the row of tasks is wider than the screen.
        this.nav.scrollLeft = button.offsetLeft - this.nav.offsetLeft - 16;
      } else button.removeAttribute("aria-current");
    }
    const bench = document.getElementById("bench");
    bench.hidden = name !== "style";
    this.element.hidden = name === "style";
    if (name !== this.#shown) {
      this.#shown = name;
      this.element.replaceChildren();
      this.element.dataset.desk = "";
      if (name !== "style") await this.#open(name);
      scrollTo(0, 0);
    } else if (name !== "style") this.desk?.refresh?.();
  }

  /** Somebody signed in or out: what is open is asked for anew. */
  again() {
    this.#shown = "";
    this.refresh();
  }

  /** Fetches the other tasks while nothing else is to be done, so that they open even if the service is gone by then. */
  fetchSoon() {
    setTimeout(() => Object.values(MODULES).forEach((fetched) => fetched().catch(() => undefined)), AT_LEISURE);
  }

  /** A browser asks for a module only once, so that only a reload helps; the style is kept. */
  #absent() {
    return h("p", { class: "absent", role: "alert" }, say("tasks.absent"), " ", h("button", { type: "button", id: "load-again", onclick: () => location.reload() }, say("tasks.again")));
  }

  async #open(name) {
    let Desk;
    try {
      Desk = await MODULES[name]();
    } catch {
      if (this.#shown === name) this.element.replaceChildren(this.#absent());
      return;
    }
    if (this.#shown !== name) return;
    this.desk = new Desk(this.store, Tasks.#desks.get(name), this.uses);
    Tasks.#desks.set(name, this.desk.state);
    this.element.setAttribute("aria-label", find("tasks")[name]);
    this.element.replaceChildren(this.desk.element);
    this.element.dataset.desk = name;
    this.desk.refresh();
  }
}

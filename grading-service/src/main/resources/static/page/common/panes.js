// Borders between the panes of the bench that can be moved: by mouse, finger or arrow keys. Where they stand is kept for the person at this browser, apart for each kind of screen.

import { h } from "./dom.js";
import { panes, keepPanes } from "./kept.js";
import { say } from "./words.js";

/** Kinds of screens, widest first: what a border moves there, between which bounds, and what it is without anybody's wish. */
const SCREENS = [
  { name: "large", query: "(min-width: 100rem)", borders: { measures: [16, 40, 23], views: [25, 75, 55] } },
  { name: "wide", query: "(min-width: 62rem)", borders: { measures: [15, 34, 22], views: [20, 80, 50] } },
  { name: "phone", query: "all", borders: { board: [20, 70, 40] } },
];

const STEP = 2;

export class Panes {
  constructor() {
    this.kept = panes();
    this.borders = Object.fromEntries(["measures", "views", "board"].map((name) => [name, this.#border(name)]));
    SCREENS.forEach(({ query }) => matchMedia(query).addEventListener("change", () => this.show()));
    this.show();
  }

  get #screen() {
    return SCREENS.find(({ query }) => matchMedia(query).matches);
  }

  /** Whether a border is drawn from top to bottom. */
  #upright(name) {
    return name === "measures" || (name === "views" && this.#screen.name === "large");
  }

  #value(name) {
    const [least, most, usual] = this.#screen.borders[name];
    return Math.min(most, Math.max(least, this.kept[this.#screen.name]?.[name] ?? usual));
  }

  #border(name) {
    const border = h("div", { class: "border border-" + name, role: "separator", tabindex: "0", "aria-label": say("panes." + name), title: say("panes.hint"), "data-border": name });
    border.addEventListener("keydown", (event) => {
      const by = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }[event.key];
      if (by === undefined && event.key !== "Home") return;
      event.preventDefault();
      this.#put(name, by === undefined ? undefined : this.#value(name) + by * STEP);
    });
    border.addEventListener("dblclick", () => this.#put(name, undefined));
    border.addEventListener("pointerdown", (event) => {
      event.preventDefault();
      border.setPointerCapture(event.pointerId);
      border.focus({ preventScroll: true });
      border.classList.add("moving");
    });
    border.addEventListener("pointermove", (event) => border.hasPointerCapture(event.pointerId) && this.#put(name, this.#under(name, event)));
    for (const end of ["pointerup", "pointercancel"]) border.addEventListener(end, () => border.classList.remove("moving"));
    return border;
  }

  /** What a border would stand at under the pointer: rem for the measures, else a share of the room in hundredths. */
  #under(name, { clientX, clientY }) {
    const bench = document.getElementById("bench").getBoundingClientRect();
    const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
    if (name === "measures") return (clientX - bench.left - rem) / rem;
    if (name === "board") return (100 * (clientY - document.querySelector(".board").getBoundingClientRect().top)) / innerHeight;
    const left = document.querySelector(".view").getBoundingClientRect().left;
    return this.#upright(name) ? (100 * (clientX - left)) / (bench.right - rem - left) : (100 * (clientY - bench.top)) / bench.height;
  }

  /** Puts a border somewhere, or back where it usually is. */
  #put(name, value) {
    const { name: screen } = this.#screen;
    const own = { ...this.kept[screen], [name]: value === undefined ? undefined : Number(value.toFixed(1)) };
    this.kept = { ...this.kept, [screen]: own };
    keepPanes(this.kept);
    this.show();
    dispatchEvent(new Event("resize"));
  }

  show() {
    const root = document.documentElement.style;
    const { name: screen, borders } = this.#screen;
    const own = this.kept[screen] ?? {};
    const set = (variable, value) => (value === undefined ? root.removeProperty(variable) : root.setProperty(variable, value));
    const chosen = (name) => (name in borders && own[name] !== undefined ? this.#value(name) : undefined);
    const views = chosen("views");
    set("--measures", chosen("measures") && chosen("measures") + "rem");
    set("--view", views && views + "fr");
    set("--dock", views && 100 - views + "fr");
    set("--board", chosen("board") && chosen("board") + "vh");
    for (const [name, border] of Object.entries(this.borders)) {
      border.hidden = !(name in borders);
      if (border.hidden) continue;
      border.setAttribute("aria-orientation", this.#upright(name) ? "vertical" : "horizontal");
      const [least, most] = borders[name];
      border.setAttribute("aria-valuemin", least);
      border.setAttribute("aria-valuemax", most);
      border.setAttribute("aria-valuenow", this.#value(name));
    }
  }
}

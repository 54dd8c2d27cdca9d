// What is wrong, beside the field it is wrong with, and in one list above the drawing.

import { h } from "../common/dom.js";
import { idOf } from "../common/inputs.js";
import { placeName } from "../common/names.js";
import { sentence } from "../common/violations.js";
import { count, say } from "../common/words.js";

/** The field on the page that stands for a place of the body: itself, or the nearest place around it. */
function placeOf(pointer) {
  for (let at = pointer; at !== ""; at = at.slice(0, at.lastIndexOf("/"))) {
    if (document.getElementById(idOf(at))) return at;
  }
  return "";
}

/** Where words about a place stand: the cells of a row share theirs. */
function errorOf(place) {
  for (let at = place; at !== ""; at = at.slice(0, at.lastIndexOf("/"))) {
    const error = document.getElementById(idOf(at) + "-error");
    if (error) return error;
  }
  return null;
}

export class Problems {
  #violations = [];
  #typed = new Map();

  constructor({ goTo }) {
    this.goTo = goTo;
    this.element = h("div", { class: "problems", role: "alert" });
  }

  /** What the service said; an empty list when all is well. */
  found(problem) {
    // Asked again and again while the service is away: said once.
    if (problem?.status === 0 && this.title === say("unreachable")) return;
    this.#violations = problem?.violations ?? [];
    this.title = problem && this.#violations.length === 0 ? (problem.status === 0 ? say("unreachable") : (problem.detail ?? problem.title)) : "";
    this.show();
  }

  /** What the page itself sees while somebody types; no words when it is mended. */
  complain(path, text) {
    if (text === "") this.#typed.delete(path);
    else this.#typed.set(path, text);
    this.show();
  }

  show() {
    for (const error of document.querySelectorAll(".field .error, .jump-error")) error.textContent = "";
    for (const input of document.querySelectorAll("[aria-invalid]")) input.removeAttribute("aria-invalid");
    const items = [];
    const mark = (path, text) => {
      const at = placeOf(path);
      if (at === "") return at;
      const error = errorOf(at);
      if (error) error.textContent = text;
      document.getElementById(idOf(at)).setAttribute("aria-invalid", "true");
      return at;
    };
    for (const [path, text] of this.#typed) {
      const input = document.getElementById(idOf(path));
      if (!input?.hasAttribute("data-bad")) this.#typed.delete(path);
      else {
        const at = mark(path, text);
        // While it is being typed, the word beside it is enough.
        if (document.activeElement !== input) items.push({ pointer: path, at, text });
      }
    }
    for (const violation of this.#violations) {
      const text = sentence(violation);
      const at = this.#typed.has(violation.field) ? violation.field : mark(violation.field, text);
      items.push({ pointer: violation.field, at, text });
    }
    this.element.replaceChildren();
    if (this.title) this.element.append(h("p", null, this.title));
    if (items.length === 0) return;
    this.element.append(
      h("p", { class: "problems-title" }, h("strong", null, count("toMend", items.length)), " ", say(this.#violations.length > 0 ? "lastGood" : "lastRead")),
      h(
        "ul",
        null,
        items.map(({ pointer, at, text }) =>
          h(
            "li",
            null,
            at === ""
              ? placeName(pointer) === "" ? "" : [h("strong", null, placeName(pointer)), say("colon")]
              : [h("button", { type: "button", class: "link", onclick: () => this.goTo(at) }, placeName(pointer)), say("colon")],
            h("span", null, text),
          ),
        ),
      ),
    );
  }

  get any() {
    return this.#violations.length > 0 || this.title !== "";
  }
}

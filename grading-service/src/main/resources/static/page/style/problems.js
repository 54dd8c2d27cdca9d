// What is wrong, beside the field it is wrong with, and in one list above the drawing.

import { h } from "../common/dom.js";
import { idOf } from "../common/inputs.js";
import { gradeName } from "../common/names.js";
import { number, show } from "../common/units.js";
import { count, current, field as words, find, say } from "../common/words.js";

/** A violation in plain words; where limits are known, in the words of this page's language. */
function sentence(violation) {
  const { value, minimum, maximum, unit } = violation;
  if (current() !== "en" && typeof value === "number" && minimum !== undefined && maximum !== undefined) {
    const write = (length) => (unit ? show(length, unit) : number(length));
    return {
      text: say(unit ? "outside" : "outsidePlain", { value: write(value), unit, least: write(minimum), greatest: write(maximum) }),
      lang: current(),
    };
  }
  const reason = violation.reason;
  return { text: reason.charAt(0).toUpperCase() + reason.slice(1) + (/[.!?]$/.test(reason) ? "" : "."), lang: "en" };
}

/** The field on the page that stands for a place of the body: itself, or the nearest place around it. */
function placeOf(pointer) {
  for (let at = pointer; at !== ""; at = at.slice(0, at.lastIndexOf("/"))) {
    if (document.getElementById(idOf(at))) return at;
  }
  return "";
}

function label(pointer) {
  const grade = /^\/grade\/(\w+)/.exec(pointer);
  if (grade) return find("jumps") + ": " + gradeName(grade[1]);
  return words(pointer)[0];
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
    const mark = (path, text, lang) => {
      const at = placeOf(path);
      if (at === "") return at;
      const error = document.getElementById(idOf(at) + "-error");
      if (error) {
        error.textContent = text;
        error.lang = lang;
      }
      document.getElementById(idOf(at)).setAttribute("aria-invalid", "true");
      return at;
    };
    for (const [path, text] of this.#typed) mark(path, text, current());
    for (const violation of this.#violations) {
      const { text, lang } = sentence(violation);
      const at = this.#typed.has(violation.field) ? violation.field : mark(violation.field, text, lang);
      items.push({ pointer: violation.field, at, text, lang });
    }
    this.element.replaceChildren();
    if (this.title) this.element.append(h("p", null, this.title));
    if (items.length === 0) return;
    this.element.append(
      h("p", { class: "problems-title" }, h("strong", null, count("toMend", items.length)), " ", say("lastGood")),
      h(
        "ul",
        null,
        items.map(({ pointer, at, text, lang }) =>
          h(
            "li",
            null,
            at === ""
              ? [h("strong", null, pointer), ": "]
              : [h("button", { type: "button", class: "link", onclick: () => this.goTo(at) }, label(pointer)), ": "],
            h("span", { lang }, text),
          ),
        ),
      ),
    );
  }

  get any() {
    return this.#violations.length > 0 || this.title !== "";
  }
}

// A drawing of the service that is only looked at: fitted, without tools.

import { boxOf } from "./drawing.js";
import { h } from "../common/dom.js";

const parser = new DOMParser();
const BORDER = 12;

export class Plan {
  constructor(label) {
    this.element = h("div", { class: "cloth plan no-words", role: "img", "aria-label": label });
  }

  put(text) {
    const parsed = parser.parseFromString(text, "image/svg+xml").documentElement;
    if (parsed.nodeName !== "svg") return;
    const svg = document.importNode(parsed, true);
    svg.removeAttribute("width");
    svg.removeAttribute("height");
    svg.setAttribute("aria-hidden", "true");
    svg.querySelector(":scope > title")?.remove();
    this.element.replaceChildren(svg);
    const box = boxOf([...svg.querySelectorAll("g.piece")]);
    if (box) svg.setAttribute("viewBox", [box.x - BORDER, box.y - BORDER, box.width + 2 * BORDER, box.height + 2 * BORDER].join(" "));
  }

  clear() {
    this.element.replaceChildren();
  }
}

// A table of figures that scrolls sideways where it has to: the first cell of each row names it.

import { h } from "./dom.js";

export const figuresTable = (caption, heads, rows, kind = "") =>
  h(
    "div",
    { class: "scroll", tabindex: "0", role: "group", "aria-label": caption },
    h(
      "table",
      { class: "figures " + kind },
      h("caption", null, h("span", null, caption)),
      h("thead", null, h("tr", null, heads.map((head) => h("th", { scope: "col" }, head)))),
      h("tbody", null, rows.map(([first, ...rest]) => h("tr", null, h("th", { scope: "row" }, first), rest.map((cell) => h("td", null, cell))))),
    ),
  );

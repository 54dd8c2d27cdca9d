// The fields of the size run: names of the sizes, the base size, and the bodies to compare with.

import { h } from "../common/dom.js";
import { idOf } from "../common/inputs.js";
import { once } from "../common/service.js";
import { putSizes } from "./style.js";
import { field as words, say } from "../common/words.js";

const frame = (field, control, wide) =>
  h(
    "div",
    { class: "field " + (wide ? "wide" : ""), "data-path": field.path },
    h("div", { class: "head" }, h("label", { for: idOf(field.path) }, words(field.path)[0])),
    control,
    h("span", { id: idOf(field.path) + "-about", class: "unseen" }, words(field.path)[1]),
    h("p", { class: "error", id: idOf(field.path) + "-error" }),
  );

const described = (path) => `${idOf(path)}-error ${idOf(path)}-about`;

export function sizes(field, { store }) {
  const input = h("input", {
    id: idOf(field.path),
    type: "text",
    autocomplete: "off",
    "aria-describedby": described(field.path),
    onchange: () => {
      const list = input.value.split(/[\s,;]+/).filter((label) => label !== "");
      if (list.length > 0) store.change("", (style) => putSizes(style, list));
      else refresh(store.style);
    },
  });
  const refresh = (style) => {
    if (document.activeElement !== input) input.value = (style.sizes ?? []).join(" ");
  };
  return { element: frame(field, input, true), refresh, input };
}

export function base(field, { store }) {
  const select = h("select", {
    id: idOf(field.path),
    "aria-describedby": described(field.path),
    onchange: () => store.change("", (style) => (style.baseSize = select.value)),
  });
  const refresh = (style) => {
    const labels = style.sizes ?? [];
    if ([...select.options].map((option) => option.value).join() !== labels.join()) {
      select.replaceChildren(...labels.map((label) => h("option", { value: label }, label)));
    }
    select.value = style.baseSize;
  };
  return { element: frame(field, select), refresh, input: select };
}

export function table(field, { store }) {
  const select = h("select", {
    id: idOf(field.path),
    "aria-describedby": described(field.path),
    onchange: () =>
      store.change("", (style) => {
        if (select.value === "") delete style.sizeTable;
        else style.sizeTable = select.value;
      }),
  });
  let filled = false;
  const refresh = (style) => {
    if (!filled && style.sizeTable) select.replaceChildren(h("option", { value: style.sizeTable }, style.sizeTable));
    select.value = style.sizeTable ?? "";
  };
  once("v1/size-tables")
    .then(({ sizeTables }) => {
      filled = true;
      const bodies = sizeTables.filter((info) => info.kind === "body" && info.key);
      select.replaceChildren(
        h("option", { value: "" }, say("noTable")),
        ...bodies.map((info) => h("option", { value: info.id }, info.title)),
      );
      refresh(store.style);
    })
    .catch(() => undefined);
  return { element: frame(field, select, true), refresh, input: select };
}

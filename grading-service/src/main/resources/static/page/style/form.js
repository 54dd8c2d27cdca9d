// The measures: built anew only when the style has other fields than before, else just brought up to date.

import { h } from "../common/dom.js";
import { fieldPicture } from "./fieldpictures.js";
import { GROUPS } from "./fields.js";
import { alternatives, choice, ease, idOf, note, numeric, onOff, step, text } from "../common/inputs.js";
import { base, sizes, table } from "./sizefields.js";
import { number, show } from "../common/units.js";
import { find, say } from "../common/words.js";

const KINDS = { length: numeric, ratio: numeric, count: numeric, ease, text, choice, alternatives, switch: onOff, sizes, base, table };

const visible = (style) =>
  GROUPS.filter((group) => !group.when || group.when(style)).map((group) => ({
    id: group.id,
    fields: group.fields.filter((field) => !field.when || field.when(style)),
  }));

const signature = (groups) => groups.map((group) => group.id + ":" + group.fields.map((f) => f.path ?? f.id).join()).join("|");

export class Form {
  #built = "";
  #controls = [];

  /** Uses: the store, what was drafted, a way to complain, and whether the screen is narrow. */
  constructor(uses) {
    this.uses = uses;
    this.store = uses.store;
    this.groups = h("div", { class: "groups" });
    this.note = h("div", { class: "note", "aria-hidden": "true" }, say("noteHint"));
    this.element = h("section", { class: "measures", id: "measures", "aria-label": say("measures") }, this.groups, this.note);
    this.opened = new Set(uses.narrow() ? ["arm"] : GROUPS.map((group) => group.id).filter((id) => id !== "style"));
  }

  refresh() {
    const style = this.store.style;
    const groups = visible(style);
    const now = signature(groups);
    if (now !== this.#built) {
      const focused = document.activeElement?.id;
      this.#build(groups);
      this.#built = now;
      if (focused) document.getElementById(focused)?.focus();
    }
    for (const control of this.#controls) control.refresh(style);
    if (this.told) this.#tell(this.told);
  }

  #build(groups) {
    this.#controls = [];
    this.groups.replaceChildren(
      ...groups.map((group) => {
        const controls = group.fields.map((field) => this.#control(field));
        const details = h(
          "details",
          { class: "group", id: "group-" + group.id, open: this.opened.has(group.id) },
          h("summary", null, h("span", { class: "group-name" }, find("groups")[group.id])),
          h("div", { class: "fields" }, controls.map((control) => control.element)),
        );
        details.addEventListener("toggle", () => {
          if (details.open) this.opened.add(group.id);
          else this.opened.delete(group.id);
        });
        return details;
      }),
    );
  }

  #control(field) {
    const control = KINDS[field.type](field, this.uses);
    this.#controls.push(control);
    if (field.path) {
      control.element.addEventListener("focusin", () => this.#tell(field));
      control.element.addEventListener("pointerenter", () => {
        if (!this.groups.contains(document.activeElement)) this.#tell(field);
      });
    }
    return control;
  }

  #tell(field) {
    this.told = field;
    const style = this.store.style;
    const { label, text: words } = note(field, style);
    const keys =
      field.type === "length"
        ? say("keys", { step: show(step(field, style), style.units) + " " + style.units })
        : field.type === "ratio"
          ? say("keys", { step: number(step(field, style)) })
          : "";
    this.note.replaceChildren(fieldPicture(field.path), h("strong", null, label), " ", words, keys ? " " + keys : "");
  }

  /** Opens the group of a field and goes to it. */
  goTo(path) {
    const input = document.getElementById(idOf(path));
    if (!input) return false;
    input.closest("details").open = true;
    input.focus();
    input.scrollIntoView({ block: "center" });
    return true;
  }
}

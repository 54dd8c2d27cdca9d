// What the checks found. A click lights up the place in the drawing and the row of the table.

import { h } from "../common/dom.js";
import { findingItem, ORDER, together } from "../common/findingitem.js";
import { spokenItem } from "../common/spoken.js";
import { measureName } from "../common/names.js";
import { requestShown } from "../common/request.js";
import { count, find, pointName, say } from "../common/words.js";
import { graded } from "./judged.js";
import { WhatIf } from "./whatif.js";

export class Findings {
  constructor({ store, drafted, light }) {
    this.drafted = drafted;
    this.light = light;
    this.whatIf = new WhatIf({ store, drafted });
    this.list = h("div", { class: "finding-list" });
    this.cautions = h("div", { class: "cautions" });
    this.element = h("section", { class: "panel", id: "panel-findings", "aria-label": say("findings") }, this.whatIf.element, this.list, this.cautions, requestShown(say("request.checks"), () => ({ path: "v1/checks", accept: "application/json", body: { sizeRun: graded(store.style) } })));
  }

  /** How many want a look before cutting. */
  get number() {
    return together(this.drafted.answer?.findings ?? []).filter(([first]) => first.severity !== "info").length;
  }

  get gravest() {
    const severities = (this.drafted.answer?.findings ?? []).map((finding) => finding.severity);
    return ORDER.find((severity) => severities.includes(severity)) ?? "";
  }

  refresh() {
    const { answer } = this.drafted;
    if (!answer) return;
    this.whatIf.refresh();
    const groups = together(answer.findings);
    const items = groups.map((group, i) => this.#item(group, i));
    const grave = items.filter((item, i) => groups[i][0].severity !== "info");
    const notes = items.filter((item, i) => groups[i][0].severity === "info");
    const open = this.list.querySelector(".findings-more")?.open ?? false;
    this.list.replaceChildren(
      h("h2", null, grave.length === 0 ? say("findingsNone") : count("toLookAt", grave.length)),
      h("ol", { class: "findings" }, grave),
      notes.length === 0
        ? ""
        : h("details", { class: "findings-more", open }, h("summary", null, count("notes", notes.length)), h("ol", { class: "findings" }, notes)),
    );
    this.cautions.replaceChildren(
      h("h2", null, say("cautions")),
      h("ul", null, answer.cautions.map(spokenItem)),
    );
  }

  /** What a finding is about, by the name in the spec table or of the field. */
  #dimension(code) {
    const row = this.drafted.answer.specTable.rows.find((each) => each.code === code);
    if (row) return pointName(row);
    return code === "pleats" ? find("groups").pleats : measureName(code);
  }

  #item(group, i) {
    const [first] = group;
    const sizes = [...new Set(group.flatMap((finding) => finding.sizes))];
    const every = group.length === this.drafted.answer.sizes.length && group.every((finding) => finding.sizes.length === 1);
    return findingItem(group, {
      name: this.#dimension(first.dimension),
      every,
      id: "finding-" + i,
      press: () => this.light.toggle(first.dimension, every ? [] : sizes),
    });
  }
}

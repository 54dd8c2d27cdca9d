// What the checks found. A click lights up the place in the drawing and the row of the table.

import { h } from "./dom.js";
import { gradeName } from "./problems.js";
import { number, show } from "./units.js";
import { WhatIf } from "./whatif.js";
import { count, find, pointName, say } from "./words.js";

const ORDER = ["stop", "caution", "info"];
const SIGNS = { stop: "!", caution: "?", info: "i" };

/** Findings that say the same of several sizes stand as one. */
export function together(findings) {
  const groups = new Map();
  for (const finding of findings) {
    const key = [finding.check, finding.severity, finding.dimension, finding.message.replace(/[\d.,/ ]+/g, "#"), finding.source].join("|");
    if (groups.has(key)) groups.get(key).push(finding);
    else groups.set(key, [finding]);
  }
  return [...groups.values()].sort((a, b) => ORDER.indexOf(a[0].severity) - ORDER.indexOf(b[0].severity));
}

const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? "" : ".");

/** What was found and what would pass, as far as the check says. */
function figures({ value, least, greatest, unit }) {
  if (value === undefined || value === null) return "";
  const write = (each) => (unit ? `${show(each, unit)} ${unit}` : number(each));
  const values = { value: write(value) };
  if (typeof least === "number") values.least = write(least);
  if (typeof greatest === "number") values.greatest = write(greatest);
  if (values.least && values.greatest) return say("foundRange", values);
  if (values.least) return say("foundLeast", values);
  return values.greatest ? say("foundGreatest", values) : say("found", values);
}

const sizesOf = (finding) =>
  finding.sizes.length === 0
    ? say("wholeRun")
    : finding.sizes.length === 1
      ? say("sizesOf", { a: finding.sizes[0] })
      : say("sizesBetween", { a: finding.sizes[0], b: finding.sizes[finding.sizes.length - 1] });

/** Findings that say the same, as one item of a list; a button where something happens when it is pressed. */
export function findingItem(group, { name, every, id, press }) {
  const [first] = group;
  const inside = [
    h("span", { class: "badge" }, h("span", { "aria-hidden": "true", class: "sign" }, SIGNS[first.severity]), find("severity")[first.severity]),
    h("strong", null, name),
    " ",
    h("span", { class: "finding-sizes" }, every ? say("everySize") : group.map(sizesOf).join(", ")),
    h("span", { class: "finding-message", lang: "en" }, sentence(first.message)),
  ];
  return h(
    "li",
    { class: "finding " + first.severity },
    press ? h("button", { type: "button", class: "finding-button", id, onclick: press }, inside) : h("div", { class: "finding-words" }, inside),
    first.severity === "info" ? null : h("p", { class: "remedy" }, figures(first)),
    first.remedy ? h("p", { class: "remedy", lang: "en" }, sentence(first.remedy)) : null,
    h("details", { class: "source" }, h("summary", null, say("source")), h("p", { lang: "en" }, first.source)),
  );
}

export class Findings {
  constructor(page) {
    this.page = page;
    this.whatIf = new WhatIf(page);
    this.list = h("div", { class: "finding-list" });
    this.cautions = h("div", { class: "cautions" });
    this.element = h("section", { class: "panel", id: "panel-findings", "aria-label": say("findings") }, this.whatIf.element, this.list, this.cautions);
  }

  /** How many want a look before cutting. */
  get number() {
    return together(this.page.answer?.findings ?? []).filter(([first]) => first.severity !== "info").length;
  }

  get gravest() {
    const severities = (this.page.answer?.findings ?? []).map((finding) => finding.severity);
    return ORDER.find((severity) => severities.includes(severity)) ?? "";
  }

  refresh() {
    const { answer } = this.page;
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
      h("ul", { lang: "en" }, answer.cautions.map((caution) => h("li", null, caution))),
    );
  }

  /** What a finding is about, by the name in the spec table or of the field. */
  #dimension(code) {
    const row = this.page.answer.specTable.rows.find((each) => each.code === code);
    if (row) return pointName(row).name;
    return code === "pleats" ? find("groups").pleats : gradeName(code);
  }

  #item(group, i) {
    const [first] = group;
    const sizes = [...new Set(group.flatMap((finding) => finding.sizes))];
    const every = group.length === this.page.answer.sizes.length && group.every((finding) => finding.sizes.length === 1);
    return findingItem(group, {
      name: this.#dimension(first.dimension),
      every,
      id: "finding-" + i,
      press: () => this.page.lightFinding(first.dimension, every ? [] : sizes),
    });
  }
}

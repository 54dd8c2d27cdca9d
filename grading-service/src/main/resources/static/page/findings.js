// What the checks found. A click lights up the place in the drawing and the row of the table.

import { h } from "./dom.js";
import { count, find, say } from "./words.js";

const ORDER = ["stop", "caution", "info"];
const SIGNS = { stop: "!", caution: "?", info: "i" };

/** Findings that say the same of several sizes stand as one. */
function together(findings) {
  const groups = new Map();
  for (const finding of findings) {
    const key = [finding.check, finding.severity, finding.dimension, finding.message.replace(/[\d.,/ ]+/g, "#"), finding.source].join("|");
    if (groups.has(key)) groups.get(key).push(finding);
    else groups.set(key, [finding]);
  }
  return [...groups.values()].sort((a, b) => ORDER.indexOf(a[0].severity) - ORDER.indexOf(b[0].severity));
}

const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? "" : ".");

const sizesOf = (finding) =>
  finding.sizes.length === 0
    ? say("wholeRun")
    : finding.sizes.length === 1
      ? say("sizesOf", { a: finding.sizes[0] })
      : say("sizesBetween", { a: finding.sizes[0], b: finding.sizes[finding.sizes.length - 1] });

export class Findings {
  constructor(page) {
    this.page = page;
    this.list = h("div", { class: "finding-list" });
    this.cautions = h("div", { class: "cautions" });
    this.element = h("section", { class: "panel", id: "panel-findings", "aria-label": say("findings") }, this.list, this.cautions);
  }

  get number() {
    return this.page.answer ? together(this.page.answer.findings).length : 0;
  }

  get gravest() {
    const severities = (this.page.answer?.findings ?? []).map((finding) => finding.severity);
    return ORDER.find((severity) => severities.includes(severity)) ?? "";
  }

  refresh() {
    const { answer } = this.page;
    if (!answer) return;
    const groups = together(answer.findings);
    this.list.replaceChildren(
      h("h2", null, groups.length === 0 ? say("findingsNone") : count("findingsCount", groups.length)),
      h("ol", { class: "findings" }, groups.map((group, i) => this.#item(group, i))),
    );
    this.cautions.replaceChildren(
      h("h2", null, say("cautions")),
      h("ul", { lang: "en" }, answer.cautions.map((caution) => h("li", null, caution))),
    );
  }

  #item(group, i) {
    const [first] = group;
    const sizes = [...new Set(group.flatMap((finding) => finding.sizes))];
    const every = group.length === this.page.answer.sizes.length && group.every((finding) => finding.sizes.length === 1);
    return h(
      "li",
      { class: "finding " + first.severity },
      h(
        "button",
        { type: "button", class: "finding-button", id: "finding-" + i, onclick: () => this.page.lightFinding(first.dimension, every ? [] : sizes) },
        h("span", { class: "badge" }, h("span", { "aria-hidden": "true", class: "sign" }, SIGNS[first.severity]), find("severity")[first.severity]),
        h("span", { class: "finding-sizes" }, every ? say("everySize") : group.map(sizesOf).join(", ")),
        h("span", { class: "finding-message", lang: "en" }, sentence(first.message)),
      ),
      first.remedy ? h("p", { class: "remedy", lang: "en" }, sentence(first.remedy)) : null,
      h("details", { class: "source" }, h("summary", null, say("source")), h("p", { lang: "en" }, first.source)),
    );
  }
}

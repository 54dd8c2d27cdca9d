// The report on a grade: what was found, the jumps beside those of bodies, and how the file was read.

import { h } from "./dom.js";
import { findingItem, together } from "./findings.js";
import { gradeName } from "./problems.js";
import { once } from "./service.js";
import { figuresTable } from "./figurestable.js";
import { takeRow } from "./take.js";
import { signed } from "./units.js";
import { count, find, say } from "./words.js";

const KINDS = ["application/pdf", "text/csv", "application/json", "image/svg+xml"];

/** What a measure is called: by its point of measure, or as a dimension of the style. */
const measureName = (code) => find("points")[code] ?? gradeName(code);

const bodyName = (dimension) => find("body")[dimension]?.[0] ?? dimension;

export class Report {
  constructor(desk) {
    this.desk = desk;
    this.head = h("p", { class: "report-head", role: "status" });
    this.body = h("div", { class: "report-body" });
    this.files = h("ul", { class: "file-list" });
    this.filesBox = h("div", { class: "fitted-files", hidden: true }, h("h2", null, say("check.take")), this.files);
    this.element = h("section", { class: "report", "aria-label": say("check.report") }, h("h2", null, say("check.report")), this.head, this.body, this.filesBox);
    this.wait();
    this.#kinds();
  }

  /** The files that the service says it can make of a check. */
  async #kinds() {
    const content = await once("v3/api-docs")
      .then((description) => description.paths?.["/v1/checks"]?.post?.responses?.["200"]?.content ?? {})
      .catch(() => ({}));
    const offered = Object.keys(content).map((type) => type.split(";")[0]);
    const kinds = KINDS.filter((kind) => offered.includes(kind) || kind === "application/json");
    this.files.replaceChildren(
      ...kinds.map((kind) => {
        const [name, meaning] = find("check.kinds")[kind];
        return takeRow({ kind, name, meaning, main: kind === kinds[0], fallback: "check." + kind.split("/").pop().replace("svg+xml", "svg") }, (each, signal) => this.desk.request(each, signal));
      }),
    );
  }

  wait() {
    this.head.textContent = say("check.waiting");
    this.#empty();
  }

  busy() {
    this.head.textContent = say("check.reading");
  }

  #empty() {
    this.body.replaceChildren();
    this.filesBox.hidden = true;
    if (this.chart) URL.revokeObjectURL(this.chart);
    this.chart = "";
  }

  /** Why the file could not be checked, with the line where it says so. */
  refuse(problem) {
    this.#empty();
    this.head.textContent = say("check.refused");
    const violations = problem.violations ?? [];
    const words = violations.length > 0 ? violations.map((each) => `${each.field}: ${each.reason}`) : [problem.detail ?? problem.title];
    const where = problem.line ? say("check.line", { line: problem.line }) : "";
    this.body.append(
      h("div", { class: "check-error", role: "alert" }, where ? h("strong", { class: "line-number" }, where) : null, words.map((each) => h("p", { lang: "en" }, each))),
      h("p", { class: "quiet-words" }, say("check.mend")),
    );
  }

  show(answer, chart) {
    this.#empty();
    const { summary, unit } = answer;
    const parts = ["stop", "caution", "info"].filter((each) => summary[each] > 0).map((each) => count("check." + each, summary[each]));
    this.head.textContent = say("check.read", { name: answer.name, sizes: answer.sizes.join(", "), base: answer.baseSize });
    this.chart = URL.createObjectURL(chart);
    this.filesBox.hidden = false;
    this.body.replaceChildren(
      h("p", { class: "verdict " + summary.gravest }, find("check.verdicts")[summary.gravest], parts.length > 0 ? " " + parts.join(", ") + "." : ""),
      ...this.#findings(answer),
      h("h2", null, say("check.chart")),
      h(
        "div",
        { class: "chart-sheet", tabindex: "0", role: "group", "aria-label": say("check.chart") },
        h("img", { src: this.chart, alt: say("check.chartText", { unit: say("unit." + unit) }), width: 718 }),
      ),
      this.#jumps(answer),
      this.#traces(answer),
    );
  }

  #findings({ findings }) {
    const groups = together(findings);
    const items = groups.map((group) => findingItem(group, { name: measureName(group[0].dimension), every: false }));
    const grave = items.filter((item, i) => groups[i][0].severity !== "info");
    const notes = items.filter((item, i) => groups[i][0].severity === "info");
    return [
      h("h2", null, say("findings")),
      h("ol", { class: "findings" }, grave),
      notes.length === 0 ? null : h("details", { class: "findings-more", open: grave.length === 0 }, h("summary", null, count("notes", notes.length)), h("ol", { class: "findings" }, notes)),
    ].filter((each) => each);
  }

  #jumps({ jumps, unit, source }) {
    if (jumps.length === 0) return h("span");
    return h(
      "div",
      null,
      h("h2", null, say("check.jumps")),
      figuresTable(
        say("check.jumpsCaption", { unit: say("unit." + unit) }),
        [say("table.measure"), say("check.interval"), say("check.garment"), say("check.body"), say("check.bodyOf")],
        jumps.map((each) => [
          measureName(each.measure),
          `${each.from}–${each.to}`,
          signed(each.garment, unit),
          typeof each.body === "number" ? signed(each.body, unit) : "–",
          each.dimension ? bodyName(each.dimension) : "–",
        ]),
      ),
      source ? h("p", { class: "source", lang: "en" }, source) : null,
    );
  }

  #traces({ traces }) {
    if (traces.length === 0) return h("span");
    return h(
      "details",
      { class: "traces", open: traces.some((each) => each.kind !== "found") },
      h("summary", null, say("check.traces")),
      figuresTable(
        say("check.tracesCaption"),
        [say("check.line0"), say("check.kind"), say("check.subject"), say("check.words")],
        traces.map((each) => [
          each.line > 0 ? String(each.line) : "–",
          find("check.traceKinds")[each.kind] ?? each.kind,
          each.subject === "file" ? say("check.wholeFile") : (find("points")[each.subject] ?? each.subject),
          h("span", { lang: "en" }, each.words),
        ]),
        "words-table",
      ),
    );
  }
}

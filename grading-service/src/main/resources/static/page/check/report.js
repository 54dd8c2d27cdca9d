// The report on a grade: what was found, the jumps beside those of bodies, and how the file was read.

import { h } from "../common/dom.js";
import { findingItem, together } from "../common/findingitem.js";
import { bodyName, measureName } from "../common/names.js";
import { once } from "../common/service.js";
import { figuresTable } from "../common/figurestable.js";
import { takeRow } from "../common/take.js";
import { placeName } from "../common/names.js";
import { spoken } from "../common/spoken.js";
import { sentence } from "../common/violations.js";
import { bounds, number, show, signed } from "../common/units.js";
import { count, find, say } from "../common/words.js";

const KINDS = ["application/pdf", "text/csv", "application/json", "image/svg+xml"];

export class Report {
  constructor(request, map) {
    this.map = map;
    this.head = h("p", { class: "report-head", role: "status" });
    this.body = h("div", { class: "report-body" });
    this.files = h("ul", { class: "file-list" });
    this.filesBox = h("div", { class: "fitted-files", hidden: true }, h("h2", null, say("check.take")), this.files);
    this.element = h("section", { class: "report", "aria-label": say("check.report") }, h("h2", null, say("check.report")), this.head, this.body, this.filesBox);
    this.wait();
    this.#kinds(request);
  }

  /** The files that the service says it can make of a check. */
  async #kinds(request) {
    const content = await once("v3/api-docs")
      .then((description) => description.paths?.["/v1/checks"]?.post?.responses?.["200"]?.content ?? {})
      .catch(() => ({}));
    const offered = Object.keys(content).map((type) => type.split(";")[0]);
    const kinds = KINDS.filter((kind) => offered.includes(kind) || kind === "application/json");
    this.files.replaceChildren(
      ...kinds.map((kind) => {
        const [name, meaning] = find("check.kinds")[kind];
        return takeRow({ kind, name, meaning, main: kind === kinds[0], fallback: "check." + kind.split("/").pop().replace("svg+xml", "svg") }, (each, signal) => request(each, signal));
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
    for (const address of this.addresses ?? []) URL.revokeObjectURL(address);
    this.addresses = [];
  }

  /** A picture of the service; what it shows is said in words beside it. */
  #picture(heading, blob, words) {
    const address = URL.createObjectURL(blob);
    this.addresses.push(address);
    return [
      h("h2", null, heading),
      h("div", { class: "chart-sheet", tabindex: "0", role: "group", "aria-label": heading }, h("img", { src: address, alt: words, width: 718 })),
    ];
  }

  /** Why the file could not be checked, with the line where it says so. */
  refuse(problem) {
    this.#empty();
    this.head.textContent = say("check.refused");
    const violations = problem.violations ?? [];
    const words = violations.length > 0 ? violations.map((each) => [placeName(each.field), sentence(each)].filter((part) => part !== "").join(say("colon"))) : [spoken(problem.detail ?? problem.title)];
    const where = problem.line ? say("check.line", { line: problem.line }) : "";
    this.body.append(
      h("div", { class: "check-error", role: "alert" }, where ? h("strong", { class: "line-number" }, where) : null, words.map((text) => h("p", null, text))),
      h("p", { class: "quiet-words" }, say("check.mend")),
    );
  }

  show(answer, chart, nest) {
    this.#empty();
    const { summary, unit } = answer;
    // Counted as they are listed: what repeats from size to size is one entry.
    const listed = together(answer.findings).map(([first]) => first.severity);
    const parts = ["stop", "caution", "info"]
      .map((each) => [each, listed.filter((severity) => severity === each).length])
      .filter(([, number]) => number > 0)
      .map(([each, number]) => count("check." + each, number));
    this.head.textContent = say("check.read", { name: answer.name, sizes: answer.sizes.join(", "), base: answer.baseSize });
    this.filesBox.hidden = false;
    this.body.replaceChildren(
      h("p", { class: "verdict " + summary.gravest }, find("check.verdicts")[summary.verdict === "not judged" ? "partly" : summary.gravest], parts.length > 0 ? " " + parts.join(", ") + "." : ""),
      this.#unread(answer),
      this.#causes(answer),
      ...this.#findings(answer),
      ...(nest ? this.#picture(say("check.nest"), nest, say("check.nestText")) : []),
      ...this.#picture(say("check.chart"), chart, say("check.chartText", { unit: say("unit." + unit) })),
      this.#jumps(answer),
      this.#coverage(answer),
      this.#traces(answer),
    );
  }

  /** Rows whose names are not known: what each is, is asked for; what it may be is proposed and never taken unasked. */
  #unread({ unread = [] }) {
    if (unread.length === 0) return h("span");
    const ROWS = ["bicep", "length", "capHeight", "capLine", "armhole", "elbow", "wrist"];
    const row = ({ line, name, proposals }, i) => {
      const likely = proposals.map((each) => each.measure);
      const options = [...likely, ...ROWS.filter((code) => !likely.includes(code))];
      const id = "unread-" + i;
      return h(
        "li",
        null,
        h("label", { for: id }, say("check.unreadRow", { line, name })),
        h(
          "select",
          { id, onchange: (event) => this.map(name, event.target.value) },
          h("option", { value: "" }, say("check.unreadChoose")),
          options.map((code) => h("option", { value: code }, likely.includes(code) ? say("check.unreadLikely", { name: measureName(code) }) : measureName(code))),
          h("option", { value: "ignore" }, say("check.unreadIgnore")),
        ),
      );
    };
    return h("section", { class: "unread", "aria-label": say("check.unread") }, h("h2", null, say("check.unread")), h("p", null, say("check.unreadLead")), h("ul", null, unread.slice(0, 20).map(row)));
  }

  /** The figures behind the findings, each with what mends it. */
  #causes({ causes = [], unit }) {
    if (causes.length === 0) return h("span");
    const write = (value) => show(value, unit);
    const place = ({ sizes: [a, b] }) => (b === undefined ? say("sizesOf", { a }) : say("sizesBetween", { a, b }));
    const range = (cure) => {
      const [least, greatest] = bounds(cure.least, cure.greatest, unit);
      return say("check.causeRange", { least, greatest, unit });
    };
    const row = ({ cure }) =>
      h(
        "li",
        null,
        h("strong", null, measureName(cure.dimension)),
        " ",
        place(cure),
        h("span", { class: "finding-message" }, say("check.cause", { old: write(cure.old), next: write(cure.new), unit })),
        h("p", { class: "remedy" }, range(cure), " ", count("check.causeOf", cure.cured)),
      );
    return h("section", { class: "causes", "aria-label": say("check.causes") }, h("h2", null, say("check.causes")), h("ol", { class: "findings" }, causes.map(row)));
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
      { class: "report-jumps" },
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

  /** Who of a survey finds a size. */
  #coverage({ coverage, unit }) {
    if (!coverage) return h("span");
    const write = (value) => show(value, unit);
    return h(
      "div",
      { class: "coverage" },
      h("h2", null, say("check.coverage")),
      h("p", null, say("check.covered", { share: number(coverage.share * 100, 0), people: coverage.people, covered: coverage.covered })),
      h("p", { class: "quiet-words" }, say("check.slack", { girth: bodyName(coverage.girth), girthSlack: write(coverage.girthSlack), lengthSlack: write(coverage.lengthSlack), unit })),
      h(
        "ul",
        null,
        coverage.gaps.map((gap) => h("li", null, say("check.gaps." + gap.place, { people: gap.people, name: bodyName(gap.dimension), from: write(gap.from), to: write(gap.to), unit }))),
      ),
      h("p", { class: "source", lang: "en" }, coverage.survey),
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
          h("span", null, each.words),
        ]),
        "words-table",
      ),
    );
  }
}

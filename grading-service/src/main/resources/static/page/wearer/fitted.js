// What came out for one wearer: the drawing, the nearest size and what departs from it, what was estimated, and the files.

import { h } from "../common/dom.js";
import { figuresTable } from "../common/figurestable.js";
import { figuresOf } from "../worn/figures.js";
import { paperOf } from "../common/paper.js";
import { KINDS } from "../common/take.js";
import { Plan } from "../drawing/plan.js";
import { once } from "../common/service.js";
import { hand, takeRow } from "../common/take.js";
import { findingItem, together } from "../common/findingitem.js";
import { bodyName, measureName, placeName } from "../common/names.js";
import { number, show, signed, toMm } from "../common/units.js";
import { spokenItem } from "../common/spoken.js";
import { sentence } from "../common/violations.js";
import { find, pointName, say } from "../common/words.js";

/** Whether a measurement is only doubted, so that it can be confirmed. */
export const questioned = ({ reason, minimum, maximum, unit }) => /\bconfirmed\b/.test(reason) && minimum !== undefined && maximum !== undefined && unit !== undefined;

/** What the arm of a wearer is built from, by the names of its measurements. */
const ARM = ["upperArmGirth", "elbowGirth", "wristGirth", "armLength"];

export class Fitted {
  #panel = null;
  drafted = {};

  constructor(body, store) {
    this.body = body;
    this.store = store;
    this.plan = new Plan(say("wearer.drawing"));
    this.head = h("p", { class: "fitted-head", role: "status" });
    this.trouble = h("ul", { class: "fitted-trouble" });
    this.words = h("div", { class: "fitted-words" });
    this.wornButton = h("button", { type: "button", id: "wearer-worn", "aria-expanded": "false", onclick: () => this.#showWorn() }, say("worn3d.name"));
    this.worn = h("section", { class: "worn3d fitted-worn", "aria-label": say("worn3d.name"), hidden: true });
    this.wornBox = h("div", { class: "fitted-as-worn", hidden: true }, this.wornButton, this.worn);
    this.paper = h("select", { id: "wearer-paper" }, Object.entries(find("file.papers")).filter(([value]) => value !== "roll").map(([value, text]) => h("option", { value }, text)));
    this.files = h("div", { class: "fitted-files", hidden: true }, h("h2", null, say("files")), this.#list());
    this.element = h(
      "section",
      { class: "fitted", "aria-label": say("wearer.result") },
      h("h2", null, say("wearer.result")),
      this.head,
      this.trouble,
      this.plan.element,
      this.wornBox,
      this.words,
      this.files,
    );
    this.wait();
  }

  /** The sleeve on an arm built from what was measured, and from the estimates for the rest. */
  #arm = (size, unit, style) => {
    const { wearer } = this.body();
    const length = (name) => wearer[name] ?? this.measured.estimates.find((each) => each.dimension === name)?.value;
    const known = ARM.filter((name) => length(name) !== undefined);
    const { figures } = figuresOf(size, unit, null);
    return { figures: { ...figures, ...Object.fromEntries(known.map((name) => [name, toMm(length(name), style.units) / 1000])) }, words: say("worn3d.armWearer") };
  };

  async #showWorn() {
    this.worn.hidden = !this.worn.hidden;
    this.wornButton.setAttribute("aria-expanded", String(!this.worn.hidden));
    if (this.worn.hidden) return;
    if (this.#panel === null) {
      this.worn.textContent = say("worn3d.loading");
      this.#panel = import("../worn/panel.js").then(({ Panel }) => {
        const panel = new Panel({ store: this.store, drafted: this.drafted, arm: this.#arm, id: "wearer3d" });
        this.worn.replaceChildren(panel.element);
        return panel;
      });
      this.#panel.catch(() => {
        this.#panel = null;
        this.worn.textContent = say("worn3d.notLoaded");
      });
    }
    (await this.#panel.catch(() => null))?.refresh();
  }

  #list() {
    return h(
      "ul",
      { class: "file-list" },
      KINDS.map((kind) => {
        const [name, meaning] = find("file.kinds")[kind];
        const pdf = kind === "application/pdf";
        const options = pdf ? h("div", { class: "file-options" }, h("div", { class: "tool" }, h("label", { for: "wearer-paper" }, say("file.paper")), this.paper)) : null;
        const paper = pdf || kind === "application/zip";
        return takeRow({
          kind,
          name,
          meaning,
          options,
          main: pdf,
          variant: () => (paper ? this.paper.value : ""),
          fallback: "sleeve." + kind.split("/").pop(),
          path: "v1/made-to-measure",
          body: () => ({ ...this.body(), ...(paper ? { paper: paperOf(this.paper.value) } : {}) }),
        });
      }),
      h(
        "li",
        { class: "file" },
        h("div", { class: "file-name" }, h("strong", null, say("wearer.orderFile")), h("span", null, say("wearer.orderFileLead"))),
        h("div", { class: "file-take" }, h("button", { type: "button", id: "wearer-save", onclick: () => this.#save() }, say("file.take"), h("span", { class: "unseen" }, " " + say("wearer.orderFile")))),
      ),
    );
  }

  #save() {
    hand(new Blob([JSON.stringify(this.body(), null, 2) + "\n"], { type: "application/json" }), "order.json");
  }

  wait() {
    this.head.textContent = say("wearer.waiting");
    this.trouble.replaceChildren();
    this.words.replaceChildren();
    this.plan.clear();
    this.plan.element.hidden = true;
    this.wornBox.hidden = true;
    this.files.hidden = true;
  }

  refuse(violations, doubted) {
    this.wait();
    const again = violations.filter(questioned).map((each) => placeName(each.field));
    this.head.textContent = !doubted ? say("wearer.notYet") : again.length === 1 ? say("wearer.again", { name: again[0] }) : say("wearer.doubted");
    const missing = (each) => each.field.startsWith("/wearer/") && each.value === undefined;
    this.trouble.replaceChildren(...violations.filter((each) => !missing(each)).map((each) => this.#trouble(each)));
  }

  /** What is wrong, and a way to the field it is wrong with. */
  #trouble(violation) {
    const { field: pointer } = violation;
    const [, kind, name] = pointer.split("/");
    const id = kind === "wearer" ? "w-" + name : kind === "ease" ? "w-ease-" + name : "";
    const label = placeName(pointer);
    const doubted = questioned(violation);
    const text = doubted
      ? say("wearer.unusual", { low: show(violation.minimum, violation.unit), high: show(violation.maximum, violation.unit), unit: violation.unit })
      : sentence(violation);
    return h(
      "li",
      null,
      document.getElementById(id) ? h("button", { type: "button", class: "link", onclick: () => document.getElementById(id).focus() }, label) : label,
      " ",
      h("span", null, text),
    );
  }

  show(answer, svg) {
    this.head.textContent = answer.estimates.length > 0 ? say("wearer.readyEstimated") : say("wearer.ready");
    this.trouble.replaceChildren();
    this.plan.element.hidden = false;
    this.plan.put(svg);
    this.wornBox.hidden = false;
    this.drafted.answer = answer.sizeRun;
    this.measured = answer;
    if (!this.worn.hidden) this.#panel?.then((panel) => panel.refresh());
    this.files.hidden = false;
    this.words.replaceChildren(this.#findings(answer), this.#nearest(answer), this.#estimates(answer), this.#together(answer), this.#measures(answer), this.#cautions(answer));
  }

  /** The size by its own name, and by the short one that the table gives it too. */
  #size({ sizeTable, size }) {
    const head = h("h2", null, say("wearer.nearest", { size }));
    once("v1/size-tables/" + encodeURIComponent(sizeTable))
      .then(({ labels }) => {
        const short = Object.keys(labels).find((label) => labels[label] === size);
        if (short) head.textContent = say("wearer.nearest", { size: `${short} (${size})` });
      })
      .catch(() => undefined);
    return head;
  }

  #nearest({ nearestSize, departures, unit }) {
    if (!nearestSize) return h("p", { class: "quiet-words" }, say("wearer.noNearest"));
    const length = (value) => show(value, unit);
    return h(
      "div",
      null,
      this.#size(nearestSize),
      h("p", { class: "quiet-words" }, say("wearer.nearestBy", { name: bodyName(nearestSize.by) }), departures.length === 0 ? " " + say("wearer.noDepartures") : ""),
      departures.length === 0
        ? null
        : figuresTable(
            say("wearer.departures", { unit: say("unit." + unit) }),
            [say("wearer.measure"), say("wearer.hers"), say("wearer.ofTable"), say("wearer.difference"), say("wearer.likeSize")],
            departures.map((each) => [bodyName(each.dimension), length(each.wearer), length(each.table), signed(each.difference, unit), each.nearestSize]),
          ),
      h("p", { class: "source", lang: "en" }, nearestSize.source),
    );
  }

  #estimates({ estimates, unit }) {
    if (estimates.length === 0) return h("span");
    const length = (value) => show(value, unit);
    return h(
      "div",
      { class: "estimates" },
      h("h2", null, say("wearer.estimates")),
      h(
        "ul",
        null,
        estimates.map((each) =>
          h(
            "li",
            null,
            h("strong", null, bodyName(each.dimension)),
            " ",
            say("wearer.estimateOf", {
              value: length(each.value),
              low: length(each.low),
              high: length(each.high),
              unit,
              share: number(each.probability * 100),
              from: each.from.map(bodyName).join(", "),
            }),
          ),
        ),
      ),
      h("p", { class: "source", lang: "en" }, estimates[0].source),
    );
  }

  /** What speaks against the sleeve on this arm, gravest first. */
  #findings({ sizeRun }) {
    const groups = together(sizeRun.findings).filter(([first]) => first.severity !== "info");
    if (groups.length === 0) return h("span");
    return h(
      "div",
      { class: "fit" },
      h("h2", null, say("wearer.fit")),
      h("ul", { class: "findings" }, groups.map((group) => findingItem(group, { name: measureName(group[0].dimension), every: true }))),
    );
  }

  /** Each measurement beside what all the others let expect. */
  #together({ together: judged, unit }) {
    if (!judged || judged.measurements.length === 0) return h("span");
    const length = (value) => show(value, unit);
    return h(
      "div",
      { class: "judged" },
      h("h2", null, say("wearer.together")),
      judged.extrapolated.length === 0 ? null : h("p", { class: "extrapolated" }, say("wearer.extrapolated", { names: judged.extrapolated.map(bodyName).join(", ") })),
      figuresTable(
        say("wearer.togetherCaption", { unit: say("unit." + unit) }),
        [say("wearer.measure"), say("wearer.hers"), say("wearer.expected")],
        judged.measurements.map((each) => [bodyName(each.dimension), length(each.value), say("wearer.fromTo", { low: length(each.low), high: length(each.high) })]),
      ),
      h("p", { class: "source" }, find("wearer.surveys")[judged.survey]),
    );
  }

  #measures({ sizeRun }) {
    const { specTable } = sizeRun;
    return h(
      "div",
      null,
      h("h2", null, say("wearer.sleeve")),
      figuresTable(
        say("wearer.sleeveCaption", { unit: say("unit." + specTable.unit) }),
        [say("table.measure"), say("wearer.finished")],
        specTable.rows.map((row) => [pointName(row), show(row.rounded[0], specTable.unit)]),
      ),
    );
  }

  #cautions({ sizeRun }) {
    return h("div", { class: "cautions" }, h("h2", null, say("cautions")), h("ul", null, sizeRun.cautions.map(spokenItem)));
  }
}

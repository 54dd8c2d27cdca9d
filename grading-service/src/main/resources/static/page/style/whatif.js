// What-if: the smallest change of the jumps that clears what must not be cut, found by the service and taken over by one press.

import { h } from "../common/dom.js";
import { gradeName } from "../common/names.js";
import { show } from "../common/units.js";
import { count, say } from "../common/words.js";
import { checked } from "./judged.js";

export class WhatIf {
  #flight = new AbortController();
  #asked = "";

  constructor({ store, drafted }) {
    this.store = store;
    this.drafted = drafted;
    this.element = h("div", { class: "what-if", hidden: true });
  }

  /** A run was answered: only one with stops wants a change. */
  async refresh() {
    const { answer } = this.drafted;
    const { materials, ...style } = this.store.style;
    const asked = JSON.stringify(style);
    if (asked === this.#asked) return;
    this.#flight.abort();
    this.#asked = asked;
    this.element.hidden = true;
    this.element.replaceChildren();
    if (!answer.findings.some((finding) => finding.severity === "stop")) return;
    const flight = new AbortController();
    this.#flight = flight;
    try {
      const { whatIf, unit } = await checked(style);
      if (!flight.signal.aborted && whatIf) this.#show(whatIf, unit);
    } catch {
      if (!flight.signal.aborted) this.#asked = "";
    }
  }

  #show({ clears, changes, grade, remaining }, unit) {
    this.element.hidden = false;
    if (changes.length === 0) {
      this.element.append(h("h2", null, say("whatIf.title")), h("p", null, say("whatIf.none")));
      return;
    }
    this.element.append(
      h("h2", null, say("whatIf.title")),
      h("p", null, say(clears ? "whatIf.clears" : "whatIf.eases"), clears || remaining.length === 0 ? "" : " " + count("whatIf.remaining", remaining.length)),
      h(
        "ul",
        null,
        changes.map((each) =>
          h("li", null, h("strong", null, gradeName(each.dimension)), " ", say("whatIf.change", { from: each.from, to: each.to, old: show(each.old, unit), next: show(each.new, unit), unit })),
        ),
      ),
      h(
        "button",
        {
          type: "button",
          class: "main",
          id: "what-if-apply",
          onclick: () => {
            this.store.change("", (style) => (style.grade = grade));
            document.querySelector(".tab-findings")?.focus();
          },
        },
        say("whatIf.apply"),
      ),
      h("p", { class: "how" }, say("whatIf.undo")),
    );
  }
}

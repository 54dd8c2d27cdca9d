// Files to take away, and the style itself: saved, opened, kept, linked.

import { h, quietly } from "../common/dom.js";
import { tableOf } from "../common/bodies.js";
import { versions } from "../common/history.js";
import * as kept from "../common/kept.js";
import { convert, fromMm, parseLength, show, toMm } from "../common/units.js";
import { once, sizeRun } from "../common/service.js";
import { paperOf } from "../common/paper.js";
import { opened } from "./style.js";
import { hand, KINDS, takeRow } from "../common/take.js";
import { count, current, find, say } from "../common/words.js";

const parser = new DOMParser();

/** Those that the first version of the service can make, until its description says more. */
const ALWAYS = new Set(KINDS.filter((kind) => kind !== "application/vnd.hp-hpgl"));

export class Files {
  #rows = new Map();
  #counting = new AbortController();
  #counted = "";

  /** Width of the roll, mm. */
  #roll = 900;

  constructor({ store, linked, replace, fresh, begin, work, resume }) {
    this.work = work;
    this.resume = resume;
    this.store = store;
    this.linked = linked;
    this.replace = replace;
    const option = (words) => Object.entries(words).map(([value, text]) => h("option", { value }, text));
    this.countSoon = quietly(300, () => this.#countPages());
    this.paper = h(
      "select",
      {
        id: "paper",
        onchange: () => {
          this.#showRoll();
          this.#count();
        },
      },
      option(find("file.papers")),
    );
    this.roll = h("input", { id: "roll", type: "text", inputmode: "decimal", class: "jump", oninput: () => this.#typed() });
    this.pages = h("p", { class: "file-pages", role: "status" });
    this.rollTool = h("div", { class: "tool" }, h("label", { for: "roll" }, say("file.rollWidth")), this.roll, (this.rollUnit = h("span", { class: "unit" })));
    this.printed = h(
      "select",
      { id: "printed", onchange: () => this.#count() },
      ["every", "visible", "base"].map((word) => h("option", { value: word }, say("file." + word))),
    );
    this.pictured = h("input", { type: "checkbox", id: "pictured" });
    this.layout = h("select", { id: "layout" }, option(find("file.layouts")));
    this.list = h("ul", { class: "file-list" });
    this.says = h("p", { class: "says", role: "status" });
    this.keptList = h("ul", { class: "kept-list" });
    this.lately = h("div", { class: "lately" });
    this.question = h("div", { class: "question", hidden: true });
    this.history = h("div", { class: "versions", hidden: true });
    addEventListener("storage", () => this.#showKept());
    this.opener = h("input", { type: "file", accept: ".json,application/json", class: "unseen", id: "open-style", "aria-label": say("file.open"), onchange: () => this.open(this.opener.files[0]) });
    const button = (key, click, kind) => h("button", { type: "button", class: kind ?? "", id: key.replace(".", "-"), onclick: click }, say(key));
    this.element = h(
      "section",
      { class: "panel", id: "panel-files", "aria-label": say("files") },
      h("p", { class: "quiet-words" }, say("file.lead")),
      this.list,
      h("h2", null, say("file.style")),
      h("p", { class: "quiet-words" }, say("file.styleLead")),
      h(
        "div",
        { class: "buttons" },
        button("file.save", () => this.#save()),
        button("file.open", () => this.opener.click()),
        this.opener,
        button("file.keep", () => this.#keep()),
        button("file.link", () => this.#link()),
        button("file.print", () => window.print()),
        button("file.begin", begin),
        button("file.fresh", fresh),
      ),
      this.says,
      this.question,
      this.keptList,
      this.history,
      this.lately,
    );
    this.#showRoll();
    this.#showKinds(ALWAYS);
    this.#showKept();
    this.element.addEventListener("dragover", (event) => event.preventDefault());
    this.element.addEventListener("drop", (event) => {
      event.preventDefault();
      if (event.dataTransfer.files[0]) this.open(event.dataTransfer.files[0]);
    });
  }

  /** Called when the files come into view: the description of the service tells what else it can make. */
  shown() {
    this.#showKept();
    this.showHistory();
    this.#count();
    once("v3/api-docs")
      .then((description) => {
        const content = description.paths?.["/v1/size-runs"]?.post?.responses?.["200"]?.content ?? {};
        const offered = new Set(Object.keys(content).map((type) => type.split(";")[0]));
        if (offered.size > 1) this.#showKinds(offered);
      })
      .catch(() => undefined);
  }

  refresh() {
    if (this.store.view.tab === "files") this.#count();
    const { units } = this.store.style;
    if (this.rollUnit.textContent === units) return;
    this.rollUnit.textContent = units;
    this.roll.value = show(fromMm(this.#roll, units), units);
    this.roll.removeAttribute("data-bad");
  }

  /** What is no number goes to the service as it stands, which then says so. */
  #typed() {
    const value = parseLength(this.roll.value, this.store.style.units);
    this.roll.toggleAttribute("data-bad", Number.isNaN(value));
    this.#roll = Number.isNaN(value) ? this.#roll : toMm(value, this.store.style.units);
    this.#count();
  }

  /** Another PDF than the one whose pages were counted has another number, until it is known none. */
  #count() {
    if (JSON.stringify(this.#request("application/pdf")) !== this.#counted) {
      this.pages.textContent = "";
      this.#counted = "";
    }
    this.countSoon();
  }

  /** How many pages the PDF will have, before it is made. */
  async #countPages() {
    this.#counting.abort();
    const flight = new AbortController();
    this.#counting = flight;
    const body = this.#request("application/pdf");
    const asked = JSON.stringify(body);
    if (asked === this.#counted) return;
    try {
      const { paper } = await (await sizeRun(body, "application/json", flight.signal)).json();
      if (flight.signal.aborted) return;
      this.#counted = asked;
      this.pages.textContent = paper ? count("file.pages", paper.pages) : "";
    } catch {
      this.#counted = "";
    }
  }

  #showRoll() {
    this.rollTool.hidden = this.paper.value !== "roll";
  }

  #showKinds(offered) {
    const kinds = KINDS.filter((kind) => offered.has(kind));
    for (const kind of kinds) if (!this.#rows.has(kind)) this.#rows.set(kind, this.#kind(kind));
    for (const kind of KINDS) {
      if (!kinds.includes(kind)) this.#rows.get(kind)?.remove();
      else if (this.#rows.get(kind).parentNode !== this.list) {
        const next = KINDS.slice(KINDS.indexOf(kind) + 1).map((each) => this.#rows.get(each)).find((row) => row?.parentNode === this.list);
        this.list.insertBefore(this.#rows.get(kind), next ?? null);
      }
    }
  }

  #kind(kind) {
    const [name, meaning] = find("file.kinds")[kind];
    const options =
      kind === "application/pdf"
        ? h(
            "div",
            { class: "file-options" },
            h("div", { class: "tool" }, h("label", { for: "paper" }, say("file.paper")), this.paper),
            this.rollTool,
            h("div", { class: "tool" }, h("label", { for: "printed" }, say("file.printed")), this.printed),
            h("div", { class: "switch" }, this.pictured, h("label", { for: "pictured" }, say("file.pictured"))),
            this.pages,
          )
        : kind === "image/vnd.dxf"
          ? h("div", { class: "file-options" }, h("div", { class: "tool" }, h("label", { for: "layout" }, say("file.layout")), this.layout))
          : null;
    return takeRow({
      kind,
      name,
      meaning,
      options,
      main: kind === "application/pdf",
      variant: () => this.#variant(kind),
      fallback: "sleeve." + kind.split("/").pop(),
      path: "v1/size-runs",
      body: (each) => this.#request(each),
      prepared: (each, signal) => this.#pictured(each, signal),
    });
  }

  /** What was chosen beside the button, for the name of the file. */
  #variant(kind) {
    const sizes = this.printed.value === "every" ? "" : "-" + this.printed.value;
    const paper = this.paper.value === "roll" ? `roll-${this.roll.value.replace(/\W+/g, "-")}${this.store.style.units}` : this.paper.value;
    if (kind === "application/pdf") return paper + sizes;
    if (kind === "image/vnd.dxf") return this.layout.value;
    return kind === "application/zip" ? paper + sizes + "-" + this.layout.value : "";
  }

  /** The request for a kind of file: the style, and what was chosen beside its button. */
  #request(kind) {
    const { style, view } = this.store;
    const body = structuredClone(style);
    if (kind === "application/pdf" || kind === "application/zip") {
      body.paper = paperOf(this.paper.value);
      if (this.paper.value === "roll") {
        body.paper.width = this.roll.hasAttribute("data-bad") ? this.roll.value : convert(this.#roll, "mm", style.units);
      }
      if (this.printed.value === "base") body.paper.sizes = [style.baseSize];
      if (this.printed.value === "visible") {
        const seen = style.sizes.filter((size) => !view.hidden.includes(size));
        if (seen.length > 0) body.paper.sizes = seen;
      }
    }
    if (kind === "image/vnd.dxf" || kind === "application/zip") body.layout = this.layout.value;
    return body;
  }

  /** The request with the picture of the worn sleeve, where it was asked for. */
  async #pictured(kind, signal) {
    const body = this.#request(kind);
    if (!this.pictured.checked || !["application/pdf", "application/zip"].includes(kind)) return body;
    const [{ still }, answer, table] = await Promise.all([import("../worn/still.js"), sizeRun({ ...body, paper: undefined, materials: undefined }, "application/json", signal).then((response) => response.json()), tableOf(body).catch(() => null)]);
    const picture = new Uint8Array(await (await still(answer, table, signal)).arrayBuffer());
    let text = "";
    for (const byte of picture) text += String.fromCharCode(byte);
    return { ...body, wornPicture: btoa(text) };
  }

  #fileName() {
    const name = (this.store.style.name ?? "sleeve").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "");
    return (name || "sleeve") + ".json";
  }

  #save() {
    hand(new Blob([JSON.stringify(this.store.style, null, 2) + "\n"], { type: "application/json" }), this.#fileName());
  }

  async open(file) {
    if (!file) return;
    try {
      const body = JSON.parse(await file.text());
      if (typeof body !== "object" || body === null || typeof body.sleeve !== "object" || !Array.isArray(body.sizes)) throw new TypeError();
      this.replace(opened(body));
      this.says.textContent = say("file.opened", { name: file.name });
    } catch {
      this.says.textContent = say("file.unreadable", { name: file.name });
    }
    this.opener.value = "";
  }

  #keep() {
    const name = this.store.style.name ?? say("pieces.base-sleeve");
    const before = kept.styles()[name];
    if (before === undefined || JSON.stringify(before) === JSON.stringify({ ...this.store.style, name })) this.#keepAs(name);
    else this.#ask(name);
  }

  #keepAs(name) {
    this.question.hidden = true;
    const done = kept.keepStyle(name, { ...this.store.style, name });
    this.says.textContent = say(done ? "file.keptNow" : "file.keptNot", { name });
    this.#showKept();
  }

  /** Another style is kept under the name: which of the two is to stay? */
  #ask(name) {
    const taken = kept.styles();
    let number = 2;
    while (taken[`${name} ${number}`] !== undefined) number += 1;
    const other = `${name} ${number}`;
    const button = (id, words, click) => h("button", { type: "button", id, onclick: click }, words);
    this.says.textContent = "";
    this.question.hidden = false;
    this.question.replaceChildren(
      h("p", { role: "alert" }, say("file.taken", { name })),
      h(
        "div",
        { class: "buttons" },
        button("keep-both", say("file.keepAs", { name: other }), () => this.#keepAs(other)),
        button("keep-over", say("file.keepOver", { name }), () => this.#keepAs(name)),
        button("keep-not", say("file.keepNot"), () => (this.question.hidden = true)),
      ),
    );
    this.question.querySelector("button").focus();
  }

  async #link() {
    await this.linked();
    try {
      await navigator.clipboard.writeText(location.href);
      this.says.textContent = say("file.linked");
    } catch {
      this.says.textContent = say("file.linkFailed");
    }
  }

  /** What the style on the bench was like before, with pictures; each can be put back, and that undone. */
  async showHistory() {
    const known = await versions(this.work.id);
    const time = new Intl.DateTimeFormat(current(), { dateStyle: "short", timeStyle: "short" });
    this.history.hidden = known.length === 0;
    this.history.replaceChildren(
      h("h2", null, say("file.history")),
      h("p", { class: "quiet-words" }, say("file.historyLead")),
      h(
        "ol",
        { class: "version-list" },
        known.map(({ at, style, picture }) => {
          const drawn = document.importNode(parser.parseFromString(picture, "text/html").querySelector("svg"), true);
          drawn.removeAttribute("role");
          drawn.removeAttribute("aria-label");
          drawn.setAttribute("aria-hidden", "true");
          drawn.classList.add("small-picture");
          return h("li", null, h("button", { type: "button", class: "version", "aria-label": say("file.putBack", { time: time.format(at) }), onclick: () => this.#putBack(style) }, h("span", { class: "version-picture" }, drawn), h("span", null, time.format(at))));
        }),
      ),
    );
  }

  #putBack(style) {
    this.store.change("", (each) => {
      for (const name of Object.keys(each)) delete each[name];
      Object.assign(each, structuredClone(style));
    });
    this.says.textContent = say("file.isBack");
  }

  /** What was on the bench before, in this tab or another. */
  #showLately() {
    const works = this.work.others();
    const time = new Intl.DateTimeFormat(current(), { dateStyle: "medium", timeStyle: "short" });
    this.lately.hidden = works.length === 0;
    this.lately.replaceChildren(
      h("h2", null, say("file.lately")),
      h("p", { class: "quiet-words" }, say("file.latelyLead")),
      h(
        "ul",
        { class: "lately-list" },
        works.map((work) =>
          h("li", null, h("button", { type: "button", class: "link", onclick: () => this.resume(work) }, work.style.name ?? say("pieces.base-sleeve")), " ", h("span", { class: "quiet-words" }, time.format(work.changed))),
        ),
      ),
    );
  }

  #showKept() {
    this.#showLately();
    const styles = Object.entries(kept.styles());
    this.keptList.hidden = styles.length === 0;
    this.keptList.setAttribute("aria-label", say("file.kept"));
    this.keptList.replaceChildren(
      ...styles.map(([name, style]) =>
        h(
          "li",
          null,
          h("button", { type: "button", class: "link", "aria-label": say("file.openKept", { name }), onclick: () => this.replace(opened(style)) }, name),
          h(
            "button",
            {
              type: "button",
              class: "quiet square",
              "aria-label": say("file.drop", { name }),
              onclick: () => {
                kept.dropStyle(name);
                this.#showKept();
              },
            },
            "×",
          ),
        ),
      ),
    );
  }
}

// The page: puts its parts together and keeps them in step.

import { decode, encode } from "./common/address.js";
import { Cloth } from "./style/cloth.js";
import { h, quietly } from "./common/dom.js";
import { Drawing } from "./drawing/drawing.js";
import { Drafted } from "./style/drafted.js";
import { Files } from "./style/files.js";
import { Findings } from "./style/findings.js";
import { Form } from "./style/form.js";
import { Grade } from "./style/grade.js";
import { keepLanguage, keepState, lastState } from "./common/kept.js";
import { Light } from "./drawing/light.js";
import { guides } from "./drawing/places.js";
import { Problems } from "./style/problems.js";
import { Run } from "./style/run.js";
import { readRanges } from "./common/ranges.js";
import { once } from "./common/service.js";
import { Sewing } from "./style/sewing.js";
import { Spec } from "./style/spec.js";
import { Store } from "./common/store.js";
import { inUnits, opened } from "./style/style.js";
import { Tasks } from "./tasks.js";
import { Tools } from "./drawing/tools.js";
import { UNITS } from "./common/units.js";
import { chooseLanguage, current, LANGUAGES, say, use } from "./common/words.js";

const WIDE = matchMedia("(min-width: 62rem)");
const TABS = ["measures", "spec", "jumps", "findings", "sewing", "cloth", "files"];

/** How long (ms) a mistake may last before it is spoken of. */
const PATIENCE = 350;

const freshView = () => ({ piece: WIDE.matches ? "all" : "overlay-main", hidden: [], without: [], tab: WIDE.matches ? "spec" : "measures", task: "style" });

class Page {
  #written = "";

  constructor(state) {
    this.store = new Store(state.style, { ...freshView(), ...state.view });
    this.drafted = new Drafted();
    this.light = new Light();
    this.light.listen(() => this.#lit());
    this.run = new Run({
      drawing: (svg, since) => this.#drawn(svg, since),
      answer: (answer) => this.#answered(answer),
      problem: (problem) => this.#refused(problem),
      busy: (on) => document.getElementById("page").classList.toggle("busy", on),
    });
    this.store.listen((what) => this.#changed(what));
    this.writeSoon = quietly(400, () => this.#writeAddress());
    addEventListener("hashchange", () => this.#addressed());
    addEventListener("keydown", (event) => this.#key(event));
    WIDE.addEventListener("change", () => this.#showTab());
    this.#build();
    performance.mark("interactive");
  }

  /** Builds everything; again when the language changes. */
  #build() {
    document.title = `Capwright: ${say("title")}`;
    const { store, drafted, light } = this;
    this.problems = new Problems({ goTo: (path) => this.#goTo(path) });
    const complain = (path, text) => this.problems.complain(path, text);
    this.form = new Form({ store, drafted, complain, narrow: () => !WIDE.matches });
    this.drawing = new Drawing({ store, drafted, light });
    this.tools = new Tools(store, this.drawing);
    this.spec = new Spec({ drafted, light });
    this.grade = new Grade(store);
    this.findings = new Findings({ store, drafted, light });
    this.sewing = new Sewing({ store, drafted });
    this.cloth = new Cloth({ store, drafted, complain });
    this.files = new Files({ store, linked: () => this.#writeAddress(), replace: (style) => this.#replace(style), fresh: () => this.#fresh() });
    this.tasks = new Tasks(store);
    this.drawing.element.append(this.problems.element);
    this.status = h("p", { class: "unseen", role: "status" });
    this.tabs = TABS.map((tab) =>
      h("button", { type: "button", class: "tab tab-" + tab, "data-tab": tab, onclick: () => this.store.look((view) => (view.tab = tab)) }, tab === "sewing" || tab === "cloth" ? say(tab + ".name") : say(tab)),
    );
    document.getElementById("page").replaceChildren(
      h("a", { class: "skip", href: "#sheet", onclick: (event) => (event.preventDefault(), this.#skip()) }, say("skip")),
      this.#header(),
      h(
        "main",
        { id: "bench" },
        this.form.element,
        (this.view = h("section", { class: "view", "aria-label": say("drawing.name") }, this.tools.element, this.drawing.element)),
        h("nav", { class: "tabs", "aria-label": say("sections") }, this.tabs),
        h("div", { class: "dock" }, this.spec.element, this.grade.element, this.findings.element, this.sewing.element, this.cloth.element, this.files.element),
      ),
      this.tasks.element,
      this.status,
    );
    this.#refresh();
    this.#showTab();
    this.tasks.refresh();
    this.run.ask(this.store.style);
  }

  /** Past the head of the page, to what is worked on. */
  #skip() {
    document.getElementById(this.tasks.element.hidden ? "sheet" : "desk").focus();
  }

  #header() {
    this.undoButton = h("button", { type: "button", class: "quiet", onclick: () => this.store.undo() }, say("undo"));
    this.redoButton = h("button", { type: "button", class: "quiet", onclick: () => this.store.redo() }, say("redo"));
    this.title = h("p", { class: "style-name" });
    this.unitBoxes = UNITS.map((unit) =>
      h("input", { type: "radio", name: "units", id: "units-" + unit, value: unit, onchange: () => this.store.change("", (style) => inUnits(style, unit)) }),
    );
    const language = h(
      "select",
      {
        id: "language",
        "aria-label": say("language"),
        onchange: () => {
          use(language.value);
          keepLanguage(language.value);
          this.#build();
          document.getElementById("language").focus();
        },
      },
      Object.entries(LANGUAGES).map(([code, words]) => h("option", { value: code, lang: code, selected: code === current() }, words.name)),
    );
    return h(
      "header",
      { class: "top" },
      h("h1", null, "Capwright", h("span", { class: "unseen" }, ": " + say("title"))),
      this.title,
      this.tasks.nav,
      h("div", { class: "history" }, this.undoButton, this.redoButton),
      h(
        "fieldset",
        { class: "alternatives units" },
        h("legend", { class: "unseen" }, say("units")),
        h("div", { class: "pills" }, this.unitBoxes.map((box) => [box, h("label", { for: box.id, "aria-label": say("unit." + box.value) }, box.value)])),
      ),
      language,
    );
  }

  #changed(what) {
    this.writeSoon();
    if (what === "view") {
      this.drawing.look();
      this.tools.refresh();
      this.#showTab();
      this.tasks.refresh();
      return;
    }
    this.run.ask(this.store.style);
    this.#refresh();
  }

  #refresh() {
    const { style } = this.store;
    this.form.refresh();
    this.tools.refresh();
    this.grade.refresh();
    this.cloth.refresh();
    this.files.refresh();
    this.tasks.refresh();
    this.title.textContent = style.name ?? "";
    for (const box of this.unitBoxes) box.checked = box.value === style.units;
    this.undoButton.disabled = !this.store.canUndo;
    this.redoButton.disabled = !this.store.canRedo;
    this.problems.show();
  }

  #drawn(svg, since) {
    clearTimeout(this.later);
    this.problems.found(null);
    this.drawing.element.classList.remove("stale");
    this.drawing.put(svg);
    this.tools.refresh();
    if (!this.drafted.answer) performance.mark("drawn");
    requestAnimationFrame(() => performance.measure("change-on-screen", { start: since, end: performance.now() }));
  }

  #answered(answer) {
    this.drafted.answer = answer;
    this.form.refresh();
    this.spec.refresh();
    this.findings.refresh();
    this.sewing.refresh();
    this.tasks.refresh();
    this.drawing.handles.place();
    this.#shine();
    const tab = this.tabs[TABS.indexOf("findings")];
    tab.replaceChildren(
      say("findings"),
      this.findings.number > 0 ? h("span", { class: "number-badge " + this.findings.gravest }, String(this.findings.number)) : "",
    );
    this.status.textContent = say("drawing.ready");
  }

  /** Said only once typing pauses: a number half typed is no mistake. */
  #refused(problem) {
    this.drawing.element.classList.add("stale");
    clearTimeout(this.later);
    this.later = setTimeout(() => this.problems.found(problem), PATIENCE);
  }

  /** Goes to the field that stands for a place of the style. */
  #goTo(path) {
    if (path.startsWith("/grade")) this.store.look((view) => (view.tab = "jumps"));
    else if (!WIDE.matches) this.store.look((view) => (view.tab = "measures"));
    if (!this.form.goTo(path)) document.getElementById("f" + path.replaceAll("/", "-"))?.focus();
  }

  /** Something else is lit, or nothing any more. */
  #lit() {
    this.#shine();
    this.spec.refresh();
    const { code, sizes } = this.light;
    for (const row of document.querySelectorAll(".jump-row")) row.classList.toggle("lit", sizes.length > 0 && row.dataset.grade === code);
  }

  #shine() {
    const { code, sizes } = this.light;
    const found = code ? guides(code, this.drafted) : [];
    const { view } = this.store;
    if (found.length > 0 && view.piece !== "all" && view.piece !== found[0].piece) {
      this.store.look((each) => (each.piece = found[0].piece));
    }
    this.drawing.shine(found.length > 0 || sizes.length > 0 ? { guides: found, sizes } : null);
  }

  #showTab() {
    const [first, second] = WIDE.matches ? [this.form.element, this.view] : [this.view, this.form.element];
    if (first.nextElementSibling !== second) first.parentNode.insertBefore(first, second);
    // A wide screen shows the measures beside everything else.
    if (WIDE.matches && this.store.view.tab === "measures") this.store.view.tab = "spec";
    const { tab } = this.store.view;
    document.getElementById("page").dataset.tab = tab;
    for (const button of this.tabs) {
      if (button.dataset.tab === tab) button.setAttribute("aria-current", "true");
      else button.removeAttribute("aria-current");
    }
    const turned = tab !== this.tabShown;
    this.tabShown = tab;
    if (turned && tab === "cloth") this.cloth.refresh();
    if (tab === "files") this.files.shown();
  }

  #key(event) {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    document.activeElement?.removeAttribute("data-own");
    if (key === "y" || event.shiftKey) this.store.redo();
    else this.store.undo();
  }

  /** Puts another style in the place of this one; it can be undone. */
  #replace(style) {
    document.activeElement?.removeAttribute("data-own");
    this.store.change("", (each) => {
      for (const name of Object.keys(each)) delete each[name];
      Object.assign(each, style);
    });
    this.store.look((view) => {
      view.hidden = view.hidden.filter((size) => style.sizes.includes(size));
    });
    this.drawing.window.fitted = true;
  }

  async #fresh() {
    this.#replace(opened(await once("examples/choir-gown.json")));
  }

  /** The state into the address and into what the browser keeps. */
  async #writeAddress() {
    const state = { style: this.store.style, view: this.store.view };
    const hash = await encode(state);
    this.#written = "#" + hash;
    history.replaceState(null, "", this.#written);
    keepState(state);
  }

  async #addressed() {
    if (location.hash === this.#written) return;
    const state = await decode(location.hash);
    if (!state) return;
    this.#replace(opened(state.style));
    this.store.look((view) => Object.assign(view, state.view));
  }
}

async function start() {
  chooseLanguage();
  await readRanges();
  const state = (await decode(location.hash)) ?? lastState();
  const style = state?.style ?? (await once("examples/choir-gown.json"));
  new Page({ style: opened(style), view: state?.view ?? {} });
}

start();

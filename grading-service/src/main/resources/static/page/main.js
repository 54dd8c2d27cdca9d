// The page: puts its parts together and keeps them in step.

import { decode, encode, isLink } from "./common/address.js";
import { AsWorn } from "./style/asworn.js";
import { Cloth } from "./style/cloth.js";
import { h, quietly } from "./common/dom.js";
import { Drawing } from "./drawing/drawing.js";
import { Drafted } from "./style/drafted.js";
import { Files } from "./style/files.js";
import { Findings } from "./style/findings.js";
import { Form } from "./style/form.js";
import { Grade } from "./style/grade.js";
import { keepVersion } from "./common/history.js";
import { keepLanguage } from "./common/kept.js";
import { Light } from "./drawing/light.js";
import { guides } from "./drawing/places.js";
import { Panes } from "./common/panes.js";
import { Problems } from "./style/problems.js";
import { Run } from "./style/run.js";
import { readRanges } from "./common/ranges.js";
import { once } from "./common/service.js";
import { Sewing } from "./style/sewing.js";
import { SignIn } from "./common/signin.js";
import { Spec } from "./style/spec.js";
import { Store } from "./common/store.js";
import { inUnits, opened } from "./style/style.js";
import { Tasks } from "./tasks.js";
import { Tools } from "./drawing/tools.js";
import { UNITS } from "./common/units.js";
import { Work, works } from "./common/works.js";
import { worn } from "./style/worn.js";
import { chooseLanguage, current, LANGUAGES, say, use } from "./common/words.js";

const WIDE = matchMedia("(min-width: 62rem)");
const TABS = ["measures", "spec", "jumps", "findings", "sewing", "cloth", "files"];

/** How long (ms) a mistake may last before it is spoken of. */
const PATIENCE = 350;

/** When the first drawing has been there for a while, ms, what the views will want is asked for. */
const AT_LEISURE = 1500;

/** What has stood for so long, ms, becomes a version of the history. */
const SETTLED = 2500;

const freshView = () => ({ piece: WIDE.matches ? "all" : "overlay-main", hidden: [], without: [], tab: WIDE.matches ? "spec" : "measures", task: "style" });

/** What was typed gives way to what the style says. */
function forgetTyped(input) {
  input?.removeAttribute("data-own");
  input?.removeAttribute("data-bad");
}

class Page {
  #written = "";

  /** State to begin with, the work it is kept as, and a word about where it came from: a key of the notices, or "". */
  constructor(state, work, word) {
    this.work = work;
    this.word = word;
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
    this.versionSoon = quietly(SETTLED, (answer) => this.#version(answer));
    work.whenCopied(() => this.#tell("copied"));
    addEventListener("pagehide", () => this.#keep());
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
    this.asWorn?.dispose();
    this.asWorn = new AsWorn({ store, drafted });
    this.spec = new Spec({ drafted, light });
    this.grade = new Grade({ store, complain });
    this.findings = new Findings({ store, drafted, light });
    this.sewing = new Sewing({ store, drafted });
    this.cloth = new Cloth({ store, drafted, complain });
    this.files = new Files({ store, linked: () => this.#writeAddress(), replace: (style) => this.#replace(style), fresh: () => this.#fresh(), begin: () => this.#begin(), work: this.work, resume: (work) => this.#resume(work) });
    this.notice = h("div", { class: "notice", role: "status", hidden: true });
    this.panes = new Panes();
    this.tasks = new Tasks(store, { replace: (style) => this.#replace(style) });
    this.signIn = new SignIn(() => {
      this.run.ask(this.store.style);
      this.tasks.again();
    });
    this.drawing.element.append(this.problems.element);
    this.status = h("p", { class: "unseen", role: "status" });
    this.tabs = TABS.map((tab) =>
      h("button", { type: "button", class: "tab tab-" + tab, "data-tab": tab, onclick: () => this.#turnTo(tab) }, tab === "sewing" || tab === "cloth" ? say(tab + ".name") : say(tab)),
    );
    document.getElementById("page").replaceChildren(
      h("a", { class: "skip", href: "#sheet", onclick: (event) => (event.preventDefault(), this.#skip()) }, say("skip")),
      this.#header(),
      this.signIn.element,
      this.notice,
      h(
        "main",
        { id: "bench" },
        this.form.element,
        this.panes.borders.measures,
        (this.view = h("section", { class: "view", "aria-label": say("drawing.name") }, this.tools.element, this.drawing.element, this.panes.borders.board, this.asWorn.element)),
        this.panes.borders.views,
        h("nav", { class: "tabs", "aria-label": say("sections") }, this.tabs),
        (this.dock = h("div", { class: "dock" }, h("p", { class: "age-words" }, say("outdated")), this.spec.element, this.grade.element, this.findings.element, this.sewing.element, this.cloth.element, this.files.element)),
      ),
      this.tasks.element,
      this.status,
    );
    this.wornShown = false;
    this.#showWorn();
    this.#refresh();
    this.#showTab();
    this.tasks.refresh();
    this.#tell(this.word);
    this.run.ask(this.store.style);
  }

  /** A word above the bench: where the style came from, or that it cannot be kept. */
  #tell(word) {
    this.word = word;
    this.notice.hidden = word === "";
    if (word === "") return;
    const [own] = this.work.others();
    this.notice.replaceChildren(
      h("span", null, say("notices." + word)),
      word === "linked" && own
        ? h("button", { type: "button", class: "link", id: "back-to-own", onclick: () => this.#resume(own) }, say("notices.back", { name: own.style.name ?? say("pieces.base-sleeve") }))
        : "",
      word === "demo" ? h("button", { type: "button", class: "link", id: "begin", onclick: () => this.#begin() }, say("start.open")) : "",
      h("button", { type: "button", class: "quiet square", "aria-label": say("notices.close"), onclick: () => this.#tell("") }, "×"),
    );
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
      h("h1", null, "Capwright", h("span", { class: "unseen" }, say("colon") + say("title"))),
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
      this.signIn.button,
    );
  }

  #changed(what) {
    this.writeSoon();
    if (what === "view") {
      this.#showWorn();
      this.drawing.look();
      this.tools.refresh();
      this.#showTab();
      this.tasks.refresh();
      return;
    }
    this.run.ask(this.store.style);
    this.#refresh();
  }

  #showWorn() {
    const { worn } = this.store.view;
    if (this.view.classList.toggle("with-worn", worn === true) !== this.wornShown) this.asWorn.refresh();
    this.wornShown = worn === true;
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
    this.#age("behind");
    this.drawing.element.classList.remove("stale");
    this.drawing.put(svg);
    this.tools.refresh();
    if (!this.drafted.answer) {
      performance.mark("drawn");
      setTimeout(() => this.grade.foresee(), AT_LEISURE);
      this.tasks.fetchSoon();
    }
    requestAnimationFrame(() => performance.measure("change-on-screen", { start: since, end: performance.now() }));
  }

  /** Keeps what stands on the bench as a version, with the picture of how it is worn. */
  async #version(answer) {
    const { style } = this.store;
    this.#keep();
    if (!this.work.changed) return;
    const base = answer.sizes.find((size) => size.label === answer.baseSize);
    await keepVersion(this.work.id, style, worn(answer, base, style, say).outerHTML);
    this.files.showHistory();
  }

  #answered(answer) {
    this.drafted.answer = answer;
    this.versionSoon(answer);
    this.#age("");
    this.form.refresh();
    this.spec.answered();
    this.findings.refresh();
    this.sewing.refresh();
    this.asWorn.refresh();
    this.grade.judge();
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

  /** How old the figures beside the drawing are: "behind" while those of the new drawing are on their way, "outdated" while what is entered makes no sleeve. */
  #age(age) {
    document.getElementById("page").dataset.age = age;
    this.dock.setAttribute("aria-busy", String(age === "behind"));
  }

  /** Said only once typing pauses: a number half typed is no mistake. */
  #refused(problem) {
    this.drawing.element.classList.add("stale");
    if (this.drafted.answer) this.#age("outdated");
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

  #turnTo(tab) {
    this.store.look((view) => (view.tab = tab));
    if (WIDE.matches) return;
    // On a small screen, or a page that is magnified, the view may lie below what is seen.
    const shown = tab === "measures" ? this.form.element : this.dock;
    const { top } = shown.getBoundingClientRect();
    if (top < 0 || top > 0.6 * innerHeight) shown.scrollIntoView({ block: "start" });
  }

  #showTab() {
    const [first, second] = WIDE.matches ? [this.form.element, this.view] : [this.view, this.form.element];
    if (first.compareDocumentPosition(second) & Node.DOCUMENT_POSITION_PRECEDING) first.parentNode.insertBefore(first, second);
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
    if (turned && tab === "cloth") this.cloth.turnedTo();
    if (tab === "files") this.files.shown();
    if (turned) this.grade.judgeNow();
  }

  #key(event) {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    forgetTyped(document.activeElement);
    if (key === "y" || event.shiftKey) this.store.redo();
    else this.store.undo();
  }

  /** Puts another style on the bench, as a work of its own: what was there stays among the works of this browser. It can be undone. */
  #replace(style) {
    this.#keep();
    this.work.begin(style);
    this.store.look((view) => delete view.shelf);
    this.#put(style);
  }

  /** Goes on with a work that this browser has kept. */
  async #resume(work) {
    this.#keep();
    const own = await this.work.resume(work);
    this.#tell(own ? "" : "copy");
    this.#put(opened(work.style));
    this.store.look((view) => Object.assign(view, work.view));
  }

  #put(style) {
    document.querySelectorAll("#bench [data-own]").forEach(forgetTyped);
    this.store.change("", (each) => {
      for (const name of Object.keys(each)) delete each[name];
      Object.assign(each, style);
    });
    this.store.look((view) => {
      view.hidden = view.hidden.filter((size) => style.sizes.includes(size));
      view.aside = {};
    });
    this.drawing.window.fitted = true;
  }

  /** A style of one's own, from a few questions. */
  async #begin() {
    const [{ Start }, { bare }] = await Promise.all([import("./start/start.js"), import("./start/composed.js")]);
    new Start({
      units: this.store.style.units,
      take: (style) => {
        this.#replace(opened(style));
        this.store.look((view) => Object.assign(view, { task: "style", piece: WIDE.matches ? "all" : view.piece, hidden: [] }));
        this.#tell("");
      },
      demo: () => this.#fresh(),
      empty: () => {
        this.#replace(opened(bare(this.store.style.units)));
        this.store.look((view) => Object.assign(view, { task: "style", piece: "all", hidden: [] }));
        this.#tell("");
      },
    }).open();
  }

  async #fresh() {
    this.#replace(opened(await once("examples/choir-gown.json")));
  }

  /** The state into the address and into what the browser keeps. */
  async #writeAddress() {
    this.#keep();
    const hash = await encode({ style: this.store.style, view: this.store.view });
    this.#written = "#" + hash;
    history.replaceState(null, "", this.#written);
  }

  #keep() {
    const kept = this.work.keep({ style: this.store.style, view: this.store.view });
    if (!kept && this.word !== "refused") this.#tell("refused");
    if (kept && this.word === "refused") this.#tell("");
  }

  async #addressed() {
    if (location.hash === this.#written) return;
    const state = await decode(location.hash);
    if (!state) return void (isLink(location.hash) && this.#tell("damaged"));
    this.#replace(opened(state.style));
    this.store.look((view) => Object.assign(view, state.view));
    this.#tell(this.work.others().length > 0 ? "linked" : "");
  }
}

const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);

/** What to open: the style of a link beside one's own, what this tab had before, the latest work, or else the demo. */
async function begun(work) {
  const linked = await decode(location.hash);
  const damaged = isLink(location.hash) && !linked ? "damaged" : "";
  const before = Work.ofThisTab();
  if (before && (!linked || same(linked.style, before.style))) {
    const own = await work.resume(before);
    return [{ ...before, ...linked }, damaged || (own ? "" : "copy")];
  }
  const [latest] = works();
  if (!linked && latest) {
    const own = await work.resume(latest);
    return [latest, damaged || (own ? "" : "copy")];
  }
  const state = linked ?? { style: await once("examples/choir-gown.json") };
  const style = opened(state.style);
  work.begin(style);
  return [{ ...state, style }, linked ? (latest ? "linked" : "") : damaged || "demo"];
}

async function start() {
  chooseLanguage();
  await readRanges();
  const work = new Work();
  const [state, word] = await begun(work);
  new Page({ style: opened(state.style), view: state.view ?? {} }, work, word);
}

start();

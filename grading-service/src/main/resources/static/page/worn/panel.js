// The sleeve as it is worn: asked for in a worker, drawn as it settles, and what can be said of it.

import { tableOf } from "../common/bodies.js";
import { h } from "../common/dom.js";
import { fromMm, number, parse, show } from "../common/units.js";
import { find, say } from "../common/words.js";
import { Camera } from "./camera.js";
import { figuresOf } from "./figures.js";
import { Painted } from "./painted.js";
import { Solid } from "./solid.js";
import { PRESETS, RANGE } from "./stuffs.js";

const INPUTS = ["cloth", "interfacing"];

/** The drawing by the graphics card, or painted where the browser lends none. */
function drawer(id) {
  const canvas = () => h("canvas", { class: "worn3d-canvas", id: id + "-canvas", tabindex: "0", role: "img", "aria-label": say("worn3d.picture"), "aria-describedby": id + "-keys" });
  let own = canvas();
  try {
    return { canvas: own, draws: new Solid(own), kind: "solid" };
  } catch {
    // A canvas that was asked for one kind of drawing gives no other.
    own = canvas();
    return { canvas: own, draws: new Painted(own), kind: "painted" };
  }
}

/** The arm of a size: that of the table which the style names, or what the sleeve lets suppose. */
async function armOfSize(size, unit, style) {
  const table = await tableOf(style).catch(() => null);
  const { figures, measured } = figuresOf(size, unit, table);
  return { figures, words: say(measured ? "worn3d.armTable" : "worn3d.armSleeve", { table: table?.info.title ?? "" }) };
}

export class Panel {
  #id = 0;
  #asked = "";
  #ready = false;

  /** arm tells whose arm it is on: {figures in metres, words}; id sets the ids of its inputs apart from those of another view. */
  constructor({ store, drafted, arm = armOfSize, id = "worn3d" }) {
    this.store = store;
    this.drafted = drafted;
    this.armOf = arm;
    this.lengths = { ...PRESETS.firm };
    this.size = h("select", { id: id + "-size", onchange: () => this.refresh() });
    this.preset = h(
      "select",
      { id: id + "-preset", onchange: () => this.#choose() },
      [...Object.keys(PRESETS), "own"].map((name) => h("option", { value: name, selected: name === "firm" }, find("worn3d.presets")[name])),
    );
    this.inputs = INPUTS.map((name) => h("input", { type: "text", inputmode: "decimal", autocomplete: "off", id: `${id}-${name}`, "aria-describedby": id + "-error", oninput: () => this.#typed() }));
    this.error = h("p", { class: "error", id: id + "-error", role: "status" });
    this.says = h("p", { class: "worn3d-says", role: "status" });
    const { canvas, draws, kind } = drawer(id);
    Object.assign(this, { canvas, draws });
    canvas.dataset.kind = kind;
    this.camera = new Camera(() => this.#draw());
    this.camera.attend(canvas);
    const turn = (key, sign, around) => h("button", { type: "button", class: "quiet square", "aria-label": say(key), title: say(key), onclick: () => this.camera.turn(around, 0) }, sign);
    this.element = h(
      "div",
      { class: "worn3d-inner" },
      h(
        "div",
        { class: "worn3d-stage" },
        canvas,
        h("div", { class: "worn3d-turn" }, turn("worn3d.left", "↺", -0.3), turn("worn3d.right", "↻", 0.3), h("button", { type: "button", class: "quiet", onclick: () => this.camera.reset() }, say("worn3d.reset"))),
        h("p", { class: "unseen", id: id + "-keys" }, say("worn3d.keys")),
      ),
      h(
        "div",
        { class: "worn3d-side" },
        (this.sizeTool = h("div", { class: "tool" }, h("label", { for: id + "-size" }, say("worn3d.size")), this.size)),
        h("div", { class: "tool" }, h("label", { for: id + "-preset" }, say("worn3d.stuff")), this.preset),
        INPUTS.map((name, i) => h("div", { class: "tool" }, h("label", { for: `${id}-${name}` }, say("worn3d." + name) + ", cm"), this.inputs[i])),
        this.error,
        this.says,
        h("details", { class: "worn3d-about" }, h("summary", null, say("worn3d.about")), h("p", { id: id + "-lead" }, say("worn3d.lead")), h("p", null, say("worn3d.leaves")), (this.arm = h("p"))),
      ),
    );
    this.worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
    this.worker.onmessage = ({ data }) => this.#told(data);
    new ResizeObserver(() => this.#draw()).observe(canvas);
    this.#write();
  }

  /** Asks anew if the sleeve, the size or the cloth is another than before. */
  async refresh() {
    const { answer } = this.drafted;
    if (!answer) return;
    const labels = answer.sizes.map((size) => size.label);
    if ([...this.size.options].map((option) => option.value).join("\n") !== labels.join("\n")) {
      const before = this.size.value;
      this.size.replaceChildren(...labels.map((label) => h("option", { value: label }, label)));
      this.size.value = labels.includes(before) ? before : answer.baseSize;
      this.sizeTool.hidden = labels.length < 2;
    }
    const size = answer.sizes.find((each) => each.label === this.size.value);
    const { figures, words } = await this.armOf(size, answer.unit, this.store.style);
    this.arm.textContent = words;
    const { pieces, dimensions, pleats } = size;
    const asked = JSON.stringify([pieces, dimensions, pleats, answer.unit, figures, this.lengths]);
    if (asked === this.#asked) return;
    this.#asked = asked;
    this.#id += 1;
    this.element.dataset.state = "settling";
    this.says.textContent = say("worn3d.settling");
    this.worker.postMessage({ id: this.#id, size: { pieces, dimensions, pleats }, unit: answer.unit, figures, lengths: this.lengths });
  }

  #told({ id, surfaces, body, position, done, failed, took, measured, seams }) {
    if (id !== this.#id) return;
    if (failed) {
      this.element.dataset.state = "failed";
      this.says.textContent = say("worn3d.failed");
      return;
    }
    if (surfaces) {
      this.draws.show({ surfaces, body, position });
      this.#ready = true;
    } else this.draws.move(position);
    this.#draw();
    if (!done) return;
    this.element.dataset.state = "settled";
    this.element.dataset.took = String(Math.round(took));
    this.element.dataset.seams = JSON.stringify(seams);
    const { units } = this.store.style;
    const write = (metres) => `${show(fromMm(Math.round(metres * 1000), units), units)} ${units}`;
    this.element.dataset.top = measured ? String(measured.top) : "";
    this.says.textContent = measured ? say("worn3d.measured", { top: write(Math.max(0, measured.top)), out: write(measured.out), low: write(-measured.low) }) : say("worn3d.settled");
  }

  #draw() {
    const { clientWidth, clientHeight } = this.canvas;
    if (this.#ready && clientWidth > 0 && clientHeight > 0) this.draws.draw(this.camera.stand, clientWidth, clientHeight);
  }

  #choose() {
    if (this.preset.value in PRESETS) this.lengths = { ...PRESETS[this.preset.value] };
    this.#write();
    this.refresh();
  }

  #write() {
    this.inputs.forEach((input, i) => (input.value = number(this.lengths[INPUTS[i]])));
    this.error.textContent = "";
  }

  #typed() {
    const values = this.inputs.map((input) => parse(input.value));
    const wrong = values.findIndex((value) => !(value >= RANGE.least && value <= RANGE.greatest));
    this.inputs.forEach((input, i) => input.toggleAttribute("data-bad", i === wrong));
    this.error.textContent = wrong < 0 ? "" : say("worn3d.range", { name: say("worn3d." + INPUTS[wrong]), value: this.inputs[wrong].value, least: number(RANGE.least), greatest: number(RANGE.greatest) });
    if (wrong >= 0) return;
    this.preset.value = "own";
    this.lengths = Object.fromEntries(INPUTS.map((name, i) => [name, values[i]]));
    this.refresh();
  }

  dispose() {
    this.worker.terminate();
    this.draws.dispose();
  }
}

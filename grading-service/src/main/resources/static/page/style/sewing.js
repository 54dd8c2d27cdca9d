// The sewing room's view: how the pleats lie when they are folded, what is cut, which seams meet, and in which order it is sewn.

import { h, s } from "../common/dom.js";
import { figuresTable } from "../common/figurestable.js";
import { spokenItem } from "../common/spoken.js";
import { number, show } from "../common/units.js";
import { find, say } from "../common/words.js";
import { worn } from "./worn.js";

const WIDTH = 640;
const LAYER = 9;
const TOP = 34;

/**
 * The pleated edge seen end on, folded: the cloth runs from the front end, goes under at each crease, and comes out again. Layers are drawn apart so that they
 * can be counted.
 */
function folded(pleats, unit) {
  const scale = (WIDTH - 40) / pleats.span;
  const x = (length) => 20 + length * scale;
  const bend = 3;
  const folds = [...pleats.folds].sort((a, b) => a.finished - b.finished);
  let path = `M${x(0)} ${TOP}`;
  for (const fold of folds) {
    const crease = x(fold.finished);
    const under = x(fold.finished + (fold.lie === "back" ? -fold.depth : fold.depth));
    const [middle, low] = [TOP + LAYER, TOP + 2 * LAYER];
    const out = fold.lie === "back" ? bend : -bend;
    path +=
      fold.lie === "back"
        ? `H${crease}q${out} 0 ${out} ${LAYER / 2}T${crease} ${middle}H${under}q${-out} 0 ${-out} ${LAYER / 2}T${under} ${low}H${crease}L${crease + 8} ${TOP}`
        : `H${crease - 8}L${crease} ${low}H${under}q${-out} 0 ${-out} ${-LAYER / 2}T${under} ${middle}H${crease}q${out} 0 ${out} ${-LAYER / 2}T${crease} ${TOP}`;
  }
  path += `H${x(pleats.span)}`;
  const tick = (length) => [
    s("path", { class: "tick", d: `M${x(length)} ${TOP - 6}v-6` }),
    s("text", { x: x(length), y: TOP - 16, "text-anchor": "middle" }, show(length, unit)),
  ];
  const foot = TOP + 2 * LAYER + 22;
  return s(
    "svg",
    {
      viewBox: `0 0 ${WIDTH} ${foot + 8}`,
      role: "img",
      "aria-label": say("sewing.picture", { count: pleats.count, span: show(pleats.span, unit), unit }),
    },
    s("path", { class: "seam", d: `M${x(0)} ${TOP + 2 * LAYER + 6}H${x(pleats.span)}` }),
    s("path", { class: "folded", d: path }),
    folds.map((fold) => tick(fold.finished)),
    s("text", { x: x(0), y: foot }, say("sewing.front")),
    s("text", { x: WIDTH / 2, y: foot, "text-anchor": "middle" }, `${show(pleats.span, unit)} ${unit}`),
    s("text", { x: x(pleats.span), y: foot, "text-anchor": "end" }, say("sewing.back")),
  );
}

export class Sewing {
  constructor({ store, drafted }) {
    this.store = store;
    this.drafted = drafted;
    this.element = h("section", { class: "panel", id: "panel-sewing", "aria-label": say("sewing.name") });
  }

  refresh() {
    const { answer, base } = this.drafted;
    if (!base) return;
    const { unit } = answer;
    const length = (value) => `${show(value, unit)}`;
    const { workroom } = answer;
    this.element.replaceChildren(
      h("h2", null, say("worn.title", { size: base.label })),
      h("figure", { class: "worn-view" }, worn(answer, base, this.store.style, say), h("figcaption", null, say("worn.lead"))),
      ...(base.pleats
        ? [
            h("h2", null, say("sewing.pleats", { size: base.label })),
            h("div", { class: "folded-view", tabindex: "0", role: "group", "aria-label": say("sewing.pleats", { size: base.label }) }, folded(base.pleats, unit)),
            h(
              "details",
              null,
              h("summary", null, say("sewing.marks", { unit })),
              figuresTable(
                say("sewing.marks", { unit }),
                [say("sewing.pleat"), say("sewing.fold"), say("sewing.placement"), say("sewing.finished"), say("sewing.depth"), say("sewing.lies")],
                base.pleats.folds.map((fold, i) => [
                  String(i + 1),
                  length(fold.foldMark),
                  length(fold.placementMark),
                  length(fold.finished),
                  length(fold.depth),
                  find("choices")[fold.lie],
                ]),
              ),
            ),
          ]
        : []),
      h("h2", null, say("sewing.cut")),
      figuresTable(
        say("sewing.cutCaption", { size: base.label, unit }),
        [say("drawing.piece"), say("sewing.count"), say("sewing.laying"), say("sewing.material"), say("sewing.area")],
        workroom.cuttingList
          .filter((row) => row.size === base.label)
          .map((row) => [
            find("pieces")[row.piece] ?? row.piece,
            String(row.count),
            find("sewing.layings")[row.laying] ?? row.laying,
            find("sewing.materials")[row.material] ?? row.material,
            number(row.area, unit === "mm" ? 0 : 1),
          ]),
      ),
      h("h2", null, say("sewing.seams")),
      figuresTable(
        say("sewing.seamsCaption", { size: base.label, unit }),
        [say("sewing.seam"), say("sewing.first"), say("sewing.second"), say("sewing.ease"), say("sewing.meets")],
        workroom.seams
          .filter((seam) => seam.size === base.label)
          .map((seam) => [
            seam.name,
            length(seam.firstLength),
            length(seam.secondLength),
            length(seam.ease),
            seam.matches ? say("sewing.yes") : say("sewing.no", { mismatch: show(seam.mismatch, unit) }),
          ]),
      ),
      h("h2", null, say("sewing.order")),
      h("ol", { class: "order" }, workroom.sewingOrder.map(spokenItem)),
    );
  }
}

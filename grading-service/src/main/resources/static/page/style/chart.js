// Jumps of the sleeve beside growth of the body, interval by interval.

import { h, s } from "../common/dom.js";
import { show, signed } from "../common/units.js";
import { say } from "../common/words.js";

const HEIGHT = 120;
const STRIDE = 64;

export function jumpChart(style, name, sleeve, body) {
  const most = Math.max(...sleeve, ...body, 0.0001);
  const least = Math.min(...sleeve, ...body, 0);
  const y = (value) => 18 + ((most - value) / (most - least)) * HEIGHT;
  const zero = y(0);
  const width = STRIDE * sleeve.length + 8;
  const interval = (i) => `${style.sizes[i]}–${style.sizes[i + 1]}`;
  const words = sleeve
    .map((jump, i) =>
      say("grade.chartPart", { interval: interval(i), jump: signed(jump, style.units), body: signed(body[i], style.units) }),
    )
    .join(say("semicolon"));
  const bar = (i, value, place, kind) =>
    s("rect", {
      class: kind,
      x: 8 + i * STRIDE + place,
      y: Math.min(y(value), zero),
      width: 20,
      height: Math.max(1, Math.abs(y(value) - zero)),
      rx: 2,
    });
  const label = (i, value, place) =>
    s("text", { x: 18 + i * STRIDE + place, y: Math.min(y(value), zero) - 4, "text-anchor": "middle" }, show(value, style.units));
  return h(
    "figure",
    { class: "chart" },
    s(
      "svg",
      {
        viewBox: `0 0 ${width} ${HEIGHT + 40}`,
        width,
        height: HEIGHT + 40,
        role: "img",
        "aria-label": say("grade.chartText", { name, list: words }),
      },
      sleeve.map((jump, i) => [
        bar(i, jump, 2, "sleeve-bar"),
        bar(i, body[i], 26, "body-bar"),
        label(i, jump, 2),
        label(i, body[i], 26),
        s("text", { class: "interval", x: 32 + i * STRIDE, y: HEIGHT + 34, "text-anchor": "middle" }, interval(i)),
      ]),
      s("path", { class: "zero", d: `M0 ${zero}H${width}` }),
    ),
    h(
      "figcaption",
      null,
      h("span", { class: "swatch sleeve-bar" }),
      say("grade.sleeve"),
      h("span", { class: "swatch body-bar" }),
      say("grade.bodyGrowth"),
      " · ",
      say("grade.chart"),
    ),
  );
}

// How it is worn: arm, under-sleeve and overlay seen from the outer side, front at the left, in the proportions of the style. A sketch of ours, not a draft: the
// armhole is taken as an ellipse, girths as circles, and the raised top as standing out by a share of its rise.

import { s } from "../common/dom.js";
import { show, toMm } from "../common/units.js";

/** Width to height of an armhole seen from the side; for this ratio the girth of the ellipse is 5.38 times half its height (Ramanujan 1914). */
const OVAL = 0.7;
const GIRTH_BY_HALF = 5.38;

/** Shares of the rise by which the top stands above the shoulder, and out to front and back. */
const UP = 0.3;
const OUT = 0.42;

const MARGIN = 46;

/** Step along the armhole, radians. */
const ANGLE = 0.01;

/** The join that most overlays have, to which the shape of the crown is drawn. */
const USUAL_JOIN = 0.75;

const across = (girth) => girth / Math.PI / 2;

/** Everything in millimetres, y down from the shoulder point. */
function shape(answer, size) {
  const of = (name, otherwise = 0) => (size.dimensions[name] === undefined ? otherwise : toMm(size.dimensions[name], answer.unit));
  const armhole = of("armhole", 430);
  const half = armhole / GIRTH_BY_HALF;
  const bicep = of("bicep", 0.8 * armhole);
  const length = of("length", 600);
  const underarm = 2 * half;
  const has = (id) => size.pieces.some((piece) => piece.id === id);
  return {
    half,
    wide: OVAL * half,
    underarm,
    bicep: across(bicep),
    elbowAt: underarm + of("elbowLevel", (length - underarm) * 0.48),
    elbow: across(of("elbow", 0.8 * bicep)),
    wrist: across(of("wrist", 0.6 * bicep)),
    length,
    sleeve: has("under-sleeve"),
    cap: has("base-sleeve"),
    overlay: has("overlay-main") && {
      rise: of("rise"),
      gaps: [of("frontGap"), of("backGap")],
      length: of("overlayLength", 300),
      side: across(bicep + 2 * of("extraWidth")) * 1.14,
      depth: of("sideDepth"),
      bow: of("hemSagitta"),
    },
  };
}

/** The arm, a little bent to the front as arms hang. */
function arm({ half, wide, underarm, bicep, elbowAt, elbow, wrist, length }) {
  const bend = -0.015 * length;
  const hand = -0.085 * length;
  const third = (from, to) => from + (to - from) / 3;
  const edge = (side) =>
    `C${side * wide} ${1.5 * half} ${side * bicep} ${underarm} ${side * bicep + bend / 3} ${third(underarm, elbowAt)}` +
    `S${side * elbow + bend} ${elbowAt - 20} ${side * elbow + bend} ${elbowAt}S${side * wrist + hand} ${length - 60} ${side * wrist + hand} ${length}`;
  const top = `C${-wide} ${0.3 * half} ${-0.6 * wide} 0 0 0S${wide} ${0.3 * half} ${wide} ${half}`;
  return {
    whole: `M${-wide} ${half}${top}${edge(1)}` + `L${-wrist + hand} ${length}` + reversed(-1, { wide, half, bicep, underarm, bend, elbow, elbowAt, wrist, hand, length, third }),
    hem: `M${-wrist + hand} ${length}Q${hand} ${length + 9} ${wrist + hand} ${length}`,
    hand:
      `M${hand - 0.8 * wrist} ${length}C${hand - 1.1 * wrist} ${length + 20} ${hand - 1.5 * wrist} ${length + 30} ${hand - 1.35 * wrist} ${length + 46}` +
      `S${hand - 0.9 * wrist} ${length + 52} ${hand - 0.8 * wrist} ${length + 40}C${hand - wrist} ${length + 66} ${hand - 0.7 * wrist} ${length + 82} ${hand - 0.2 * wrist} ${length + 82}` +
      `S${hand + 0.95 * wrist} ${length + 50} ${hand + 0.8 * wrist} ${length}Z`,
  };
}

function reversed(side, { wide, half, bicep, underarm, bend, elbow, elbowAt, wrist, hand, length, third }) {
  const upper = third(underarm, elbowAt);
  return (
    `C${side * wrist + hand} ${length - 60} ${side * elbow + bend} ${elbowAt + 20} ${side * elbow + bend} ${elbowAt}` +
    `S${2 * (side * bicep + bend / 3) - side * bicep} ${2 * upper - underarm} ${side * bicep + bend / 3} ${upper}` +
    `C${side * bicep} ${underarm} ${side * wide} ${1.5 * half} ${side * wide} ${half}Z`
  );
}

/** A cubic as points. */
function sampled([a, b, c, d], steps = 24) {
  return Array.from({ length: steps + 1 }, (nothing, i) => {
    const t = i / steps;
    const u = 1 - t;
    return [0, 1].map((k) => u * u * u * a[k] + 3 * u * u * t * b[k] + 3 * u * t * t * c[k] + t * t * t * d[k]);
  });
}

/** Where the seam of the overlay ends on one half of the armhole, a gap above the underarm point: out from the middle, and down from the shoulder point. */
function seamEnd(half, wide, gap) {
  let gone = 0;
  let [x, y] = [0, 2 * half];
  for (let angle = ANGLE; gone < gap && angle < Math.PI; angle += ANGLE) {
    const next = [wide * Math.sin(angle), half * (1 + Math.cos(angle))];
    gone += Math.hypot(next[0] - x, next[1] - y);
    [x, y] = next;
  }
  return { x, y };
}

/** The point at a share of the length of a line. */
function at(points, share) {
  const lengths = points.map((point, i) => (i === 0 ? 0 : Math.hypot(point[0] - points[i - 1][0], point[1] - points[i - 1][1])));
  let rest = share * lengths.reduce((sum, each) => sum + each, 0);
  for (let i = 1; i < points.length; i++) {
    if (rest <= lengths[i] || i === points.length - 1) {
      const t = lengths[i] === 0 ? 0 : Math.min(1, rest / lengths[i]);
      return [0, 1].map((k) => points[i - 1][k] + t * (points[i][k] - points[i - 1][k]));
    }
    rest -= lengths[i];
  }
  return points[0];
}

/** One side of the overlay from its top to its hem point. The cloth stands out as far down as the raised line reaches, and hangs from the end of its seam. */
function overlaySide({ half, wide, overlay: { rise, length, side, depth, bow } }, hemKind, join, end) {
  const top = -UP * rise;
  const out = Math.max(wide + OUT * rise, side * 0.9);
  const corner = end.y + depth;
  const level = Math.min((half * join) / USUAL_JOIN, 0.8 * end.y);
  const crown = [[0, top], [0.62 * out, top], [out, 0.25 * level], [out, level]];
  const edge = Math.max(side, 1.05 * end.x);
  const fall = `C${out} ${level + 0.5 * (end.y - level)} ${edge} ${level + 0.75 * (end.y - level)} ${edge} ${end.y}V${corner}`;
  const middle = [edge / 2, (corner + length) / 2];
  const along = Math.hypot(edge, length - corner) || 1;
  const pull = [middle[0] + (2 * bow * (length - corner)) / along, middle[1] + (2 * bow * edge) / along];
  const hem = hemKind === "level" ? `V${length}H0` : hemKind === "bowed" ? `Q${pull[0]} ${pull[1]} 0 ${length}` : `L0 ${length}`;
  return { path: `M0 ${top}C${crown.slice(1).map((point) => point.join(" ")).join(" ")}${fall}${hem}`, crown: sampled(crown), top, out: Math.max(out, edge) };
}

function overlay(drawn, hemKind, join, pleats) {
  const { half, wide, overlay: { length, gaps } } = drawn;
  const [front, back] = gaps.map((gap) => overlaySide(drawn, hemKind, join, seamEnd(half, wide, gap)));
  const over = [...front.crown.map(([x, y]) => [-x, y]).reverse(), ...back.crown.slice(1)];
  const folds = (pleats?.folds ?? []).map(({ finished }) => {
    const [x, y] = at(over, finished / pleats.span);
    const outer = Math.abs((2 * finished) / pleats.span - 1) ** 2;
    const drop = (0.55 - 0.33 * outer) * (length - y);
    return `M${x} ${y}Q${0.94 * x} ${y + 0.5 * drop} ${(0.45 + 0.27 * outer) * x} ${y + drop}`;
  });
  return { front: front.path, back: back.path, folds, top: front.top, out: Math.max(front.out, back.out) };
}

/** A cap without a sleeve below it ends at the underarm. */
const bareCap = ({ half, wide, underarm, bicep }) =>
  `M${-bicep} ${underarm}C${-bicep} ${1.8 * half} ${-wide} ${1.5 * half} ${-wide} ${half}C${-wide} ${0.3 * half} ${-0.6 * wide} 0 0 0S${wide} ${0.3 * half} ${wide} ${half}` +
  `C${wide} ${1.5 * half} ${bicep} ${1.8 * half} ${bicep} ${underarm}Z`;

/** The trunk behind the arm, chest at the left; it only tells where one looks. */
const trunk = (wide, half) =>
  `M${-0.8 * wide} ${-0.5 * half}C${-1.1 * wide} ${0.2 * half} ${-2.5 * wide} ${0.7 * half} ${-2.45 * wide} ${1.7 * half}S${-1.7 * wide} ${3 * half} ${-1.75 * wide} ${5 * half}` +
  `H${1.9 * wide}C${1.9 * wide} ${4.4 * half} ${1.5 * wide} ${3.9 * half} ${1.6 * wide} ${3.4 * half}S${2.3 * wide} ${0.9 * half} ${2.1 * wide} ${0.4 * half}S${1 * wide} ${-0.2 * half} ${0.75 * wide} ${-0.6 * half}Z`;

/** A length beside the sketch: a line with ends, and what it measures. */
function measure(x, from, to, words) {
  const anchor = x > 0 ? "start" : "end";
  return [
    s("path", { class: "worn-measure", d: `M${x} ${from}V${to}M${x - 5} ${from}h10M${x - 5} ${to}h10` }),
    s("text", { x: x + (x > 0 ? 9 : -9), y: (from + to) / 2, "text-anchor": anchor, "dominant-baseline": "middle" }, words),
  ];
}

/** The sketch of a size of an answer, in the words of whoever asks. */
export function worn(answer, size, style, say) {
  const drawn = shape(answer, size);
  const { half, wide, length } = drawn;
  const limb = arm(drawn);
  const over = drawn.overlay && overlay(drawn, style.overlay?.hem ?? "vee", style.overlay?.join ?? USUAL_JOIN, size.pleats);
  const written = (name) => `${show(size.dimensions[name], answer.unit)} ${answer.unit}`;
  const reach = Math.max(over?.out ?? 0, 2.5 * wide);
  const top = Math.min(over?.top ?? 0, 0) - 34;
  const bottom = length + 92;
  const left = -reach - MARGIN - 82;
  const width = 2 * (reach + MARGIN + 82);
  return s(
    "svg",
    {
      class: "worn",
      viewBox: `${left} ${top} ${width} ${bottom - top}`,
      role: "img",
      "aria-label": say(drawn.overlay ? "worn.picture" : "worn.pictureBare", { size: size.label }),
    },
    s("path", { class: "worn-body", d: trunk(wide, half) }),
    drawn.sleeve ? null : s("path", { class: "worn-skin", d: limb.whole }),
    s("path", { class: "worn-skin", d: limb.hand }),
    drawn.sleeve ? [s("path", { class: "worn-sleeve", d: limb.whole }), s("path", { class: "worn-line", d: limb.hem })] : null,
    drawn.cap ? s("path", { class: "worn-sleeve", d: bareCap(drawn) }) : null,
    over
      ? [
          s("g", { class: "worn-overlay" }, s("path", { d: over.back }), s("path", { d: over.front, transform: "scale(-1 1)" })),
          over.folds.map((d) => s("path", { class: "worn-fold", d })),
        ]
      : s("ellipse", { class: "worn-line", cx: 0, cy: half, rx: wide, ry: half }),
    over ? measure(reach + 26, 0, drawn.overlay.length, "") : null,
    over
      ? s("text", { x: reach + 36, y: drawn.overlay.length / 2 }, s("tspan", { x: reach + 36 }, say("worn.overlay")), s("tspan", { x: reach + 36, dy: 17 }, show(size.dimensions.overlayLength, answer.unit) + " " + answer.unit))
      : null,
    drawn.sleeve && size.dimensions.length !== undefined
      ? [
          measure(-reach - 26, 0, length, ""),
          s("text", { x: -reach - 36, y: length / 2, "text-anchor": "end" }, s("tspan", { x: -reach - 36 }, say("worn.sleeve")), s("tspan", { x: -reach - 36, dy: 17 }, written("length"))),
        ]
      : null,
    s("text", { class: "worn-side", x: -reach, y: top + 16, "text-anchor": "middle" }, say("sewing.front")),
    s("text", { class: "worn-side", x: reach, y: top + 16, "text-anchor": "middle" }, say("sewing.back")),
  );
}

// Two forms of the same piece over one another: cut and seam lines from the points that the service answers with, laid on fold and bicep line.

import { s } from "../common/dom.js";

const BORDER = 0.04;

const path = (points) => "M" + points.map(([x, y]) => `${x} ${-y}`).join("L") + "Z";

const KINDS = ["first", "second"];

export function overlaid(pieces, label) {
  const points = pieces.filter((piece) => piece).flatMap((piece) => piece.cutLine);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => -y);
  const [left, top, right, bottom] = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const border = BORDER * Math.max(right - left, bottom - top);
  return s(
    "svg",
    { class: "overlaid", role: "img", "aria-label": label, viewBox: [left - border, top - border, right - left + 2 * border, bottom - top + 2 * border].join(" ") },
    s("path", { class: "zero-line", d: `M${left} 0H${right}M0 ${top}V${bottom}` }),
    pieces.map((piece, i) =>
      piece ? [s("path", { class: "outline " + KINDS[i], d: path(piece.cutLine) }), s("path", { class: "netline " + KINDS[i], d: path(piece.netLine) })] : null,
    ),
  );
}

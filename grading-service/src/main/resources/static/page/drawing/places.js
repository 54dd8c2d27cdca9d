// Where a point of measure lies in the drawing of the base size.

import { toMm } from "../common/units.js";

const SLEEVES = ["under-sleeve", "base-sleeve"];
const OVERLAY = ["overlay-main"];

const edge = (kind) => ({ edges: kind });
const mark = (kind) => ({ marks: kind });
const line = (from, to) => ({ line: [from, to] });

const PLACES = {
  bicep: [SLEEVES, mark("bicep-line")],
  capHeight: [SLEEVES, line(() => 0, (d) => d.capHeight)],
  capLine: [SLEEVES, edge("armhole")],
  armhole: [SLEEVES, edge("armhole")],
  capEase: [SLEEVES, edge("armhole")],
  capOutward: [SLEEVES, edge("armhole")],
  capInward: [SLEEVES, edge("armhole")],
  length: [SLEEVES, line((d) => d.capHeight, (d) => d.capHeight - d.length)],
  elbow: [SLEEVES, mark("elbow-line")],
  wrist: [SLEEVES, edge("hem")],
  underarmSeam: [SLEEVES, edge("side-seam")],
  overlayTotalLength: [OVERLAY, line((d) => d.capHeight + d.rise, (d) => d.capHeight - d.overlayLength)],
  overlayRise: [OVERLAY, line((d) => d.capHeight, (d) => d.capHeight + d.rise)],
  overlayWidth: [OVERLAY, mark("bicep-line")],
  overlayHem: [OVERLAY, edge("hem")],
  overlayEdge: [OVERLAY, edge("attached-edge")],
  attachSpan: [OVERLAY, edge("attached-edge")],
  pleatTakeUp: [OVERLAY, edge("attached-edge")],
  pleatDepth: [OVERLAY, edge("attached-edge")],
  overlayNetEdge: [OVERLAY, edge("attached-edge")],
  pleats: [OVERLAY, edge("attached-edge")],
};

const ALIKE = { rise: "overlayRise", extraWidth: "overlayWidth", fullness: "overlayEdge", join: "overlayEdge" };

const curve = (segments, mm) =>
  segments
    .map((points, i) => {
      const [start, one, two, end] = points.map(([x, y]) => `${mm(x)} ${-mm(y)}`);
      return `${i === 0 ? "M" + start : ""}C${one} ${two} ${end}`;
    })
    .join("");

/** What to light up for a code of the spec table or a field: nothing known gives an empty list. */
export function guides(code, { answer, base }) {
  const place = PLACES[code] ?? PLACES[ALIKE[code]];
  if (!place || !base) return [];
  const mm = (value) => toMm(value, answer.unit);
  const dimensions = Object.fromEntries(Object.entries(base.dimensions).map(([name, value]) => [name, mm(value)]));
  const [pieces, what] = place;
  const piece = base.pieces.find((each) => pieces.includes(each.id));
  if (!piece) return [];
  if (what.line) {
    const [from, to] = what.line.map((side) => side(dimensions));
    return Number.isNaN(from + to) ? [] : [{ piece: piece.id, path: `M0 ${-from}V${-to}M-4 ${-from}h8M-4 ${-to}h8` }];
  }
  const lines = what.edges
    ? piece.edges.filter((each) => each.kind === what.edges)
    : piece.marks.filter((each) => each.kind === what.marks);
  return lines.map((each) => ({ piece: piece.id, path: curve(each.segments, mm) }));
}

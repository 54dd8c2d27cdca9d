// A paper model: the overlay of a style at 1:4 with its folds, and beside it the edge that it should have when it is folded. Print the page at 100 %, cut out the left
// drawing, fold it, and lay it on the right one.
//
//   ./start.sh &  node docs/paper-model.mjs examples/choir-gown.json > model.svg  &&  rsvg-convert -f pdf model.svg -o model.pdf
//
// The folding here knows nothing of how the engine trues an edge: it reflects the drawn cloth at the drawn lines.

import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const SCALE = 1 / 4;
const MM = { mm: 1, cm: 10, in: 25.4 };

const minus = (a, b) => [a[0] - b[0], a[1] - b[1]];
const distance = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]);
const unit = (v) => v.map((x) => x / Math.hypot(...v));

/** Points on cubic Bézier segments, many enough for paper. */
export function flattened(segments, steps = 24) {
  const points = [segments[0][0]];
  for (const [a, b, c, d] of segments) {
    for (let i = 1; i <= steps; i++) {
      const t = i / steps;
      const u = 1 - t;
      const at = (k) => u * u * u * a[k] + 3 * u * u * t * b[k] + 3 * u * t * t * c[k] + t * t * t * d[k];
      points.push([at(0), at(1)]);
    }
  }
  return points;
}

/** The mirror image of a point about the line through a place along a unit vector. */
export function mirrored(point, { at, way }) {
  const v = minus(point, at);
  const along = v[0] * way[0] + v[1] * way[1];
  return [at[0] + 2 * along * way[0] - v[0], at[1] + 2 * along * way[1] - v[1]];
}

/** The pleats of a piece: fold line and placement line of each. */
export function pleats(marks) {
  const ends = (kind) =>
    new Map(marks.filter((m) => m.kind === kind).map((m) => [m.name.replace(/ (fold|placement) line$/, ""), m]));
  const placements = ends("pleat-placement");
  return [...ends("pleat-fold")].map(([name, fold]) => ({ name, fold, placement: placements.get(name) }));
}

const ray = (mark) => {
  const [from, to] = [mark.segments[0][0], mark.segments.at(-1)[3]];
  return { at: from, way: unit(minus(to, from)) };
};

/**
 * Folds an edge, given as points from one end to the other, at its pleats. What is seen keeps its length; each fold line comes to lie on its placement line.
 * Gives the seen stretches, each with the edge and, at its ends, the lines down the pleats that bound it.
 */
export function folded(edge, folds) {
  const nearest = (point) => edge.reduce((best, p, i) => (distance(p, point) < distance(edge[best], point) ? i : best), 0);
  const ordered = folds
    .map((pleat) => {
      const [fold, placement] = [ray(pleat.fold), ray(pleat.placement)];
      return { fold, placement, foldAt: nearest(fold.at), placementAt: nearest(placement.at) };
    })
    .sort((a, b) => Math.min(a.foldAt, a.placementAt) - Math.min(b.foldAt, b.placementAt));
  const stretches = [];
  let place = (p) => p;
  let from = 0;
  for (const { fold, placement, foldAt, placementAt } of ordered) {
    const [first, last] = [Math.min(foldAt, placementAt), Math.max(foldAt, placementAt)];
    stretches.push(edge.slice(from, first + 1).map(place));
    const middle = {
      at: [(fold.at[0] + placement.at[0]) / 2, (fold.at[1] + placement.at[1]) / 2],
      way: unit([fold.way[0] + placement.way[0], fold.way[1] + placement.way[1]]),
    };
    // Two creases, the one that is met first turned first: what lies beyond is reflected about both.
    const [one, two] = foldAt < placementAt ? [fold, middle] : [middle, fold];
    const before = place;
    place = (p) => before(mirrored(mirrored(p, two), one));
    from = last;
  }
  stretches.push(edge.slice(from).map(place));
  return stretches;
}

const length = (points) => points.slice(1).reduce((sum, p, i) => sum + distance(p, points[i]), 0);

/** Length of the folded edge: of all that is seen. */
export const seen = (stretches) => stretches.reduce((sum, points) => sum + length(points), 0);

function drawing(size, units, name, label) {
  const factor = MM[units] * SCALE;
  const piece = size.pieces.find((p) => p.id === "overlay-main");
  if (!piece) {
    throw new Error("The style has no overlay.");
  }
  const top = flattened(piece.edges.find((e) => e.name === "top edge").segments);
  const stretches = folded(top, pleats(piece.marks));
  const show = (p, dx) => `${(p[0] * factor + dx).toFixed(3)} ${(-p[1] * factor).toFixed(3)}`;
  const path = (points, dx, close) => `M${points.map((p) => show(p, dx)).join("L")}${close ? "Z" : ""}`;
  const all = piece.netLine.concat(stretches.flat());
  const xs = (points) => points.map((p) => p[0] * factor);
  const left = Math.min(...xs(piece.netLine));
  const right = Math.max(...xs(piece.netLine));
  const gap = right - Math.min(...xs(stretches.flat())) + 15;
  const topmost = Math.max(...all.map((p) => p[1] * factor));
  const bottom = Math.min(...all.map((p) => p[1] * factor));
  const width = gap + Math.max(...xs(stretches.flat())) - left + 20;
  const height = topmost - bottom + 40;
  const lines = piece.marks
    .filter((m) => m.kind.startsWith("pleat-"))
    .map(
      (m) =>
        `<path d="${path([m.segments[0][0], m.segments.at(-1)[3]], 0)}"${m.kind === "pleat-placement" ? ' stroke-dasharray="2 1"' : ""}/>`,
    );
  const joins = stretches.slice(1).map((s) => `<circle cx="${show(s[0], gap).split(" ")[0]}" cy="${show(s[0], gap).split(" ")[1]}" r="0.7"/>`);
  const seam = stretches.map((s) => `<path d="${path(s, gap)}"/>`);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width.toFixed(1)}mm" height="${height.toFixed(1)}mm" viewBox="${(left - 10).toFixed(2)} ${(-topmost - 22).toFixed(2)} ${width.toFixed(1)} ${height.toFixed(1)}" font-family="sans-serif" font-size="3.4">
<title>Paper model 1:4</title>
<g fill="none" stroke="black" stroke-width="0.25">
<g id="flat"><path d="${path(piece.netLine, 0, true)}" stroke-width="0.4"/>${lines.join("")}</g>
<g id="folded" stroke-width="0.4">${seam.join("")}${joins.join("")}</g></g>
<text x="${left.toFixed(1)}" y="${(-topmost - 14).toFixed(1)}">${name}, size ${label}, 1:4</text>
<text x="${left.toFixed(1)}" y="${(-topmost - 8).toFixed(1)}">Cut out, fold each solid line onto its dashed one, and lay it on the edge at the right: ${(seen(stretches) * factor).toFixed(1)} mm.</text>
</svg>
`;
}

async function main(file) {
  const request = JSON.parse(readFileSync(file, "utf8"));
  const answer = await fetch(`http://localhost:${process.env.PORT ?? 8080}/v1/size-runs`, {
    method: "POST",
    headers: { "Content-Type": "application/json", Accept: "application/json" },
    body: JSON.stringify({ ...request, sizes: [request.baseSize], grade: undefined, halves: "whole" }),
  });
  const body = await answer.json();
  if (!answer.ok) {
    throw new Error(body.detail);
  }
  const plain = (text) => text.replace(/[<>&]/g, " ");
  process.stdout.write(drawing(body.sizes[0], request.units, plain(request.name ?? "Sleeve"), plain(request.baseSize)));
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await main(process.argv[2]);
}

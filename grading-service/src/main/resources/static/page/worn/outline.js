// A piece of the answer, opened flat: its edges in their order round the piece, in metres, and the lines it is folded on. The front is at negative x.

import { toMm } from "../common/units.js";

const STEPS = 12;

const mirrored = ([x, y]) => [-x, y];

function sampled(segments, metres) {
  const points = [];
  for (const [a, b, c, d] of segments) {
    for (let i = points.length === 0 ? 0 : 1; i <= STEPS; i++) {
      const t = i / STEPS;
      const u = 1 - t;
      points.push([0, 1].map((k) => metres(u * u * u * a[k] + 3 * u * u * t * b[k] + 3 * u * t * t * c[k] + t * t * t * d[k])));
    }
  }
  return points;
}

/** Opens a piece that is drawn on the fold; the edges that meet on the fold become one. */
function opened(edges) {
  const half = edges.filter((edge) => edge.kind !== "fold");
  const other = half.map(({ name, kind, points }) => ({ name, kind, points: points.map(mirrored).reverse() })).reverse();
  const join = (a, b) => ({ name: a.name, kind: a.kind, points: [...a.points, ...b.points.slice(1)] });
  if (half.length === 1) return [join(half[0], other[0])];
  const bottom = join(other[other.length - 1], half[0]);
  const top = join(half[half.length - 1], other[0]);
  return [bottom, ...half.slice(1, -1), top, ...other.slice(1, -1)];
}

/** {edges: [{name, kind, points}], lines: [{kind, from, to}], notches} of a piece; lengths of the answer are in unit. */
export function outlined(piece, unit) {
  const metres = (length) => toMm(length, unit) / 1000;
  const point = (each) => each.map(metres);
  const edges = piece.edges.map(({ name, kind, segments }) => ({ name, kind, points: sampled(segments, metres) }));
  const lines = piece.marks
    .filter((mark) => ["pleat-fold", "pleat-placement", "dart-leg"].includes(mark.kind))
    .map(({ kind, segments }) => ({ kind, from: point(segments[0][0]), to: point(segments[segments.length - 1][3]) }));
  const folded = piece.edges.some((edge) => edge.kind === "fold");
  if (!folded) return { edges, lines };
  return { edges: opened(edges), lines: [...lines, ...lines.map(({ kind, from, to }) => ({ kind, from: mirrored(from), to: mirrored(to) }))] };
}

/** A line of points with the length gone at each. Of several parts, what lies between the end of one and the beginning of the next counts for nothing. */
export class Line {
  constructor(...parts) {
    const points = parts.flat();
    const begins = new Set();
    for (let i = 0, at = 0; i < parts.length; at += parts[i++].length) begins.add(at);
    this.points = points;
    this.gone = [0];
    for (let i = 1; i < points.length; i++) this.gone.push(this.gone[i - 1] + (begins.has(i) ? 0 : Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1])));
    this.length = this.gone[this.gone.length - 1];
  }

  at(length) {
    let i = 1;
    while (i < this.gone.length - 1 && this.gone[i] < length) i++;
    const share = Math.max(0, Math.min(1, (length - this.gone[i - 1]) / (this.gone[i] - this.gone[i - 1] || 1)));
    return [0, 1].map((k) => this.points[i - 1][k] + share * (this.points[i][k] - this.points[i - 1][k]));
  }

  /** The length gone at the point of the line nearest to one. */
  nearest([x, y]) {
    let best = Infinity;
    let found = 0;
    for (let i = 1; i < this.points.length; i++) {
      const [a, b] = [this.points[i - 1], this.points[i]];
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const t = Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)));
      const far = Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
      if (far < best) [best, found] = [far, this.gone[i - 1] + t * (this.gone[i] - this.gone[i - 1])];
    }
    return found;
  }
}

// A flat piece cut into triangles: its outline as given, lines it is folded on, and a grid of equilateral triangles between.

import Delaunator from "../vendor/delaunator.js";

/** Nearer to the outline or a fold than this share of the spacing there is no point of the grid. */
const CLEAR = 0.62;

function inside(ring, x, y) {
  let odd = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [a, b] = [ring[i], ring[j]];
    if (a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0]) odd = !odd;
  }
  return odd;
}

function farFromRing(ring, x, y, least) {
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [a, b] = [ring[j], ring[i]];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)));
    if (Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy) < least) return false;
  }
  return true;
}

/**
 * The mesh of a piece: {flat, triangles, lines}. The first points are those of the ring, in its order; lines has for each line of within the numbers of its points. Triangles run
 * counter-clockwise, so that the right side of the cloth is in front.
 */
export function meshed(ring, within, spacing) {
  const flat = [...ring];
  const lines = within.map((points) =>
    points.map((point) => {
      if (farFromRing(ring, point[0], point[1], 0.25 * spacing)) return flat.push(point) - 1;
      const near = ring.map(([x, y]) => Math.hypot(x - point[0], y - point[1]));
      return near.indexOf(Math.min(...near));
    }),
  );
  const fixed = flat.slice(ring.length);
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const rise = (spacing * Math.sqrt(3)) / 2;
  for (let j = 0, y = low + rise / 2; y < high; j++, y += rise) {
    // The grid is the same at both sides of the middle.
    const shift = j % 2 === 0 ? 0 : spacing / 2;
    for (let i = Math.floor(left / spacing); i * spacing + shift <= right; i++) {
      const x = i * spacing + shift;
      if (!inside(ring, x, y) || !farFromRing(ring, x, y, CLEAR * spacing)) continue;
      if (fixed.every(([fx, fy]) => Math.hypot(x - fx, y - fy) > CLEAR * spacing)) flat.push([x, y]);
    }
  }
  const { triangles: corners } = Delaunator.from(flat);
  const triangles = [];
  for (let t = 0; t < corners.length; t += 3) {
    const [a, b, c] = [corners[t], corners[t + 1], corners[t + 2]];
    const [p, q, r] = [flat[a], flat[b], flat[c]];
    const twice = (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
    if (Math.abs(twice) < 1e-4 * spacing * spacing || !inside(ring, (p[0] + q[0] + r[0]) / 3, (p[1] + q[1] + r[1]) / 3)) continue;
    triangles.push(twice > 0 ? [a, b, c] : [a, c, b]);
  }
  return { flat, triangles, lines };
}

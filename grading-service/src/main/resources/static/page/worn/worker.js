// Sews and settles a sleeve away from the page, and tells how it lies as it goes.

import { off } from "./body.js";
import { Dressed } from "./dressed.js";

/** Milliseconds between two pictures. */
const BEAT = 50;

let asked = 0;

/** What can be measured on the sleeve as it lies, metres. */
function measured(dressed) {
  const p = dressed.cloth.position;
  const overlay = dressed.surfaces.find(({ id }) => id === "overlay-main");
  if (!overlay) return null;
  let [top, out, low] = [-Infinity, -Infinity, Infinity];
  const underarm = dressed.armhole.underarm[1];
  for (const i of new Set(overlay.triangles.flat())) {
    const point = [p[3 * i], p[3 * i + 1], p[3 * i + 2]];
    top = Math.max(top, point[1]);
    low = Math.min(low, point[1]);
    // Along the armhole the cloth lies on the body; it is the crown that stands off.
    if (point[1] > underarm && point[0] > 0) out = Math.max(out, off(dressed.body.arm, point));
  }
  return { top, out, low };
}

function lengths({ seams, cloth }) {
  return seams.map(({ name, points }) => {
    const sum = (distance) => points.slice(1).reduce((whole, point, i) => whole + distance(points[i], point), 0);
    return { name, flat: sum((a, b) => Math.hypot(a.flat[0] - b.flat[0], a.flat[1] - b.flat[1])), lies: sum((a, b) => cloth.distance(a.particle, b.particle)) };
  });
}

onmessage = ({ data }) => {
  asked = data.id;
  const since = performance.now();
  let dressed;
  try {
    dressed = new Dressed(data.size, data.unit, data.figures, data.lengths);
  } catch (error) {
    postMessage({ id: data.id, failed: String(error) });
    return;
  }
  postMessage({ id: data.id, surfaces: dressed.surfaces, body: dressed.body, position: Float32Array.from(dressed.cloth.position) });
  const on = () => {
    if (asked !== data.id) return;
    const done = dressed.go(BEAT);
    const position = Float32Array.from(dressed.cloth.position);
    postMessage({ id: data.id, position, done, ...(done ? { took: performance.now() - since, measured: measured(dressed), seams: lengths(dressed) } : {}) }, [position.buffer]);
    if (!done) setTimeout(on, 0);
  };
  on();
};

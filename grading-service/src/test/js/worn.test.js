// A sleeve sewn together and put on: what is sewn keeps its length and lies where it is sewn to. The sleeves are answers of the service, of which what is read here is kept.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { Armhole, body, off } from "../../main/resources/static/page/worn/body.js";
import { Dressed } from "../../main/resources/static/page/worn/dressed.js";
import { figuresOf } from "../../main/resources/static/page/worn/figures.js";
import { meshed } from "../../main/resources/static/page/worn/mesh.js";
import { PRESETS } from "../../main/resources/static/page/worn/stuffs.js";

const answer = (name) => JSON.parse(readFileSync(new URL(name, import.meta.url), "utf8"));

/** Worn and settled. */
function worn(name, preset = "firm") {
  const { size, unit } = answer(name);
  const dressed = new Dressed(size, unit, figuresOf(size, unit, null).figures, PRESETS[preset]);
  while (!dressed.go(50));
  return dressed;
}

const along = (points, distance) => points.slice(1).reduce((sum, point, i) => sum + distance(points[i], point), 0);
const flat = ({ points }) => along(points, (a, b) => Math.hypot(a.flat[0] - b.flat[0], a.flat[1] - b.flat[1]));
const lies = ({ points }, cloth) => along(points, (a, b) => cloth.distance(a.particle, b.particle));

for (const name of ["gown-sleeve.json", "darted-sleeve.json"]) {
  test(`seams keep their length within 1 %, and the folded edge lies on the armhole within 1 mm: ${name}`, () => {
    const { seams, cloth, armhole, surfaces } = worn(name);
    assert.ok(cloth.position.every(Number.isFinite));
    assert.deepEqual(seams.map((seam) => seam.name), ["cap", "underarm seam", "overlay"]);
    for (const seam of seams.slice(1)) assert.ok(Math.abs(lies(seam, cloth) / flat(seam) - 1) < 0.01, `${seam.name}: ${flat(seam)} m as cut, ${lies(seam, cloth)} m as it lies`);
    const ring = Array.from({ length: 4000 }, (nothing, i) => armhole.at((armhole.length * i) / 4000));
    const far = ([x, y, z]) => Math.min(...ring.map((point) => Math.hypot(x - point[0], y - point[1], z - point[2])));
    const edge = seams[2].points.map(({ particle }) => Array.from(cloth.position.subarray(3 * particle, 3 * particle + 3)));
    const points = edge.flatMap((point, i) => (i === 0 ? [point] : [point, point.map((each, k) => (each + edge[i - 1][k]) / 2)]));
    assert.ok(Math.max(...points.map(far)) < 0.001);
    // The ends leave the gaps free: 6 cm of armhole from the underarm point, and a seam of 33 cm between them.
    assert.ok(Math.hypot(...edge[0].map((each, k) => each - armhole.at(armhole.length - 0.06)[k])) < 0.001);
    assert.ok(Math.hypot(...edge[edge.length - 1].map((each, k) => each - armhole.at(0.06)[k])) < 0.001);
    assert.ok(surfaces.every(({ triangles }) => triangles.length > 300));
  });
}

test("a stiffer interfacing stands farther off the arm, and no cloth lies inside it", () => {
  const standing = (preset) => {
    const { cloth, surfaces, body: wearer, armhole } = worn("gown-sleeve.json", preset);
    const at = (i) => Array.from(cloth.position.subarray(3 * i, 3 * i + 3));
    const of = (id) => [...new Set(surfaces.find((each) => each.id === id).triangles.flat())].map(at);
    for (const point of [...of("overlay-main"), ...of("under-sleeve")]) assert.ok(off(wearer.arm, point) > -0.006 || point[0] < 0.01, "inside the arm: " + point);
    return Math.max(...of("overlay-main").filter(([x, y]) => x > 0 && y > armhole.underarm[1]).map((point) => off(wearer.arm, point)));
  };
  const [soft, stiff] = [standing("soft"), standing("stiff")];
  assert.ok(stiff > soft + 0.005, `soft ${soft} m, stiff ${stiff} m`);
});

/** Euler's formula for a sheet without holes: corners − edges + faces = 1; and the triangles fill the piece. */
test("a mesh fills its outline once", () => {
  const corners = [[0, 0], [0.2, 0], [0.2, 0.1], [0.1, 0.1], [0.1, 0.2], [0, 0.2]];
  const ring = corners.flatMap((from, i) => Array.from({ length: 10 }, (nothing, k) => from.map((each, j) => each + ((corners[(i + 1) % 6][j] - each) * k) / 10)));
  const { flat: points, triangles } = meshed(ring, [], 0.02);
  const area = triangles.reduce((sum, [a, b, c]) => sum + ((points[b][0] - points[a][0]) * (points[c][1] - points[a][1]) - (points[b][1] - points[a][1]) * (points[c][0] - points[a][0])) / 2, 0);
  assert.ok(Math.abs(area - 0.03) < 1e-9, String(area));
  const edges = new Set(triangles.flatMap((three) => three.map((each, i) => [each, three[(i + 1) % 3]].sort((a, b) => a - b).join())));
  assert.equal(points.length - edges.size + triangles.length, 1);
});

test("each half of the armhole is as long as asked, and the shoulder point is its top", () => {
  const armhole = new Armhole(0.21, 0.24);
  const length = (from, to) => along(Array.from({ length: 1001 }, (nothing, i) => armhole.at(from + ((to - from) * i) / 1000)), (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]));
  assert.ok(Math.abs(length(0, 0.21) - 0.21) < 0.0005);
  assert.ok(Math.abs(length(0.21, 0.45) - 0.24) < 0.0005);
  assert.ok(Math.hypot(...armhole.at(0.21)) < 0.001);
});

test("the arm has the girths and the length of its figures", () => {
  const { arm, wrist } = body({ upperArmGirth: 0.3, elbowGirth: 0.26, wristGirth: 0.16, armLength: 0.58 });
  assert.ok(Math.abs(2 * Math.PI * arm[0].thin - 0.3) < 1e-9);
  assert.ok(Math.abs(2 * Math.PI * arm[2].thin - 0.16) < 1e-9);
  assert.ok(Math.hypot(...wrist) > 0.55 && Math.hypot(...wrist) < 0.6);
});

// The simulation of cloth against closed forms.

import assert from "node:assert/strict";
import test from "node:test";
import { Cloth, GRAVITY } from "../../main/resources/static/page/worn/cloth.js";
import { bendingLength, overlay, PRESETS, rigidity, sleeve } from "../../main/resources/static/page/worn/stuffs.js";

/** A strip of equilateral triangles (nearly) along x. */
function strip(length, width, spacing) {
  const columns = Math.round(length / spacing);
  const rows = Math.max(1, Math.round(width / (spacing * 0.866)));
  const flat = [];
  const triangles = [];
  const at = (i, j) => j * (columns + 1) + i;
  for (let j = 0; j <= rows; j++) for (let i = 0; i <= columns; i++) flat.push([(length * i) / columns + (j % 2 === 1 && i > 0 && i < columns ? spacing / 2 : 0), (width * j) / rows]);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      if (j % 2 === 0) triangles.push([at(i, j), at(i + 1, j), at(i, j + 1)], [at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
      else triangles.push([at(i, j), at(i + 1, j), at(i + 1, j + 1)], [at(i, j), at(i + 1, j + 1), at(i, j + 1)]);
    }
  }
  return { flat, triangles, particle: flat.map((each, i) => i) };
}

function settle(cloth, seconds, dt, damping) {
  for (let t = 0; t < seconds; t += dt) cloth.step(dt, GRAVITY, damping, null);
}

/** A strip of 1 m that hangs from its end grows by mass × gravity × length² / (2 × stiffness); here 4 mm. */
test("a hanging strip is as long as Hooke's law says", () => {
  const mesh = strip(1, 0.06, 0.02);
  const [mass, stretch] = [0.2, 245];
  const cloth = new Cloth([{ ...mesh, mass, stretch, rigidity: 0 }], mesh.flat.length);
  mesh.flat.forEach(([x, y], i) => {
    cloth.position.set([y, -x, 0], 3 * i);
    if (x === 0) cloth.hold(i, [y, 0, 0]);
  });
  settle(cloth, 1.2, 1 / 4000, 6);
  const ends = mesh.flat.map(([x], i) => ({ x, y: cloth.position[3 * i + 1] })).filter(({ x }) => x === 1);
  const length = -ends.reduce((sum, { y }) => sum + y, 0) / ends.length;
  const expected = 1 + (mass * GRAVITY) / (2 * stretch);
  assert.ok(Math.abs(length - expected) < 0.0008, `${length} m, expected ${expected} m`);
  assert.ok(cloth.speed() < 0.01);
});

/**
 * Peirce, The handle of cloth as a measurable quantity, Journal of the Textile Institute 21 (1930), T377: a strip of length l whose chord hangs down by θ has the bending length
 * l · (cos(θ/2) / (8 tan θ))^(1/3); ISO 9073-7 and ASTM D1388 read it at 41.5°, where it is half the length.
 */
for (const [name, stuff] of [...Object.entries(PRESETS).map(([each, preset]) => [each, overlay(preset)]), ["cloth alone", sleeve(PRESETS.firm)]]) {
  test(`the cantilever test gives back the bending length that went in: ${name}`, () => {
    const bending = bendingLength(stuff) / 100;
    const overhang = 2 * bending;
    const spacing = overhang / 10;
    const mesh = strip(overhang + spacing, 0.025, spacing);
    const cloth = new Cloth([{ ...mesh, ...stuff }], mesh.flat.length);
    mesh.flat.forEach(([x, y], i) => {
      cloth.position.set([x - spacing, 0, y], 3 * i);
      if (x < spacing * 1.6) cloth.hold(i, [x - spacing, 0, y]);
    });
    const clamped = Math.max(...mesh.flat.map(([x]) => x).filter((x) => x < spacing * 1.2)) - spacing;
    settle(cloth, 2, 1 / 4000, 10);
    const tips = mesh.flat.map(([x], i) => i).filter((i) => mesh.flat[i][0] > overhang + 0.99 * spacing);
    const mean = (k) => tips.reduce((sum, i) => sum + cloth.position[3 * i + k], 0) / tips.length;
    const angle = Math.atan2(-mean(1), mean(0) - clamped);
    const measured = overhang * Math.cbrt(Math.cos(angle / 2) / (8 * Math.tan(angle)));
    assert.ok(Math.abs(measured / bending - 1) < 0.05, `${(100 * measured).toFixed(2)} cm measured at ${((180 * angle) / Math.PI).toFixed(1)}°, ${(100 * bending).toFixed(2)} cm went in`);
  });
}

test("flexural rigidity is mass × gravity × bending length³, and layers that slide add theirs", () => {
  assert.ok(Math.abs(rigidity(0.2, 5) - 0.2 * 9.81 * 0.000125) < 1e-12);
  const each = overlay(PRESETS.stiff);
  assert.ok(each.rigidity > rigidity(0.19, 8) && bendingLength(each) < 8, "heavier layers that add no stiffness shorten it");
});

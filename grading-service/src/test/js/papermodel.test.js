// The paper model folds drawn cloth at drawn lines. A straight strip with parallel pleats has closed forms: every pleat takes up the distance of its two lines.

import assert from "node:assert/strict";
import test from "node:test";
import { folded, mirrored, pleats, seen } from "../../../../docs/paper-model.mjs";

const mark = (kind, name, x, lean = 0) => ({ kind, name, segments: [[[x, 0], [x, -10], [x, -20], [x + lean, -30]]] });

const strip = Array.from({ length: 301 }, (_, x) => [x, 0]);

test("parallel pleats of a straight strip take up the distance of their lines", () => {
  const marks = [
    mark("pleat-fold", "pleat 1 fold line", 50),
    mark("pleat-placement", "pleat 1 placement line", 90),
    mark("pleat-fold", "pleat 2 fold line", 220),
    mark("pleat-placement", "pleat 2 placement line", 180),
  ];
  const stretches = folded(strip, pleats(marks));
  assert.ok(Math.abs(seen(stretches) - (300 - 40 - 40)) < 1e-9);
  assert.ok(Math.abs(stretches.at(-1).at(-1)[0] - 220) < 1e-9 && Math.abs(stretches.at(-1).at(-1)[1]) < 1e-9);
});

test("folds bring every fold line onto its placement line", () => {
  // Lines that lean turn what follows: by twice the angle between the crease and the fold line.
  const marks = [mark("pleat-fold", "pleat 1 fold line", 100, 4), mark("pleat-placement", "pleat 1 placement line", 140, -4)];
  const [before, after] = folded(strip, pleats(marks));
  assert.ok(Math.hypot(before.at(-1)[0] - after[0][0], before.at(-1)[1] - after[0][1]) < 1e-9);
  const end = after.at(-1);
  const angle = Math.atan2(end[1] - after[0][1], end[0] - after[0][0]);
  assert.ok(Math.abs(Math.abs(angle) - 2 * Math.atan2(4, 30)) < 1e-9);
});

test("a mirror image of a mirror image is the point itself", () => {
  const line = { at: [3, 4], way: [0.6, 0.8] };
  const back = mirrored(mirrored([17, -5], line), line);
  assert.ok(Math.hypot(back[0] - 17, back[1] + 5) < 1e-12);
});

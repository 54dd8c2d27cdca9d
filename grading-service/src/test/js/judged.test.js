// Jumps between the bounds that the checks tell, and how one is mended. Figures invented for the test.

import assert from "node:assert/strict";
import test from "node:test";
import { judged, mend, nearest, place } from "../../main/resources/static/page/style/judged.js";

const style = () => ({ units: "cm", baseSize: "40", sizes: ["36", "38", "40", "42"], sleeve: { bicep: 36, front: { width: 18 } }, grade: { bicep: [1.3, 0.1, 1.3], frontWidth: 0.65, capHeight: 0.4 } });

const answer = {
  unit: "mm",
  jumps: [{ measure: "bicep", from: "38", to: "40", garment: 1, body: 11, least: 11.2, greatest: 16.7 }, { measure: "bicep", from: "40", to: "44", garment: 1, least: 1, greatest: 2 }],
  findings: [
    { check: "body-jump", severity: "caution", sizes: ["38", "40"], dimension: "bicep", value: 1, least: 11.2, greatest: 16.7, unit: "mm" },
    { check: "uneven-jump", severity: "stop", sizes: ["36"], dimension: "capHeight", value: 130, least: 132, greatest: 134, unit: "mm" },
    { check: "survey-jump", severity: "info", sizes: ["40", "42"], dimension: "bicep", value: 13 },
  ],
};

test("bounds come over in the unit of the style, and the culprit is found by its sizes", () => {
  const cells = judged(style(), answer);
  assert.deepEqual([cells.get(place("bicep", 1)).least, cells.get(place("bicep", 1)).greatest], [1.12, 1.67]);
  assert.equal(cells.get(place("bicep", 1)).finding.check, "body-jump");
  assert.equal(cells.get(place("bicep", 2)), undefined, "a note is no culprit, and sizes that are no neighbours have no cell");
});

test("a size below the base that lies off is moved by the jump above it, the other way round", () => {
  // 36 is 2 to 4 mm too small: its jump to 38 must be as much less.
  const { least, greatest } = judged(style(), answer).get(place("capHeight", 0));
  assert.ok(Math.abs(least - 0) < 1e-9 && Math.abs(greatest - 0.2) < 1e-9, least + " " + greatest);
});

test("the nearest value that passes lies inside on the grid of a tape measure", () => {
  assert.equal(nearest(0.1, { least: 1.12, greatest: 1.67 }, "cm"), 1.15);
  assert.equal(nearest(3, { least: 1.12, greatest: 1.67 }, "cm"), 1.65);
  assert.equal(nearest(1.12, { least: 1.12, greatest: 1.67 }, "cm"), undefined);
  assert.equal(nearest(0, { least: 1.12, greatest: 1.13 }, "cm"), 1.12, "where no mark of the tape lies inside, the bound");
});

test("a front of its own keeps its share of what is mended", () => {
  const each = style();
  mend(each, "bicep", 1, 1.1);
  assert.deepEqual(each.grade.bicep, [1.3, 1.1, 1.3]);
  assert.deepEqual(each.grade.frontWidth, [0.65, 1.15, 0.65]);
});

test("what the service proposes goes before what a check alone would ask for", () => {
  const cells = judged(style(), { ...answer, whatIf: { cures: [{ dimension: "bicep", sizes: ["38", "40"], old: 1, new: 13, least: 12.5, greatest: 13.5, cured: 3 }] } });
  const cell = cells.get(place("bicep", 1));
  assert.deepEqual([cell.least, cell.greatest, nearest(0.1, cell, "cm")], [1.25, 1.35, 1.3]);
});

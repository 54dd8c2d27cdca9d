// Jumps from size to size stay with their intervals when sizes come and go. Common practice, no source.

import assert from "node:assert/strict";
import test from "node:test";
import { bodyGrowth } from "../../main/resources/static/page/common/bodies.js";
import { inUnits, jumps, putJumps, putSizes } from "../../main/resources/static/page/style/style.js";

const style = () => ({ units: "cm", baseSize: "40", sizes: ["36", "38", "40", "42"], sleeve: { bicep: 36 }, grade: { bicep: [1, 1.2, 1.5], length: 0.5 } });

test("one growth counts for every interval, and equal ones become one", () => {
  const each = style();
  assert.deepEqual(jumps(each, "length"), [0.5, 0.5, 0.5]);
  putJumps(each, "bicep", [2, 2, 2]);
  assert.equal(each.grade.bicep, 2);
});

test("an interval that stays keeps its jump, a new one takes its neighbour's", () => {
  const each = style();
  putSizes(each, ["38", "40", "42", "44"]);
  assert.deepEqual(jumps(each, "bicep"), [1.2, 1.5, 1.5]);
  assert.equal(each.baseSize, "40");
});

test("another unit leaves every length as long as it was", () => {
  const each = style();
  inUnits(each, "mm");
  assert.deepEqual([each.sleeve.bicep, each.grade.bicep, each.grade.length], [360, [10, 12, 15], 5]);
});

test("the body's growth is summed over the steps of its table, and unknown is not nought", () => {
  const table = {
    unit: "mm",
    sizes: ["84", "88", "92"],
    labels: { 36: "84", 40: "92" },
    info: { key: "bustGirth" },
    rows: [{ dimension: "upperArmGirth", increments: [{ from: "84", to: "88", growth: 11 }, { from: "88", to: "92", growth: 12 }] }],
  };
  const run = { units: "cm", sizes: ["36", "40"] };
  assert.deepEqual(bodyGrowth(table, run, "bicep"), [2.3]);
  assert.deepEqual(bodyGrowth(table, run, "wrist"), [null]);
});

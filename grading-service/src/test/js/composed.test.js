// A style from five answers.

import assert from "node:assert/strict";
import test from "node:test";
import { composed } from "../../main/resources/static/page/start/composed.js";

const answers = { name: "", units: "in", sizes: ["S", "M"], baseSize: "M", sizeTable: "", arm: { upperArmGirth: 12, armhole: 18, armLength: 23 }, height: "high", width: "top", hem: "bowed", sleeve: "elbowDart" };

test("lengths are in the unit of the answers, on eighths of an inch", () => {
  const style = composed(answers);
  for (const length of [style.sleeve.bicep, style.overlay.rise, style.overlay.length, style.overlay.frontGap, style.underSleeve.wrist]) assert.equal((length * 8) % 1, 0);
  assert.ok(style.sleeve.bicep > 12 && style.sleeve.bicep < 15);
  assert.deepEqual([style.units, style.sleeve.armhole, style.sleeve.length], ["in", 18, 23]);
});

test("what is not asked for is not in the style", () => {
  const style = composed({ ...answers, height: "none", sleeve: "none" });
  assert.deepEqual([style.overlay, style.underSleeve, style.sleeve.length, style.name, style.sizeTable], [undefined, undefined, undefined, undefined, undefined]);
  assert.equal(composed({ ...answers, height: "flat" }).overlay.pleats, undefined);
  assert.equal(composed({ ...answers, hem: "vee" }).overlay.hemSagitta, undefined);
});

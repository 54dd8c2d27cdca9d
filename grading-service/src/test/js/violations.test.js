// What the service refused, in the words of the page.

import assert from "node:assert/strict";
import test from "node:test";
import { sentence } from "../../main/resources/static/page/common/violations.js";

test("inches are told as a tape measure has them, bounds within those that work", () => {
  const refused = { reason: "out of range: 23.622047 in; 0.3938 to 19.685 in would work", value: 23.622047, unit: "in", minimum: 0.3938, maximum: 19.685 };
  assert.equal(sentence(refused), "Out of range: ≈ 23 5/8 in; 7/16 to 19 5/8 in would work.");
});

test("other units stay as they are told", () => {
  assert.equal(sentence({ reason: "out of range: 60 cm; 1 to 50 cm would work", value: 60, unit: "cm", minimum: 1, maximum: 50 }), "Out of range: 60 cm; 1 to 50 cm would work.");
});

// Lengths as people write them. An inch is 25.4 mm exactly (NIST Special Publication 811, 2008, appendix B.8).

import assert from "node:assert/strict";
import test from "node:test";
import { about, bounds, convert, exact, fromMm, parse, parseLength, show, signed, toMm } from "../../main/resources/static/page/common/units.js";

test("an inch is 25.4 mm, and there and back is the same number", () => {
  assert.equal(toMm(1, "in"), 25.4);
  assert.equal(fromMm(25.4, "in"), 1);
  assert.equal(convert(36, "cm", "mm"), 360);
  for (const length of [36, 13.5, 1.9, 0.8]) assert.equal(convert(convert(length, "cm", "in"), "in", "cm"), length);
});

test("a tape measure's fractions, a comma and a point are read", () => {
  for (const [text, value] of [["36.5", 36.5], ["36,5", 36.5], ["3 1/2", 3.5], ["3-1/2", 3.5], ["½", 0.5], ["3½", 3.5], ["−2", -2], ["-1 1/4", -1.25]]) {
    assert.equal(parse(text), value, text);
  }
});

test("what is no number is none", () => {
  for (const text of ["abc", "2 5", "1/", "1/0", "3 1/0", "", "1e3", "4 5/", "36 cm"]) assert.ok(Number.isNaN(parse(text)), text);
});

test("inches are shown in sixteenths, in lowest terms", () => {
  for (const [value, text] of [[3.5, "3 1/2"], [0.0625, "1/16"], [14.3125, "14 5/16"], [2, "2"], [-0.25, "−1/4"]]) assert.equal(show(value, "in"), text);
});

test("a growth has its sign", () => {
  assert.equal(signed(1.3, "cm"), "+1.3");
  assert.equal(signed(-1.3, "cm"), "−1.3");
  assert.equal(signed(0, "cm"), "0");
});

test("a length may bring its own unit", () => {
  assert.equal(parseLength("36 cm", "in").toFixed(9), (36 / 2.54).toFixed(9));
  assert.equal(parseLength("36cm", "mm"), 360);
  assert.equal(parseLength('14 1/4"', "cm"), 36.195);
  assert.equal(parseLength("10 mm", "cm"), 1);
  assert.equal(parseLength("36", "cm"), 36);
  assert.ok(Number.isNaN(parseLength("cm", "cm")));
});

test("what is shown says where it is not quite what is kept", () => {
  assert.equal(signed(0.0787, "in"), "≈ +1/16");
  assert.equal(about(0.0625, "in"), "1/16");
  assert.equal(about(0.0787, "in"), "≈ 1/16");
  assert.equal(parse(about(0.0787, "in")), 0.0625);
  assert.ok(exact(14.3125, "in") && !exact(14.32, "in"));
});

test("bounds that are shown lie within those that are kept", () => {
  assert.deepEqual(bounds(0.5276, 0.7402, "in"), ["9/16", "11/16"], "13.4 and 18.8 mm");
  assert.deepEqual(bounds(10 / 25.4, 500 / 25.4, "in"), ["7/16", "19 5/8"]);
  assert.deepEqual(bounds(0.5, 0.75, "in"), ["1/2", "3/4"]);
  assert.deepEqual(bounds(1.341, 1.889, "cm"), ["1.35", "1.88"]);
  assert.deepEqual(bounds(undefined, 2, "cm"), [undefined, "2"]);
  assert.deepEqual(bounds(0.51, 0.52, "in"), ["0.51", "0.52"], "no sixteenth lies between");
  for (let i = 0; i < 200; i++) {
    const [least, greatest] = [i / 17, i / 17 + 0.2];
    const [from, to] = bounds(least, greatest, "in").map(parse);
    assert.ok(from >= least - 1e-4 && to <= greatest + 1e-4 && from <= to);
  }
});

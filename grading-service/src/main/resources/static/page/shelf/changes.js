// What lies between two revisions, as the service tells it: the fields that differ, and what that does to the points of measure, size by size.

import { h } from "../common/dom.js";
import { figuresTable } from "../common/figurestable.js";
import { placeName } from "../common/names.js";
import { number, show, signed } from "../common/units.js";
import { find, pointName, say } from "../common/words.js";

/** A value of a style in the page's words where it has some; numbers as they are written. */
function written(json) {
  if (json === undefined || json === null) return say("shelf.none");
  const value = JSON.parse(json);
  if (typeof value === "number") return number(value, 4);
  return typeof value === "string" ? value : JSON.stringify(value);
}

export function changesShown({ from, to, units, fields, pointsOfMeasure }) {
  if (fields.length === 0) return h("p", null, say("shelf.nothing"));
  const name = (pointer) => (pointer === "/ease" || pointer.startsWith("/ease/") ? placeName(pointer) || say("wearer.ease") : find("problems.places")[pointer] ?? (placeName(pointer) || pointer));
  const sizes = [...new Set(pointsOfMeasure.map((each) => each.size))];
  const codes = [...new Set(pointsOfMeasure.map((each) => each.code))];
  const cell = (code, size) => {
    const found = pointsOfMeasure.find((each) => each.code === code && each.size === size);
    if (!found) return "";
    if (typeof found.difference !== "number") return typeof found.after === "number" ? `${say("shelf.new")} ${show(found.after, units)}` : say("shelf.gone");
    return h("span", { title: `${show(found.before, units)} → ${show(found.after, units)}` }, signed(found.difference, units));
  };
  const called = (code) => pointName(pointsOfMeasure.find((each) => each.code === code));
  return h(
    "div",
    null,
    figuresTable(
      say("shelf.fields", { from, to }),
      [say("shelf.field"), say("shelf.before"), say("shelf.after")],
      fields.map((each) => [name(each.field), written(each.before), written(each.after)]),
    ),
    codes.length === 0 ? h("p", null, say("shelf.noMeasures")) : figuresTable(say("shelf.measures", { unit: units }), [say("shelf.measure"), ...sizes], codes.map((code) => [called(code), ...sizes.map((size) => cell(code, size))])),
  );
}

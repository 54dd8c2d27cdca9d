// What the service refused, in the words of the page: the name of the field in place of its place in the request.

import { placeName } from "./names.js";
import { Refused } from "./service.js";
import { spoken } from "./spoken.js";
import { about, bounds, number } from "./units.js";
import { say } from "./words.js";

/** Figures of a text in inches as a tape measure has them: what was given, and the bounds, which stay within those that work. */
function onTheTape({ reason, value, minimum, maximum }) {
  const [least, greatest] = bounds(minimum, maximum, "in");
  const figures = new Map([[value, about], [minimum, () => least], [maximum, () => greatest]].filter(([figure]) => typeof figure === "number").map(([figure, write]) => [number(figure, 6), write(figure, "in")]));
  return reason.replace(/\d+(?:[.,]\d+)?/g, (figure) => figures.get(figure) ?? figure);
}

/** A violation in plain words. */
export const sentence = (violation) => spoken(violation.unit === "in" ? onTheTape(violation) : violation.reason);

/** Why something did not work, in words. */
export function why(error) {
  if (!(error instanceof Refused)) return say("unreachable");
  const violations = error.problem.violations ?? [];
  const words = violations.map((each) => [placeName(each.field), sentence(each)].filter((part) => part !== "").join(say("colon")));
  return words.join(" ") || error.message;
}

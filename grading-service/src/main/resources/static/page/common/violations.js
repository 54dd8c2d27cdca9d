// What the service refused, in the words of the page: the name of the field in place of its place in the request.

import { placeName } from "./names.js";
import { Refused } from "./service.js";
import { spoken } from "./spoken.js";
import { say } from "./words.js";

/** A violation in plain words. */
export const sentence = ({ reason }) => spoken(reason);

/** Why something did not work, in words. */
export function why(error) {
  if (!(error instanceof Refused)) return say("unreachable");
  const violations = error.problem.violations ?? [];
  const words = violations.map((each) => [placeName(each.field), sentence(each)].filter((part) => part !== "").join(say("colon")));
  return words.join(" ") || error.message;
}

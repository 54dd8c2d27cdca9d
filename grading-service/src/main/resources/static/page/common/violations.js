// What the service refused, in the words of the page: the name of the field in place of its place in the request, and limits in the unit they came in.

import { placeName } from "./names.js";
import { Refused } from "./service.js";
import { inBook, spoken } from "./spoken.js";
import { number, show } from "./units.js";
import { current, say } from "./words.js";

/** How the service ends a reason with the value and what would work. */
const END = /: [^:]* would work$/;

/** What would work, as far as the service says. */
function limits({ value, minimum, maximum, unit }) {
  if (typeof value !== "number") return "";
  const write = (each) => (typeof each !== "number" ? "" : unit ? `${show(each, unit)} ${unit}` : number(each));
  const words = { value: write(value), least: write(minimum), greatest: write(maximum) };
  if (typeof minimum === "number" && typeof maximum === "number") return say("limits.between", words);
  if (typeof minimum === "number") return say("limits.least", words);
  return typeof maximum === "number" ? say("limits.greatest", words) : "";
}

/** A violation in plain words, and the language they are in. In English the service's own words say it best. */
export function sentence(violation) {
  const { reason } = violation;
  if (current() === "en") return spoken(reason);
  const because = inBook(reason.replace(/^size \S+: /, "").replace(END, ""));
  const passing = limits(violation);
  if (because === undefined && passing === "") return spoken(reason);
  const size = /^size (\S+): /.exec(reason);
  const words = [because, passing].filter((part) => part).join(". ");
  return { text: (size ? say("sizesOf", { a: size[1] }) + " : " : "") + words, lang: current() };
}

/** Why something did not work, in words. */
export function why(error) {
  if (!(error instanceof Refused)) return say("unreachable");
  const violations = error.problem.violations ?? [];
  const words = violations.map((each) => [placeName(each.field), sentence(each).text].filter((part) => part !== "").join(": "));
  return words.join(" ") || error.message;
}

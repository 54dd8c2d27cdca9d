// What the service refused, in the words of the page: the name of the field in place of its place in the request, and limits in the unit they came in.

import { bodyName, gradeName } from "./names.js";
import { Refused } from "./service.js";
import { number, show } from "./units.js";
import { current, find, say } from "./words.js";

/** A name for a place of a request; that of the nearest place around it where it has none of its own. Nothing for the whole request. */
export function placeName(pointer) {
  const [, group, name, more] = pointer.replace(/^\/sizeRun(?=\/)/, "").split("/");
  const plain = pointer.replace(/^\/sizeRun(?=\/)/, "");
  if (group === "grade" && name) return `${say("jumps")}: ${gradeName(name)}`;
  if (group === "wearer" && name) return bodyName(name);
  if (group === "ease" && name) return `${say("wearer.ease")}: ${find("wearer.eases")[name]?.[0] ?? name}`;
  if (group === "materials" && name === "order") return `${find("fields")["/materials/order"][0]}${more ? " " + more : ""}`;
  const cloth = plain.match(/^\/materials\/fabrics\/(\d+)\/(\w+)$/);
  // A request may name several cloths, so the words say which one is meant.
  if (cloth) return `${say("cloth.name")} ${Number(cloth[1]) + 1}, ${find("fields")["/materials/" + cloth[2]]?.[0] ?? cloth[2]}`;
  if (group === "materials") return find("fields")["/materials/" + plain.split("/").pop()]?.[0] ?? say("cloth.name");
  if (group === "sizes" && name) return say("problems.sizeNumber", { n: Number(name) + 1 });
  const own = find("problems.places")[plain];
  if (own) return own;
  for (let at = plain; at !== ""; at = at.slice(0, at.lastIndexOf("/"))) {
    const field = find("fields")[at];
    if (field) return field[0];
  }
  return find("problems.places")["/" + group] ?? "";
}

/** A violation in plain words, and the language they are in. Where limits are known, they are said in the words of the page. */
export function sentence({ value, minimum, maximum, unit, reason }) {
  if (typeof value === "number" && typeof minimum === "number" && typeof maximum === "number") {
    const write = (length) => (unit ? show(length, unit) : number(length));
    const limits = { value: write(value), unit, least: write(minimum), greatest: write(maximum) };
    // In English the service's own words say more than the limits.
    if (current() !== "en") return { text: say(unit ? "outside" : "outsidePlain", limits), lang: current() };
  }
  return { text: reason.charAt(0).toUpperCase() + reason.slice(1) + (/[.!?]$/.test(reason) ? "" : "."), lang: "en" };
}

/** Why something did not work, in words. */
export function why(error) {
  if (!(error instanceof Refused)) return say("unreachable");
  const violations = error.problem.violations ?? [];
  const words = violations.map((each) => [placeName(each.field), sentence(each).text].filter((part) => part !== "").join(": "));
  return words.join(" ") || error.message;
}

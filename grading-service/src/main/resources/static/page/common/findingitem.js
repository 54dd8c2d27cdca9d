// A finding as it stands in a list, on the bench and in a report.

import { h } from "./dom.js";
import { spoken } from "./spoken.js";
import { about, bounds, number } from "./units.js";
import { find, say } from "./words.js";

/** Gravest first. */
export const ORDER = ["stop", "caution", "info"];
const SIGNS = { stop: "!", caution: "?", info: "i" };

/** Findings that say the same of several sizes stand as one. */
export function together(findings) {
  const groups = new Map();
  for (const finding of findings) {
    const key = [finding.check, finding.severity, finding.dimension, finding.message.replace(/[\d.,/ ]+/g, "#"), finding.source].join("|");
    if (groups.has(key)) groups.get(key).push(finding);
    else groups.set(key, [finding]);
  }
  return [...groups.values()].sort((a, b) => ORDER.indexOf(a[0].severity) - ORDER.indexOf(b[0].severity));
}

/** What was found and what would pass, as far as the check says. */
function figures({ value, least, greatest, unit }) {
  if (value === undefined || value === null) return "";
  const values = { value: unit ? `${about(value, unit)} ${unit}` : number(value) };
  const [from, to] = unit ? bounds(least, greatest, unit).map((each) => each && `${each} ${unit}`) : [least, greatest].map((each) => (typeof each === "number" ? number(each) : undefined));
  Object.assign(values, from && { least: from }, to && { greatest: to });
  if (values.least && values.greatest) return say("foundRange", values);
  if (values.least) return say("foundLeast", values);
  return values.greatest ? say("foundGreatest", values) : say("found", values);
}

const sizesOf = (finding) =>
  finding.sizes.length === 0
    ? say("wholeRun")
    : finding.sizes.length === 1
      ? say("sizesOf", { a: finding.sizes[0] })
      : say("sizesBetween", { a: finding.sizes[0], b: finding.sizes[finding.sizes.length - 1] });

/** Findings that say the same, as one item of a list; a button where something happens when it is pressed. */
export function findingItem(group, { name, every, id, press }) {
  const [first] = group;
  const message = spoken(first.message);
  const remedy = first.remedy ? spoken(first.remedy) : null;
  const inside = [
    h("span", { class: "badge" }, h("span", { "aria-hidden": "true", class: "sign" }, SIGNS[first.severity]), find("severity")[first.severity]),
    h("strong", null, name),
    " ",
    h("span", { class: "finding-sizes" }, every ? say("everySize") : group.map(sizesOf).join(", ")),
    h("span", { class: "finding-message" }, message),
  ];
  return h(
    "li",
    { class: "finding " + first.severity },
    press ? h("button", { type: "button", class: "finding-button", id, onclick: press }, inside) : h("div", { class: "finding-words" }, inside),
    first.severity === "info" ? null : h("p", { class: "remedy" }, figures(first)),
    remedy && h("p", { class: "remedy" }, remedy),
    h("details", { class: "source" }, h("summary", null, say("source")), h("p", null, first.source)),
  );
}

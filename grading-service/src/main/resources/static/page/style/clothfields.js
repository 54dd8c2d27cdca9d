// The fields of a cloth, of the trimming, and of the pairs that are ordered.

import { choice, numeric } from "../common/inputs.js";

const length = (path, words, more) => ({ type: "length", path, words, step: "fine", ...more });

const percent = (path, words, shown = 0) => ({ type: "percent", path, words, step: 0.01, optional: true, shown });

export function clothFields(i, uses) {
  const at = (name) => `/materials/fabrics/${i}/${name}`;
  const of = (name) => "/materials/" + name;
  return {
    first: [
      numeric(length(at("width"), of("width"), { step: "wide" }), uses),
      choice({ path: at("laying"), words: of("laying"), choices: ["folded", "open"], otherwise: "folded" }, uses),
      choice({ path: at("nap"), words: of("nap"), choices: ["without", "with"], otherwise: "without" }, uses),
    ],
    rest: [
      numeric(percent(at("shrinkageLengthwise"), of("shrinkageLengthwise")), uses),
      numeric(percent(at("shrinkageCrosswise"), of("shrinkageCrosswise")), uses),
      numeric(percent(at("waste"), of("waste")), uses),
      numeric(length(at("selvedge"), of("selvedge"), { optional: true, shownMm: 10 }), uses),
      numeric(length(at("gap"), of("gap"), { optional: true, shownMm: 5 }), uses),
      numeric(length(at("step"), of("step"), { optional: true, shownMm: 50, step: "wide" }), uses),
    ],
  };
}

export const trimmingFields = (uses) => [
  numeric(percent("/materials/trimming/waste", "/materials/waste", 0.05), uses),
  numeric(length("/materials/trimming/step", "/materials/step", { optional: true, shownMm: 100, step: "wide" }), uses),
];

/** How long close lays are looked for. */
export const effortField = (uses) => choice({ path: "/materials/effort", words: "/materials/effort", choices: ["quick", "usual", "thorough"], otherwise: "usual" }, uses);

/** Pairs of sleeves per size; with none at all, one pair of each size is laid by itself. */
export const orderFields = (sizes, uses) =>
  sizes.map((size) =>
    numeric(
      {
        type: "count",
        path: "/materials/order/" + size.replaceAll("~", "~0").replaceAll("/", "~1"),
        words: "/materials/order",
        label: size,
        step: 1,
        optional: true,
        shown: 0,
      },
      uses,
    ),
  );


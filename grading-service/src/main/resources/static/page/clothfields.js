// The fields of a cloth, of the trimming, and of the pairs that are ordered. Bounds are those of the service, in millimetres; it has the last word.

import { choice, numeric } from "./inputs.js";

const length = (path, words, least, greatest, more) => ({ type: "length", path, words, least, greatest, step: "fine", ...more });

const percent = (path, words, greatest, shown = 0) => ({ type: "percent", path, words, least: 0, greatest, step: 0.01, optional: true, shown });

export function clothFields(i, page) {
  const at = (name) => `/materials/fabrics/${i}/${name}`;
  const of = (name) => "/materials/" + name;
  return {
    first: [
      numeric(length(at("width"), of("width"), 100, 10_000, { step: "wide" }), page),
      choice({ path: at("laying"), words: of("laying"), choices: ["folded", "open"], otherwise: "folded" }, page),
      choice({ path: at("nap"), words: of("nap"), choices: ["without", "with"], otherwise: "without" }, page),
    ],
    rest: [
      numeric(percent(at("shrinkageLengthwise"), of("shrinkageLengthwise"), 0.5), page),
      numeric(percent(at("shrinkageCrosswise"), of("shrinkageCrosswise"), 0.5), page),
      numeric(percent(at("waste"), of("waste"), 1), page),
      numeric(length(at("selvedge"), of("selvedge"), 0, 4500, { optional: true, shownMm: 10 }), page),
      numeric(length(at("gap"), of("gap"), 0, 100, { optional: true, shownMm: 5 }), page),
      numeric(length(at("step"), of("step"), 1, 10_000, { optional: true, shownMm: 50, step: "wide" }), page),
    ],
  };
}

export const trimmingFields = (page) => [
  numeric(percent("/materials/trimming/waste", "/materials/waste", 1, 0.05), page),
  numeric(length("/materials/trimming/step", "/materials/step", 1, 10_000, { optional: true, shownMm: 100, step: "wide" }), page),
];

const MOST_PAIRS = 1000;

/** Pairs of sleeves per size; with none at all, one pair of each size is laid by itself. */
export const orderFields = (sizes, page) =>
  sizes.map((size) =>
    numeric(
      {
        type: "count",
        path: "/materials/order/" + size.replaceAll("~", "~0").replaceAll("/", "~1"),
        words: "/materials/order",
        label: size,
        least: 0,
        greatest: MOST_PAIRS,
        step: 1,
        optional: true,
        shown: 0,
      },
      page,
    ),
  );


// What graded dimensions and measurements of the body are called on the page.

import { find } from "./words.js";

/** Where the name of a graded dimension is not the last step of its place in the style. */
const PLACES = {
  overlayLength: "/overlay/length",
  frontWidth: "/sleeve/front/width",
  frontCapOutward: "/sleeve/front/capOutward",
  frontCapInward: "/sleeve/front/capInward",
  frontArmhole: "/sleeve/front/armhole",
  backCapOutward: "/sleeve/back/capOutward",
  backCapInward: "/sleeve/back/capInward",
  pleatDepth: "/overlay/pleats/depth",
};

/** What a graded dimension is called. */
export function gradeName(name) {
  const fields = find("fields");
  const path = PLACES[name] ?? Object.keys(fields).find((key) => key.endsWith("/" + name) && !/\/(front|back|seamAllowance)\//.test(key));
  return path === "/overlay/pleats/depth" ? `${find("groups").pleats}: ${fields[path][0]}` : (fields[path]?.[0] ?? name);
}

/** What a measurement of the body is called (by its name of ISO 8559-1). */
export const bodyName = (dimension) => find("body")[dimension]?.[0] ?? dimension;

/** What a measure is called: by its point of measure, or as a dimension of the style. */
export const measureName = (code) => find("points")[code] ?? gradeName(code);

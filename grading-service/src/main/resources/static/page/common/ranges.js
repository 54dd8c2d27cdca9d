// The ranges of the fields as the service states them: lengths in millimetres, shares and counts as they are. It has the last word anyway; the page only says them
// early, steps within them and draws nothing beyond them.

import { once } from "./service.js";
import { fromMm } from "./units.js";

let ranges = {};

/** Reads them, before the first field is built. Without them the fields have no range, and the service still has its own. */
export async function readRanges() {
  ranges = await once("page/ranges.json").catch(() => ranges);
}

/** Where a list or the names of sizes stand, the service writes a star. */
const general = (path) => path.replace(/^(\/materials\/fabrics\/|\/materials\/order\/)[^/]+/, "$1*");

/** Least and greatest of the field at a place; both undefined where there is no range. */
export const rangeOf = (path) => ranges[general(path)] ?? {};

/** A range of lengths in a unit; that of plain numbers as it is, where no unit is given. */
export const shownRange = ({ least, greatest }, unit) =>
  unit === "" || least === undefined ? { least, greatest } : { least: fromMm(least, unit), greatest: fromMm(greatest, unit) };

/** A value kept within a range, where there is one. */
export const within = ({ least = -Infinity, greatest = Infinity }, value) => Math.min(greatest, Math.max(least, value));

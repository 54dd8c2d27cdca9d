// A style from the answers to five questions. Shares are common practice, no source; every one of them can be changed afterwards.

import { convert } from "../common/units.js";

/** What the finished bicep, elbow and wrist measure more than the arm, and how much of the armhole is eased into the cap. */
const BICEP = 1.15;
const ELBOW = 1.15;
const WRIST = 1.25;
const CAP_EASE = "4%";

/** Elbow and wrist of an arm of which only the upper arm was measured. */
const ELBOW_OF_ARM = 0.85;
const WRIST_OF_ARM = 0.56;

/** How far the cap line stands out and is scooped in, as shares of the armhole. */
const ROUNDING = 0.042;
const SCOOP = 0.027;

/** How high the overlay stands above the cap, as a share of the armhole. */
export const HEIGHTS = { none: null, flat: 0, raised: 0.16, high: 0.31 };

/** How much of the armhole is left free at each side, as a share of the whole. */
export const WIDTHS = { whole: 0.03, most: 0.13, top: 0.25 };

export const HEMS = ["vee", "bowed", "level"];
export const SLEEVES = ["none", "tapered", "elbowDart"];

/** Where the hem point lies, as a share of the sleeve's length from the shoulder point. */
const DROP = 0.56;

/** No pleat is deeper than this, mm. */
const DEEPEST = 25;

const GRID = { mm: 1, cm: 0.1, in: 1 / 8 };

/**
 * The body of POST /v1/size-runs. Answers are {name, units, sizes, baseSize, sizeTable, arm: {upperArmGirth, armhole, armLength} in units, height, width, hem, sleeve}, each of the last four a name of
 * the lists above.
 */
export function composed({ name, units, sizes, baseSize, sizeTable, arm, height, width, hem, sleeve }) {
  const onGrid = (length) => Number((Math.round(length / GRID[units]) * GRID[units]).toFixed(4));
  const { upperArmGirth, armhole, armLength } = arm;
  const style = { units, baseSize, sizes, sleeve: { bicep: onGrid(BICEP * upperArmGirth), armhole, capEase: CAP_EASE, capOutward: onGrid(ROUNDING * armhole), capInward: onGrid(SCOOP * armhole) } };
  if (name) style.name = name;
  if (sizeTable) style.sizeTable = sizeTable;
  if (sleeve !== "none") {
    style.sleeve.length = armLength;
    style.underSleeve = { elbow: onGrid(ELBOW * ELBOW_OF_ARM * upperArmGirth), wrist: onGrid(WRIST * WRIST_OF_ARM * upperArmGirth) };
    if (sleeve !== "tapered") style.underSleeve.shaping = sleeve;
  }
  const rise = HEIGHTS[height];
  if (rise !== null) {
    const gap = onGrid(WIDTHS[width] * armhole);
    style.overlay = { rise: onGrid(rise * armhole), length: onGrid(DROP * armLength), hem, frontGap: gap, backGap: gap };
    if (hem === "bowed") style.overlay.hemSagitta = onGrid(0.03 * armLength);
    if (rise > 0) style.overlay.pleats = { greatestDepth: onGrid(convert(DEEPEST, "mm", units)), kind: "knife", direction: "apex" };
  }
  return style;
}

/** An arm of nobody's, cm, only so that there is something to change. */
const ANY_ARM = { upperArmGirth: 30, armhole: 45, armLength: 59 };

/** As little as can be drafted: one plain cap in one size, nothing over it or under it, nothing graded. */
export function bare(units) {
  const arm = Object.fromEntries(Object.entries(ANY_ARM).map(([name, length]) => [name, Number((Math.round(convert(length, "cm", units) / GRID[units]) * GRID[units]).toFixed(4))]));
  return composed({ name: "", units, sizes: ["1"], baseSize: "1", sizeTable: "", arm, height: "none", width: "most", hem: "vee", sleeve: "none" });
}

// The arm that wears a size: from the size table that the style names, else from the sleeve less what sleeves usually have of ease.

import { toMm } from "../common/units.js";

/** Girth of the arm to that of a fitted sleeve, and lengths to the upper arm's girth where the sleeve does not tell. Common practice, no source. */
const OF_BICEP = 0.86;
const OF_ELBOW = 0.88;
const OF_WRIST = 0.76;
const ELBOW = 0.85;
const WRIST = 0.53;
const ARM = 1.9;

/** What a table says of a size, metres, or nothing. */
function told(table, size, dimension) {
  const row = table?.rows.find((each) => each.dimension === dimension);
  const found = row?.values.find((each) => each.size === (table.labels[size] ?? size));
  return found === undefined ? undefined : toMm(found.value, table.unit) / 1000;
}

/** {figures, measured: whether the upper arm is that of the table} for a size of an answer. */
export function figuresOf({ dimensions, label }, unit, table) {
  const sleeve = (name) => (dimensions[name] === undefined ? undefined : toMm(dimensions[name], unit) / 1000);
  const arm = told(table, label, "upperArmGirth");
  const upperArmGirth = arm ?? OF_BICEP * (sleeve("bicep") ?? 0.36);
  const share = (name, of) => (sleeve(name) === undefined ? undefined : of * sleeve(name));
  return {
    measured: arm !== undefined,
    figures: {
      upperArmGirth,
      elbowGirth: told(table, label, "elbowGirth") ?? share("elbow", OF_ELBOW) ?? ELBOW * upperArmGirth,
      wristGirth: told(table, label, "wristGirth") ?? share("wrist", OF_WRIST) ?? WRIST * upperArmGirth,
      armLength: sleeve("length") ?? told(table, label, "armLength") ?? ARM * upperArmGirth,
    },
  };
}

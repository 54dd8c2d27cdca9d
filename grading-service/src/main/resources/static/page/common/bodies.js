// Growth of the body between the sizes of a run, from a published table of the service.

import { once } from "./service.js";
import { convert } from "./units.js";

/** Which dimension of the body a dimension of the sleeve lies on (names of ISO 8559-1). */
export const BODY_OF = {
  bicep: ["upperArmGirth", "upperArmGirthFlexed"],
  elbow: ["elbowGirth"],
  wrist: ["wristGirth"],
  armhole: ["armscyeGirth"],
  length: ["armLength"],
};

export const tableOf = (style) => (style.sizeTable ? once("v1/size-tables/" + encodeURIComponent(style.sizeTable)) : Promise.resolve(null));

/** A size of the run among those of the table: by its own name or its second one; -1 if it is not there. */
const place = (table, size) => table.sizes.indexOf(table.labels[size] ?? size);

/** Growth per interval of the run in the style's unit; null where the table has none. */
export function bodyGrowth(table, style, dimension) {
  const names = BODY_OF[dimension] ?? [];
  const row = names.map((name) => table.rows.find((each) => each.dimension === name)).find((each) => each);
  const none = style.sizes.slice(1).map(() => null);
  if (!row || (dimension === "length" && table.info.key !== "stature")) return none;
  return none.map((nothing, i) => {
    const from = place(table, style.sizes[i]);
    const to = place(table, style.sizes[i + 1]);
    if (from < 0 || to <= from) return null;
    let sum = 0;
    for (let at = from; at < to; at++) {
      const step = row.increments.find((each) => each.from === table.sizes[at] && each.to === table.sizes[at + 1]);
      if (!step) return null;
      sum += step.growth;
    }
    return convert(sum, table.unit, style.units);
  });
}

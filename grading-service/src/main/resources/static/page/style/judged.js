// What the checks say of each jump: between what it passes, which one is the culprit and why, and how it is mended by one press.

import { ask } from "../common/service.js";
import { convert } from "../common/units.js";
import { current } from "../common/words.js";
import { jumps, putJumps } from "./style.js";

/** A jump that is mended is put on this grid, so that a tape measure shows it. */
const GRID = { mm: 0.5, cm: 0.05, in: 1 / 32 };

/** A hair, so that a bound itself counts as inside. */
const HAIR = 1e-6;

let last = { asked: "", answer: null };

/** The style without what a check does not read. */
export const graded = ({ materials, ...style }) => style;

/** The answer of the checks for a style; asked for once as long as the style stays the same, for all who want it, so that none of them can call it off. */
export function checked(style) {
  const asked = current() + JSON.stringify(graded(style));
  if (asked !== last.asked) {
    const answer = ask("v1/checks", { sizeRun: graded(style) }, "application/json").then((response) => response.json());
    last = { asked, answer };
    answer.catch(() => last.answer === answer && (last = { asked: "", answer: null }));
  }
  return last.answer;
}

export const place = (dimension, interval) => dimension + "/" + interval;

const graver = (a, b) => (a?.severity === "stop" || !b ? a : b);

/**
 * What is known of the jumps of a style: place → {least, greatest, finding, cure}. Bounds are in the unit of the style. A cure is the value that the service proposes, which passes
 * together with everything else; its bounds are then those of all checks.
 */
export function judged(style, { jumps: told, findings, whatIf, unit }) {
  const cells = new Map();
  const cell = (dimension, interval) => {
    const key = place(dimension, interval);
    if (!cells.has(key)) cells.set(key, {});
    return cells.get(key);
  };
  const inUnit = (length) => convert(length, unit, style.units);
  for (const { measure, from, to, least, greatest } of told) {
    const interval = style.sizes.indexOf(from);
    if (interval < 0 || style.sizes[interval + 1] !== to || least === undefined || least === null) continue;
    Object.assign(cell(measure, interval), { least: inUnit(least), greatest: inUnit(greatest) });
  }
  for (const finding of findings) {
    const { severity, sizes, dimension, value, least, greatest } = finding;
    if (severity === "info" || sizes.length === 0 || sizes.length > 2) continue;
    const [first, second] = [sizes[0], sizes[sizes.length - 1]].map((size) => style.sizes.indexOf(size));
    // A jump is between two sizes; a size that lies off is told of by its own figure, and its jump is the one that leads to it from the base.
    const base = style.sizes.indexOf(style.baseSize);
    const interval = sizes.length === 2 && second === first + 1 ? first : sizes.length === 1 ? (first > base ? first - 1 : first) : -1;
    if (interval < 0 || interval >= style.sizes.length - 1) continue;
    const at = cell(dimension, interval);
    at.finding = graver(at.finding, finding);
    if (at.least === undefined && finding.unit && typeof value === "number" && typeof least === "number" && typeof greatest === "number") {
      const jump = jumps(style, dimension)[interval];
      const sign = sizes.length === 1 && first <= base ? -1 : 1;
      const bounds = sizes.length === 2 ? [least, greatest] : [least - value, greatest - value].map((each) => sign * each);
      const [low, high] = bounds.sort((a, b) => a - b).map((each) => (sizes.length === 2 ? inUnit(each) : jump + inUnit(each)));
      Object.assign(at, { least: low, greatest: high });
    }
  }
  for (const { dimension, sizes, new: proposed, least, greatest } of whatIf?.cures ?? []) {
    const interval = style.sizes.indexOf(sizes[0]);
    if (sizes.length !== 2 || interval < 0 || style.sizes[interval + 1] !== sizes[1] || !(dimension in (style.grade ?? {}))) continue;
    Object.assign(cell(dimension, interval), { least: inUnit(least), greatest: inUnit(greatest), cure: inUnit(proposed) });
  }
  return cells;
}

/** The value nearest to a jump that passes, on the grid of the unit, or the one that is proposed; undefined where it passes, or nothing is known. */
export function nearest(jump, { least, greatest, cure }, unit) {
  if (cure !== undefined) return cure;
  if (least === undefined || (jump >= least - HAIR && jump <= greatest + HAIR)) return undefined;
  const step = GRID[unit];
  const onGrid = jump < least ? Math.ceil(least / step - HAIR) * step : Math.floor(greatest / step + HAIR) * step;
  const mended = onGrid >= least - HAIR && onGrid <= greatest + HAIR ? onGrid : jump < least ? least : greatest;
  return Number(mended.toFixed(6));
}

/** Puts a jump to a value; a half that has its own growth keeps its share of the whole. */
export function mend(style, dimension, interval, value) {
  const list = [...jumps(style, dimension)];
  const by = value - list[interval];
  list[interval] = value;
  putJumps(style, dimension, list);
  const front = style.sleeve?.front?.width;
  if (dimension !== "bicep" || typeof front !== "number" || style.grade.frontWidth === undefined) return;
  const half = [...jumps(style, "frontWidth")];
  half[interval] = Number((half[interval] + (by * front) / style.sleeve.bicep).toFixed(6));
  putJumps(style, "frontWidth", half);
}

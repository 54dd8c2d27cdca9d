// The style as the body of POST /v1/size-runs: opening, changing units, changing sizes.

import { LENGTHS } from "./fields.js";
import { get, has, put } from "../common/pointer.js";
import { convert, parse } from "../common/units.js";

const EDGES = ["armhole", "attachedEdge", "sideSeam", "hem"];

function withoutNulls(value) {
  if (Array.isArray(value) || typeof value !== "object") return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, inner]) => inner !== null)
      .map(([name, inner]) => [name, withoutNulls(inner)]),
  );
}

const asNumber = (value) => {
  const found = typeof value === "string" ? parse(value) : value;
  return typeof value === "string" && Number.isNaN(found) ? value : found;
};

/** A body in the one form that the fields know: nothing null, lengths as numbers, allowances by kind of edge. */
export function opened(body) {
  const style = withoutNulls(structuredClone(body));
  if (style.units === undefined) style.units = "cm";
  if (Array.isArray(style.sizes)) style.sizes = style.sizes.map(String);
  if (style.baseSize !== undefined) style.baseSize = String(style.baseSize);
  if (style.seamAllowance !== undefined && typeof style.seamAllowance !== "object") {
    const every = asNumber(style.seamAllowance);
    style.seamAllowance = Object.fromEntries(EDGES.map((edge) => [edge, every]));
  }
  if (has(style, "/overlay/pleats/flatZone") && typeof style.overlay.pleats.flatZone !== "object") {
    const both = asNumber(style.overlay.pleats.flatZone);
    style.overlay.pleats.flatZone = { front: both, back: both };
  }
  for (const path of LENGTHS) {
    const value = get(style, path);
    if (typeof value === "string") put(style, path, asNumber(value));
  }
  eachOfMaterials(style, (object, names) => {
    for (const name of names) if (typeof object[name] === "string") object[name] = asNumber(object[name]);
  });
  for (const [name, growth] of Object.entries(style.grade ?? {})) {
    style.grade[name] = Array.isArray(growth) ? growth.map(asNumber) : asNumber(growth);
  }
  return style;
}

/** Calls back for each object of lengths among the materials, with the names of its lengths. */
function eachOfMaterials(style, call) {
  for (const fabric of style.materials?.fabrics ?? []) call(fabric, ["width", "selvedge", "gap", "step"]);
  if (style.materials?.trimming) call(style.materials.trimming, ["step"]);
}

/** Changes the unit of a style; every length stays the same length. */
export function inUnits(style, units) {
  const from = style.units;
  for (const path of LENGTHS) {
    const value = get(style, path);
    if (typeof value === "number") put(style, path, convert(value, from, units));
  }
  for (const [name, growth] of Object.entries(style.grade ?? {})) {
    style.grade[name] = Array.isArray(growth)
      ? growth.map((jump) => convert(jump, from, units))
      : convert(growth, from, units);
  }
  eachOfMaterials(style, (object, names) => {
    for (const name of names) if (typeof object[name] === "number") object[name] = convert(object[name], from, units);
  });
  if (typeof style.paper?.width === "number") style.paper.width = convert(style.paper.width, from, units);
  delete style.rounding;
  style.units = units;
}

/** The growth of a dimension per interval. */
export function jumps(style, name) {
  const growth = style.grade?.[name] ?? 0;
  return Array.isArray(growth) ? growth : Array(Math.max(0, style.sizes.length - 1)).fill(growth);
}

/** Puts the growth of a dimension: one number where all intervals are alike. */
export function putJumps(style, name, list) {
  const alike = list.every((jump) => jump === list[0]);
  put(style, "/grade/" + name, alike ? (list[0] ?? 0) : list);
}

/** Changes the sizes. An interval that stays keeps its jump, a new one takes that of its neighbour. */
export function putSizes(style, sizes) {
  const before = style.sizes;
  const graded = Object.keys(style.grade ?? {}).map((name) => [name, jumps(style, name)]);
  style.sizes = sizes;
  if (!sizes.includes(style.baseSize)) style.baseSize = sizes[Math.floor(sizes.length / 2)] ?? "";
  for (const [name, old] of graded) {
    if (sizes.length < 2) {
      put(style, "/grade/" + name, old[0] ?? 0);
      continue;
    }
    const next = [];
    for (let i = 1; i < sizes.length; i++) {
      const at = before.indexOf(sizes[i]);
      const kept = at > 0 && before[at - 1] === sizes[i - 1] ? old[at - 1] : undefined;
      const near = before.indexOf(sizes[i - 1]);
      next.push(kept ?? old[Math.min(Math.max(near, 0), old.length - 1)] ?? 0);
    }
    putJumps(style, name, next);
  }
  const order = style.materials?.order;
  if (order) style.materials.order = Object.fromEntries(Object.entries(order).filter(([size]) => sizes.includes(size)));
  if (style.paper?.sizes) {
    style.paper.sizes = style.paper.sizes.filter((size) => sizes.includes(size));
    if (style.paper.sizes.length === 0) delete style.paper.sizes;
  }
}

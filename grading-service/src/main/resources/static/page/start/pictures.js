// What each answer looks like: a shoulder and an arm from the outer side, the front at the left, with the sleeve that is meant.

import { s } from "../common/dom.js";

const BODY = "M34 6C20 9 12 18 12 32V70H56V32C56 18 52 10 42 6Z";
const ARM = "M26 26C26 17 44 17 44 26L42 60L41 84H30L28 60Z";
const OVAL = { cx: 35, cy: 30, rx: 10, ry: 14 };

/** The oval from an angle on one side to the same on the other, over the top; 0 is the underarm point. */
function over(share) {
  const { cx, cy, rx, ry } = OVAL;
  const angle = Math.PI * share;
  const [x, y] = [rx * Math.sin(angle), ry * Math.cos(angle)];
  return `M${cx - x} ${cy + y}A${rx} ${ry} 0 ${share < 0.5 ? 1 : 0} 1 ${cx + x} ${cy + y}`;
}

const crown = (up) => `M23 34C${23 - up / 3} ${18 - up} ${47 + up / 3} ${18 - up} 47 34L44 50L35 58L26 50Z`;

const DRAWN = {
  arm: () => [s("path", { class: "skin", d: ARM }), s("path", { class: "tape", d: "M27 40C31 43 39 43 43 40" }), s("ellipse", { class: "tape", ...OVAL }), s("path", { class: "tape", d: "M49 20L47 84" })],
  none: () => [s("path", { class: "skin", d: ARM })],
  flat: () => [s("path", { class: "skin", d: ARM }), s("path", { class: "laid", d: crown(0) })],
  raised: () => [s("path", { class: "skin", d: ARM }), s("path", { class: "laid", d: crown(7) })],
  high: () => [s("path", { class: "skin", d: ARM }), s("path", { class: "laid", d: crown(15) })],
  whole: () => [s("ellipse", { class: "free", ...OVAL }), s("path", { class: "sewn", d: over(0.08) })],
  most: () => [s("ellipse", { class: "free", ...OVAL }), s("path", { class: "sewn", d: over(0.28) })],
  top: () => [s("ellipse", { class: "free", ...OVAL }), s("path", { class: "sewn", d: over(0.55) })],
  vee: () => [s("path", { class: "skin", d: ARM }), s("path", { class: "laid", d: "M24 32C24 15 46 15 46 32V42L35 60L24 42Z" })],
  bowed: () => [s("path", { class: "skin", d: ARM }), s("path", { class: "laid", d: "M24 32C24 15 46 15 46 32V42Q46 56 35 60Q24 56 24 42Z" })],
  level: () => [s("path", { class: "skin", d: ARM }), s("path", { class: "laid", d: "M24 32C24 15 46 15 46 32V58H24Z" })],
  tapered: () => [s("path", { class: "skin", d: ARM }), s("path", { class: "beneath", d: "M25 28C25 16 45 16 45 28L42 80H29Z" })],
  elbowDart: () => [s("path", { class: "skin", d: ARM }), s("path", { class: "beneath", d: "M25 28C25 16 45 16 45 28L44 54L38 80H26L28 54Z" }), s("path", { class: "sewn thin", d: "M44 52L36 55L44 57" })],
};

export const picture = (name) => s("svg", { viewBox: "6 -6 58 96", class: "start-picture", "aria-hidden": "true" }, s("path", { class: "trunk", d: BODY }), DRAWN[name]());

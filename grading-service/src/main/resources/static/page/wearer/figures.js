// Our own drawings of how each measurement is taken: a plain figure, and on it the tape. Names are those of ISO 8559-1; the figure is eight heads of 50 high.

import { s } from "../common/dom.js";

/** One side of the trunk and the leg, from the neck down and back up to the crotch. Of the other side it is the mirror image. */
const SIDE =
  "M-0.6 44H8C8 52 8 56 11 60C16 66 31 69 42 75C46 88 38 98 34 108C38 121 35 134 30 146C26 157 27 164 30 172" +
  "C38 187 41 200 40 214C39 250 31 288 28 310C31 330 26 358 19 384L24 394Q24 398 18 398H8Q5 398 6 392L8 384C6 356 5 330 8 310C7 280 5 250 2 224H-0.6";
const ARM =
  "M41 74.5C50 77 55 90 57 106C60 124 63 138 67 150C73 168 77 188 79.5 207C84 214 88 228 85 241Q83 250 78 247L72 228C69 220 69 214 69.5 209C64 192 56 172 51 154C45 138 39 122 34 108";
const BENT =
  "M0 46C20 34 44 35 57 50C58 40 57 26 57 16C54 10 54 2 60 -3C68 -8 78 -4 78 6Q78 12 74 16C84 34 87 52 83 69C82 76 76 79 70 78C50 82 26 80 0 74";
const HAND =
  "M-9 64C-9 52 -15 46 -16 34C-17 24 -17 18 -16 6Q-13 2 -10 6L-9 20L-8 -4Q-5 -8 -2 -4L-1 19L0 -8Q3 -12 6 -8L6.5 20L8 -2Q11 -6 14 -2L14 24" +
  "C18 20 22 18 26 17Q30 18 28 22C24 27 20 33 17 40C13 47 10 54 10 64";

const mirror = { transform: "scale(-1 1)" };

const halves = (d, type) => [s("path", { class: type, d }), s("path", { class: type, d, ...mirror })];

const standing = () => [
  halves(SIDE, "skin"),
  s("ellipse", { class: "skin", cx: 0, cy: 25, rx: 17, ry: 25 }),
  halves(ARM, "skin"),
];

const FRONT = [() => [standing(), s("path", { class: "detail", d: "M-22 122Q-14 133 -4 126M22 122Q14 133 4 126M-11 60Q0 68 11 60" })]];
const BACK = [() => [standing(), s("path", { class: "detail", d: "M0 66V160M-26 86Q-18 104 -14 112M26 86Q18 104 14 112M-17 25Q-16 46 0 47Q16 46 17 25" })]];
const FLEXED = [() => s("path", { class: "skin", d: BENT })];
const PALM = [() => [s("path", { class: "skin", d: HAND }), s("path", { class: "detail", d: "M-12 40Q0 30 12 32M-2 60Q2 44 14 40" })]];

/** A tape round something: the near half as tape, the far half as dashes. */
function round(cx, cy, rx, ry, tilt = 0) {
  const turned = { transform: `rotate(${tilt} ${cx} ${cy})` };
  return [
    s("path", { class: "far", d: `M${cx - rx} ${cy}A${rx} ${ry} 0 0 1 ${cx + rx} ${cy}`, ...turned }),
    ...["tape-edge", "tape"].map((type) => s("path", { class: type, d: `M${cx - rx} ${cy}A${rx} ${ry} 0 0 0 ${cx + rx} ${cy}`, ...turned })),
  ];
}

const along = (d) => ["tape-edge", "tape"].map((type) => s("path", { class: type, d }));

const line = (d) => s("path", { class: "far", d });

/** What is drawn, the part of it that is shown (x, y, width; the height follows), and where the tape lies. */
const PICTURES = {
  upperArmGirth: [FRONT, [4, 66, 84], () => round(47.5, 114, 11, 3.6, -15)],
  upperArmGirthFlexed: [FLEXED, [-6, -18, 100], () => round(34, 58.5, 20.5, 4.5, 92)],
  armLength: [FRONT, [-42, 56, 176], () => along("M43 75C53 78 58 90 60 106C63 124 66 138 70 150C76 168 80 188 82 207")],
  elbowGirth: [FRONT, [22, 110, 76], () => round(59, 152, 8.6, 3, -17)],
  wristGirth: [FRONT, [36, 168, 76], () => round(74.5, 207, 5.4, 2.2, -15)],
  handGirth: [PALM, [-34, -20, 80], () => round(-1, 31, 17, 4.5, -4)],
  armscyeGirth: [FRONT, [2, 50, 78], () => round(38.5, 91, 17.5, 6, 78)],
  bustGirth: [FRONT, [-64, 54, 128], () => round(0, 119, 36, 6)],
  stature: [FRONT, [-186, -12, 364], () => [along("M-104 0V398"), line("M-112 0H0M-112 398H0")]],
  upperArmLength: [FRONT, [-10, 62, 110], () => along("M43 75C53 78 58 90 60 106C63 124 66 138 70 151")],
  forearmGirthFlexed: [FLEXED, [-6, -18, 100], () => round(70.5, 36, 13.5, 4, 2)],
  shoulderGirth: [FRONT, [-70, 38, 140], () => round(0, 90, 53, 7)],
  upperChestGirth: [FRONT, [-64, 46, 128], () => round(0, 107, 34.5, 5.5)],
  chestGirthSixthRib: [FRONT, [-64, 60, 128], () => round(0, 136, 33.5, 5.5)],
  neckBaseGirth: [FRONT, [-44, 20, 88], () => round(0, 60, 12.5, 5)],
  waistGirth: [FRONT, [-64, 96, 128], () => round(0, 160, 27.5, 5)],
  hipGirth: [FRONT, [-70, 140, 140], () => round(0, 212, 40.5, 6)],
  scyeDepth: [BACK, [-64, 36, 128], () => [line("M-40 108H40"), along("M0 60V108")]],
};

const SHAPE = 1.16;

/** The measurements that have a drawing, those first that a sleeve needs most. */
export const DRAWN = Object.keys(PICTURES);

/** The picture of a measurement; what it shows is said by the words beside it. */
export function measurePicture(dimension) {
  const [[figure], [x, y, width], tape] = PICTURES[dimension];
  return s(
    "svg",
    { class: "figure", viewBox: `${x} ${y} ${width} ${(width * SHAPE).toFixed(1)}`, "aria-hidden": "true", "data-figure": dimension },
    figure(),
    tape(),
  );
}

// What a measure is, as a small picture beside its words: half the sleeve as it is drafted, what is measured in red.

import { s } from "../common/dom.js";

const FOLD = "M12 4V64";
const CAP = "M12 26C22 26 26 32 32 40S46 50 58 50";
const RAISED = "M12 8C24 8 27 22 30 34S44 50 58 50";
const BELOW = "M12 64L58 50";
const GUIDE = "M12 26L58 50";

/** A length with barbs at both ends. */
const measure = (d) => s("path", { class: "measured", d });
const line = (d, kind = "") => s("path", { class: kind, d });

/** The armhole from the side, with the part that the overlay leaves free. */
const armhole = (free) => [s("ellipse", { cx: 35, cy: 36, rx: 19, ry: 27 }), line("M20 53A19 27 0 1 1 50 53", "laid"), measure(free)];

const DRAWN = {
  "/overlay/rise": () => [line(FOLD, "fold"), line(CAP), line(RAISED, "laid"), line(BELOW, "laid"), measure("M6 8V26M3 8H9M3 26H9")],
  "/overlay/join": () => [line(FOLD, "fold"), line(CAP), line(RAISED, "laid"), line(GUIDE, "fold"), s("circle", { class: "measured-point", cx: 38, cy: 46, r: 3.5 })],
  "/overlay/fullness": () => [line("M8 30C18 10 26 10 35 30S52 50 62 30", "measured"), line("M8 56H62", "laid")],
  "/overlay/length": () => [line(FOLD, "fold"), line(CAP), line(RAISED, "laid"), line(BELOW, "laid"), measure("M6 26V64M3 26H9M3 64H9")],
  "/overlay/extraWidth": () => [line(FOLD, "fold"), line(CAP), line("M12 8C24 8 27 22 32 34S50 50 66 50", "laid"), measure("M58 56H66M58 53V59M66 53V59")],
  "/overlay/frontGap": () => armhole("M20 53A19 27 0 0 0 35 63"),
  "/overlay/backGap": () => armhole("M50 53A19 27 0 0 1 35 63"),
  "/sleeve/capHeight": () => [line(FOLD, "fold"), line(CAP), line("M12 50H58", "fold"), measure("M6 26V50M3 26H9M3 50H9")],
  "/sleeve/capOutward": () => [line(FOLD, "fold"), line(CAP), line(GUIDE, "fold"), measure("M23.5 32L26 27")],
  "/sleeve/capInward": () => [line(FOLD, "fold"), line(CAP), line(GUIDE, "fold"), measure("M46.5 44L44 49")],
  "/overlay/hemSagitta": () => [line(FOLD, "fold"), line("M12 64Q42 64 58 50", "laid"), line(BELOW, "fold"), measure("M35 57L38 61")],
  "/overlay/sideDepth": () => [line(FOLD, "fold"), line(CAP), line("M12 64H58V50", "laid"), measure("M64 50V64M61 50H67M61 64H67")],
};

/** The picture of a place of the style; nothing where there is none. */
export function fieldPicture(path) {
  const whole = path.replace(/\/(front|back)\/(cap)/, "/$2");
  return whole in DRAWN ? s("svg", { viewBox: "0 0 70 68", class: "field-picture", "aria-hidden": "true" }, DRAWN[whole]()) : "";
}

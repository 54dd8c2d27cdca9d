// What the layers are made of. Stiffness is given as the bending length of the cantilever test (ISO 9073-7, ASTM D1388): half the length of a strip that hangs down by 41.5° over an edge.

import { GRAVITY } from "./cloth.js";

/** Mass of a square metre, kg: a gown cloth, its lining, and an interfacing that is the heavier the stiffer. From memory of the trade, no source. */
const MASS = { cloth: 0.16, lining: 0.07 };
const interfacingMass = (centimetres) => 0.03 + 0.02 * centimetres;

/** Bending length of a lining, cm. From memory of the trade, no source. */
const LINING = 1.8;

/** How a woven cloth resists being stretched, N/m: so much that its own weight does not show. */
const STRETCH = 1500;

/** Cloth and interfacing by name; bending lengths in cm. From memory of the trade, no source. */
export const PRESETS = { soft: { cloth: 2, interfacing: 2.5 }, firm: { cloth: 2.5, interfacing: 5 }, stiff: { cloth: 2.5, interfacing: 8 } };

/** What a bending length may be, cm; the test itself does not go farther. */
export const RANGE = { least: 0.5, greatest: 15 };

/** Flexural rigidity per width, N·m, of a cloth of a mass (kg/m²) and a bending length (cm): mass × gravity × length³ (Peirce 1930). */
export const rigidity = (mass, centimetres) => mass * GRAVITY * (centimetres / 100) ** 3;

/** The under-sleeve: a single layer of cloth. */
export const sleeve = ({ cloth }) => ({ mass: MASS.cloth, stretch: STRETCH, rigidity: rigidity(MASS.cloth, cloth) });

/** The overlay: cloth, interfacing and lining that lie on one another unglued, so that their rigidities add. */
export function overlay({ cloth, interfacing }) {
  const stiff = interfacingMass(interfacing);
  return {
    mass: MASS.cloth + MASS.lining + stiff,
    stretch: 2 * STRETCH,
    rigidity: rigidity(MASS.cloth, cloth) + rigidity(MASS.lining, LINING) + rigidity(stiff, interfacing),
  };
}

/** The bending length, cm, of layers taken together. */
export const bendingLength = ({ mass, rigidity: each }) => 100 * (each / (mass * GRAVITY)) ** (1 / 3);

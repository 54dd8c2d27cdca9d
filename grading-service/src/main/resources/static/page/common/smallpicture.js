// A small picture of a style: how its base size is worn, as a sketch.

import { sizeRun } from "./service.js";
import { worn } from "../style/worn.js";
import { say } from "./words.js";

/** Pictures by what they show; the same style is drafted once while the page is open. */
const drawn = new Map();

/** The base size alone, without what is not seen of it. */
function alone({ grade, materials, paper, plotter, sizeTable, sizes, ease, ...style }) {
  const base = style.baseSize ?? sizes?.[0];
  return { ...style, baseSize: base, sizes: [base] };
}

async function sketch(style) {
  const answer = await (await sizeRun(style, "application/json")).json();
  return worn(answer, answer.sizes[0], style, say);
}

/** The picture; rejected where the style cannot be drafted. */
export async function smallPicture(style) {
  const base = alone(style);
  const name = JSON.stringify(base);
  if (!drawn.has(name)) {
    const picture = sketch(base);
    picture.catch(() => drawn.delete(name));
    drawn.set(name, picture);
  }
  const picture = (await drawn.get(name)).cloneNode(true);
  picture.removeAttribute("role");
  picture.removeAttribute("aria-label");
  picture.setAttribute("aria-hidden", "true");
  picture.classList.add("small-picture");
  return picture;
}

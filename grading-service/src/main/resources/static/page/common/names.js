// What graded dimensions and measurements of the body are called on the page.

import { find, say } from "./words.js";

/** Where the name of a graded dimension is not the last step of its place in the style. */
const PLACES = {
  overlayLength: "/overlay/length",
  frontWidth: "/sleeve/front/width",
  frontCapOutward: "/sleeve/front/capOutward",
  frontCapInward: "/sleeve/front/capInward",
  frontArmhole: "/sleeve/front/armhole",
  backCapOutward: "/sleeve/back/capOutward",
  backCapInward: "/sleeve/back/capInward",
  pleatDepth: "/overlay/pleats/depth",
};

/** What a graded dimension is called. */
export function gradeName(name) {
  const fields = find("fields");
  const path = PLACES[name] ?? Object.keys(fields).find((key) => key.endsWith("/" + name) && !/\/(front|back|seamAllowance)\//.test(key));
  return path === "/overlay/pleats/depth" ? `${find("groups").pleats}${say("colon")}${fields[path][0]}` : (fields[path]?.[0] ?? name);
}

/** What a measurement of the body is called (by its name of ISO 8559-1). */
export const bodyName = (dimension) => find("body")[dimension]?.[0] ?? dimension;

/** What a measure is called: by its point of measure, or as a dimension of the style. */
export const measureName = (code) => find("points")[code] ?? gradeName(code);

/** Who did something: by the name of the key, which is as it was given; where there are no keys, the service says so in English. */
export const caller = (name) => (name === "this machine" ? say("thisMachine") : name);

/** A name for a place of a request; that of the nearest place around it where it has none of its own. Nothing for the whole request. */
export function placeName(pointer) {
  const [, group, name, more] = pointer.replace(/^\/sizeRun(?=\/)/, "").split("/");
  const plain = pointer.replace(/^\/sizeRun(?=\/)/, "");
  if (group === "grade" && name) return `${say("jumps")}${say("colon")}${gradeName(name)}`;
  if (group === "wearer" && name) return bodyName(name);
  if (group === "ease" && name) return `${say("wearer.ease")}${say("colon")}${find("wearer.eases")[name]?.[0] ?? name}`;
  if (group === "materials" && name === "order") return `${find("fields")["/materials/order"][0]}${more ? " " + more : ""}`;
  const cloth = plain.match(/^\/materials\/fabrics\/(\d+)\/(\w+)$/);
  // A request may name several cloths, so the words say which one is meant.
  if (cloth) return `${say("cloth.name")} ${Number(cloth[1]) + 1}, ${find("fields")["/materials/" + cloth[2]]?.[0] ?? cloth[2]}`;
  if (group === "materials") return find("fields")["/materials/" + plain.split("/").pop()]?.[0] ?? say("cloth.name");
  if (group === "sizes" && name) return say("problems.sizeNumber", { n: Number(name) + 1 });
  const own = find("problems.places")[plain];
  if (own) return own;
  for (let at = plain; at !== ""; at = at.slice(0, at.lastIndexOf("/"))) {
    const field = find("fields")[at];
    if (field) return field[0];
  }
  return find("problems.places")["/" + group] ?? "";
}

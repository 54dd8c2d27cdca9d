// Where the edges of the pieces come to lie when they are sewn: the cap along the armhole, the overlay's edge folded at its marks, the underarm seam closed.

import { Line } from "./outline.js";

/** How far apart the layers of a pleat lie, metres: as thick as the cloth. */
const LAYER = 0.0009;

/** A length and a share that are so near are the same. */
const SAME = 1e-4;

/** Points spread along a line between stops, as far apart as spacing says: [length along the line]. */
function spread(stops, spacing) {
  const lengths = [stops[0]];
  for (let i = 1; i < stops.length; i++) {
    const gap = stops[i] - stops[i - 1];
    const parts = Math.max(1, Math.round(gap / spacing));
    for (let k = 1; k <= parts; k++) lengths.push(stops[i - 1] + (gap * k) / parts);
  }
  return lengths;
}

/** Between stops of a line, what they stand for, in equal parts. */
function between(stops, length) {
  let i = 1;
  while (i < stops.length - 1 && stops[i].along < length - 1e-9) i++;
  const [a, b] = [stops[i - 1], stops[i]];
  const share = b.along === a.along ? 0 : (length - a.along) / (b.along - a.along);
  return { seam: a.seam + share * (b.seam - a.seam), under: a.under + share * (b.under - a.under), layer: a.layer + share * (b.layer - a.layer) };
}

const unique = (list) => list.filter((each, i) => i === 0 || Math.abs(each - list[i - 1]) > SAME);

/** The line half way between two marks: where the cloth turns back under a fold. */
const halfway = (a, b) => ({ from: a.from.map((each, k) => (each + b.from[k]) / 2), to: a.to.map((each, k) => (each + b.to[k]) / 2) });

/**
 * The top edge of the overlay, folded at its marks. Line runs from back to front as the piece is cut; pleats are those of the answer, in metres, or null. Answers with the stops along
 * the edge, from back to front, each with its place on the finished seam from the front end (seam), how far under it lies (1 at the turn below a fold), and its layer; and with
 * the lines along which the cloth is creased.
 */
export function folded(line, marks, pleats, span) {
  const stop = (along, seam, under, layer) => ({ along, seam, under, layer });
  const ends = [stop(0, span, 0, 0), stop(line.length, 0, 0, 0)];
  if (!pleats) return { stops: ends, creases: [] };
  // The same marks, once by where they are drawn, once by how far they are along the flat edge from its front end.
  const drawn = marks.map((mark) => ({ mark, along: line.nearest(mark.from) })).sort((a, b) => a.along - b.along);
  const told = pleats.folds.flatMap((fold) => [{ fold, mark: fold.foldMark, crease: true }, { fold, mark: fold.placementMark, crease: false }]).sort((a, b) => b.mark - a.mark);
  const places = new Map();
  let last = -1;
  told.forEach((each, i) => {
    // Folds of a box pleat may share a mark.
    if (i === 0 || Math.abs(each.mark - told[i - 1].mark) > SAME) last += 1;
    places.set(each, drawn[Math.min(last, drawn.length - 1)]);
  });
  const stops = [...ends];
  const creases = [];
  for (const fold of pleats.folds) {
    const [crease, laid] = [true, false].map((which) => places.get(told.find((each) => each.fold === fold && each.crease === which)));
    const turn = halfway(crease.mark, laid.mark);
    const under = fold.lie === "back" ? -fold.depth : fold.depth;
    stops.push(
      stop(crease.along, fold.finished, 0, 0),
      stop((crease.along + laid.along) / 2, fold.finished + under, 1, 1),
      stop(laid.along, fold.finished, 0.4, 1),
    );
    creases.push({ from: crease.mark.from, to: crease.mark.to }, { from: line.at((crease.along + laid.along) / 2), to: turn.to });
  }
  stops.sort((a, b) => a.along - b.along);
  return { stops: stops.filter((each, i) => i === 0 || each.along - stops[i - 1].along > SAME), creases };
}

/** The points of an edge that is sewn to the armhole: [{point, place, under}], place in space. */
export function alongArmhole(line, stops, spacing, armhole, start, out) {
  return spread(unique(stops.map((each) => each.along)), spacing).map((length) => {
    const { seam, under, layer } = between(stops, length);
    return { point: line.at(length), place: armhole.beyond(start + seam, out - layer * LAYER), under };
  });
}

/** The stops of a cap: below the notches it is sewn as it lies, above them it is eased in. The line runs from the back underarm point to the front one. */
export function capped(line, apex, notches, armhole) {
  const back = armhole.length - armhole.front;
  const [behind, before] = notches;
  const ordered = (list) => list.every((each, i) => i === 0 || each.along > list[i - 1].along + SAME) && list.every((each, i) => i === 0 || each.seam < list[i - 1].seam - SAME);
  const stop = (along, seam) => ({ along, seam, under: 0, layer: 0 });
  const plain = [stop(0, armhole.length), stop(apex, armhole.front), stop(line.length, 0)];
  const eased = [plain[0], stop(behind, armhole.length - behind), plain[1], stop(line.length - before, before), plain[2]];
  return behind > SAME && before > SAME && behind < back && before < armhole.front && ordered(eased) ? eased : plain;
}

/** Points of two edges that are sewn to one another, in pairs of equal share: both begin at the armhole. */
export function paired(first, second, spacing) {
  const count = Math.max(2, Math.round(first.length / spacing));
  return Array.from({ length: count + 1 }, (nothing, i) => [first.at((first.length * i) / count), second.at((second.length * i) / count)]);
}

export { Line };

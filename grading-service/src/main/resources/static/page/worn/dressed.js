// A sleeve sewn together and put on: the net pieces of one size made a mesh, their edges brought to where they are sewn, and the cloth let go under gravity.

import { toMm } from "../common/units.js";
import { Armhole, body, contact } from "./body.js";
import { Cloth, GRAVITY } from "./cloth.js";
import { meshed } from "./mesh.js";
import { outlined } from "./outline.js";
import { alongArmhole, capped, folded, Line, paired } from "./seams.js";
import * as stuffs from "./stuffs.js";

/** How far apart the points of the meshes lie, metres. */
const FINE = 0.011;
const COARSE = 0.018;

/** Seconds of a step, and how long sewing and settling take at most in the time of the cloth. */
const STEP = 1 / 2000;
const SEWING = 0.25;
const LONGEST = 1.6;

/** Slowed by (1/s): while it is sewn, and while it settles. */
const HASTE = 200;
const CALM = 5;

/** It lies still when it moves no faster than this, m/s. */
const STILL = 0.03;

/** Clearance of the cloth from the skin, metres: an overlay lies over a sleeve. */
const OVER_SKIN = 0.002;
const OVER_SLEEVE = 0.006;

/** While it is arranged the cloth is as stiff as this, N·m, so that it lies in large folds, as a hand lays it. */
const ARRANGED = 0.006;

/** Layers of the overlay keep so far apart, metres: less than the mesh is fine, so that none slips through another. */
const APART = 0.007;

/** How often its threads are given their length back once it lies still. */
const PASSES = 60;

const smooth = (t) => t * t * (3 - 2 * t);

/**
 * How an overlay is arranged before it is let go, as a hand would: along an arc of the length of its crown, from the shoulder point up and out, and down to the level of the underarm.
 * Answers with how far out and how high a point lies by its way from the apex.
 */
function arch(length, out, down) {
  const chord = Math.hypot(out, down);
  let [low, high] = [1e-4, 3];
  for (let i = 0; i < 50; i++) {
    const half = (low + high) / 2;
    if (half / Math.sin(half) < length / chord) low = half;
    else high = half;
  }
  const radius = length / (2 * low);
  return (way) => {
    const turn = low * ((2 * way) / length - 1);
    const along = chord / 2 + Math.min(radius * Math.sin(turn), chord);
    const off = radius * (Math.cos(turn) - Math.cos(low));
    return [(along * out + off * down) / chord, (off * out - along * down) / chord];
  };
}

const SAME = 1e-6;
const equal = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]) < SAME;

export class Dressed {
  #particles = 0;
  #places = [];
  #clearance = [];
  #owner = [];
  #flat = [];
  #targets = [];
  #meshes = [];

  /** Size of an answer in its unit; figures of the body in metres; bending lengths {cloth, interfacing} in cm. */
  constructor(size, unit, figures, lengths) {
    this.metres = (length) => toMm(length, unit) / 1000;
    const { dimensions } = size;
    const whole = this.metres(dimensions.armhole ?? size.capLine);
    const front = dimensions.frontArmhole === undefined ? whole / 2 : this.metres(dimensions.frontArmhole);
    this.armhole = new Armhole(front, whole - front);
    this.body = body(figures);
    this.capHeight = this.metres(dimensions.capHeight);
    this.seams = [];
    const piece = (...ids) => size.pieces.find((each) => ids.includes(each.id));
    const sleeve = piece("under-sleeve", "base-sleeve");
    const main = piece("overlay-main");
    if (sleeve) this.#addSleeve(outlined(sleeve, unit), sleeve, stuffs.sleeve(lengths));
    if (main) this.#addOverlay(outlined(main, unit), size, stuffs.overlay(lengths), sleeve ? OVER_SLEEVE : OVER_SKIN);
    this.arranged = ARRANGED / Math.max(...this.#meshes.map((mesh) => mesh.rigidity));
    this.cloth = new Cloth(this.#meshes, this.#particles);
    this.cloth.position.set(this.#places.flat());
    for (const { particle, from } of this.#targets) this.cloth.hold(particle, from);
    this.cloth.keepApart(APART, (i, j) => this.#owner[i] === this.#owner[j] && (this.#owner[i] === 0 || Math.hypot(this.#flat[i][0] - this.#flat[j][0], this.#flat[i][1] - this.#flat[j][1]) < 2.2 * FINE));
    this.contact = contact([...this.body.arm, ...this.body.trunk], Float64Array.from(this.#clearance));
    this.time = 0;
    this.done = false;
  }

  /** What is drawn: [{id, triangles of particles}]. */
  get surfaces() {
    return this.#meshes.map(({ id, triangles, particle }) => ({ id, triangles: triangles.map((three) => three.map((vertex) => particle[vertex])) }));
  }

  #mesh(id, ring, lines, spacing, stuff, twins, place, clearance) {
    const { flat, triangles, lines: creases } = meshed(ring, lines, spacing);
    const particle = flat.map((point, i) => {
      const twin = twins.get(i);
      if (twin !== undefined) return -1 - twin;
      this.#places.push(place(point, i));
      this.#clearance.push(clearance);
      this.#owner.push(id === "overlay-main" ? 1 : 0);
      this.#flat.push(point);
      return this.#particles++;
    });
    for (let i = 0; i < particle.length; i++) if (particle[i] < 0) particle[i] = particle[-1 - particle[i]];
    const pressed = new Set(creases.flatMap((line) => line.slice(1).map((each, i) => [line[i], each].sort((a, b) => a - b).join())));
    const creased = (a, b) => pressed.has(a < b ? a + "," + b : b + "," + a);
    this.#meshes.push({ id, flat, triangles, particle, creased, ...stuff });
    return { flat, particle };
  }

  /** Sews points of a ring to places on the armhole. */
  #sew(name, { flat, particle }, sewn) {
    for (const { vertex, place } of sewn) this.#targets.push({ particle: particle[vertex], from: this.#places[particle[vertex]], to: place });
    this.seams.push({ name, points: sewn.map(({ vertex }) => ({ particle: particle[vertex], flat: flat[vertex] })) });
  }

  #addSleeve({ edges, lines }, piece, stuff) {
    const at = edges.findIndex((edge) => edge.kind === "armhole");
    const cap = new Line(edges[at].points);
    const apex = cap.nearest([0, this.capHeight]);
    const balance = (wanted) => {
      const found = piece.notches.filter(({ kind, edge }) => edge === edges[at].name && (kind === "single" || kind === "double")).map(({ distance }) => this.metres(distance));
      if (found.length === 0) return 0;
      return found.length === 1 ? found[0] : wanted === "back" ? Math.min(...found) : cap.length - Math.max(...found);
    };
    const stops = capped(cap, apex, [balance("back"), balance("front")], this.armhole);
    const top = alongArmhole(cap, stops, COARSE / 2, this.armhole, 0, 0);
    // Round the piece: the cap from back to front, down the front seam, the lower edge, up the back seam.
    const after = [...edges.slice(at + 1), ...edges.slice(0, at)];
    const dart = lines.filter((line) => line.kind === "dart-leg");
    const across = ({ points }) => dart.length === 2 && [points[0], points[points.length - 1]].every((end) => dart.some((leg) => equal(end, leg.to)));
    const sides = after.filter((edge) => edge.kind === "side-seam" && !across(edge));
    const ring = top.map(({ point }) => point);
    const twins = new Map();
    let seam = null;
    if (sides.length >= 2) {
      const down = new Line(sides[0].points);
      const up = new Line(...sides.slice(1).reverse().map((edge) => [...edge.points].reverse()));
      seam = this.#closed(ring, twins, down, up, after.filter((edge) => edge.kind === "hem"), dart, top.length);
    } else for (const edge of after) this.#open(ring, edge.points, COARSE);
    const wide = (y) => this.#extent(ring, y);
    const bicep = wide(-SAME);
    const place = ([x, y]) => this.#round(x, y, y >= 0 ? bicep : wide(y));
    const mesh = this.#mesh(piece.id, ring, [], COARSE, stuff, twins, place, OVER_SKIN);
    this.#sew("cap", mesh, top.map(({ place: to }, vertex) => ({ vertex, place: to })));
    if (seam) this.seams.push({ name: "underarm seam", points: seam.map((vertex) => ({ particle: mesh.particle[vertex], flat: mesh.flat[vertex] })) });
  }

  /** The underarm seam closed: points of the back edge are those of the front edge, and the legs of a dart those of one another. */
  #closed(ring, twins, down, up, hems, dart, cap) {
    const pairs = paired(down, up, COARSE);
    const first = [cap - 1];
    for (const [front] of pairs.slice(1)) first.push(ring.push(front) - 1);
    this.#open(ring, hems.flatMap((edge) => edge.points), COARSE);
    ring.pop();
    const turn = dart.length === 2 ? dart.map((leg) => up.nearest(leg.to)) : null;
    // Up the back edge, from the hem to the underarm point, which is the first of the cap.
    for (let i = pairs.length - 1; i >= 1; i--) {
      const vertex = ring.push(pairs[i][1]) - 1;
      twins.set(vertex, first[i]);
      const gone = (up.length * i) / (pairs.length - 1);
      const next = (up.length * (i - 1)) / (pairs.length - 1);
      if (turn && Math.min(...turn) <= gone && Math.min(...turn) > next) this.#dart(ring, twins, dart, first[i]);
    }
    twins.set(0, first[0]);
    return first;
  }

  #dart(ring, twins, dart, end) {
    const [lower, upper] = dart[0].to[1] < dart[1].to[1] ? dart : [dart[1], dart[0]];
    const leg = new Line([lower.to, lower.from]);
    const other = new Line([upper.to, upper.from]);
    const parts = Math.max(2, Math.round(leg.length / COARSE));
    const mouth = ring.push(lower.to) - 1;
    const numbers = [mouth];
    for (let k = 1; k <= parts; k++) numbers.push(ring.push(leg.at((leg.length * k) / parts)) - 1);
    for (let k = parts - 1; k >= 0; k--) twins.set(ring.push(other.at((other.length * k) / parts)) - 1, numbers[k]);
  }

  /** Points along an edge that is sewn to nothing; the first of them is there already. */
  #open(ring, points, spacing) {
    const line = new Line(points);
    const parts = Math.max(1, Math.round(line.length / spacing));
    for (let k = 1; k <= parts; k++) ring.push(line.at((line.length * k) / parts));
  }

  /** Half the width of a ring at a height. */
  #extent(ring, y) {
    let [least, greatest] = [Infinity, -Infinity];
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [a, b] = [ring[i], ring[j]];
      if (a[1] > y === b[1] > y) continue;
      const x = a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]);
      least = Math.min(least, x);
      greatest = Math.max(greatest, x);
    }
    return greatest > least ? (greatest - least) / 2 : (Math.max(...ring.map(([x]) => x)) - Math.min(...ring.map(([x]) => x))) / 2;
  }

  /** Where a point of the flat sleeve begins: rolled round the arm. */
  #round(x, y, half) {
    const { joint, elbow, wrist } = this.body;
    const down = Math.max(0, this.capHeight - y + joint[1]);
    const upper = Math.hypot(...joint.map((each, k) => elbow[k] - each));
    const lower = Math.hypot(...elbow.map((each, k) => wrist[k] - each));
    const [from, to, t] = down < upper ? [joint, elbow, down / upper] : [elbow, wrist, (down - upper) / lower];
    const centre = from.map((each, k) => each + t * (to[k] - each));
    const angle = (Math.PI * x) / half;
    const radius = half / Math.PI;
    return [centre[0] + radius * Math.cos(angle), down > 0 ? centre[1] : y - this.capHeight, centre[2] - radius * Math.sin(angle)];
  }

  #addOverlay({ edges, lines }, size, stuff, clearance) {
    const at = edges.findIndex((edge) => edge.kind === "attached-edge");
    const line = new Line(edges[at].points);
    const gap = (name) => this.metres(size.dimensions[name] ?? 0);
    const span = this.armhole.length - gap("frontGap") - gap("backGap");
    const pleats = size.pleats && {
      folds: size.pleats.folds.map((fold) => ({ lie: fold.lie, foldMark: this.metres(fold.foldMark), placementMark: this.metres(fold.placementMark), finished: this.metres(fold.finished), depth: this.metres(fold.depth) })),
    };
    const { stops, creases } = folded(line, lines.filter(({ kind }) => kind.startsWith("pleat")), pleats, span);
    const out = 2 * OVER_SKIN - 0.0035;
    const top = alongArmhole(line, stops, FINE, this.armhole, gap("frontGap"), out);
    const ring = top.map(({ point }) => point);
    for (const edge of [...edges.slice(at + 1), ...edges.slice(0, at)]) this.#open(ring, edge.points, FINE);
    ring.pop();
    const within = creases.map(({ from, to }) => {
      const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
      const parts = Math.max(2, Math.round(long / FINE));
      return Array.from({ length: parts + 1 }, (nothing, k) => from.map((each, i) => each + ((to[i] - each) * k) / parts));
    });
    const depth = Math.max(0, ...(pleats?.folds ?? []).map((fold) => fold.depth));
    const half = Math.max(...ring.map(([x]) => Math.abs(x)));
    const radius = Math.max(this.body.arm[0].thick + 0.03, half / 2.3);
    // What comes to lie under a fold begins a little nearer to the arm, so that it goes that way.
    const dip = ([x, y]) => {
      let [best, under] = [Infinity, 0];
      for (const each of top) {
        const far = Math.hypot(each.point[0] - x, each.point[1] - y);
        if (far < best) [best, under] = [far, each.under];
      }
      return under * Math.max(0, 1 - best / (2.5 * depth || 1)) * 0.8 * depth;
    };
    const top0 = Math.max(...ring.map(([, y]) => y));
    const dome = arch(top0, radius, this.capHeight);
    const place = (point) => {
      const [out, up] = point[1] > 0 ? dome(top0 - point[1]) : [radius, point[1] - this.capHeight];
      const angle = point[0] / Math.max(radius * 0.5, out);
      const far = out - dip(point);
      return [0.012 + far * Math.cos(angle), up, -far * Math.sin(angle)];
    };
    const mesh = this.#mesh("overlay-main", ring, within, FINE, stuff, new Map(), place, clearance);
    this.#sew("overlay", mesh, top.map(({ place: to }, vertex) => ({ vertex, place: to })));
  }

  /** Goes on for some milliseconds; true once it lies still. */
  go(milliseconds) {
    const end = performance.now() + milliseconds;
    while (performance.now() < end) {
      for (let k = 0; k < 20; k++) this.#step();
      if (this.#still) {
        this.cloth.straighten(PASSES, STEP, this.contact, this.#stitched());
        this.done = true;
        return true;
      }
    }
    return false;
  }

  /** The stitches of the seams that are not held on the body. */
  #stitched() {
    const open = this.seams.filter(({ name }) => name === "underarm seam");
    return open.flatMap(({ points }) => points.slice(1).map(({ particle, flat }, i) => [points[i].particle, particle, Math.hypot(flat[0] - points[i].flat[0], flat[1] - points[i].flat[1])]));
  }

  #step() {
    const sewing = this.time < SEWING;
    if (this.time <= SEWING + 2 * STEP) {
      const share = smooth(Math.min(1, this.time / SEWING));
      for (const { particle, from, to } of this.#targets) this.cloth.hold(particle, from.map((each, k) => each + share * (to[k] - each)));
    }
    this.cloth.stiffened = sewing ? this.arranged : 1;
    this.cloth.step(STEP, sewing ? 0 : GRAVITY, sewing ? HASTE : CALM, this.contact);
    this.time += STEP;
  }

  get #still() {
    return this.time >= LONGEST || (this.time > SEWING + 0.3 && this.cloth.speed() < STILL);
  }
}

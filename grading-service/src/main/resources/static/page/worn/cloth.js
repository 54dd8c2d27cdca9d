// Cloth as particles (SI units): position-based dynamics in small steps of one pass each (Macklin and others, Small steps in physics simulation, 2019). Stretch is a spring along
// each edge of the mesh, bending the quadratic energy of Bergou, Wardetzky, Harmon, Zorin and Grinspun (A quadratic bending model for inextensible surfaces, 2006)
// over each pair of triangles, so that both have the stiffness of a real cloth: newtons per metre, and newton metres of flexural rigidity.
//
// A pass that starts anew in each step lets a constraint at rest give by its particles' inverse masses × dt² more than its compliance says. That much is therefore taken off
// the compliance; what is stiffer than the step can carry is as stiff as it can be.

export const GRAVITY = 9.81;

/** How often a seam is gone along in a pass. */
const SWEEPS = 8;

/** After so many steps it is looked anew which layers may meet. */
const MEETING = 20;

const cross2 = (a, b, c) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
const dot2 = (a, b, c) => (b[0] - a[0]) * (c[0] - a[0]) + (b[1] - a[1]) * (c[1] - a[1]);

/** Cotangent of the angle at a between b and c. */
const cotangent = (a, b, c) => dot2(a, b, c) / Math.abs(cross2(a, b, c));

/** The edges of a mesh with the triangles beside them: [vertex, vertex, opposite vertex, other opposite vertex or -1]. */
function hinges(triangles) {
  const edges = new Map();
  for (const triangle of triangles) {
    for (let i = 0; i < 3; i++) {
      const [a, b, c] = [triangle[i], triangle[(i + 1) % 3], triangle[(i + 2) % 3]];
      const key = a < b ? a + "/" + b : b + "/" + a;
      const edge = edges.get(key);
      if (edge) edge[3] = c;
      else edges.set(key, [a, b, c, -1]);
    }
  }
  return [...edges.values()];
}

/**
 * Meshes made one system. A mesh is {flat: [[x, y]…] in metres as cut, triangles: [[a, b, c]…], particle: the particle of each vertex, mass: kg/m², stretch: N/m, rigidity: N·m,
 * creased: (a, b) → whether the cloth is pressed along that edge}. Vertices of several meshes that are sewn together share a particle.
 */
export class Cloth {
  #edges = [];
  #bends = [];

  constructor(meshes, particles) {
    this.count = particles;
    this.position = new Float64Array(3 * particles);
    this.velocity = new Float64Array(3 * particles);
    this.before = new Float64Array(3 * particles);
    this.mass = new Float64Array(particles);
    this.inverse = new Float64Array(particles);
    /** Where a particle is held; one that is held has no inverse mass. */
    this.held = new Map();
    /** How many times as stiff as it is the cloth is while it is arranged. */
    this.stiffened = 1;
    for (const mesh of meshes) this.#add(mesh);
    for (let i = 0; i < particles; i++) this.inverse[i] = this.mass[i] > 0 ? 1 / this.mass[i] : 0;
    this.#pack();
  }

  #add({ flat, triangles, particle, mass, stretch, rigidity, creased = () => false }) {
    for (const [a, b, c] of triangles) {
      const share = (mass * Math.abs(cross2(flat[a], flat[b], flat[c]))) / 6;
      for (const vertex of [a, b, c]) this.mass[particle[vertex]] += share;
    }
    for (const [a, b, c, d] of hinges(triangles)) {
      const length = Math.hypot(flat[a][0] - flat[b][0], flat[a][1] - flat[b][1]);
      const area = (Math.abs(cross2(flat[a], flat[b], flat[c])) + (d < 0 ? 0 : Math.abs(cross2(flat[a], flat[b], flat[d])))) / 2;
      // Springs of k = E √3/2 make an equilateral mesh as stiff as a sheet of E; there the two triangles have the area L² √3/2.
      if (particle[a] !== particle[b]) this.#edges.push({ a: particle[a], b: particle[b], length, stiffness: (stretch * area) / (length * length) });
      if (d < 0 || rigidity === 0 || creased(a, b)) continue;
      // So weighed, an equilateral mesh bent to a cylinder has just the energy of a plate, whichever way it is bent.
      const [c01, c02] = [cotangent(flat[a], flat[b], flat[c]), cotangent(flat[a], flat[b], flat[d])];
      const [c03, c04] = [cotangent(flat[b], flat[a], flat[c]), cotangent(flat[b], flat[a], flat[d])];
      this.#bends.push({ of: [a, b, c, d].map((each) => particle[each]), weights: [c03 + c04, c01 + c02, -c01 - c03, -c02 - c04], stiffness: rigidity / area });
    }
  }

  #pack() {
    const edges = this.#edges;
    const bends = this.#bends;
    this.ends = Int32Array.from(edges.flatMap(({ a, b }) => [a, b]));
    this.lengths = Float64Array.from(edges, (edge) => edge.length);
    this.soft = Float64Array.from(edges, (edge) => 1 / edge.stiffness);
    this.four = Int32Array.from(bends.flatMap((bend) => bend.of));
    this.weights = Float64Array.from(bends.flatMap((bend) => bend.weights));
    this.limp = Float64Array.from(bends, (bend) => 1 / bend.stiffness);
  }

  /** Holds a particle at a place. */
  hold(particle, place) {
    this.held.set(particle, place);
    this.inverse[particle] = 0;
  }

  /** Layers keep this far apart (m); near(i, j) tells of particles that lie side by side in the flat cloth and may come nearer. */
  keepApart(distance, near) {
    this.apart = distance;
    this.near = near;
    this.pairs = [];
    this.steps = 0;
  }

  /** Which particles may meet within the next steps: those in the same or in neighbouring cells of a grid. */
  #meet() {
    const { position: p, inverse, apart, near } = this;
    const cell = 2 * apart;
    const cells = new Map();
    const key = (x, y, z) => (x + 512) * 1048576 + (y + 512) * 1024 + (z + 512);
    const at = (i, k) => Math.floor(p[3 * i + k] / cell);
    this.pairs = [];
    for (let i = 0; i < this.count; i++) {
      if (inverse[i] === 0) continue;
      const [x, y, z] = [at(i, 0), at(i, 1), at(i, 2)];
      for (let dx = -1; dx <= 1; dx++) {
        for (let dy = -1; dy <= 1; dy++) {
          for (let dz = -1; dz <= 1; dz++) {
            for (const j of cells.get(key(x + dx, y + dy, z + dz)) ?? []) if (!near(i, j) && this.distance(i, j) < cell) this.pairs.push(i, j);
          }
        }
      }
      const own = key(x, y, z);
      if (cells.has(own)) cells.get(own).push(i);
      else cells.set(own, [i]);
    }
  }

  #part() {
    if (this.steps++ % MEETING === 0) this.#meet();
    const { position: p, inverse, apart, pairs } = this;
    for (let e = 0; e < pairs.length; e += 2) {
      const [a, b] = [3 * pairs[e], 3 * pairs[e + 1]];
      const [x, y, z] = [p[a] - p[b], p[a + 1] - p[b + 1], p[a + 2] - p[b + 2]];
      const far = Math.sqrt(x * x + y * y + z * z);
      if (far >= apart || far === 0) continue;
      const [wi, wj] = [inverse[pairs[e]], inverse[pairs[e + 1]]];
      const push = (apart - far) / ((wi + wj) * far);
      p[a] += wi * push * x;
      p[a + 1] += wi * push * y;
      p[a + 2] += wi * push * z;
      p[b] -= wj * push * x;
      p[b + 1] -= wj * push * y;
      p[b + 2] -= wj * push * z;
    }
  }

  /** One step of dt seconds under gravity (m/s²), slowed by a damping (1/s); contact(position, before, i) may push particles out of bodies. */
  step(dt, gravity, damping, contact) {
    const { position: p, velocity: v, before, inverse, count } = this;
    const slow = Math.max(0, 1 - damping * dt);
    for (let i = 0; i < count; i++) {
      const at = 3 * i;
      for (let k = 0; k < 3; k++) before[at + k] = p[at + k];
      if (inverse[i] === 0) continue;
      v[at + 1] -= gravity * dt;
      for (let k = 0; k < 3; k++) {
        v[at + k] *= slow;
        p[at + k] += v[at + k] * dt;
      }
    }
    for (const [i, place] of this.held) for (let k = 0; k < 3; k++) p[3 * i + k] = place[k];
    this.#bend(dt);
    this.#stretch(dt);
    if (this.apart) this.#part();
    if (contact) for (let i = 0; i < count; i++) if (inverse[i] > 0) contact(p, before, i);
    for (let at = 0; at < 3 * count; at++) v[at] = (p[at] - before[at]) / dt;
  }

  #stretch(dt) {
    const { position: p, inverse, ends, lengths, soft } = this;
    const per = 1 / (dt * dt);
    for (let e = 0, n = lengths.length; e < n; e++) {
      const i = ends[2 * e];
      const j = ends[2 * e + 1];
      const [wi, wj] = [inverse[i], inverse[j]];
      if (wi + wj === 0) continue;
      const a = 3 * i;
      const b = 3 * j;
      const x = p[a] - p[b];
      const y = p[a + 1] - p[b + 1];
      const z = p[a + 2] - p[b + 2];
      const length = Math.sqrt(x * x + y * y + z * z);
      if (length === 0) continue;
      const push = (lengths[e] - length) / (Math.max(wi + wj, soft[e] * per) * length);
      p[a] += wi * push * x;
      p[a + 1] += wi * push * y;
      p[a + 2] += wi * push * z;
      p[b] -= wj * push * x;
      p[b + 1] -= wj * push * y;
      p[b + 2] -= wj * push * z;
    }
  }

  #bend(dt) {
    const { position: p, inverse, four, weights, limp } = this;
    const per = 1 / (dt * dt);
    for (let e = 0, n = limp.length; e < n; e++) {
      const at = 4 * e;
      let [x, y, z, sum] = [0, 0, 0, 0];
      for (let k = 0; k < 4; k++) {
        const weight = weights[at + k];
        const i = four[at + k];
        x += weight * p[3 * i];
        y += weight * p[3 * i + 1];
        z += weight * p[3 * i + 2];
        sum += weight * weight * inverse[i];
      }
      if (sum === 0) continue;
      const back = -1 / Math.max(sum, (limp[e] * per) / this.stiffened);
      for (let k = 0; k < 4; k++) {
        const i = four[at + k];
        const by = back * weights[at + k] * inverse[i];
        p[3 * i] += by * x;
        p[3 * i + 1] += by * y;
        p[3 * i + 2] += by * z;
      }
    }
  }

  /**
   * Gives every thread its length back, as far as what is held and what is in the way let it: passes of stretch alone, without time. Seams, [[particle, particle, length]…], do not
   * give: several rows of stitches through several layers.
   */
  straighten(passes, dt, contact, seams) {
    for (let pass = 0; pass < passes; pass++) {
      this.before.set(this.position);
      this.#stretch(dt);
      if (this.apart) this.#part();
      if (contact) for (let i = 0; i < this.count; i++) if (this.inverse[i] > 0) contact(this.position, this.before, i);
      for (let sweep = 0; sweep < SWEEPS; sweep++) for (const [i, j, length] of seams) this.#reach(i, j, length);
    }
    this.velocity.fill(0);
  }

  #reach(i, j, length) {
    const { position: p, inverse } = this;
    const both = inverse[i] + inverse[j];
    const far = this.distance(i, j);
    if (both === 0 || far === 0) return;
    for (let k = 0; k < 3; k++) {
      const by = ((length / far - 1) * (p[3 * i + k] - p[3 * j + k])) / both;
      p[3 * i + k] += inverse[i] * by;
      p[3 * j + k] -= inverse[j] * by;
    }
  }

  /** The mean speed of what moves, m/s. */
  speed() {
    let sum = 0;
    let moving = 0;
    for (let i = 0; i < this.count; i++) {
      if (this.inverse[i] === 0) continue;
      moving += 1;
      sum += Math.hypot(this.velocity[3 * i], this.velocity[3 * i + 1], this.velocity[3 * i + 2]);
    }
    return moving === 0 ? 0 : sum / moving;
  }

  /** The distance of two particles as they lie, m. */
  distance(i, j) {
    const p = this.position;
    return Math.hypot(p[3 * i] - p[3 * j], p[3 * i + 1] - p[3 * j + 1], p[3 * i + 2] - p[3 * j + 2]);
  }
}

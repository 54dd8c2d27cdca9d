// The shoulder and the arm that wear the sleeve, from girths and lengths: the left arm, hanging. Metres; x points out from the body, y up, z to the front; the shoulder point is the
// origin. Limbs are round and taper; the trunk only tells where the cloth cannot go.

/** The seam of the armhole leans in by this angle from the shoulder point to the underarm point, and the arm hangs out by that one. Common practice, no source. */
const LEAN = (12 * Math.PI) / 180;
const HANG = (16 * Math.PI) / 180;

/** Height of an armhole to its length, as of an ellipse whose width is 0.7 of its height (Ramanujan 1914). */
const HALF_HEIGHT = 1 / 5.38;

/** Length of half an ellipse, from end to end of one axis (Ramanujan 1914). */
function halfEllipse(a, b) {
  const odd = ((a - b) / (a + b)) ** 2;
  return (Math.PI / 2) * (a + b) * (1 + (3 * odd) / (10 + Math.sqrt(4 - 3 * odd)));
}

/** The semi-axis that makes half an ellipse as long as asked. */
function breadth(height, length) {
  let [low, high] = [0.05 * height, 3 * height];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (halfEllipse(height, middle) < length) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The seam line of the armhole on the body: two half ellipses, front and back, each as long as its half of the armhole. */
export class Armhole {
  #points = [];
  #gone = [0];

  constructor(front, back) {
    const half = (front + back) * HALF_HEIGHT;
    const [before, behind] = [breadth(half, front), breadth(half, back)];
    const steps = 720;
    for (let i = 0; i <= steps; i++) {
      const angle = (2 * Math.PI * i) / steps;
      const down = half * (1 + Math.cos(angle));
      this.#points.push([-down * Math.sin(LEAN), -down * Math.cos(LEAN), (angle < Math.PI ? before : behind) * Math.sin(angle)]);
    }
    for (let i = 1; i <= steps; i++) {
      const [a, b] = [this.#points[i - 1], this.#points[i]];
      this.#gone.push(this.#gone[i - 1] + Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]));
    }
    this.length = front + back;
    this.front = front;
    this.underarm = this.#points[0];
    this.middle = [-half * Math.sin(LEAN), -half * Math.cos(LEAN), 0];
    this.stretch = this.#gone[steps] / this.length;
  }

  /** The point at a length along the seam: from the underarm point up the front, over the shoulder point, and down the back. */
  at(length) {
    const asked = Math.max(0, Math.min(this.length, length)) * this.stretch;
    let [low, high] = [0, this.#gone.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.#gone[middle] <= asked) low = middle;
      else high = middle;
    }
    const share = (asked - this.#gone[low]) / (this.#gone[high] - this.#gone[low]);
    return [0, 1, 2].map((k) => this.#points[low][k] + share * (this.#points[high][k] - this.#points[low][k]));
  }

  /** The same, moved out from the middle of the armhole. */
  beyond(length, by) {
    const point = this.at(length);
    const out = point.map((each, k) => each - this.middle[k]);
    const far = Math.hypot(...out);
    return point.map((each, k) => each + (by * out[k]) / far);
  }
}

/** A limb: from one round end to another, metres. */
const limb = (from, to, thick, thin) => ({ from, to, thick, thin });

/** Arm and trunk from the figures of a body, metres: {upperArmGirth, elbowGirth, wristGirth, armLength}. */
export function body({ upperArmGirth, elbowGirth, wristGirth, armLength }) {
  const radius = (girth) => girth / (2 * Math.PI);
  const ball = 1.04 * radius(upperArmGirth);
  const joint = [0, -ball, 0];
  const upper = 0.55 * armLength - ball;
  const elbow = [joint[0] + upper * Math.sin(HANG), joint[1] - upper * Math.cos(HANG), -0.01];
  const lower = 0.45 * armLength;
  const wrist = [elbow[0] + 0.06 * lower, elbow[1] - 0.97 * lower, elbow[2] + 0.22 * lower];
  const middle = [0, 1, 2].map((k) => (joint[k] + elbow[k]) / 2);
  const arm = [
    limb(joint, middle, ball, radius(upperArmGirth)),
    limb(middle, elbow, radius(upperArmGirth), radius(elbowGirth)),
    limb(elbow, wrist, radius(elbowGirth), radius(wristGirth)),
    limb(wrist, [wrist[0], wrist[1] - 0.13, wrist[2] + 0.02], 1.05 * radius(wristGirth), 0.7 * radius(wristGirth)),
  ];
  const trunk = [limb([-0.02, -0.052, 0], [-0.13, -0.012, -0.005], 0.046, 0.056), limb([-0.172, -0.12, 0], [-0.172, -0.48, 0], 0.112, 0.1), limb([-0.185, 0.0, -0.01], [-0.185, 0.13, 0.01], 0.058, 0.054)];
  return { arm, trunk, joint, elbow, wrist };
}

/** How far a point lies off limbs, metres; less than nothing inside. */
export function off(limbs, point) {
  return Math.min(
    ...limbs.map(({ from, to, thick, thin }) => {
      const way = to.map((each, k) => each - from[k]);
      const here = point.map((each, k) => each - from[k]);
      const t = Math.max(0, Math.min(1, here.reduce((sum, each, k) => sum + each * way[k], 0) / way.reduce((sum, each) => sum + each * each, 0)));
      return Math.hypot(...here.map((each, k) => each - t * way[k])) - (thick + t * (thin - thick));
    }),
  );
}

/** Friction of cloth on a body or on cloth: force along it to force against it. From memory, no source. */
const FRICTION = 0.2;

/** Numbers of a limb in a row: where it begins, where it goes, the square of its length, its radius there, what that grows by; then the box about it, low and high of each axis. */
const NUMBERS = 15;

function inARow({ from, to, thick, thin }) {
  const way = to.map((each, k) => each - from[k]);
  const wide = Math.max(thick, thin) + 0.02;
  return [...from, ...way, way.reduce((sum, each) => sum + each * each, 0), thick, thin - thick, ...[0, 1, 2].flatMap((k) => [Math.min(from[k], to[k]) - wide, Math.max(from[k], to[k]) + wide])];
}

/** What keeps cloth out of a body: each particle stays a clearance away from it, by its number, and slides with friction (Coulomb). Written in plain numbers, as it is done a million times. */
export function contact(limbs, clearance) {
  const of = Float64Array.from(limbs.flatMap(inARow));
  const end = of.length;
  return (p, before, i) => {
    const at = 3 * i;
    for (let l = 0; l < end; l += NUMBERS) {
      const x = p[at];
      const y = p[at + 1];
      const z = p[at + 2];
      if (x < of[l + 9] || x > of[l + 10] || y < of[l + 11] || y > of[l + 12] || z < of[l + 13] || z > of[l + 14]) continue;
      const fx = x - of[l];
      const fy = y - of[l + 1];
      const fz = z - of[l + 2];
      const along = (fx * of[l + 3] + fy * of[l + 4] + fz * of[l + 5]) / of[l + 6];
      const t = along < 0 ? 0 : along > 1 ? 1 : along;
      let nx = fx - t * of[l + 3];
      let ny = fy - t * of[l + 4];
      let nz = fz - t * of[l + 5];
      const far = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1e-9;
      const deep = clearance[i] - far + of[l + 7] + t * of[l + 8];
      if (deep <= 0) continue;
      nx /= far;
      ny /= far;
      nz /= far;
      const sx = x + deep * nx - before[at];
      const sy = y + deep * ny - before[at + 1];
      const sz = z + deep * nz - before[at + 2];
      const through = sx * nx + sy * ny + sz * nz;
      const lx = sx - through * nx;
      const ly = sy - through * ny;
      const lz = sz - through * nz;
      const slid = Math.sqrt(lx * lx + ly * ly + lz * lz);
      const hold = slid === 0 ? 0 : Math.min(1, (FRICTION * deep) / slid);
      p[at] = x + deep * nx - hold * lx;
      p[at + 1] = y + deep * ny - hold * ly;
      p[at + 2] = z + deep * nz - hold * lz;
    }
  };
}

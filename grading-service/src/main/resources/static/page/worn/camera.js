// From where the sleeve is looked at: turned round it by mouse, finger or keys, nearer and farther.

const NEAREST = 0.5;
const FARTHEST = 3;
const TURN = Math.PI / 24;

/** What is looked at: half way down the upper arm, metres from the shoulder point. */
const AIM = [0, -0.27, 0];

export class Camera {
  constructor(changed) {
    this.changed = changed;
    this.reset();
  }

  /** The outer side of the arm, front at the left. */
  reset() {
    this.around = 0.45;
    this.up = 0.18;
    this.far = 1.4;
    this.changed?.();
  }

  turn(around, up) {
    this.around += around;
    this.up = Math.max(-1.2, Math.min(1.4, this.up + up));
    this.changed?.();
  }

  nearer(share) {
    this.far = Math.max(NEAREST, Math.min(FARTHEST, this.far * share));
    this.changed?.();
  }

  /** Where it stands and what it looks at; the way out from the body is x, the front is z. */
  get stand() {
    const [level, height] = [Math.cos(this.up), Math.sin(this.up)];
    return { aim: AIM, from: [AIM[0] + this.far * level * Math.cos(this.around), AIM[1] + this.far * height, AIM[2] + this.far * level * Math.sin(this.around)] };
  }

  /** Listens to a canvas. */
  attend(canvas) {
    const fingers = new Map();
    canvas.addEventListener("pointerdown", (event) => {
      canvas.setPointerCapture(event.pointerId);
      fingers.set(event.pointerId, [event.clientX, event.clientY]);
    });
    canvas.addEventListener("pointermove", (event) => {
      const before = fingers.get(event.pointerId);
      if (!before) return;
      const now = [event.clientX, event.clientY];
      const others = [...fingers].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
      fingers.set(event.pointerId, now);
      if (others.length === 0) return this.turn((now[0] - before[0]) / 160, (now[1] - before[1]) / 160);
      const apart = (at) => Math.hypot(at[0] - others[0][0], at[1] - others[0][1]) || 1;
      this.nearer(apart(before) / apart(now));
    });
    for (const end of ["pointerup", "pointercancel"]) canvas.addEventListener(end, (event) => fingers.delete(event.pointerId));
    canvas.addEventListener("wheel", (event) => (event.preventDefault(), this.nearer(event.deltaY > 0 ? 1.1 : 1 / 1.1)), { passive: false });
    canvas.addEventListener("keydown", (event) => {
      const [x, y] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key] ?? [0, 0];
      if (x !== 0 || y !== 0) this.turn(x * TURN, y * TURN);
      else if (event.key === "+" || event.key === "=") this.nearer(1 / 1.15);
      else if (event.key === "-") this.nearer(1.15);
      else if (event.key === "0") this.reset();
      else return;
      event.preventDefault();
    });
  }
}

// The worn sleeve painted from back to front, for those without a graphics card that a page may use: the same mesh as a still picture, painted anew when it is turned.

import { CLOTH, SKIN, TRUNK } from "./colours.js";

const minus = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const unit = (a) => {
  const length = Math.hypot(...a) || 1;
  return a.map((each) => each / length);
};

const LIGHT = unit([1.5, 1.6, 1]);

const shaded = (colour, share) => `rgb(${[16, 8, 0].map((shift) => Math.round(((colour >> shift) & 255) * share)).join(" ")})`;

/** Balls along a limb, close enough to look like one. */
const BALLS = 24;

export class Painted {
  constructor(canvas) {
    this.canvas = canvas;
    this.pen = canvas.getContext("2d");
  }

  show({ surfaces, body, position }) {
    this.surfaces = surfaces;
    this.body = body;
    this.position = position;
  }

  move(position) {
    this.position = position;
  }

  draw({ from, aim }, width, height) {
    const { canvas, pen, position: p } = this;
    const fine = Math.min(2, devicePixelRatio);
    canvas.width = width * fine;
    canvas.height = height * fine;
    const ahead = unit(minus(aim, from));
    const right = unit(cross(ahead, [0, 1, 0]));
    const above = cross(right, ahead);
    const scale = (fine * height) / 2 / Math.tan((16 * Math.PI) / 180);
    const seen = (point) => {
      const way = minus(point, from);
      const deep = dot(way, ahead);
      return [canvas.width / 2 + (scale * dot(way, right)) / deep, canvas.height / 2 - (scale * dot(way, above)) / deep, deep];
    };
    const strokes = [];
    for (const [limbs, colour] of [[this.body.arm, SKIN], [this.body.trunk, TRUNK]]) {
      for (const { from: a, to: b, thick, thin } of limbs) {
        for (let k = 0; k <= BALLS; k++) {
          const [x, y, deep] = seen(a.map((each, i) => each + ((b[i] - each) * k) / BALLS));
          // A ball is seen where its front is.
          strokes.push({ deep: deep - 0.3 * (thick + thin), ball: [x, y, (scale * (thick + ((thin - thick) * k) / BALLS)) / deep], colour: shaded(colour, 0.9) });
        }
      }
    }
    for (const { id, triangles } of this.surfaces) {
      for (const three of triangles) {
        const corners = three.map((i) => [p[3 * i], p[3 * i + 1], p[3 * i + 2]]);
        const normal = unit(cross(minus(corners[1], corners[0]), minus(corners[2], corners[0])));
        const front = dot(normal, minus(from, corners[0])) > 0;
        const drawn = corners.map(seen);
        strokes.push({ deep: (drawn[0][2] + drawn[1][2] + drawn[2][2]) / 3 - (id === "overlay-main" ? 0.004 : 0), corners: drawn, colour: shaded(front ? CLOTH[id].out : CLOTH[id].in, 0.55 + 0.45 * Math.max(0, dot(front ? normal : normal.map((each) => -each), LIGHT))) });
      }
    }
    strokes.sort((a, b) => b.deep - a.deep);
    pen.clearRect(0, 0, canvas.width, canvas.height);
    pen.lineWidth = 0.7 * fine;
    for (const { corners, ball, colour } of strokes) {
      pen.beginPath();
      if (ball) pen.arc(...ball, 0, 2 * Math.PI);
      else corners.forEach(([x, y], i) => (i === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y)));
      pen.closePath();
      pen.fillStyle = colour;
      pen.fill();
      if (!ball) {
        pen.strokeStyle = colour;
        pen.stroke();
      }
    }
  }

  dispose() {}
}

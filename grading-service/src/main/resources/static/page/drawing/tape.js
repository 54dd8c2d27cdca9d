// The two tape measures along the drawing, and the dots of pattern paper behind it: they move with the drawing, in its unit.

const WIDTH = 24;
const SMALLEST_GAP = 6;
const LABEL_GAP = 46;
const LABEL_ROOM = 26;

/** Lengths of one part in millimetres, smallest first, with how many make the next. */
const PARTS = {
  cm: [1, 5, 10, 50, 100, 500],
  mm: [1, 5, 10, 50, 100, 500],
  in: [25.4 / 8, 25.4 / 2, 25.4, 25.4 * 6, 25.4 * 12, 25.4 * 36],
};
const VALUE = { cm: 0.1, mm: 1, in: 1 / 25.4 };

function scale(unit, pixels) {
  const parts = PARTS[unit];
  const small = parts.find((part) => part * pixels >= SMALLEST_GAP) ?? parts[parts.length - 1];
  const large = parts.find((part) => part * pixels >= LABEL_GAP && part > small) ?? parts[parts.length - 1];
  return { small, large };
}

function prepared(canvas) {
  const { clientWidth: width, clientHeight: height } = canvas;
  const ratio = window.devicePixelRatio || 1;
  if (canvas.width !== Math.round(width * ratio) || canvas.height !== Math.round(height * ratio)) {
    canvas.width = Math.round(width * ratio);
    canvas.height = Math.round(height * ratio);
  }
  const pen = canvas.getContext("2d");
  pen.setTransform(ratio, 0, 0, ratio, 0, 0);
  pen.clearRect(0, 0, width, height);
  return { pen, width, height };
}

/**
 * Draws tapes and dots.
 *
 * view: left and top of the window in drawing millimetres, pixels per millimetre, the point that is zero on the tapes.
 */
export function drawTapes(canvas, view, unit) {
  const { pen, width, height } = prepared(canvas);
  const style = getComputedStyle(canvas);
  const { small, large } = scale(unit, view.pixels);
  const x = (mm) => (mm - view.left) * view.pixels;
  const y = (mm) => (mm - view.top) * view.pixels;

  pen.fillStyle = style.getPropertyValue("--dot");
  const firstX = Math.floor((view.left - view.zeroX) / large) * large + view.zeroX;
  const firstY = Math.floor((view.top - view.zeroY) / large) * large + view.zeroY;
  for (let mx = firstX; x(mx) < width; mx += large) {
    for (let my = firstY; y(my) < height; my += large) {
      pen.fillRect(x(mx) - 3, y(my) - 0.5, 6, 1);
      pen.fillRect(x(mx) - 0.5, y(my) - 3, 1, 6);
    }
  }

  const tape = style.getPropertyValue("--tape");
  const ink = style.getPropertyValue("--tape-ink");
  pen.fillStyle = tape;
  pen.fillRect(0, 0, width, WIDTH);
  pen.fillRect(0, 0, WIDTH, height);
  pen.fillStyle = ink;
  pen.font = "11px system-ui, sans-serif";
  pen.textBaseline = "top";
  const marks = Math.round(large / small);
  for (let i = Math.ceil((view.left - view.zeroX) / small); ; i++) {
    const at = x(view.zeroX + i * small);
    if (at > width) break;
    if (at < WIDTH) continue;
    const major = i % marks === 0;
    pen.fillRect(at, major ? WIDTH - 12 : WIDTH - 5, 1, major ? 12 : 5);
    if (major && at + LABEL_ROOM < width) pen.fillText(String(Math.round(i * small * VALUE[unit] * 100) / 100), at + 3, 4);
  }
  for (let i = Math.ceil((view.top - view.zeroY) / small); ; i++) {
    const at = y(view.zeroY + i * small);
    if (at > height) break;
    if (at < WIDTH) continue;
    const major = i % marks === 0;
    pen.fillRect(major ? WIDTH - 12 : WIDTH - 5, at, major ? 12 : 5, 1);
    if (major) {
      pen.save();
      pen.translate(4, at - 3);
      pen.rotate(-Math.PI / 2);
      pen.fillText(String(Math.round(-i * small * VALUE[unit] * 100) / 100), 0, 0);
      pen.restore();
    }
  }
  pen.fillStyle = tape;
  pen.fillRect(0, 0, WIDTH, WIDTH);
  pen.fillStyle = ink;
  pen.fillText(unit, 4, 7);
}

export const TAPE_WIDTH = WIDTH;

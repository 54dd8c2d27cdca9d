// A still picture of a sleeve as it is worn, for paper and archives: settled in a worker like the view, drawn once, out of sight.

import { h } from "../common/dom.js";
import { Camera } from "./camera.js";
import { figuresOf } from "./figures.js";
import { Painted } from "./painted.js";
import { Solid } from "./solid.js";
import { PRESETS } from "./stuffs.js";

const WIDTH = 480;
const HEIGHT = 640;

function drawer() {
  const canvas = () => h("canvas", { width: WIDTH, height: HEIGHT });
  let own = canvas();
  try {
    return { canvas: own, draws: new Solid(own) };
  } catch {
    own = canvas();
    return { canvas: own, draws: new Painted(own) };
  }
}

/** The settled sleeve of a size of an answer: {surfaces, body, position}. */
function settled(size, unit, figures, signal) {
  const worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
  return new Promise((answer, fail) => {
    let begun;
    signal?.addEventListener("abort", () => fail(signal.reason));
    worker.onerror = fail;
    worker.onmessage = ({ data }) => {
      if (data.failed) fail(new Error(data.failed));
      if (data.surfaces) begun = data;
      if (data.done) answer({ surfaces: begun.surfaces, body: begun.body, position: data.position });
    };
    const { pieces, dimensions, pleats } = size;
    worker.postMessage({ id: 1, size: { pieces, dimensions, pleats }, unit, figures, lengths: PRESETS.firm });
  }).finally(() => worker.terminate());
}

/** The picture as PNG. The arm is that of the sleeve's own figures, or of the table. */
export async function still(answer, table, signal) {
  const size = answer.sizes.find((each) => each.label === answer.baseSize);
  const { figures } = figuresOf(size, answer.unit, table);
  const sleeve = await settled(size, answer.unit, figures, signal);
  const { canvas, draws } = drawer();
  draws.show(sleeve);
  draws.draw(new Camera(() => undefined).stand, WIDTH, HEIGHT);
  const blob = await new Promise((done) => canvas.toBlob(done, "image/png"));
  draws.dispose();
  return blob;
}

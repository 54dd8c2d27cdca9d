// Blocks and fields are those of the HTML standard, section 9.2; a stream may be cut anywhere, within a character too.

import assert from "node:assert/strict";
import test from "node:test";
import { eventsOf } from "../../main/resources/static/page/common/events.js";

const TOLD = 'event: progress\ndata: {"done":0.25}\n\nevent: done\ndata: {"name":"Tête de manche, 2: 1 é"}\n\nevent: late\ndata: {"cut":';

async function read(size) {
  const bytes = new TextEncoder().encode(TOLD);
  const stream = new ReadableStream({
    start(controller) {
      for (let at = 0; at < bytes.length; at += size) controller.enqueue(bytes.slice(at, at + size));
      controller.close();
    },
  });
  const found = [];
  for await (const each of eventsOf(stream)) found.push(each);
  return found;
}

test("reads whole events however the stream is cut, and leaves out one that breaks off", async () => {
  for (const size of [1, 2, 3, 7, 1000]) {
    assert.deepEqual(await read(size), [
      { event: "progress", data: { done: 0.25 } },
      { event: "done", data: { name: "Tête de manche, 2: 1 é" } },
    ]);
  }
});

// What the service tells while it works: server-sent events (HTML standard, section 9.2).

/** The events of an answer as they come: the name of each, and its data, which is JSON. */
export async function* eventsOf(stream) {
  const reader = stream.pipeThrough(new TextDecoderStream()).getReader();
  let text = "";
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    const blocks = (text + piece.value).split("\n\n");
    text = blocks.pop();
    for (const block of blocks) {
      const fields = new Map(block.split("\n").map((line) => line.split(/: (.*)/s, 2)));
      yield { event: fields.get("event"), data: JSON.parse(fields.get("data")) };
    }
  }
}

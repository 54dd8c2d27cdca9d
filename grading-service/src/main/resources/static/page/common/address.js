// The state in the part of the address after "#", which is never sent to a server: deflated JSON in base64url.

async function through(stream, bytes) {
  return new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer());
}

export async function encode(state) {
  const bytes = await through(new CompressionStream("deflate-raw"), new TextEncoder().encode(JSON.stringify(state)));
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return "s=" + btoa(text).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

/** Whether an address was meant to hold a state. */
export const isLink = (hash) => hash.startsWith("#s=");

/** The state of an address, or undefined if it holds none that can be read. */
export async function decode(hash) {
  const found = /^#s=([A-Za-z0-9_-]+)$/.exec(hash);
  if (!found) return undefined;
  try {
    const text = atob(found[1].replaceAll("-", "+").replaceAll("_", "/"));
    const bytes = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    const state = JSON.parse(new TextDecoder().decode(await through(new DecompressionStream("deflate-raw"), bytes)));
    return state && typeof state.style === "object" && state.style ? state : undefined;
  } catch {
    return undefined;
  }
}

// Calls of the service, in the language of the page.

import { current } from "./words.js";

/** What the service refused, with its problem document (RFC 9457). */
export class Refused extends Error {
  constructor(problem) {
    super(problem.detail ?? problem.title);
    this.problem = problem;
  }
}

async function checked(response) {
  if (response.ok) return response;
  const type = response.headers.get("Content-Type") ?? "";
  throw new Refused(
    type.includes("json")
      ? await response.json()
      : { title: `${response.status} ${response.statusText}`, status: response.status, violations: [] },
  );
}

/** Asks an address of the service with a JSON body, for an answer in a media type. */
export const ask = async (path, body, accept, signal) =>
  checked(
    await fetch(path, {
      method: "POST",
      headers: { "Content-Type": "application/json", Accept: accept, "Accept-Language": current() },
      body: JSON.stringify(body),
      signal,
    }),
  );

/** Sends files as they are; the browser names the type of a form, and a file brings its own. */
export const send = async (path, body, type, accept, signal) =>
  checked(await fetch(path, { method: "POST", headers: { Accept: accept, "Accept-Language": current(), ...(type ? { "Content-Type": type } : {}) }, body, signal }));

/** Asks for a size run in a media type. */
export const sizeRun = (style, accept, signal) => ask("v1/size-runs", style, accept, signal);

const known = new Map();

/** Something that does not change while the page is open; asked for once. */
export function once(path) {
  const key = current() + " " + path;
  if (!known.has(key)) {
    const answer = fetch(path, { headers: { Accept: "application/json", "Accept-Language": current() } })
      .then(checked)
      .then((response) => response.json());
    answer.catch(() => known.delete(key));
    known.set(key, answer);
  }
  return known.get(key);
}

/** Reads an answer piece by piece and tells how many bytes have come. */
export async function received(response, tell) {
  const reader = response.body.getReader();
  const parts = [];
  let bytes = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    bytes += value.length;
    tell(bytes);
  }
  return new Blob(parts, { type: response.headers.get("Content-Type") ?? "" });
}

/** The file name that an answer asks for. */
export function fileName(response, otherwise) {
  const header = response.headers.get("Content-Disposition") ?? "";
  const long = /filename\*=UTF-8''([^;]+)/i.exec(header);
  const short = /filename="?([^";]+)"?/i.exec(header);
  return long ? decodeURIComponent(long[1]) : (short?.[1] ?? otherwise);
}

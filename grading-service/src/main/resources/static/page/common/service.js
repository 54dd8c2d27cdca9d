// Calls of the service, in the language of the page.

import { current } from "./words.js";

/** What the service refused, with its problem document (RFC 9457). */
export class Refused extends Error {
  constructor(problem) {
    super(problem.detail ?? problem.title);
    this.problem = problem;
  }
}

const KEY = "capwright.key";

function remembered() {
  try {
    return sessionStorage.getItem(KEY) ?? "";
  } catch {
    return "";
  }
}

let key = remembered();
let wanted = () => undefined;

/** The key that calls are made with from now on; empty for none. It is kept for the session of this tab alone. */
export function keyIs(text) {
  key = text;
  try {
    if (text) sessionStorage.setItem(KEY, text);
    else sessionStorage.removeItem(KEY);
  } catch {
    // Then it lasts until the page is loaded anew.
  }
}

/** Whether there is a key. */
export const allowed = () => key !== "";

/** Who is told that the service wants a key, or another one. */
export function listenForKey(listener) {
  wanted = listener;
}

async function checked(response) {
  if (response.ok) return response;
  if (response.status === 401) wanted();
  const type = response.headers.get("Content-Type") ?? "";
  throw new Refused(
    type.includes("json")
      ? await response.json()
      : { title: `${response.status} ${response.statusText}`, status: response.status, violations: [] },
  );
}

/** A call of the service with the key, if there is one. */
export const call = async (path, { headers, ...rest } = {}) => checked(await fetch(path, { ...rest, headers: { "Accept-Language": current(), ...(key ? { Authorization: "Bearer " + key } : {}), ...headers } }));

/** Asks an address of the service with a JSON body, for an answer in a media type. */
export const ask = (path, body, accept, signal) => call(path, { method: "POST", headers: { "Content-Type": "application/json", Accept: accept }, body: JSON.stringify(body), signal });

/** Sends files as they are; the browser names the type of a form, and a file brings its own. */
export const send = (path, body, type, accept, signal) => call(path, { method: "POST", headers: { Accept: accept, ...(type ? { "Content-Type": type } : {}) }, body, signal });

/** What is at an address of the service, as JSON. */
export const look = async (path, signal) => (await call(path, { headers: { Accept: "application/json" }, signal })).json();

/** Asks for a size run in a media type. */
export const sizeRun = (style, accept, signal) => ask("v1/size-runs", style, accept, signal);

const known = new Map();

/** Something that does not change while the page is open; asked for once. */
export function once(path) {
  const name = current() + " " + path;
  if (!known.has(name)) {
    const answer = look(path);
    answer.catch(() => known.delete(name));
    known.set(name, answer);
  }
  return known.get(name);
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

// The three calls that the form makes.

/** What the service refused, with its problem document (RFC 9457). */
export class Refused extends Error {
  constructor(status, problem) {
    super(problem.detail ?? problem.title ?? String(status));
    this.status = status;
    this.violations = problem.violations ?? [];
  }
}

export class Calls {
  constructor(service, style, key, language) {
    this.base = `${service}/v1/styles/${encodeURIComponent(style)}`;
    this.headers = { Accept: "application/json", "Accept-Language": language, ...(key ? { Authorization: "Bearer " + key } : {}) };
  }

  asked = (signal) => this.#send("/order-form", { signal });

  tried = (order, signal) => this.#post("/order-previews", order, {}, signal);

  /** The same order sent again with the same name is not taken twice. */
  order = (order, name) => this.#post("/orders", order, { "Idempotency-Key": name });

  #post(path, body, headers, signal) {
    return this.#send(path, { method: "POST", headers: { "Content-Type": "application/json", ...headers }, body: JSON.stringify(body), signal });
  }

  async #send(path, { headers, ...rest }) {
    const response = await fetch(this.base + path, { ...rest, headers: { ...this.headers, ...headers }, credentials: "omit", cache: "no-store", referrerPolicy: "strict-origin" });
    if (response.ok) return response.json();
    const problem = (response.headers.get("Content-Type") ?? "").includes("json") ? await response.json().catch(() => ({})) : {};
    throw new Refused(response.status, problem);
  }
}

/** A name that no other order has. */
export const orderName = () => Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");

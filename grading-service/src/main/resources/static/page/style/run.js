// Keeps the drawn run in step with the style. The drawing is asked for first and at once; what it overtakes is given up.

import { Refused, sizeRun } from "../common/service.js";

/** While changes follow one another faster than this (ms), only the last of them is asked for. */
const REST = 40;

/** How long (ms) until a service that does not answer is asked again. */
const AGAIN = 2000;

/** Answers of a gateway before a service that is not there. */
const away = (problem) => problem.status >= 502 && problem.status <= 504;

export class Run {
  #timer = 0;
  #asked = 0;
  #flight = new AbortController();
  #last;

  /** Listens for drawing (svg text), answer (JSON), problem (document), and busy (true or false). */
  constructor(listeners) {
    this.listeners = listeners;
    addEventListener("online", () => this.ask(this.#last));
  }

  ask(style) {
    this.#last = style;
    const since = performance.now();
    clearTimeout(this.#timer);
    this.#flight.abort();
    const wait = Math.max(0, this.#asked + REST - since);
    this.#asked = since;
    this.#timer = wait > 0 ? setTimeout(() => this.#fly(style, since), wait) : (this.#fly(style, since), 0);
  }

  /** Lays are searched for a while; they are asked for only where they are seen. */
  async #fly(whole, since) {
    const { materials, ...style } = whole;
    const flight = new AbortController();
    this.#flight = flight;
    const { drawing, answer, problem, busy } = this.listeners;
    busy(true);
    try {
      const svg = await (await sizeRun(style, "image/svg+xml", flight.signal)).text();
      if (flight.signal.aborted) return;
      drawing(svg, since);
      const json = await (await sizeRun(style, "application/json", flight.signal)).json();
      if (flight.signal.aborted) return;
      answer(json);
      busy(false);
    } catch (error) {
      if (flight.signal.aborted) return;
      busy(false);
      const refused = error instanceof Refused && !away(error.problem);
      problem(refused ? error.problem : { title: "unreachable", status: 0, violations: [] });
      if (!refused) this.#timer = setTimeout(() => this.#fly(whole, performance.now()), AGAIN);
    }
  }
}

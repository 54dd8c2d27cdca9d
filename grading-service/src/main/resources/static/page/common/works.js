// What is on the bench of each tab, kept in this browser. Every tab has a work of its own, so that neither a second tab nor a link that somebody sent ever writes
// over what another holds. A browser that refuses to keep anything is told of, not passed over.

import { dropVersions } from "./history.js";

const PREFIX = "capwright.work.";
const TAB = "capwright.tab";

/** The oldest beyond these are let go. */
const MOST = 12;

function read(key) {
  try {
    return JSON.parse(localStorage.getItem(key));
  } catch {
    return null;
  }
}

/** Works kept in this browser, latest first: {id, style, view, changed}. */
export function works() {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(PREFIX))
      .map((key) => ({ id: key.slice(PREFIX.length), ...read(key) }))
      .filter((work) => work.style)
      .sort((a, b) => b.changed - a.changed);
  } catch {
    return [];
  }
}

function thisTab() {
  try {
    return sessionStorage.getItem(TAB) ?? "";
  } catch {
    return "";
  }
}

/** Holds the name of a work while this tab has it open; false if another tab has. Without locks (a page without TLS) nobody can tell, so it counts as taken. */
function held(id, hold) {
  if (!navigator.locks) return Promise.resolve(false);
  return new Promise((answer) => {
    navigator.locks.request(PREFIX + id, { ifAvailable: true }, (lock) => {
      answer(lock !== null);
      return lock ? new Promise((release) => hold(release)) : undefined;
    });
  });
}

/** A page that was loaded anew has hardly let go of its own work yet. */
const pause = () => new Promise((done) => setTimeout(done, 150));

/** How the tabs of this browser hear of one another. */
const TABS = globalThis.BroadcastChannel ? new BroadcastChannel("capwright.tabs") : null;

export class Work {
  #id = "";
  #release = () => undefined;
  #start = "";

  /** The work that this tab had open before it was loaded anew. */
  static ofThisTab = () => works().find((work) => work.id === thisTab());

  /** Calls back when another tab begins to work on a copy of what this one has open. */
  whenCopied(listener) {
    TABS?.addEventListener("message", ({ data }) => data.copied === this.#id && listener());
  }

  get id() {
    return this.#id;
  }

  /** Whether it is anything else than what it began with. */
  get changed() {
    return this.#start === "";
  }

  /** Goes on with a work that is kept; with a copy of it where another tab has it open. True if it is the work itself. */
  async resume(work) {
    this.#release();
    const take = () => held(work.id, (release) => (this.#release = release));
    const mine = navigator.locks ? (await take()) || (await pause(), await take()) : work.id === thisTab();
    if (mine) this.#open(work.id, "");
    else {
      this.begin(work.style);
      TABS?.postMessage({ copied: work.id });
    }
    return mine;
  }

  /** A work of its own for a style that came from elsewhere. It is kept from the first change on. */
  begin(style) {
    this.#release();
    this.#release = () => undefined;
    const id = Array.from(crypto.getRandomValues(new Uint8Array(8)), (byte) => byte.toString(16).padStart(2, "0")).join("");
    held(id, (release) => (this.#release = release));
    this.#open(id, JSON.stringify(style));
  }

  #open(id, start) {
    this.#id = id;
    this.#start = start;
    try {
      sessionStorage.setItem(TAB, id);
    } catch {
      // Then a reload opens the latest work, which is this one.
    }
  }

  /** The other works of this browser. */
  others = () => works().filter((work) => work.id !== this.#id);

  /** Keeps the state; false if the browser refuses. */
  keep({ style, view }) {
    if (JSON.stringify(style) === this.#start) return true;
    this.#start = "";
    try {
      localStorage.setItem(PREFIX + this.#id, JSON.stringify({ style, view, changed: Date.now() }));
      for (const old of works().slice(MOST)) {
        localStorage.removeItem(PREFIX + old.id);
        dropVersions(old.id);
      }
      return true;
    } catch {
      return false;
    }
  }
}

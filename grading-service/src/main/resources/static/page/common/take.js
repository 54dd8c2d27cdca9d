// One kind of file to take away: a button, how far it is, and a way to call it off.

import { h } from "./dom.js";
import { requestShown } from "./request.js";
import { ask as call, fileName, received } from "./service.js";
import { why } from "./violations.js";
import { count, say } from "./words.js";

/** The files that can be made of a sleeve, in the order of a list. */
export const KINDS = [
  "application/pdf",
  "image/svg+xml",
  "image/vnd.dxf",
  "application/vnd.hp-hpgl",
  "text/csv",
  "application/json",
  "application/zip",
];

/** Puts a file into the browser's downloads. */
export function hand(blob, name) {
  const address = URL.createObjectURL(blob);
  const link = h("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Pages of a PDF as its page tree states them, where that is not compressed; else 0. */
async function pages(blob) {
  const text = await blob.slice(0, 4_000_000).text();
  return (text.match(/\/Type\s*\/Page(?![a-zA-Z])/g) ?? []).length;
}

/** A file name with what sets it apart from the same file made otherwise. */
const apart = (file, variant) => (variant === "" ? file : file.replace(/(\.\w+)$/, `-${variant}$1`));

/**
 * A row of a list of files: what is asked for at a path of the service with a body, by its kind, and the call to look at. What was chosen beside the button, such as the
 * paper, is told by variant and stands in the file's name. What takes a while to prepare goes with the body of the call alone, by prepared. Where files are sent rather than a body, send makes the call instead, by kind and signal.
 */
export function takeRow({ kind, name, meaning, main, options, fallback, variant = () => "", path, body, prepared = body }, send) {
  const ask = send ?? (async (each, signal) => call(path, await prepared(each, signal), each, signal));
  let flight = null;
  const bar = h("progress", { "aria-label": name, hidden: true });
  const state = h("span", { class: "file-state", role: "status" });
  const cancel = h("button", { type: "button", class: "file-cancel", hidden: true, onclick: () => flight?.abort() }, say("file.cancel"));
  const button = h(
    "button",
    { type: "button", class: main ? "main" : "", "data-kind": kind, onclick: () => take() },
    say("file.take"),
    h("span", { class: "unseen" }, " " + name),
  );

  function busy(on) {
    const held = document.activeElement === button || document.activeElement === cancel;
    bar.hidden = !on;
    cancel.hidden = !on;
    button.hidden = on;
    if (held) (on ? cancel : button).focus();
  }

  async function take() {
    flight = new AbortController();
    const { signal } = flight;
    busy(true);
    state.textContent = say("file.making");
    const chosen = variant();
    try {
      const response = await ask(kind, signal);
      const whole = Number(response.headers.get("Content-Length")) || 0;
      if (whole > 0) bar.max = whole;
      const blob = await received(response, (bytes) => {
        if (whole > 0) bar.value = bytes;
        state.textContent = say("file.coming", { kb: Math.round(bytes / 1000) });
      });
      const file = apart(fileName(response, fallback), chosen);
      hand(blob, file);
      const sheets = kind === "application/pdf" ? await pages(blob) : 0;
      state.textContent = say("file.done", { name: file, kb: Math.max(1, Math.round(blob.size / 1000)) }) + (sheets > 0 ? ", " + count("file.pages", sheets) : "");
    } catch (error) {
      state.textContent = signal.aborted ? say("file.cancelled") : say("file.failed", { why: why(error) });
    } finally {
      bar.removeAttribute("value");
      busy(false);
    }
  }

  return h(
    "li",
    { class: "file" },
    h("div", { class: "file-name" }, h("strong", null, name), meaning ? h("span", null, meaning) : null, options),
    h("div", { class: "file-take" }, button, cancel, bar, state),
    send ? null : requestShown(name, () => ({ path, accept: kind, body: body(kind) })),
  );
}

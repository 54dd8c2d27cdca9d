// Signing in by key, where the service asks for one. The key stays in this tab and is gone with it; the bar is shown as soon as the service refuses a call for want of a key.

import { h } from "./dom.js";
import { Refused, allowed, keyIs, listenForKey, look } from "./service.js";
import { say } from "./words.js";

export class SignIn {
  /** Calls back when somebody signed in or out. */
  constructor(changed) {
    this.changed = changed;
    this.input = h("input", { id: "key", type: "password", autocomplete: "current-password", spellcheck: "false", required: true });
    this.says = h("p", { class: "error", role: "alert" });
    this.element = h(
      "form",
      { class: "sign-in", hidden: true, "aria-label": say("signIn.name") },
      h("label", { for: "key" }, say("signIn.key")),
      this.input,
      h("button", { type: "submit", class: "main" }, say("signIn.go")),
      this.says,
      h("p", { class: "quiet-words" }, say("signIn.lead")),
    );
    this.element.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#enter(this.input.value.trim());
    });
    this.button = h("button", { type: "button", id: "sign", class: "quiet", onclick: () => (allowed() ? this.#leave() : this.#open()) });
    listenForKey(() => this.#show(true));
    this.#show(false);
  }

  #show(wanted) {
    this.element.hidden = !wanted;
    this.button.hidden = !wanted && !allowed();
    this.button.textContent = say(allowed() ? "signIn.leave" : "signIn.go");
  }

  #open() {
    this.#show(true);
    this.input.focus();
  }

  /** Any call tells whether the key is known; one that it may not make is as good for that. */
  async #enter(key) {
    this.says.textContent = "";
    keyIs(key);
    try {
      await look("v1/size-tables");
    } catch (error) {
      if (!(error instanceof Refused) || error.problem.status === 401) {
        keyIs("");
        this.#show(true);
        this.says.textContent = say(error instanceof Refused ? "signIn.unknown" : "unreachable");
        this.input.select();
        return;
      }
    }
    this.input.value = "";
    this.#show(false);
    this.button.focus();
    this.changed();
  }

  #leave() {
    keyIs("");
    this.#show(false);
    this.changed();
  }
}

// The shelf: the styles that the service keeps, their revisions, and what one changed; and the way onto it for what is on the bench or kept in this browser.

import { h } from "../common/dom.js";
import * as kept from "../common/kept.js";
import { caller } from "../common/names.js";
import { call, look, Refused } from "../common/service.js";
import { smallPicture } from "../common/smallpicture.js";
import { show } from "../common/units.js";
import { why } from "../common/violations.js";
import { current, find, say } from "../common/words.js";
import { opened } from "../style/style.js";
import { changesShown } from "./changes.js";

const PAGE = 24;

/** What made to measure adds to a body where nothing else was said. */
const EASE = { bicep: 7, armhole: "14%", capEase: "4%", length: 1, elbow: "15%", wrist: 6 };

/** In centimetres, as the usual ease is. */
const easeIn = (units) => (units === "cm" ? EASE : Object.fromEntries(Object.entries(EASE).map(([name, each]) => [name, typeof each === "number" ? (units === "mm" ? each * 10 : Math.round((each / 2.54) * 8) / 8) : each])));

/** An id for a style by its name: letters without accents, digits, hyphens. */
const idOf = (name) =>
  name
    .normalize("NFD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 64) || "style";

export class Shelf {
  #flight = new AbortController();

  constructor(store, state, { replace }) {
    this.store = store;
    this.state = state ?? {};
    this.replace = replace;
    this.id = h("input", { id: "shelf-id", type: "text", autocomplete: "off", spellcheck: "false", maxlength: 64 });
    this.ease = h("input", { id: "shelf-ease", type: "checkbox", checked: true });
    this.easeWords = h("span");
    this.says = h("p", { class: "says", role: "status" });
    this.question = h("div", { class: "question", hidden: true });
    this.keptList = h("div", { class: "shelf-kept" });
    this.archived = h("input", { id: "shelf-archived", type: "checkbox", onchange: () => this.#list() });
    this.list = h("ul", { class: "shelf-list" });
    this.more = h("button", { type: "button", id: "shelf-more", hidden: true, onclick: () => this.#list(this.next) }, say("shelf.more"));
    this.absent = h("p", { class: "absent", role: "status", hidden: true });
    this.element = h(
      "div",
      { class: "shelf" },
      h(
        "section",
        { class: "shelf-put", "aria-label": say("shelf.putTitle") },
        h("h2", null, say("shelf.putTitle")),
        h("p", { class: "quiet-words" }, say("shelf.putLead")),
        h("div", { class: "field" }, h("div", { class: "head" }, h("label", { for: "shelf-id" }, say("shelf.id"))), this.id),
        h("div", { class: "switch" }, this.ease, h("label", { for: "shelf-ease" }, say("shelf.ease"), " ", this.easeWords)),
        h("div", { class: "buttons" }, h("button", { type: "button", class: "main", id: "shelf-put", onclick: () => this.#put(this.id.value.trim(), this.#body(), this.#known()) }, say("shelf.put"))),
        this.says,
        this.question,
        this.keptList,
      ),
      h(
        "section",
        { class: "shelf-kept-styles", "aria-label": say("shelf.title") },
        h("div", { class: "shelf-head" }, h("h2", null, say("shelf.title")), h("div", { class: "switch" }, this.archived, h("label", { for: "shelf-archived" }, say("shelf.archived")))),
        this.absent,
        this.list,
        this.more,
      ),
    );
    this.#list();
  }

  /** What is known of the style on the bench: where it lies on the shelf, if it came from there. */
  #known() {
    const { shelf } = this.store.view;
    return shelf?.id === this.id.value.trim() ? shelf.entityTag : "";
  }

  #easeNow() {
    return this.store.view.shelf?.ease ?? easeIn(this.store.style.units);
  }

  #body() {
    return { ...this.store.style, ...(this.ease.checked ? { ease: this.#easeNow() } : {}) };
  }

  refresh() {
    const { style, view } = this.store;
    const suggested = view.shelf?.id ?? idOf(style.name ?? say("pieces.base-sleeve"));
    if (this.id.value === "" || this.id.value === this.suggested) this.id.value = suggested;
    this.suggested = suggested;
    const names = find("wearer.eases");
    this.easeWords.textContent = Object.entries(this.#easeNow())
      .map(([name, ease]) => `${names[name]?.[0] ?? name} ${typeof ease === "number" ? `${show(ease, style.units)} ${style.units}` : ease}`)
      .join(", ");
    this.#showKept();
  }

  #showKept() {
    const styles = Object.entries(kept.styles());
    this.keptList.hidden = styles.length === 0;
    this.keptList.replaceChildren(
      h("h2", null, say("shelf.keptTitle")),
      h(
        "ul",
        { class: "kept-list" },
        styles.map(([name, style]) => h("li", null, name, " ", h("button", { type: "button", class: "shelf-put-kept", "aria-label": say("shelf.putKept", { name }), onclick: () => this.#put(idOf(name), { ...style, ease: easeIn(style.units) }, "") }, say("shelf.put")))),
      ),
    );
  }

  /** Puts a style under an id: as a new one, or as the next revision of the one that is known by its entity tag. */
  async #put(id, body, tag) {
    this.question.hidden = true;
    this.says.textContent = say("shelf.putting");
    try {
      const answer = await call("v1/styles/" + encodeURIComponent(id), {
        method: "PUT",
        headers: { "Content-Type": "application/json", Accept: "application/json", ...(tag ? { "If-Match": tag } : { "If-None-Match": "*" }) },
        body: JSON.stringify(body),
      });
      const style = await answer.json();
      if (id === this.id.value.trim()) this.store.look((view) => (view.shelf = { id: style.id, entityTag: style.entityTag, ease: body.ease }));
      await this.#list();
      this.says.textContent = say("shelf.put1", { name: style.name, id: style.id, n: style.revision });
    } catch (error) {
      const status = error instanceof Refused ? error.problem.status : 0;
      this.says.textContent = "";
      if (status === 412 || status === 428) await this.#taken(id, body);
      else this.says.textContent = this.#words(error);
    }
  }

  /** Another style lies there, or a revision that was not seen. */
  async #taken(id, body) {
    let there;
    try {
      [there] = (await look(`v1/styles/${encodeURIComponent(id)}/revisions?limit=1`)).revisions;
    } catch (error) {
      this.says.textContent = this.#words(error);
      return;
    }
    const button = (name, words, click) => h("button", { type: "button", id: name, onclick: click }, words);
    this.question.hidden = false;
    this.question.replaceChildren(
      h("p", { role: "alert" }, say("shelf.taken", { id, name: there.name, n: there.revision, who: caller(there.madeBy), when: this.#time(there.madeAt) })),
      h(
        "div",
        { class: "buttons" },
        button("shelf-over", say("shelf.over", { n: there.revision + 1 }), () => this.#put(id, body, there.entityTag)),
        button("shelf-not", say("file.keepNot"), () => (this.question.hidden = true)),
      ),
    );
    this.question.querySelector("button").focus();
  }

  #time = (text) => new Intl.DateTimeFormat(current(), { dateStyle: "medium", timeStyle: "short" }).format(new Date(text));

  #words(error) {
    const status = error instanceof Refused ? error.problem.status : 0;
    if (status === 503) return say("shelf.off");
    if (status === 401) return say("signIn.needed");
    return status === 403 ? say("signIn.notAllowed") : why(error);
  }

  /** The styles from a place in the list on; from its beginning all that is shown is drawn anew. */
  async #list(cursor = "") {
    this.#flight.abort();
    const flight = new AbortController();
    this.#flight = flight;
    try {
      const page = await look(`v1/styles?limit=${PAGE}&archived=${this.archived.checked}&cursor=${encodeURIComponent(cursor)}`, flight.signal);
      if (cursor === "") this.list.replaceChildren();
      this.list.append(...page.styles.map((style) => this.#card(style)));
      this.next = page.next ?? "";
      this.more.hidden = this.next === "";
      this.absent.hidden = this.list.childElementCount > 0;
      this.absent.textContent = say("shelf.empty");
    } catch (error) {
      if (flight.signal.aborted) return;
      this.list.replaceChildren();
      this.more.hidden = true;
      this.absent.hidden = false;
      this.absent.textContent = this.#words(error);
    }
  }

  #card(style) {
    const path = "v1/styles/" + encodeURIComponent(style.id);
    const title = `shelf-title-${style.id}`;
    const picture = h("div", { class: "shelf-picture" });
    const says = h("p", { class: "says", role: "status" });
    const past = h("div", { class: "shelf-past" });
    const failed = (error) => (says.textContent = this.#words(error));
    const button = (words, click) => h("button", { type: "button", "aria-describedby": title, onclick: click }, words);
    const card = h(
      "li",
      { class: "shelf-style", "data-id": style.id },
      picture,
      h(
        "div",
        { class: "shelf-words" },
        h("h3", { id: title }, style.name),
        h("p", { class: "quiet-words" }, say("shelf.revision", { id: style.id, n: style.revision, when: this.#time(style.madeAt), who: caller(style.madeBy) }), style.archived ? h("strong", { class: "shelf-archive" }, " ", say("shelf.isArchived")) : null),
        h(
          "div",
          { class: "buttons" },
          button(say("shelf.open"), () => this.#open(path, style).catch(failed)),
          button(say("shelf.past"), (event) => this.#past(path, past, event.currentTarget).catch(failed)),
          style.archived ? null : this.#remover(path, style, title, failed),
        ),
        says,
        past,
      ),
    );
    look(path)
      .then(smallPicture)
      .then((drawing) => picture.replaceChildren(drawing))
      .catch(() => picture.replaceChildren(h("span", { class: "quiet-words" }, say("shelf.noPicture"))));
    return card;
  }

  /** Pressed once it asks, pressed again it does. */
  #remover(path, style, title, failed) {
    const button = h("button", { type: "button", class: "shelf-remove", "aria-describedby": title, onclick: () => press() }, say("shelf.remove"));
    button.addEventListener("blur", () => rest());
    const rest = () => {
      button.textContent = say("shelf.remove");
      delete button.dataset.sure;
    };
    const press = async () => {
      if (!button.dataset.sure) {
        button.dataset.sure = "asked";
        button.textContent = say("shelf.removeSure");
        return;
      }
      try {
        const answer = await call(path, { method: "DELETE", headers: { Accept: "application/json", "If-Match": style.entityTag } });
        await this.#list();
        this.says.textContent = say(answer.status === 204 ? "shelf.removed" : "shelf.nowArchived", { name: style.name });
      } catch (error) {
        failed(error);
      }
    };
    return button;
  }

  async #open(path, style) {
    const { ease, ...body } = await look(`${path}/revisions/${style.revision}`);
    this.replace(opened(body));
    this.store.look((view) => Object.assign(view, { task: "style", shelf: { id: style.id, entityTag: style.entityTag, ease } }));
  }

  /** The revisions of a style, and what lies between two of them. Pressed again it closes. */
  async #past(path, place, button) {
    const open = place.childElementCount === 0;
    button.setAttribute("aria-expanded", String(open));
    if (!open) return place.replaceChildren();
    const { revisions } = await look(path + "/revisions?limit=100");
    const choice = (id, chosen) =>
      h("select", { id: `${id}-${revisions[0].id}` }, revisions.map((each) => h("option", { value: each.revision, selected: each.revision === chosen }, `${each.revision}, ${this.#time(each.madeAt)}`)));
    const latest = revisions[0].revision;
    const from = choice("shelf-from", Math.max(1, latest - 1));
    const to = choice("shelf-to", latest);
    const result = h("div", { class: "shelf-changes", "aria-live": "polite" });
    const compare = async () => {
      if (from.value === to.value) return result.replaceChildren(h("p", null, say("shelf.sameRevision")));
      try {
        result.replaceChildren(changesShown(await look(`${path}/changes?from=${from.value}&to=${to.value}`)));
      } catch (error) {
        result.replaceChildren(h("p", null, this.#words(error)));
      }
    };
    place.replaceChildren(
      h(
        "ol",
        { class: "shelf-revisions", reversed: true },
        revisions.map((each) =>
          h("li", { value: each.revision }, `${this.#time(each.madeAt)}, ${caller(each.madeBy)} `, h("button", { type: "button", class: "link", "aria-label": say("shelf.openRevision", { n: each.revision }), onclick: () => this.#open(path, { ...each, entityTag: revisions[0].entityTag }) }, say("shelf.open"))),
        ),
      ),
      revisions.length > 1
        ? h("div", { class: "shelf-between" }, h("label", { for: from.id }, say("shelf.from")), from, h("label", { for: to.id }, say("shelf.to")), to, h("button", { type: "button", class: "shelf-compare", onclick: compare }, say("shelf.compare")))
        : h("p", { class: "quiet-words" }, say("shelf.onlyOne")),
      result,
    );
  }
}

// One field each: a label, an input, its unit, and a place for what is wrong with it.

import { h } from "./dom.js";
import { get, put } from "./pointer.js";
import { bounds, fromMm, number, parse, parseLength, rounded, show } from "./units.js";
import { rangeOf, shownRange, within } from "./ranges.js";
import { field as texts, find, say } from "./words.js";

/** Steps that a hand would take, by unit. */
const STEPS = {
  wide: { mm: 5, cm: 0.5, in: 0.25 },
  fine: { mm: 1, cm: 0.1, in: 0.0625 },
};

const LEAP = 5;

/** Label and meaning of a field; fields of a list share theirs. */
function words(field) {
  const [label, meaning] = texts(typeof field.words === "string" ? field.words : field.path);
  return [field.label ?? label, meaning];
}

/** Plain numbers with a range that is said. */
const NUMBERS = new Set(["ratio", "count", "percent"]);

/** A share is shown in percent. */
const scaleOf = (field) => (field.type === "percent" ? 100 : 1);

/** The id of the input for a place; names of sizes may hold anything. */
export const idOf = (path) => "f" + path.replaceAll("/", "-").replace(/[^\w-]/g, (sign) => "_" + sign.codePointAt(0));

export const step = (field, style) => (typeof field.step === "number" ? field.step : STEPS[field.step ?? "fine"][style.units]);

const errorId = (path) => idOf(path) + "-error";

/** What is said about a field when it is in use: what it means, what is allowed, how the keys change it. */
export function note(field, style) {
  const [label, meaning] = words(field);
  const parts = [meaning];
  const range = rangeOf(field.path);
  if (range.least !== undefined && field.type === "length") {
    const [least, greatest] = bounds(fromMm(range.least, style.units), fromMm(range.greatest, style.units), style.units);
    parts.push(say("range", { least, greatest, unit: style.units }));
  } else if (range.least !== undefined && NUMBERS.has(field.type)) {
    const [least, greatest] = [range.least, range.greatest].map((value) => number(value * scaleOf(field)));
    parts.push(field.type === "percent" ? say("range", { least, greatest, unit: "%" }) : say("rangePlain", { least, greatest }));
  }
  if (field.optional) parts.push(say("optional"));
  const value = get(style, field.path);
  if (field.type === "length" && typeof value === "number" && rounded(value, style.units)) {
    parts.push(say("exactly", { value: number(value, 4), unit: style.units }));
  }
  return { label, text: parts.join(" ") };
}

function frame(field, label, control, more = {}) {
  return h(
    "div",
    { class: "field " + (more.class ?? ""), "data-path": field.path },
    h("div", { class: "head" }, h("label", { for: idOf(field.path) }, label), more.unit),
    control,
    h("span", { id: idOf(field.path) + "-about", class: "unseen" }, words(field)[1]),
    h("p", { class: "error", id: errorId(field.path) }),
  );
}

const described = (path) => `${errorId(path)} ${idOf(path)}-about`;

function lay(input, text) {
  if (input.dataset.own !== "yes") input.value = text;
}

/**
 * What cannot be read stays as it was typed, with a word about it, until it is mended or taken back by the escape key. Answers with a way to say what is wrong;
 * no words when all is well.
 */
export function staying(input, { path }, complain, refresh) {
  let last = "";
  function wrong(words) {
    last = words;
    input.toggleAttribute("data-bad", words !== "");
    complain(path, words);
  }
  function back() {
    wrong("");
    input.removeAttribute("data-own");
    refresh();
  }
  input.addEventListener("blur", () => (input.hasAttribute("data-bad") ? wrong(last) : back()));
  input.addEventListener("keydown", (event) => {
    if (event.key === "Escape") back();
  });
  return wrong;
}

/** A length, a ratio or a count: typed, stepped by the arrow keys, or by its two buttons. */
export function numeric(field, { store, drafted, complain }) {
  const [label] = words(field);
  const isLength = field.type === "length";
  const input = h("input", {
    id: idOf(field.path),
    type: "text",
    inputmode: "decimal",
    autocomplete: "off",
    spellcheck: "false",
    "aria-describedby": described(field.path),
  });
  const unit = h("span", { class: "unit", "aria-hidden": "true" });
  const scale = scaleOf(field);
  const written = (value, style) => (isLength ? show(value, style.units) : number(value * scale));

  const fallback = () => {
    const style = store.style;
    const found = field.dimension ? drafted.length(field.dimension, style.units) : undefined;
    if (found !== undefined) return found;
    if (field.shownMm !== undefined) return fromMm(field.shownMm, style.units);
    return field.shown;
  };

  function take(value) {
    store.change(field.path, (style) => put(style, field.path, value));
  }

  function move(by) {
    const style = store.style;
    const one = step(field, style);
    const { least, greatest } = shownRange(rangeOf(field.path), isLength ? style.units : "");
    const now = get(style, field.path) ?? fallback() ?? least ?? 0;
    if (typeof now !== "number") return;
    const next = within({ least, greatest }, Math.round((now + by * one) / one) * one);
    wrong("");
    input.removeAttribute("data-own");
    take(Number(next.toFixed(4)));
    input.value = written(get(store.style, field.path), store.style);
  }

  input.addEventListener("input", () => {
    input.dataset.own = "yes";
    const text = input.value.trim();
    if (text === "") {
      wrong(field.optional ? "" : say("notNumber"));
      if (field.optional) take(undefined);
      return;
    }
    const value = isLength ? parseLength(text, store.style.units) : parse(text);
    if (Number.isNaN(value)) wrong(say("notNumber"));
    else if (field.type === "count" && !Number.isInteger(value)) wrong(say("wholeNumber"));
    else {
      wrong("");
      take(Number((value / scale).toPrecision(12)));
    }
  });
  const wrong = staying(input, field, complain, () => refresh(store.style));
  input.addEventListener("keydown", (event) => {
    const by = { ArrowUp: 1, ArrowDown: -1, PageUp: LEAP, PageDown: -LEAP }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    move(by);
  });

  const button = (sign, by, key) =>
    h("button", { type: "button", class: "step", tabindex: "-1", "aria-label": say(key, { label }), onclick: () => move(by) }, sign);

  function refresh(style) {
    const value = get(style, field.path);
    lay(input, value === undefined ? "" : typeof value === "number" ? written(value, style) : String(value));
    const otherwise = fallback();
    input.placeholder = value === undefined && otherwise !== undefined ? written(otherwise, style) : "";
    const near = isLength && typeof value === "number" && rounded(value, style.units);
    unit.textContent = isLength ? (near ? "≈ " : "") + style.units : scale === 100 ? "%" : "";
  }

  const element = frame(
    field,
    label,
    h("div", { class: "number" }, button("−", -1, "less"), input, button("+", 1, "more")),
    { unit },
  );
  return { element, refresh, input };
}

/** An ease: a length, or a percentage of the armhole. */
export function ease(field, { store, complain }) {
  const [label] = words(field);
  const input = h("input", {
    id: idOf(field.path),
    type: "text",
    autocomplete: "off",
    "aria-describedby": described(field.path),
  });
  const unit = h("span", { class: "unit", "aria-hidden": "true" });
  const percent = (value) => typeof value === "string" && value.trim().endsWith("%");

  function take(value) {
    store.change(field.path, (style) => put(style, field.path, value));
  }

  input.addEventListener("input", () => {
    input.dataset.own = "yes";
    const text = input.value.trim();
    const share = text.endsWith("%");
    const value = share ? parse(text.slice(0, -1)) : parseLength(text, store.style.units);
    if (Number.isNaN(value)) wrong(say("notNumber"));
    else {
      wrong("");
      take(share ? value + "%" : value);
    }
  });
  const wrong = staying(input, field, complain, () => refresh(store.style));
  input.addEventListener("keydown", (event) => {
    const by = { ArrowUp: 1, ArrowDown: -1, PageUp: LEAP, PageDown: -LEAP }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    const value = get(store.style, field.path);
    wrong("");
    input.removeAttribute("data-own");
    if (percent(value)) take(Number((parseFloat(value) + by * 0.5).toFixed(2)) + "%");
    else {
      const one = STEPS.fine[store.style.units];
      take(Number((Math.round(((value ?? 0) + by * one) / one) * one).toFixed(4)));
    }
    refresh(store.style);
  });

  function refresh(style) {
    const value = get(style, field.path);
    lay(input, value === undefined ? "" : typeof value === "number" ? show(value, style.units) : value);
    unit.textContent = percent(value) ? "" : style.units;
  }
  return { element: frame(field, label, h("div", { class: "number plain" }, input), { unit }), refresh, input };
}

export function text(field, { store }) {
  const [label] = words(field);
  const input = h("input", {
    id: idOf(field.path),
    type: "text",
    autocomplete: "off",
    maxlength: field.longest,
    "aria-describedby": described(field.path),
    oninput: () => store.change(field.path, (style) => put(style, field.path, input.value === "" ? undefined : input.value)),
  });
  const refresh = (style) => {
    const value = get(style, field.path) ?? "";
    if (input.value !== value) input.value = value;
  };
  return { element: frame(field, label, input, { class: field.path === "/name" ? "wide" : "" }), refresh, input };
}

/** A choice of a few words. */
export function choice(field, { store }) {
  const [label] = words(field);
  const select = h(
    "select",
    {
      id: idOf(field.path),
      "aria-describedby": described(field.path),
      onchange: () =>
        store.change("", (style) => (field.pick ? field.pick(style, select.value) : put(style, field.path, select.value))),
    },
    (field.choices ?? field.words).map((word) => h("option", { value: word }, find("choices")[word] ?? word)),
  );
  const refresh = (style) => (select.value = get(style, field.path) ?? field.otherwise);
  return { element: frame(field, label, select), refresh, input: select };
}

/** Two or three ways to give the same thing. */
export function alternatives(field, { store, drafted }) {
  const texts = find("alternatives")[field.id];
  const boxes = field.words.map((word) =>
    h("input", {
      type: "radio",
      name: "alternatives-" + field.id,
      id: `a-${field.id}-${word}`,
      value: word,
      onchange: () => store.change("", (style) => field.pick(style, word, drafted.answer)),
    }),
  );
  const element = h(
    "fieldset",
    { class: "alternatives", id: "a-" + field.id },
    h("legend", null, texts.label),
    h("div", { class: "pills" }, boxes.map((box) => [box, h("label", { for: box.id }, texts[box.value])])),
  );
  const refresh = (style) => {
    for (const box of boxes) box.checked = box.value === field.now(style);
  };
  return { element, refresh };
}

/** A part of the style that is there or not. */
export function onOff(field, { store }) {
  const box = h("input", {
    type: "checkbox",
    id: "s-" + field.id,
    onchange: () => {
      // Laid aside in the view, so that undo and a reload know it too.
      const aside = (store.view.aside ??= {});
      store.change("", (style) => field.turn(style, box.checked, aside));
    },
  });
  const element = h("div", { class: "switch" }, box, h("label", { for: box.id }, find("switches")[field.id]));
  return { element, refresh: (style) => (box.checked = field.on(style)) };
}

// The words of the page in the language chosen. A key is a path: say("drawing.fit"), say("file.done", {name, kb}).

import en from "../texts/en.js";
import fr from "../texts/fr.js";
import { language } from "./kept.js";
import { writeComma } from "./units.js";

export const LANGUAGES = { en, fr };

let code = "en";

/** The language kept, or else the first of the browser's that there is. */
export function chooseLanguage() {
  const wanted = [language(), ...navigator.languages.map((tag) => tag.slice(0, 2))];
  use(wanted.find((tag) => tag in LANGUAGES) ?? "en");
}

export function use(tag) {
  code = tag;
  writeComma(tag === "fr");
  document.documentElement.lang = tag;
}

export const current = () => code;

export const find = (key) => key.split(".").reduce((at, step) => at?.[step], LANGUAGES[code]);

const filled = (text, values) => text.replace(/\{(\w+)\}/g, (whole, name) => String(values?.[name] ?? whole));

export function say(key, values) {
  const found = find(key);
  if (found === undefined) throw new Error("no words for " + key);
  return filled(found, values);
}

/** Words that depend on a number. */
export const count = (key, n) => filled(find(key)[n === 1 ? "one" : "many"], { n });

/** Label and explanation of a field by its pointer. */
export const field = (path) => LANGUAGES[code].fields[path] ?? [path, ""];

/** The name of a point of measure: the page's own words, or else those of the service. */
export const pointName = (row) => LANGUAGES[code].points[row.code] ?? row.name;

// The service speaks English; here its sentences are said in the language of the page, by a book of phrases. What the book does not have stays as it is.

import french from "../texts/phrases.fr.js";
import { h } from "./dom.js";
import { placeName } from "./names.js";
import { current, find } from "./words.js";

const BOOKS = { fr: french };

const escaped = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** A phrase as a pattern; {} stands for anything. */
const pattern = (phrase) => new RegExp("^" + phrase.split("{}").map(escaped).join("(.+?)") + "\\.?$", "i");

const books = new Map();

function book(language) {
  if (!books.has(language)) books.set(language, BOOKS[language].map(([phrase, ours]) => ({ pattern: pattern(phrase), ours })));
  return books.get(language);
}

/** A number between words, as it is written in the language. */
const inWriting = (part, language) => (language === "fr" ? part.replace(/\d\.\d/g, (number) => number.replace(".", ",")).replace(/^below /, "moins de ") : part);

/** A text in a language, or undefined where the book does not have it. */
export function translated(text, language) {
  for (const { pattern: each, ours } of book(language)) {
    const found = each.exec(text.trim());
    if (found) return ours.replace(/\{(\d)\}/g, (whole, n) => inWriting(translated(found[n], language) ?? found[n], language));
  }
  return undefined;
}

/** Places of a request, and names of measurements that only programs use, are called by their names. */
const named = (text) =>
  text
    .replace(/(?<=^|\s)\/[a-z]\w*(\/\w+)*/g, (pointer) => placeName(pointer) || pointer)
    .replace(/\b[a-z]+(?:[A-Z][a-z]+)+\b/g, (word) => find("body")[word]?.[0] ?? find("points")[word] ?? word);

/** A sentence: with a capital letter, and a full stop. */
const whole = (text) => text.charAt(0).toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? "" : ".");

/** A text in the language of the page, or undefined where that has no book or the book does not have it. */
export function inBook(text) {
  const words = current() in BOOKS ? translated(text, current()) : undefined;
  return words === undefined ? undefined : named(words);
}

/** What the service says as a sentence of the page: {text, lang}. */
export function spoken(text) {
  const words = inBook(text);
  return words === undefined ? { text: whole(named(text)), lang: "en" } : { text: whole(words), lang: current() };
}

/** A sentence of the service as an item of a list. */
export function spokenItem(text) {
  const { text: words, lang } = spoken(text);
  return h("li", { lang }, words);
}

/** Few words that are no sentence, such as the name of a seam. */
export function called(text) {
  const words = inBook(text);
  return h("span", { lang: words === undefined ? "en" : current() }, words ?? text);
}

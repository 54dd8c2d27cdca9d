// What the service says, which speaks the language of the page, as sentences of the page.

import { h } from "./dom.js";
import { placeName } from "./names.js";
import { find } from "./words.js";

/** Places of a request, and names of measurements that only programs use, are called by their names. */
const named = (text) =>
  text
    .replace(/(?<=^|\s)\/[a-z]\w*(\/\w+)*/g, (pointer) => placeName(pointer) || pointer)
    .replace(/\b[a-z]+(?:[A-Z][a-z]+)+\b/g, (word) => find("body")[word]?.[0] ?? find("points")[word] ?? word);

/** A sentence: with a capital letter, and a full stop. */
const whole = (text) => text.charAt(0).toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? "" : ".");

/** What the service says as a sentence of the page. */
export const spoken = (text) => whole(named(text));

/** A sentence of the service as an item of a list. */
export const spokenItem = (text) => h("li", null, spoken(text));

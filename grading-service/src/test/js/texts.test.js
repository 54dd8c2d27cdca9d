// What the page and the form say, in both languages.

import assert from "node:assert/strict";
import test from "node:test";
import en from "../../main/resources/static/page/texts/en.js";
import fr from "../../main/resources/static/page/texts/fr.js";
import { WORDS } from "../../main/resources/static/form/words.js";

/** Every text by the way to it. */
const texts = (object, at = "") => Object.entries(object).flatMap(([key, value]) => (typeof value === "object" ? texts(value, at + ">" + key) : [[at + ">" + key, value]]));

const PAIRS = [
  ["page", texts(en), texts(fr)],
  ["form", texts(WORDS.en), texts(WORDS.fr)],
];

const parts = (text) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort();

for (const [where, english, french] of PAIRS) {
  test(`${where}: both languages say the same things of the same parts`, () => {
    assert.ok(english.length > 40);
    assert.deepEqual(french.map(([key]) => key).sort(), english.map(([key]) => key).sort());
    const said = new Map(french);
    for (const [key, text] of english) assert.deepEqual(parts(said.get(key)), parts(text), key);
  });

  // A no-break space before ; : ? ! % » and after «, and no typewriter apostrophe: Imprimerie nationale, Lexique des règles typographiques, 2002, from memory.
  test(`${where}: French is written as French is printed`, () => {
    for (const [key, text] of french) {
      assert.doesNotMatch(text, / [;:?!%»]|« |[\p{L})»}][;?!](?!\w)|[\p{L})»}]:(?= )|\d%|\p{L}'\p{L}/u, key);
    }
  });

  // One word for one thing: docs/glossary.md.
  test(`${where}: French takes the words of the glossary`, () => {
    for (const [key, text] of french) assert.doesNotMatch(text, /\b(?:sauts?|constats?|emboîtements?|sous-manches?|bords? attachés?)\b/i, key);
  });
}

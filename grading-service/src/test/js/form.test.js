// The words of the form for shops: both languages have the same, and those that depend on values take the same ones.

import assert from "node:assert/strict";
import test from "node:test";
import { count, say, spokenIn, WORDS } from "../../main/resources/static/form/words.js";

const keys = (object, at = "") => Object.entries(object).flatMap(([key, value]) => (typeof value === "object" ? keys(value, `${at}${key}.`) : [at + key]));
const parts = (text) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort();
const at = (object, key) => key.split(".").reduce((inner, step) => inner[step], object);

test("both languages of the form have the same words with the same parts", () => {
  assert.ok(keys(WORDS.en).length > 60);
  assert.deepEqual(keys(WORDS.fr).sort(), keys(WORDS.en).sort());
  for (const key of keys(WORDS.en)) {
    // One of something may be written out.
    if (!key.endsWith(".one")) assert.deepEqual(parts(at(WORDS.fr, key)), parts(at(WORDS.en, key)), key);
  }
});

test("a language tag is spoken by its language, and by English where there are no words for it", () => {
  assert.equal(spokenIn("fr-CA"), "fr");
  assert.equal(spokenIn("FR"), "fr");
  assert.equal(spokenIn("nl"), "en");
  assert.equal(spokenIn(undefined), "en");
  assert.equal(say("fr", "range", { least: 10, greatest: 70, unit: "cm" }), "De 10 à 70 cm.");
  assert.equal(count("en", "toMend", 2), "2 measurements need another look.");
});

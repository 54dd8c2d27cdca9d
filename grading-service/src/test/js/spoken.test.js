// The book of phrases against what the engine can say: hardly anything is said that it does not have, and nothing stands in it that is said no more. What it lacks shows in English.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import test from "node:test";
import { translated } from "../../main/resources/static/page/common/spoken.js";
import phrases from "../../main/resources/static/page/texts/phrases.fr.js";

const ROOT = new URL("../../../../", import.meta.url);

const files = (folder) =>
  readdirSync(new URL(folder, ROOT), { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? files(folder + entry.name + "/") : entry.name.endsWith(".java") ? [folder + entry.name] : [],
  );

/** The source of files, with texts that are written over several lines joined. */
const source = (names) => names.map((name) => readFileSync(new URL(name, ROOT), "utf8").replace(/"\s*\+\s*"/g, "")).join("\n");

const squeezed = (text) => text.toLowerCase().replace(/[^a-z]+/g, " ");

test("what the checks say of a grade has its words in French, but for a few of the latest", () => {
  const said = files("grading-core/src/main/java/org/capwright/check/")
    .filter((name) => /Check\.java$|PieceFindings/.test(name))
    .flatMap((name) => [...source([name]).matchAll(/"([^"\n]*)"/g)])
    .map(([, text]) => text.trim())
    .filter((text) => text.split(" ").length > 4 && !text.includes("%"));
  assert.ok(said.length > 40);
  const known = phrases.map(([phrase]) => squeezed(phrase)).join("|");
  const missing = said.filter((text) => !known.includes(squeezed(text).trim()));
  assert.ok(missing.length < said.length / 10, missing.join("\n"));
});

test("no phrase is kept that nobody says", () => {
  const all = squeezed(["size-tables", "grading-core", "grading-service"].map((module) => source(files(module + "/src/main/java/"))).join("\n"));
  // The parts of a phrase that are put together by a condition are looked for one by one.
  const parts = (phrase) => phrase.split(/\{\}|[,;:.]/).map(squeezed).map((part) => part.trim()).filter((part) => part.length > 12);
  const said = (part) => [part.split(" ").slice(0, 3), part.split(" ").slice(-3)].some((words) => all.includes(words.join(" ")));
  assert.deepEqual(phrases.map(([phrase]) => phrase).filter((phrase) => !parts(phrase).every(said)), []);
});

test("numbers come over in the writing of the language, and phrases within phrases are translated", () => {
  assert.equal(translated("Gather or ease the top edge from 70.7 cm to 33.0 cm, most of it near the apex.", "fr"), "Froncez ou soutenez le bord supérieur de 70,7 cm à 33,0 cm, surtout près du sommet.");
  assert.match(translated("the row does not grow at all, while the body does; the sleeve grows less than the arm, so that it gets short", "fr"), /courte$/);
  assert.equal(translated("something nobody has heard of", "fr"), undefined);
});

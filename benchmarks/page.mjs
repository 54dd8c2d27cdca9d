// Measures the page in a browser on the running service: how long a change takes until it is on the screen, until the sleeve as worn lies still again, and what a first load weighs without it.
// Usage: node benchmarks/page.mjs http://localhost:8080 [times, 40]. Prints Markdown with the load of the machine, without which the times say little.

import { loadavg } from "node:os";
import { Browser } from "../docs/browser.mjs";

const [url = "http://localhost:8080", times = "40"] = process.argv.slice(2);
const UP = "\uE013";
const DOWN = "\uE015";

const at = (sorted, share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];

function row(what, values) {
  const sorted = [...values].sort((a, b) => a - b);
  return `| ${what} | ${Math.round(at(sorted, 0.5))} ms | ${Math.round(at(sorted, 0.25))}–${Math.round(at(sorted, 0.75))} ms | ${sorted.length} |`;
}

const load = () => loadavg()[0].toFixed(1);

const page = await Browser.start();
try {
  await page.look(1280, 800, "light");
  await page.go(url);
  await page.settled();
  const bytes = await page.run("return [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')].filter((entry) => !entry.name.includes('vendor') && !entry.name.includes('/worn/')).reduce((sum, entry) => sum + entry.encodedBodySize, 0);");
  const before = load();
  await page.type("#f-sleeve-bicep", UP + DOWN);
  await page.settled();
  await page.run("performance.clearMeasures();");
  for (let i = 0; i < times; i++) {
    await page.type("#f-sleeve-bicep", i % 2 ? DOWN : UP);
    await page.settled();
  }
  const changes = await page.run("return performance.getEntriesByName('change-on-screen').map((entry) => entry.duration);");
  const between = load();
  await page.click("#as-worn");
  await page.until("return document.querySelector('.worn3d-inner')?.dataset.state === 'settled';");
  await page.run(`
    window.still = [];
    let since = 0;
    document.addEventListener("keydown", () => (since = performance.now()), true);
    new MutationObserver(() => { if (since && document.querySelector(".worn3d-inner").dataset.state === "settled") { window.still.push(performance.now() - since); since = 0; } })
      .observe(document.querySelector(".worn3d-inner"), { attributes: true, attributeFilter: ["data-state"] });`);
  for (let i = 0; i < times; i++) {
    await page.type("#f-sleeve-bicep", i % 2 ? DOWN : UP);
    await page.until("return window.still.length === arguments[0];", i + 1);
  }
  const still = await page.run("return window.still;");
  console.log("| | median | middle half | times |\n|---|---|---|---|");
  console.log(row("a change is on the screen", changes));
  console.log(row("the sleeve as worn lies still again", still));
  console.log(`\nFirst load, compressed, without the view as worn: ${Math.round(bytes / 1000)} kB. Load of the machine (one minute): ${before}, ${between}, ${load()}.`);
} finally {
  await page.close();
}

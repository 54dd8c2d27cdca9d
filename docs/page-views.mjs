// Takes a picture of every view of the page, for people to look at: at four widths, in each language, light and dark. Says as well what is wider than the page, cut off, covered, too small to read, or English on the French page.
// Usage: node docs/page-views.mjs http://localhost:8080 FOLDER [words of the names to take, such as 390 or "fr cloth"]
// It puts a style on the shelf and an order beside it where there is none, so let the service have a store of its own (CAPWRIGHT_STORE).

import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { Browser } from "./browser.mjs";

const [url = "http://localhost:8080", folder = "views", only = ""] = process.argv.slice(2);
const WIDTHS = [[390, 844], [1280, 800], [1440, 900], [2560, 1440]];
const PHONE = 900;
const GOWN = readFileSync(new URL("../examples/choir-gown.json", import.meta.url), "utf8");

/** A sheet of somebody else's, with a slip, a row nobody knows and steps that leave a doubt. */
const SHEET = "Measure (cm);36;38;40*;42;44;Remark\nBicep;33.4;34.7;36;37.3;38.6;\nSleeve length;59.2;59.6;60;60.4;60.8;\nArmhole;42;43.5;45;49;48.1;\nWrist;21;21.5;22;22.5;23;\nTop of the hood;11;12;13;14;15;\n";

const open = "for (const each of document.querySelectorAll(arguments[0])) each.open = true; document.activeElement?.blur(); scrollTo(0, 0);";
const there = (selector) => `return !!document.querySelector(${JSON.stringify(selector)});`;

/** Each view: how to come to it from the one before. */
const VIEWS = [
  ["measures", async (page, phone) => phone && page.click(".tab[data-tab=measures]")],
  ["measures-open", async (page) => page.run(open, "#measures details, .form details")],
  ...["spec", "jumps", "findings", "sewing"].map((tab) => [tab, (page) => page.click(`.tab[data-tab=${tab}]`)]),
  ["jumps-culprit", async (page) => {
    await page.click(".tab[data-tab=jumps]");
    await page.click("#derive-take");
    await page.until(there(".account tbody tr"));
    await page.settled();
    await page.type("#f-grade-bicep-1", "\uE009a\uE0000.1");
    await page.settled();
    await page.until(there("#mend-bicep-1"));
    await page.run(open, ".dock details");
  }],
  ["findings-stop", async (page) => {
    await page.click(".tab[data-tab=findings]");
    await page.until(there("#what-if-apply"));
  }],
  ["cloth", async (page) => {
    await page.run("document.querySelector('.history button').click(); document.querySelector('.history button').click();");
    await page.settled();
    await page.click(".tab[data-tab=cloth]");
    await page.click("#cloth-start");
    await page.until("return !!document.querySelector('.lay img')?.complete;");
    await page.run(open, ".dock details");
  }],
  ["files", async (page) => {
    await page.click(".tab[data-tab=files]");
    await page.click("#file-keep");
    await page.until("return /\\d/.test(document.querySelector('.file-pages').textContent);");
    await page.run(open, "#panel-files details");
  }],
  ["view-menu", (page) => page.run("document.querySelector('.layers').open = true; scrollTo(0, 0);")],
  ["as-worn", async (page) => {
    await page.run("document.querySelector('.layers').open = false;");
    await page.click("#as-worn");
    await page.until("return document.querySelector('.worn3d-inner')?.dataset.state === 'settled';");
  }],
  ["questions", async (page) => {
    await page.click("#as-worn");
    await page.run("(document.querySelector('#begin') ?? [...document.querySelectorAll('#panel-files button')].at(0)).click();");
    await page.until("return document.querySelectorAll('.start-picture').length > 10;");
  }],
  ["error", async (page, phone) => {
    await page.click("#start-close");
    if (phone) await page.click(".tab[data-tab=measures]");
    await page.type("#f-sleeve-capHeight", "\uE009a\uE00060");
    await page.until("return document.querySelector('.problems').textContent !== '';");
    await page.run("scrollTo(0, 0);");
  }],
  ["wearer", async (page) => {
    await page.run("document.querySelector('.history button').click();");
    await page.settled();
    await page.click("[data-task=wearer]");
    await page.until(there("#w-bustGirth"));
  }],
  ["wearer-asked", async (page) => {
    for (const [name, value] of [["bustGirth", "96"], ["stature", "168"], ["upperArmGirth", "36"]]) await page.type("#w-" + name, "\uE009a\uE000" + value);
    await page.until(there(".doubted"));
    await page.run("scrollTo(0, 0);");
  }],
  ["wearer-drafted", async (page) => {
    await page.click("#w-upperArmGirth-confirm");
    await page.until(there(".plan path.cut"));
    await page.run(open, "#desk details");
  }],
  ["check", async (page) => {
    await page.click("[data-task=check]");
    await page.until(there("#check-own"));
  }],
  ["check-own", async (page) => {
    await page.click("#check-own");
    await page.until(there(".verdict"));
    await page.run(open, "#desk details");
  }],
  ["check-sheet", async (page) => {
    await page.run(
      "const files = new DataTransfer(); files.items.add(new File([arguments[0]], 'gown.csv', { type: 'text/csv' })); const input = document.querySelector('#desk input[type=file]'); input.files = files.files; input.dispatchEvent(new Event('change', { bubbles: true }));",
      SHEET,
    );
    await page.until("return document.querySelector('#desk').textContent.includes('hood');");
    await page.run(open, "#desk details");
  }],
  ["compare", async (page) => {
    await page.click("[data-task=compare]");
    await page.until(there(".overlaid .outline.second"));
  }],
  ["shelf", async (page) => {
    await page.click("[data-task=shelf]");
    await page.until(there(".shelf-style"));
  }],
  ["orders", async (page) => {
    await page.click("[data-task=orders]");
    await page.until(there(".shop-order"));
  }],
];

/** What people would stumble over, as far as a script can tell. */
const FLAWS = () => {
  const told = new Set();
  const name = (e) => `${e.tagName.toLowerCase()}${e.id ? "#" + e.id : ""}${typeof e.className === "string" && e.className ? "." + e.className.trim().replaceAll(/\s+/g, ".") : ""} “${(e.textContent || e.value || "").trim().slice(0, 40)}”`;
  if (document.scrollingElement.scrollWidth > innerWidth + 1) told.add(`page is ${document.scrollingElement.scrollWidth} wide`);
  const dialog = document.querySelector("dialog[open]");
  /** What stays where it is while the rest slides under it. */
  const stays = (e) => e && (/fixed|sticky/.test(getComputedStyle(e).position) || stays(e.parentElement));
  /** Whether all that scrolls round an element shows its middle. */
  const inSight = (e, x, y) => {
    for (let at = e.parentElement; at; at = at.parentElement) {
      const box = at.getBoundingClientRect();
      if (getComputedStyle(at).overflow !== "visible" && at.tagName !== "BODY" && (x < box.left || x > box.right || y < box.top || y > box.bottom)) return false;
    }
    return true;
  };
  const scrolls = (e) => /auto|scroll/.test(getComputedStyle(e).overflowX);
  for (const e of (dialog ?? document).querySelectorAll("*")) {
    if (!e.checkVisibility({ visibilityProperty: true, opacityProperty: true }) || e.closest(".unseen, .skip, svg, option, head")) continue;
    const box = e.getBoundingClientRect();
    if (box.width < 2 || box.height < 2) continue;
    const own = [...e.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim() !== "");
    const style = getComputedStyle(e);
    if (own && document.documentElement.lang !== "en" && !e.closest("[lang=en], pre, code, .source") && /\b(?:the|of|and|with|which|must|sleeve|seam|size|from|is)\b/i.test([...e.childNodes].map((node) => (node.nodeType === 3 ? node.textContent.replace(/«[^»]*»|Choir gown sleeve/g, "") : "")).join(" "))) told.add(`English: ${name(e)}`);
    let scroller = e.parentElement;
    while (scroller && !scrolls(scroller)) scroller = scroller.parentElement;
    if (own && parseFloat(style.fontSize) < 11) told.add(`${style.fontSize}: ${name(e)}`);
    if (own && style.overflowX !== "visible" && style.textOverflow !== "ellipsis" && !scrolls(e) && e.scrollWidth > e.clientWidth + 1) told.add(`cut off: ${name(e)}`);
    if (own && !scroller && (box.right > innerWidth + 1 || box.left < -1)) told.add(`outside: ${name(e)}`);
    if (e.matches("input[type=text], input:not([type])") && e.scrollWidth > e.clientWidth + 1) told.add(`cut off: ${name(e)}`);
    if (e.matches("button, select, input, summary, a")) {
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      const top = x > 0 && y > 0 && x < innerWidth && y < innerHeight && inSight(e, x, y) ? document.elementFromPoint(x, y) : e;
      if (top && !stays(top) && !e.contains(top) && !top.contains(e) && !top.closest("label")?.contains(e) && top.closest("label")?.htmlFor !== e.id) told.add(`covered by ${name(top)}: ${name(e)}`);
    }
  }
  return [...told];
};

const json = { "Content-Type": "application/json" };
const listed = await (await fetch(url + "/v1/orders")).json();
if (!(listed.orders?.length > 0)) {
  await fetch(url + "/v1/styles/choir-gown", { method: "PUT", headers: json, body: JSON.stringify({ ...JSON.parse(GOWN), ease: { bicep: 5, armhole: 3, capEase: 2, elbow: 4, wrist: 6 } }) });
  for (const body of [{ size: "40" }, { reference: "choir 12", wearer: { bustGirth: 96, stature: 168, upperArmGirth: 36 } }]) await fetch(url + "/v1/styles/choir-gown/orders", { method: "POST", headers: json, body: JSON.stringify(body) });
}
mkdirSync(folder, { recursive: true });
const words = only.split(" ").filter((word) => word !== "");
const wanted = (...name) => words.every((word) => name.includes(word) || name[0] === word);
const page = await Browser.start();
let flawed = 0;
try {
  for (const language of ["en", "fr"]) {
    for (const phone of [true, false]) {
      const widths = WIDTHS.filter(([width]) => width < PHONE === phone);
      if (!VIEWS.some(([view]) => widths.some(([width]) => ["light", "dark"].some((scheme) => wanted(view, language, String(width), scheme))))) continue;
      // Not on the page itself, which keeps its work when it is left.
      await page.go(url + "/favicon.svg");
      await page.run("localStorage.clear(); sessionStorage.clear(); localStorage.setItem('capwright.language', JSON.stringify(arguments[0]));", language);
      await page.look(...widths.at(-1), "light");
      await page.go(url);
      await page.settled();
      for (const [view, show] of VIEWS) {
        await page.look(...widths.at(-1), "light");
        await show(page, phone);
        for (const [width, height] of widths) {
          for (const scheme of ["light", "dark"]) {
            if (!wanted(view, language, String(width), scheme)) continue;
            await page.look(width, height, scheme);
            await page.run("return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));");
            writeFileSync(`${folder}/${view}-${language}-${width}-${scheme}.png`, await page.picture(phone ? 3000 : 0));
            if (scheme === "dark") continue;
            for (const flaw of await page.run(`return (${FLAWS})();`)) {
              console.log(`${view}-${language}-${width}: ${flaw}`);
              flawed++;
            }
          }
        }
      }
    }
  }
} finally {
  await page.close();
}
console.log(`${flawed} to look at`);

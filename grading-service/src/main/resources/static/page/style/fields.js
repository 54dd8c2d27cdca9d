// The fields of a style in the groups in which the trade thinks of them.

import { get, has, put } from "../common/pointer.js";
import { fromMm } from "../common/units.js";

const length = (path, more = {}) => ({ type: "length", path, step: "wide", ...more });
const fine = (path, more = {}) => length(path, { step: "fine", ...more });
const choice = (path, words, more = {}) => ({ type: "choice", path, words, ...more });

const overlay = (style) => has(style, "/overlay");
const pleats = (style) => has(style, "/overlay/pleats");
const under = (style) => has(style, "/underSleeve");
const halves = (style) => has(style, "/sleeve/front") || has(style, "/sleeve/back");
const halfEases = (style) => has(style, "/sleeve/front/capEase") || has(style, "/sleeve/back/capEase");

/** The base size as it was last drafted, in the style's unit; what follows from the rest is taken from there when it is given up. */
const drafted = (answer, name, otherwise) =>
  Number((answer?.sizes.find((size) => size.label === answer.baseSize)?.dimensions[name] ?? otherwise).toFixed(2));

/** Which of bicep, cap height and cap ease follows from the other two. */
export const follows = (style) =>
  has(style, "/sleeve/capEase") ? (has(style, "/sleeve/bicep") ? "capHeight" : "bicep") : "capEase";

function letFollow(style, what, answer) {
  const base = answer?.sizes.find((size) => size.label === answer.baseSize);
  if (what !== "bicep" && !has(style, "/sleeve/bicep")) put(style, "/sleeve/bicep", drafted(answer, "bicep", 36));
  if (what !== "capHeight" && !has(style, "/sleeve/capHeight")) {
    put(style, "/sleeve/capHeight", drafted(answer, "capHeight", 13));
  }
  if (what === "capEase") put(style, "/sleeve/capEase", undefined);
  else {
    if (!has(style, "/sleeve/capEase")) {
      put(style, "/sleeve/capEase", Number((base?.capEase ?? 2).toFixed(2)));
    }
    put(style, "/sleeve/" + what, undefined);
    put(style, "/grade/" + what, undefined);
  }
}

function alternative(base, names, seeds) {
  return {
    now: (style) => names.find((name) => has(style, base + name)) ?? names[0],
    pick(style, name, answer) {
      for (const other of names) if (other !== name) put(style, base + other, undefined);
      if (!has(style, base + name)) put(style, base + name, seeds(name, answer, style));
    },
  };
}

const layout = (answer) => answer?.sizes.find((size) => size.label === answer.baseSize)?.pleats;

const riseOrFullness = alternative("/overlay/", ["rise", "fullness"], (name, answer, style) =>
  name === "rise"
    ? drafted(answer, "rise", scaled(style, 140))
    : Number((layout(answer)?.fullness ?? 2).toFixed(2)),
);

const pleatSizing = alternative("/overlay/pleats/", ["count", "depth", "greatestDepth"], (name, answer, style) =>
  name === "count" ? (layout(answer)?.count ?? 8) : Number((layout(answer)?.greatestDepth ?? scaled(style, 24)).toFixed(2)),
);

const scaled = (style, mm) => Number(fromMm(mm, style.units).toFixed(2));

/** Takes out the growth of dimensions that the style no longer has. */
function dropGrowth(style, ...names) {
  for (const name of names) put(style, "/grade/" + name, undefined);
}

/**
 * A part of the style that is there or not, with what grows with it. Taken off it is laid aside with its figures, so that it comes back as it was.
 */
function part(id, { on, places, grows, seed }) {
  return {
    type: "switch",
    id,
    on,
    turn(style, wanted, aside) {
      if (!wanted) {
        const kept = (names) => names.filter(([, value]) => value !== undefined);
        aside[id] = {
          units: style.units,
          sizes: style.sizes,
          places: kept(places.map((place) => [place, get(style, place)])),
          grade: kept(grows.map((name) => [name, get(style, "/grade/" + name)])),
        };
        for (const place of places) put(style, place, undefined);
        dropGrowth(style, ...grows);
        return;
      }
      const laid = aside[id];
      delete aside[id];
      if (laid?.units !== style.units) return seed(style);
      for (const [place, value] of laid.places) put(style, place, structuredClone(value));
      for (const [name, growth] of laid.grade) {
        put(style, "/grade/" + name, Array.isArray(growth) && laid.sizes.join() !== style.sizes.join() ? growth[0] : growth);
      }
    },
  };
}

/** A share of a growth, be it one or a list. */
const shareOf = (growth, share) => (Array.isArray(growth) ? growth.map((each) => shareOf(each, share)) : Number((growth * share).toFixed(3)));

/** Shares of the whole that a front usually has, to begin with. Common practice, no source. */
const FRONT_WIDTH = 0.49;
const FRONT_ARMHOLE = 0.48;

const usualPleats = () => ({ count: 8, kind: "knife", direction: "apex" });

export const GROUPS = [
  {
    id: "style",
    fields: [
      { type: "text", path: "/name", longest: 80 },
      { type: "text", path: "/revision", longest: 20 },
    ],
  },
  {
    id: "arm",
    fields: [
      length("/sleeve/bicep", { when: (style) => follows(style) !== "bicep" }),
      length("/sleeve/armhole"),
      length("/sleeve/length", { when: under }),
      part("halves", {
        on: halves,
        places: ["/sleeve/front", "/sleeve/back"],
        grows: ["frontWidth", "frontCapOutward", "frontCapInward", "frontArmhole", "backCapOutward", "backCapInward"],
        seed(style) {
          // The front grows with the whole, or the back would take all of the growth.
          for (const [name, whole, share] of [
            ["width", "bicep", FRONT_WIDTH],
            ["armhole", "armhole", FRONT_ARMHOLE],
          ]) {
            if (!has(style, "/sleeve/" + whole)) continue;
            put(style, "/sleeve/front/" + name, Number((share * get(style, "/sleeve/" + whole)).toFixed(2)));
            const growth = get(style, "/grade/" + whole);
            if (growth !== undefined) put(style, `/grade/front${name[0].toUpperCase()}${name.slice(1)}`, shareOf(growth, share));
          }
        },
      }),
      length("/sleeve/front/width", { when: halves, optional: true, dimension: "frontWidth" }),
      length("/sleeve/front/armhole", { when: halves, optional: true, dimension: "frontArmhole" }),
    ],
  },
  {
    id: "cap",
    fields: [
      {
        type: "alternatives",
        id: "follows",
        words: ["capEase", "capHeight", "bicep"],
        now: follows,
        pick: letFollow,
        when: (style) => !halfEases(style),
      },
      fine("/sleeve/capHeight", { when: (style) => follows(style) !== "capHeight" && !halfEases(style) }),
      { type: "ease", path: "/sleeve/capEase", when: (style) => follows(style) !== "capEase" },
      { type: "ease", path: "/sleeve/front/capEase", when: halfEases },
      { type: "ease", path: "/sleeve/back/capEase", when: halfEases },
      fine("/sleeve/capOutward", { optional: true, dimension: "capOutward" }),
      fine("/sleeve/capInward", { optional: true, dimension: "capInward" }),
      fine("/sleeve/front/capOutward", { optional: true, when: halves, dimension: "frontCapOutward" }),
      fine("/sleeve/front/capInward", { optional: true, when: halves, dimension: "frontCapInward" }),
      fine("/sleeve/back/capOutward", { optional: true, when: halves, dimension: "backCapOutward" }),
      fine("/sleeve/back/capInward", { optional: true, when: halves, dimension: "backCapInward" }),
    ],
  },
  {
    id: "overlay",
    fields: [
      part("overlay", {
        on: overlay,
        places: ["/overlay"],
        grows: ["rise", "overlayLength", "sideDepth", "hemSagitta", "extraWidth", "frontGap", "backGap", "pleatDepth"],
        seed(style) {
          style.overlay = {
            rise: scaled(style, 140),
            length: scaled(style, 340),
            hem: "vee",
            frontGap: scaled(style, 60),
            backGap: scaled(style, 60),
            pleats: usualPleats(),
          };
        },
      }),
      {
        type: "alternatives",
        id: "raised",
        words: ["rise", "fullness"],
        now: riseOrFullness.now,
        pick(style, name, answer) {
          riseOrFullness.pick(style, name, answer);
          if (name === "fullness") dropGrowth(style, "rise");
        },
        when: overlay,
      },
      length("/overlay/rise", { when: (style) => overlay(style) && !has(style, "/overlay/fullness") }),
      { type: "ratio", path: "/overlay/fullness", step: 0.05, when: (style) => has(style, "/overlay/fullness") },
      length("/overlay/length", { when: overlay }),
      choice("/overlay/hem", ["vee", "bowed", "level"], {
        when: overlay,
        otherwise: "vee",
        pick(style, word) {
          put(style, "/overlay/hem", word);
          if (word === "bowed") put(style, "/overlay/hemSagitta", get(style, "/overlay/hemSagitta") ?? scaled(style, 20));
          else {
            put(style, "/overlay/hemSagitta", undefined);
            dropGrowth(style, "hemSagitta");
          }
          if (word === "level") {
            put(style, "/overlay/sideDepth", undefined);
            dropGrowth(style, "sideDepth");
          }
        },
      }),
      fine("/overlay/hemSagitta", { when: (style) => get(style, "/overlay/hem") === "bowed" }),
      fine("/overlay/sideDepth", {
        when: (style) => overlay(style) && get(style, "/overlay/hem") !== "level",
        optional: true,
        shown: 0,
      }),
      fine("/overlay/extraWidth", { when: overlay, optional: true, shown: 0 }),
      { type: "ratio", path: "/overlay/join", step: 0.05, when: overlay, optional: true, shown: 0.75 },
      fine("/overlay/frontGap", { when: overlay }),
      fine("/overlay/backGap", { when: overlay }),
    ],
  },
  {
    id: "pleats",
    when: overlay,
    fields: [
      part("pleats", {
        on: pleats,
        places: ["/overlay/pleats"],
        grows: ["pleatDepth"],
        seed: (style) => put(style, "/overlay/pleats", usualPleats()),
      }),
      {
        type: "alternatives",
        id: "sizing",
        words: ["count", "depth", "greatestDepth"],
        now: pleatSizing.now,
        pick(style, name, answer) {
          pleatSizing.pick(style, name, answer);
          if (name === "count") dropGrowth(style, "pleatDepth");
        },
        when: pleats,
      },
      { type: "count", path: "/overlay/pleats/count", when: (style) => pleats(style) && pleatSizing.now(style) === "count" },
      fine("/overlay/pleats/depth", { when: (style) => pleats(style) && pleatSizing.now(style) === "depth" }),
      fine("/overlay/pleats/greatestDepth", { when: (style) => pleats(style) && pleatSizing.now(style) === "greatestDepth" }),
      choice("/overlay/pleats/kind", ["knife", "box", "inverted"], {
        when: pleats,
        otherwise: "knife",
        pick(style, word) {
          put(style, "/overlay/pleats/kind", word);
          if (word !== "knife") put(style, "/overlay/pleats/direction", undefined);
        },
      }),
      choice("/overlay/pleats/direction", ["away", "apex", "front", "back"], {
        when: (style) => pleats(style) && (get(style, "/overlay/pleats/kind") ?? "knife") === "knife",
        otherwise: "away",
      }),
      fine("/overlay/pleats/flatZone/front", { when: pleats, optional: true, shown: 0 }),
      fine("/overlay/pleats/flatZone/back", { when: pleats, optional: true, shown: 0 }),
    ],
  },
  {
    id: "under",
    fields: [
      part("under", {
        on: under,
        places: ["/underSleeve", "/sleeve/length"],
        grows: ["length", "elbow", "wrist", "elbowLevel", "elbowDart", "elbowDartLength", "elbowEase", "handGirth"],
        seed(style) {
          const bicep = get(style, "/sleeve/bicep") ?? scaled(style, 360);
          style.underSleeve = { elbow: Number((bicep * 0.83).toFixed(2)), wrist: Number((bicep * 0.61).toFixed(2)) };
          put(style, "/sleeve/length", scaled(style, 600));
        },
      }),
      length("/underSleeve/elbow", { when: under, optional: true, dimension: "elbow" }),
      length("/underSleeve/wrist", { when: under }),
      length("/underSleeve/elbowLevel", { when: under, optional: true, dimension: "elbowLevel" }),
      choice("/underSleeve/shaping", ["tapered", "elbowDart", "easedSeam"], {
        when: under,
        otherwise: "tapered",
        pick(style, word) {
          put(style, "/underSleeve/shaping", word);
          if (word !== "elbowDart") {
            put(style, "/underSleeve/elbowDart", undefined);
            put(style, "/underSleeve/elbowDartLength", undefined);
            dropGrowth(style, "elbowDart", "elbowDartLength");
          }
          if (word !== "easedSeam") {
            put(style, "/underSleeve/elbowEase", undefined);
            dropGrowth(style, "elbowEase");
          }
        },
      }),
      fine("/underSleeve/elbowDart", { when: (style) => get(style, "/underSleeve/shaping") === "elbowDart", optional: true, dimension: "elbowDart" }),
      fine("/underSleeve/elbowDartLength", { when: (style) => get(style, "/underSleeve/shaping") === "elbowDart", optional: true, dimension: "elbowDartLength" }),
      fine("/underSleeve/elbowEase", { when: (style) => get(style, "/underSleeve/shaping") === "easedSeam", optional: true, dimension: "elbowEase" }),
      length("/underSleeve/handGirth", { when: under, optional: true, dimension: "handGirth" }),
    ],
  },
  {
    id: "sizes",
    fields: [{ type: "sizes", path: "/sizes" }, { type: "base", path: "/baseSize" }, { type: "table", path: "/sizeTable" }],
  },
  {
    id: "seams",
    fields: [
      fine("/seamAllowance/armhole", { optional: true, shownMm: 10, when: under }),
      fine("/seamAllowance/attachedEdge", { optional: true, shownMm: 10, when: overlay }),
      fine("/seamAllowance/sideSeam", { optional: true, shownMm: 10 }),
      fine("/seamAllowance/hem", { optional: true, shownMm: 10 }),
      choice("/corners", ["mitred", "bevelled", "squared"], { otherwise: "mitred" }),
      fine("/turnOfCloth", { optional: true, shownMm: 2, when: overlay }),
      fine("/interfacingOverlap", { optional: true, shownMm: 0, when: overlay }),
      choice("/halves", ["onFold", "whole"], { otherwise: "onFold" }),
      choice("/pleatNotches", ["cutEdge", "none"], { otherwise: "cutEdge", when: overlay }),
      choice("/drillHoles", ["none", "pleatsAndDarts"], { otherwise: "none" }),
      choice("/strips", ["words", "pieces"], { otherwise: "words" }),
      choice("/pleatInterfacing", ["through", "cutAway"], { otherwise: "through", when: overlay }),
      fine("/thickness/main", { optional: true, when: overlay }),
      fine("/thickness/lining", { optional: true, when: overlay }),
      fine("/thickness/interfacing", { optional: true, when: overlay }),
    ],
  },
];

export const ALL_FIELDS = GROUPS.flatMap((group) => group.fields);

/** Every place of a length, whether or not the style shows it; for the change of units. */
export const LENGTHS = ALL_FIELDS.filter((field) => field.type === "length" || field.type === "ease").map((field) => field.path);

/** Dimensions that can grow from size to size: name among the grade rules, and the place that must be given. */
export const GROWING = [
  ["bicep", "/sleeve/bicep"],
  ["capHeight", "/sleeve/capHeight"],
  ["armhole", "/sleeve/armhole"],
  ["length", "/sleeve/length"],
  ["capOutward", "/sleeve/capOutward"],
  ["capInward", "/sleeve/capInward"],
  ["frontWidth", "/sleeve/front/width"],
  ["frontArmhole", "/sleeve/front/armhole"],
  ["frontCapOutward", "/sleeve/front/capOutward"],
  ["frontCapInward", "/sleeve/front/capInward"],
  ["backCapOutward", "/sleeve/back/capOutward"],
  ["backCapInward", "/sleeve/back/capInward"],
  ["rise", "/overlay/rise"],
  ["overlayLength", "/overlay/length"],
  ["sideDepth", "/overlay/sideDepth"],
  ["hemSagitta", "/overlay/hemSagitta"],
  ["extraWidth", "/overlay/extraWidth"],
  ["frontGap", "/overlay/frontGap"],
  ["backGap", "/overlay/backGap"],
  ["pleatDepth", "/overlay/pleats/depth"],
  ["pleatDepth", "/overlay/pleats/greatestDepth"],
  ["elbow", "/underSleeve/elbow"],
  ["wrist", "/underSleeve/wrist"],
  ["elbowLevel", "/underSleeve/elbowLevel"],
  ["elbowDart", "/underSleeve/elbowDart"],
  ["elbowDartLength", "/underSleeve/elbowDartLength"],
  ["elbowEase", "/underSleeve/elbowEase"],
  ["handGirth", "/underSleeve/handGirth"],
];

/** The dimensions of a style that can grow. */
export const growing = (style) => GROWING.filter(([, path]) => has(style, path)).map(([name]) => name);

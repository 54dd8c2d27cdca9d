// Lengths as people write them. Everything is kept exact; only what is shown is rounded.

const IN_MM = { mm: 1, cm: 10, in: 25.4 };

/** Smallest part of an inch that a tape measure shows. */
const SIXTEENTHS = 16;

const DIGITS = { mm: 1, cm: 2, in: 3 };

/** What a division and a multiplication of doubles may be off by, as a share. */
const DUST = 1e-14;

export const UNITS = ["cm", "in", "mm"];

/** A length in another unit, without the dust of binary fractions: there and back gives the same number. */
export function convert(value, from, to) {
  if (from === to) return value;
  const exact = (value * IN_MM[from]) / IN_MM[to];
  const short = Number(exact.toPrecision(9));
  return Math.abs(short - exact) <= DUST * Math.abs(exact) ? short : exact;
}

export const toMm = (value, unit) => value * IN_MM[unit];

export const fromMm = (value, unit) => value / IN_MM[unit];

const VULGAR = { "¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8" };

/** Reads a plain number: "36.5", "36,5", "3 1/2", "3-1/2", "½"; NaN for what is none. */
export function parse(text) {
  const plain = String(text)
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => " " + VULGAR[sign])
    .replace(/[−–]/g, "-")
    .replace(",", ".")
    .replace(/^\s*≈/, "")
    .trim();
  const mixed = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)$/.exec(plain);
  if (mixed) {
    const [, sign, whole, over, under] = mixed;
    if (Number(under) === 0) return NaN;
    return (sign === "-" ? -1 : 1) * (Number(whole ?? 0) + Number(over) / Number(under));
  }
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
}

const NAMED = /^(.*?)\s*(mm|cm|in|inch(?:es)?|pouces?|["″”])$/i;

/** Reads a length in a unit. One that brings its own, such as "36 cm" or 14 1/4", is converted. */
export function parseLength(text, unit) {
  const [, value, named] = NAMED.exec(String(text).trim()) ?? [];
  if (named === undefined) return parse(text);
  const own = /^[cm]m$/i.test(named) ? named.toLowerCase() : "in";
  const found = parse(value);
  return Number.isNaN(found) ? found : convert(found, own, unit);
}

function divisor(a, b) {
  return b ? divisor(b, a % b) : a;
}

function fraction(value) {
  const parts = Math.round(Math.abs(value) * SIXTEENTHS);
  const whole = Math.floor(parts / SIXTEENTHS);
  const rest = parts % SIXTEENTHS;
  const common = divisor(rest, SIXTEENTHS);
  const words = [whole || !rest ? whole : "", rest ? `${rest / common}/${SIXTEENTHS / common}` : ""];
  return (value < 0 && parts ? "−" : "") + words.filter((word) => word !== "").join(" ");
}

let comma = false;

/** Whether numbers are written with a decimal comma. */
export function writeComma(on) {
  comma = on;
}

/** A plain number, at most so many digits behind the point. */
export function number(value, digits = 2) {
  const text = String(Number(value.toFixed(digits))).replace(/^-/, "−");
  return comma ? text.replace(".", ",") : text;
}

/** A length as it is shown: inches as fractions of a tape measure. */
export const show = (value, unit) => (unit === "in" ? fraction(value) : number(value, DIGITS[unit]));

/** Parts of a unit that are shown. */
const PARTS = { mm: 10, cm: 100, in: SIXTEENTHS };

/** Whether a length can be shown just as it is. */
export const exact = (value, unit) => Math.abs(value * PARTS[unit] - Math.round(value * PARTS[unit])) <= 0.001;

/** Whether what is shown is not quite what is kept: inches only, where a sixteenth is coarse. */
export const rounded = (value, unit) => unit === "in" && !exact(value, unit);

/** A length as it is shown, with a sign where it is not quite that. */
export const about = (value, unit) => (rounded(value, unit) ? "≈ " : "") + show(value, unit);

/** Both bounds of a range as they are shown; either may be missing. What is shown lies within: the least is rounded up, the greatest down, unless no length that can be shown lies between them. */
export function bounds(least, greatest, unit) {
  const [parts, slack] = [PARTS[unit], 0.001];
  const from = typeof least === "number" ? Math.ceil(least * parts - slack) / parts : undefined;
  const to = typeof greatest === "number" ? Math.floor(greatest * parts + slack) / parts : undefined;
  const write = from > to ? (whole, exactly) => exactly !== undefined && number(exactly, 4) : (whole) => whole !== undefined && show(whole, unit);
  return [write(from, least) || undefined, write(to, greatest) || undefined];
}

/** A growth, with its sign. */
export const signed = (value, unit) => {
  const text = show(value, unit);
  const sign = text.startsWith("−") || text === "0" ? "" : "+";
  return (rounded(value, unit) ? "≈ " : "") + sign + text;
};

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

/** Reads "36.5", "36,5", "3 1/2", "3-1/2", "½"; NaN for what is no number. */
export function parse(text) {
  const plain = String(text)
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => " " + VULGAR[sign])
    .replace(/[−–]/g, "-")
    .replace(",", ".")
    .replace(/["″”]|\b(cm|mm|in)\b/g, "")
    .trim();
  const mixed = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)$/.exec(plain);
  if (mixed) {
    const [, sign, whole, over, under] = mixed;
    return (sign === "-" ? -1 : 1) * (Number(whole ?? 0) + Number(over) / Number(under));
  }
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
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

/** A growth, with its sign. */
export const signed = (value, unit) => {
  const text = show(value, unit);
  return text.startsWith("−") || text === "0" ? text : "+" + text;
};

/** Whether what is shown is not quite what is kept. */
export const rounded = (value, unit) =>
  unit === "in" && Math.abs(value * SIXTEENTHS - Math.round(value * SIXTEENTHS)) > 0.001;

// An order for one wearer as the body of POST /v1/made-to-measure: what the style says of the sleeve, the wearer's measurements, and the ease.

const SHARED = ["name", "revision", "overlay", "seamAllowance", "corners", "turnOfCloth", "interfacingOverlap", "halves", "pleatNotches", "drillHoles", "strips", "pleatInterfacing", "thickness", "rounding"];
const SLEEVE = ["capOutward", "capInward"];
const HALF = ["capOutward", "capInward"];
const UNDER = ["shaping", "elbowDart", "elbowDartLength", "elbowEase"];

const some = (object, names) => Object.fromEntries(names.filter((name) => object?.[name] !== undefined).map((name) => [name, object[name]]));

const filled = (object) => Object.keys(object).length > 0;

/** The eases that the sleeve of a style needs. */
export const easesOf = (style) => (style.underSleeve ? ["bicep", "armhole", "capEase", "length", "elbow", "wrist"] : ["bicep", "armhole", "capEase", "length"]);

/** A length in the unit of the style, or a share such as "15%". */
export function order(style, { values, hand, ease, confirmed, table, survey, name }) {
  const body = { units: style.units, ...some(style, SHARED), wearer: { ...values }, ease: some(ease, easesOf(style)) };
  const sleeve = some(style.sleeve, SLEEVE);
  for (const half of ["front", "back"]) {
    const part = some(style.sleeve?.[half], HALF);
    if (filled(part)) sleeve[half] = part;
  }
  if (filled(sleeve)) body.sleeve = sleeve;
  if (style.underSleeve) body.underSleeve = { ...some(style.underSleeve, UNDER), ...(hand === undefined ? {} : { handGirth: hand }) };
  if (confirmed.length > 0) body.confirmed = confirmed;
  if (table) body.sizeTable = table;
  if (survey) body.survey = survey;
  if (name) body.order = name;
  return body;
}

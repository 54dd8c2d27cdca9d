// Building elements without a template language: h("button", {class: "quiet", onclick}, "Fit").

const SVG = "http://www.w3.org/2000/svg";

function fill(element, properties, children) {
  for (const [name, value] of Object.entries(properties ?? {})) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false));
  return element;
}

/** An HTML element. Properties that start with "on" are listeners; false, null and undefined are left out. */
export const h = (tag, properties, ...children) => fill(document.createElement(tag), properties, children);

/** An SVG element. */
export const s = (tag, properties, ...children) => fill(document.createElementNS(SVG, tag), properties, children);

/** Calls back once things have been quiet for a while. */
export function quietly(milliseconds, call) {
  let timer = 0;
  return (...values) => {
    clearTimeout(timer);
    timer = setTimeout(() => call(...values), milliseconds);
  };
}

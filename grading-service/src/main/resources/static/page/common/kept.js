// What this browser keeps: the last state, the language, and styles kept by name. A browser that refuses to keep anything is no error.

const LAST = "capwright.last";
const STYLES = "capwright.styles";

function read(key) {
  try {
    return JSON.parse(localStorage.getItem(key));
  } catch {
    return null;
  }
}

function write(key, value) {
  try {
    localStorage.setItem(key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

export const lastState = () => read(LAST);
export const keepState = (state) => write(LAST, state);
export const language = () => read("capwright.language");
export const keepLanguage = (code) => write("capwright.language", code);
export const styles = () => read(STYLES) ?? {};

export const keepStyle = (name, style) => write(STYLES, { ...styles(), [name]: style });

export function dropStyle(name) {
  const rest = styles();
  delete rest[name];
  write(STYLES, rest);
}

// What this browser keeps by name: the language, where the borders of the panes stand, and styles.

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

export const language = () => read("capwright.language");
export const keepLanguage = (code) => write("capwright.language", code);
export const panes = () => read("capwright.panes") ?? {};
export const keepPanes = (places) => write("capwright.panes", places);
export const styles = () => read(STYLES) ?? {};

/** Keeps a style under a name; false if the browser refuses. */
export const keepStyle = (name, style) => write(STYLES, { ...styles(), [name]: style });

export function dropStyle(name) {
  const rest = styles();
  delete rest[name];
  write(STYLES, rest);
}

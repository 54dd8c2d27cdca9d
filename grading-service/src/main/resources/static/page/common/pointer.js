// Reading and writing a place of a style by JSON pointer (RFC 6901).

const steps = (pointer) =>
  pointer
    .split("/")
    .slice(1)
    .map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));

export const get = (object, pointer) =>
  steps(pointer).reduce((at, step) => (at === undefined || at === null ? undefined : at[step]), object);

/** Puts a value; undefined takes the field out, and objects that become empty with it except where an empty one has a meaning. */
export function put(object, pointer, value) {
  const path = steps(pointer);
  const last = path.pop();
  const trail = [object];
  for (const step of path) {
    const at = trail[trail.length - 1];
    if (typeof at[step] !== "object" || at[step] === null) {
      if (value === undefined) return;
      at[step] = {};
    }
    trail.push(at[step]);
  }
  if (value === undefined) delete trail[trail.length - 1][last];
  else trail[trail.length - 1][last] = value;
  for (let i = path.length - 1; i >= 0; i--) {
    if (Object.keys(trail[i + 1]).length === 0) delete trail[i][path[i]];
  }
}

export const has = (object, pointer) => get(object, pointer) !== undefined && get(object, pointer) !== null;

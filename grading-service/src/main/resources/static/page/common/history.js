// What a work was like before: versions of it with small pictures, in the database of this browser (IndexedDB). A browser that keeps none simply has no history.

const DATABASE = "capwright";
const STORE = "versions";

/** Of each work the latest are kept. */
const MOST = 40;

let opening;

function database() {
  opening ??= new Promise((answer) => {
    if (!globalThis.indexedDB) return answer(null);
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: ["work", "at"] });
    request.onsuccess = () => answer(request.result);
    request.onerror = request.onblocked = () => answer(null);
  });
  return opening;
}

const done = (request) =>
  new Promise((answer, fail) => {
    request.onsuccess = () => answer(request.result);
    request.onerror = () => fail(request.error);
  });

const of = (work) => IDBKeyRange.bound([work, 0], [work, Infinity]);

async function store(mode) {
  const open = await database();
  return open?.transaction(STORE, mode).objectStore(STORE);
}

/** The versions of a work, latest first: {work, at, style, picture}. */
export async function versions(work) {
  try {
    const kept = await store("readonly");
    return kept ? (await done(kept.getAll(of(work)))).reverse() : [];
  } catch {
    return [];
  }
}

/** Keeps a version, unless it is the one kept last. */
export async function keepVersion(work, style, picture) {
  const [last, ...older] = await versions(work);
  if (last && JSON.stringify(last.style) === JSON.stringify(style)) return;
  try {
    const kept = await store("readwrite");
    if (!kept) return;
    kept.put({ work, at: Date.now(), style, picture });
    older.slice(MOST - 2).forEach(({ at }) => kept.delete([work, at]));
  } catch {
    // Then this version is not kept; the style itself is.
  }
}

/** Lets go of the versions of a work. */
export async function dropVersions(work) {
  try {
    (await store("readwrite"))?.delete(of(work));
  } catch {
    // They stay until the browser itself lets go of them.
  }
}

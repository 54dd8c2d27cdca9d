// The document and the pointers are those of RFC 6901, section 5.

import assert from "node:assert/strict";
import test from "node:test";
import { get, put } from "../../main/resources/static/page/common/pointer.js";

const DOCUMENT = { foo: ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3, "g|h": 4, "i\\j": 5, 'k"l': 6, " ": 7, "m~n": 8 };

test("reads the places of the standard", () => {
  const expected = { "": DOCUMENT, "/foo": ["bar", "baz"], "/foo/0": "bar", "/": 0, "/a~1b": 1, "/c%d": 2, "/e^f": 3, "/g|h": 4, "/i\\j": 5, '/k"l': 6, "/ ": 7, "/m~0n": 8 };
  for (const [pointer, value] of Object.entries(expected)) assert.deepEqual(get(DOCUMENT, pointer), value, pointer);
});

test("writes a place, and takes out what becomes empty with it", () => {
  const style = { sleeve: { bicep: 36 } };
  put(style, "/sleeve/front/width", 17);
  assert.deepEqual(style, { sleeve: { bicep: 36, front: { width: 17 } } });
  put(style, "/sleeve/front/width", undefined);
  assert.deepEqual(style, { sleeve: { bicep: 36 } });
});

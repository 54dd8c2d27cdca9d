// The state in an address, against Node's own DEFLATE (RFC 1951) and base64url (RFC 4648, section 5).

import assert from "node:assert/strict";
import test from "node:test";
import { deflateRawSync, inflateRawSync } from "node:zlib";
import { decode, encode } from "../../main/resources/static/page/common/address.js";

const STATE = { style: { name: "Chœur", sizes: ["36", "38"], sleeve: { bicep: 36 } }, view: { tab: "spec" } };

test("what is written, another reader reads", async () => {
  const text = await encode(STATE);
  assert.match(text, /^s=[A-Za-z0-9_-]+$/);
  assert.deepEqual(JSON.parse(inflateRawSync(Buffer.from(text.slice(2), "base64url")).toString()), STATE);
});

test("what another wrote is read", async () => {
  assert.deepEqual(await decode("#s=" + deflateRawSync(Buffer.from(JSON.stringify(STATE))).toString("base64url")), STATE);
});

test("a link that was cut off is none", async () => {
  const text = await encode(STATE);
  for (const length of [3, 10, text.length - 5]) assert.equal(await decode("#" + text.slice(0, length)), undefined);
});

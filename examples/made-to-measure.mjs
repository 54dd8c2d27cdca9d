// The call of a made-to-order shop: one wearer's measurements in, one sleeve set out.
// Run it with: node made-to-measure.mjs http://localhost:8080 made-to-measure.json
import { readFile } from "node:fs/promises";

const [address, file] = process.argv.slice(2);
const response = await fetch(`${address}/v1/made-to-measure`, {
  method: "POST",
  headers: { "Content-Type": "application/json", Accept: "application/json" },
  body: await readFile(file),
});
const answer = await response.json();

if (!response.ok) {
  // A problem document (RFC 9457). A measurement that hardly anybody has is questioned: measure again and correct it,
  // or list its name in "confirmed" and send the order once more.
  for (const { field, reason } of answer.violations) console.log(`${field}: ${reason}`);
  process.exit(1);
}
const { unit, nearestSize, departures, estimates, sizeRun } = answer;
const [sleeve] = sizeRun.sizes;
console.log(`${sleeve.label}: bicep ${sleeve.dimensions.bicep} ${unit}, ${sleeve.pieces.length} pieces.`);
if (nearestSize) console.log(`Nearest size: ${nearestSize.size} of ${nearestSize.sizeTable}.`);
for (const d of departures) console.log(`Departs: ${d.dimension} by ${d.difference} ${unit}.`);
for (const e of estimates)
  console.log(`Measure before cutting: ${e.dimension}, estimated ${e.low.toFixed(1)} to ${e.high.toFixed(1)} ${unit}.`);

// A style is put on the shelf, an order is taken on it, and its pattern is fetched, by a client that openapi-generator makes from the description of the service (typescript-fetch).
// It runs in a browser and in Node.js.
import { ResponseError, OrdersApi, SizeRunsApi, StylesApi, type Problem, type SizeRunRequest, type Style } from "./client/index.js";

async function shown(name: string, file: Blob): Promise<void> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  console.log(`${name}: ${bytes.length} bytes, SHA-256 ${Array.from(hash, (one) => one.toString(16).padStart(2, "0")).join("")}`);
}

// Lengths are numbers or texts, shares are texts, and an increment may be a list with one for each interval.
const style: Style = {
  name: "Choir gown sleeve",
  units: "cm",
  baseSize: "40",
  sizes: ["36", "38", "40", "42", "44", "46"],
  sleeve: { bicep: 36, length: "60", capHeight: 13.5, armhole: 45 },
  overlay: { rise: 14, length: 34, hem: "vee", frontGap: 6, backGap: 6, pleats: { count: 8, kind: "knife", flatZone: "1 1/2" } },
  underSleeve: { elbow: 30, wrist: 22 },
  grade: { bicep: 1.3, capHeight: "0.4", armhole: [1.5, 1.5, "1 1/2", 1.6, 1.6] },
  ease: { bicep: "15%", elbow: "15%", wrist: 6, length: 1, armhole: "14%", capEase: "4%" },
};
const shelf = new StylesApi();
const kept = await shelf.putStyle({ id: "choir-gown-ts", style });
console.log(`kept revision ${kept.revision} of ${kept.id}`);
const again = await shelf.getStyle({ id: "choir-gown-ts" });
console.log(`armhole grows by ${JSON.stringify(again.grade?.armhole)}`);

const orders = new OrdersApi();
const taken = await orders.createOrder({
  id: "choir-gown-ts",
  idempotencyKey: "ts-1207",
  order: { reference: "order 1207", wearer: { bustGirth: 96, stature: 168, upperArmGirth: 31.5, armLength: 59, elbowGirth: 26 } },
});
console.log(`order ${taken.order.id} is ${taken.order.state}`);
await shown("pdf", await orders.getOrderFile({ id: taken.order.id, format: "pdf" }));

const request: SizeRunRequest = {
  name: "Choir gown sleeve",
  units: "cm",
  baseSize: "40",
  sizes: style.sizes,
  sleeve: { bicep: 36, length: 60, armhole: 45, capEase: "4%" },
  underSleeve: { elbow: 30, wrist: 22 },
  grade: { bicep: [1, 1, "1 1/4", 1.5, 1.5], armhole: 1.5 },
};
const runs = new SizeRunsApi();
const run = await runs.createSizeRun({ sizeRunRequest: request });
for (const size of run.sizes) console.log(`size ${size.label} bicep ${size.dimensions["bicep"]}`);
await shown("dxf", await runs.createSizeRunFile({ format: "dxf", sizeRunRequest: request }));

// What is wrong is a problem document (RFC 9457) that names each field and what would work.
try {
  await runs.createSizeRun({ sizeRunRequest: { ...request, sleeve: { ...request.sleeve, bicep: 3 } } });
} catch (error) {
  if (!(error instanceof ResponseError)) throw error;
  const problem = (await error.response.json()) as Problem;
  for (const violation of problem.violations ?? []) console.log(`refused: ${violation.field}`);
}

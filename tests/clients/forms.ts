// Calls a running service with types made from the contract: forms.js URL
import assert from "node:assert/strict";
import createClient from "openapi-fetch";
import type { components, paths } from "./obj/contract.js";

type Schemas = components["schemas"];

const client = createClient<paths>({ baseUrl: process.argv[2]! });

const near: Schemas["CurveInput"] = { type: "arc", radius: 80, sweep: 75 };
const far: Schemas["CurveInput"] = { type: "arc", radius: 120, sweep: 75 };
const flat: Schemas["FlatInput"] = { type: "flat", length: 90 };
const opening: Schemas["CurveInput"] = { type: "progressive", startRadius: null, endRadius: 100, sweep: 30, law: "clothoid" };
const segments: Schemas["SegmentsInput"] = { type: "segments", segments: [near, flat, opening] };
const taper: Schemas["TaperInput"] = { type: "taper", near, far, length: 480 };

const request = (curve: Schemas["CurveInput"], width?: number): Schemas["FormRequest"] => ({
  units: "mm",
  panel: {
    material: { id: "ss-304" }, thickness: 1.2, leadIn: 80, leadOut: 150, finish: "hidden", curve,
    ...(width === undefined ? {} : { width }),
  },
  form: { material: { id: "steel-cr-cs" }, thickness: 2, foldRadius: 2, leadIn: 60, leadOut: 60, backing: "ribs" },
  brake: { length: 1250 },
});

async function answered(curve: Schemas["CurveInput"], sweep: number, miss: number, width?: number): Promise<Schemas["FormAnswer"]> {
  const { data, response } = await client.POST("/v1/forms", { body: request(curve, width) });
  assert.equal(response.status, 200);
  assert.ok(data);
  assert.notEqual(data.verdict, "cannot-be-made");
  assert.equal(data.form.stations.length, data.form.folds);
  assert.ok(Math.abs(data.form.sweep - data.panel.springback.overbend - sweep) < miss, "swept and overbent");
  console.log(`  ${curve.type}: ${data.form.folds} folds, ${data.form.sweep.toFixed(1)}° for ${sweep}°, ${data.verdict}`);
  return data;
}

const chain = await answered(segments, 105, 1e-6, 600);
assert.deepEqual(chain.request.panel.curve, segments);
assert.equal(chain.form.stations.filter(station => station.facetAfter >= 90 && station.facetAfter < 150).length, 1, "one flat");

// Folds along rulings that fan out do not quite add up to the sweep seen from the end.
const cone = await answered(taper, 75, 0.5);
assert.equal(cone.request.panel.curve.type, "taper");
assert.ok(cone.form.stations.every(station => station.near?.length === 2 && station.far?.length === 2), "lines across the flat");

const { error, response } = await client.POST("/v1/forms", { body: request({ ...near, radius: -80 } as Schemas["CurveInput"], 600) });
assert.equal(response.status, 422);
assert.equal(response.headers.get("content-type"), "application/problem+json");
assert.equal(error?.code, "invalid-values");
assert.deepEqual(error.errors?.map(fault => fault.pointer), ["/panel/curve/radius"]);
console.log(`  refused: ${error.code} at ${error.errors?.[0]?.pointer}`);

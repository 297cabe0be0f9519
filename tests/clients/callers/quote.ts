// A quoting system: which sheet makes the cheapest ready panel, and what do 1, 10 and 50 of it cost?
import createClient from "openapi-fetch";
import type { components, paths } from "../obj/contract.js";

const service = createClient<paths>({ baseUrl: process.argv[2] ?? "http://localhost:8080" });
const panel: components["schemas"]["PanelInput"] = {
  material: { id: "3003-H14" }, thickness: 1.2, width: 600, curve: { type: "arc", chord: 212, rise: 44 },
};
const { data } = await service.POST("/v1/comparisons", { body: {
  request: { units: "mm", panel, pieces: [10] } as never,
  vary: [{ pointer: "/panel/thickness", values: [1, 1.2, 1.6] }],
  operation: "estimate",
} });
const offers = ((data as components["schemas"]["ComparisonAnswer"] | undefined)?.rows ?? []).filter(row => row.cost !== null && row.verdict !== "cannot-be-made");
const cheapest = offers.sort((one, other) => one.cost! - other.cost!)[0];
if (!cheapest) throw new Error("No variant can be made.");

panel.thickness = Number(cheapest.values[0]);
const { data: priced, error } = await service.POST("/v1/estimates", { body: { units: "mm", panel, pieces: [1, 10, 50] } });
if (!priced) throw new Error(JSON.stringify(error));
const prices = priced.prices.map(price => `${price.pieces} for ${price.price.likely.toFixed(0)}`);
console.log(`quote: ${panel.thickness} mm, ${cheapest.folds} folds, ${prices.join(", ")}`);

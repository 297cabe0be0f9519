// Never run: it compiles only while the contract's union of curves tells the kinds apart and knows what each must hold.
import type { components } from "./obj/contract.js";

type Schemas = components["schemas"];

// By name, for a kind that can be given in several ways does not say by its type which was taken.
const own: Schemas["CurveInput"] = { type: "arc", radius: 90, sweep: 45 };
export const measured: Schemas["CurveInput"] = { type: "arc", chord: 212, rise: 44 };
export const arc: Schemas["CurveInput"] = { type: "arc", radius: 90, sweep: 45 };
export const chain: Schemas["CurveInput"] = { type: "segments", segments: [own, { type: "flat", length: 20 }] };
// @ts-expect-error an arc needs its radius
export const bare: Schemas["CurveInput"] = { type: "arc", sweep: 45 };
// @ts-expect-error an arc has no law
export const lawful: Schemas["CurveInput"] = { type: "arc", radius: 90, sweep: 45, law: "clothoid" };
// @ts-expect-error a flat between bends needs its length
export const short: Schemas["CurveInput"] = { type: "segments", segments: [own, { type: "flat" }] };

// A brake's controller: it knows a link only, asks for one step at a time, and is told when nothing has changed.
import createClient from "openapi-fetch";
import type { components, paths } from "../obj/contract.js";

const service = createClient<paths>({ baseUrl: process.argv[2] ?? "http://localhost:8080" });
const { data: plan } = await service.POST("/v1/forms", { body: {
  units: "mm",
  panel: { material: { id: "steel-cr-cs" }, thickness: 1, width: 600, curve: { type: "arc", radius: 120, sweep: 60 } },
} });
const request = plan?.links?.program?.split("/")[3];
if (!request) throw new Error("The form has no program.");

let tag = "", steps = plan!.form.folds;
for (let step = 1; step <= steps; step++) {
  const { data, response, error } = await service.GET("/v1/links/{request}/program", { params: { path: { request }, query: { step } } });
  const now = (data as components["schemas"]["ProgramAnswer"] | undefined)?.steps[0];
  if (!now) throw new Error(JSON.stringify(error));
  tag = response.headers.get("ETag") ?? "";
  if (step === 1) console.log(`controller: ${now.id} at ${now.gaugeDistanceText} mm, stop ${now.stopSetting}°, picture of ${now.picture!.length} characters`);
}
const { response } = await service.GET("/v1/links/{request}/program", {
  params: { path: { request }, query: { step: steps } }, headers: { "If-None-Match": tag },
});
if (response.status !== 304) throw new Error(`Asked again it answers ${response.status}.`);
console.log(`controller: ${steps} steps shown, asked again: ${response.status}`);

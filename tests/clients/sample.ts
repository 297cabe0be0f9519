import createClient from "openapi-fetch";
import type { paths } from "./obj/contract.js";

const service = createClient<paths>({ baseUrl: process.argv[2] ?? "http://localhost:8080" });
const { data, error } = await service.POST("/v1/forms", { body: {
  units: "mm",
  panel: { material: { id: "ss-304" }, thickness: 1.2, width: 600, leadIn: 80, leadOut: 150, curve: { type: "arc", radius: 90, sweep: 90 } },
  form: { material: { id: "steel-cr-cs" }, thickness: 2, foldRadius: 2, leadIn: 60, leadOut: 60 },
  brake: { length: 1250 },
} });
console.log(data ? `${data.verdict}: ${data.form.folds} folds at ${data.form.stations.map(fold => fold.mark).join(", ")} mm` : error?.errors);

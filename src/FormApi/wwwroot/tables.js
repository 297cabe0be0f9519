// The service's tables of sheets and gauges, fetched once for each unit.
import { call } from "./service.js";
import { read, write } from "./store.js";

/** @typedef {import("#contract").components["schemas"]["MaterialAnswer"]} Material */
/** @typedef {import("#contract").components["schemas"]["GaugeSystemAnswer"]} GaugeSystem */

/** @type {Map<string, { materials: Material[], gauges: GaugeSystem[] }>} */
const fetched = new Map();
/** @type {Set<string>} */
const asked = new Set();

/** Tables in the job's units, or null while they are on their way. */
export function tables() {
  const units = read().job["units"];
  const found = fetched.get(units);
  if (!found && units && !asked.has(units)) {
    asked.add(units);
    Promise.all([call("v1/materials?units=" + units), call("v1/gauges?units=" + units)]).then(([materials, gauges]) => {
      if (materials.ok && gauges.ok) fetched.set(units, { materials: materials.body.materials, gauges: gauges.body.systems });
      else asked.delete(units);
      write({});
    });
  }
  return found ?? null;
}

/**
 * A sheet by its id or by one of its other names.
 * @param {string | undefined} name
 */
export function materialNamed(name) {
  const plain = (/** @type {string} */ text) => text.toLowerCase().replace(/[^a-z0-9]/g, "");
  return tables()?.materials.find(one => [one.id, one.name, ...one.aliases].some(other => plain(other) === plain(name ?? ""))) ?? null;
}

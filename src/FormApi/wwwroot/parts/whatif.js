// What another count of folds would give: ripple against the minutes to build the form; one is chosen by pressing it.
import { Choice } from "../fields.js";
import { withValue } from "../job.js";
import { put } from "../planning.js";
import { Plot } from "../plot.js";
import { call, newest } from "../service.js";
import { html, useEffect, useState } from "../vendor/preact.js";
import { about, ripple } from "../words.js";

/** @typedef {import("#contract").components["schemas"]["ComparedRow"]} Row */

const ask = newest(async (/** @type {{ body: unknown, show: (rows: Row[]) => void }} */ { body, show }) => {
  const outcome = await call("v1/comparisons", { body });
  show(outcome.ok ? outcome.body.rows : []);
});

/** @param {{ job: import("../store.js").Job, answer: import("../store.js").FormAnswer }} props */
export function WhatIf({ job, answer }) {
  const [rows, setRows] = useState(/** @type {Row[]} */ ([]));
  const { folds } = answer.form;
  const { units } = answer.request;
  useEffect(() => {
    // The neighbours of the count in the plan, which the service plans as well.
    const values = Array.from({ length: 8 }, (_, place) => folds - 3 + place).filter(count => count >= 2);
    ask({ body: { request: withValue(job, "/form/stepping/folds", folds), vary: [{ pointer: "/form/stepping/folds", values }] }, show: setRows });
  }, [answer.fingerprint]);
  const shown = rows.filter(row => row.buildMinutes !== null && row.ripple !== null);
  if (shown.length < 2) return null;
  const fixed = job["form"]?.stepping?.folds !== undefined;
  return html`
    <section aria-labelledby="what-if"><h2 id="what-if">With more folds, or fewer</h2>
      <${Plot} label="Ripple against minutes to build the form, by count of folds" x=${{ name: "minutes to build", show: about }} y=${{ name: `ripple, ${units}`, show: (/** @type {number} */ value) => ripple(value, units) }}
        points=${shown.map(row => ({ key: String(row.values[0]), x: row.buildMinutes, y: row.ripple, name: `${row.values[0]}`, said: `${row.values[0]} folds: ripple ${ripple(row.ripple, units)} ${units}, ${about(row.buildMinutes)} minutes, ${row.verdict === "cannot-be-made" ? "cannot be made" : row.verdict === "ready" ? "ready" : "look first"}`, hollow: row.verdict === "cannot-be-made", chosen: row.values[0] === folds }))}
        choose=${(/** @type {string} */ key) => put("/form/stepping/folds", Number(key))} />
      <${Choice} name="folds" legend="Plan with this many folds" value=${String(job["form"]?.stepping?.folds ?? folds)} options=${shown.map(row => [String(row.values[0]), String(row.values[0])])} choose=${(/** @type {string} */ key) => put("/form/stepping/folds", Number(key))} />
      <p class="hint">A hollow one cannot be made.${fixed ? html` <button type="button" class="plain" onClick=${() => put("/form/stepping", undefined)}>Let the plan choose again</button>` : null}</p>
    </section>`;
}

// Price: how many, at my rates; a table and a plot over the pieces, against other ways to make them.
import { Entry } from "../fields.js";
import { requestOf, typed, withValue } from "../job.js";
import { keep, kept } from "../kept.js";
import { Plot } from "../plot.js";
import { call, newest } from "../service.js";
import { read } from "../store.js";
import { html, useEffect, useState } from "../vendor/preact.js";
import { about, money, sentence } from "../words.js";
import { Own } from "./sheet.js";

/** @typedef {import("#contract").components["schemas"]["EstimateAnswer"]} Estimate */
/** @typedef {import("../store.js").Problem} Problem */
/** @typedef {{ units: string, pieces: string, currency: string, values: Record<string, string> }} Rates */

const ask = newest(async (/** @type {{ body: unknown, show: (found: Estimate | null, problem: Problem | null) => void }} */ { body, show }) => {
  const outcome = await call("v1/estimates", { body });
  show(outcome.ok ? outcome.body : null, outcome.ok ? null : outcome.problem);
});

/** @type {[string, string, (money: string, units: string) => string][]} Where a rate is in the request, what it is called, its unit. */
const rateFields = [
  ["/labour", "An hour of one person", money => `${money}/h`],
  ["/overhead", "Overhead, as a share", () => ""],
  ["/minimumCharge", "Least price of a job", money => money],
  ["/formSheet/perMass", "Sheet of the form", (money, units) => `${money}/${units === "in" ? "lb" : "kg"}`],
  ["/panelSheet/perMass", "Sheet of the panel", (money, units) => `${money}/${units === "in" ? "lb" : "kg"}`],
];

const current = "last used";

export function Price() {
  const { job, answer } = read();
  const units = job["units"];
  const [rates, setRates] = useState(/** @type {Rates} */ (kept().rates.find(one => one.name === current && one.value.units === units)?.value ?? { units, pieces: "1, 5, 20, 60", currency: "", values: {} }));
  const [estimate, setEstimate] = useState(/** @type {Estimate | null} */ (null));
  const [problem, setProblem] = useState(/** @type {Problem | null} */ (null));
  useEffect(() => {
    if (!answer) return;
    ask({ body: requested(job, rates), show: (found, wrong) => {
      if (found) setEstimate(found);
      setProblem(wrong);
    } });
  }, [answer?.fingerprint, JSON.stringify(rates)]);
  /** @param {Rates} next */
  const take = next => {
    setRates(next);
    keep({ rates: [...kept().rates.filter(one => one.name !== current), { name: current, value: next }] });
  };
  /** @param {string} pointer */
  const faults = pointer => (problem?.errors ?? []).filter(fault => fault.pointer === pointer || fault.pointer.startsWith(pointer + "/"));
  const sign = rates.currency || "money";
  return html`
    <div class="row">
      <${Entry} id="pieces" label="How many panels" hint="one count, or a few: 1, 5, 20" value=${rates.pieces} set=${(/** @type {string} */ text) => take({ ...rates, pieces: text })} faults=${faults("/pieces")} />
      <${Entry} id="currency" label="Currency" place="none" hint="three letters; nothing is converted" value=${rates.currency} set=${(/** @type {string} */ text) => take({ ...rates, currency: text.toUpperCase() })} faults=${faults("/currency")} />
    </div>
    <section class="rates" aria-labelledby="my-rates"><h2 id="my-rates">My rates</h2>
      <div class="row">${rateFields.map(([pointer, label, unit]) => html`
        <${Entry} key=${pointer} id=${"rate" + pointer.replaceAll("/", "-")} label=${label} unit=${unit(sign, units)} place=${shown(estimate, pointer)} value=${rates.values[pointer] ?? ""} faults=${faults("/rates" + pointer)}
          set=${(/** @type {string} */ text) => take({ ...rates, values: { ...rates.values, [pointer]: text } })} />`)}
      </div>
      <p class="hint">A field left empty is an assumption, shown in grey. Rates stay in this browser.</p>
      <${Own} kind="rates" what="set of rates" value=${rates} use=${take} />
    </section>
    ${problem && html`<p class="fault">${problem.detail}</p>`}
    ${estimate && html`<${Table} estimate=${estimate} sign=${rates.currency} /><${Ways} estimate=${estimate} sign=${rates.currency} />`}`;
}

/** @param {import("../store.js").Job} job @param {Rates} rates */
function requested(job, rates) {
  let body = withValue(requestOf(job), "/pieces", rates.pieces.split(/[\s,;]+/).filter(Boolean).map(typed));
  if (rates.currency) body = withValue(body, "/currency", rates.currency);
  for (const [pointer, text] of Object.entries(rates.values)) {
    const value = typed(text);
    if (value !== undefined) body = withValue(body, "/rates" + pointer, value);
  }
  return body;
}

/** What is taken where a rate is left empty. @param {Estimate | null} estimate @param {string} pointer */
function shown(estimate, pointer) {
  const value = pointer.split("/").slice(1).reduce((/** @type {any} */ found, step) => found?.[step], estimate?.request.rates);
  return typeof value === "number" ? about(value) : "";
}

/** @param {{ estimate: Estimate, sign: string }} props */
const Table = ({ estimate, sign }) => html`
  <section aria-labelledby="prices"><h2 id="prices">What to ask</h2>
    ${estimate.verdict === "cannot-be-made" && html`<p class="fault">This form cannot be made as it is planned: these prices are not an offer.</p>`}
    <div class="scroll" tabindex="0" role="region" aria-label="Prices"><table><caption>No profit is added. In small: from low to high.</caption>
      <thead><tr><th scope="col">panels</th><th scope="col">price${sign && `, ${sign}`}</th><th scope="col">each</th><th scope="col">all of it, min</th><th scope="col">last panel, min</th></tr></thead>
      <tbody>${estimate.prices.map(row => html`<tr key=${row.pieces}><th scope="row">${row.pieces}</th>
        <td class="strong">${money(row.price.likely)}${row.isMinimum ? " (least)" : ""}<small>${money(row.price.low)} to ${money(row.price.high)}</small></td>
        <td>${money(row.eachPrice.likely)}<small>${money(row.eachPrice.low)} to ${money(row.eachPrice.high)}</small></td>
        <td>${about(row.minutes.likely)}</td><td>${about(row.lastPanelMinutes.likely)}</td></tr>`)}</tbody></table></div>
    <details><summary>Building the form: ${about(estimate.form.minutes.likely)} min</summary><table><tbody>${estimate.form.elements.map(one => html`<tr key=${one.id}><th scope="row">${sentence(one.text)}</th><td>${about(one.minutes.likely)} min</td></tr>`)}</tbody></table></details>
    <details><summary>The first panel: ${about(estimate.panel.minutes.likely)} min</summary><table><tbody>${estimate.panel.elements.map(one => html`<tr key=${one.id}><th scope="row">${sentence(one.text)}</th><td>${about(one.minutes.likely)} min</td></tr>`)}</tbody></table></details>
  </section>`;

/** @param {{ estimate: Estimate, sign: string }} props */
function Ways({ estimate, sign }) {
  const several = estimate.prices.length > 1;
  return html`
    <section aria-labelledby="ways"><h2 id="ways">Against other ways</h2>
      ${several && html`<${Plot} label="Cost over the number of panels" x=${{ name: "panels", show: (/** @type {number} */ value) => String(value) }} y=${{ name: sign ? `cost, ${sign}` : "cost", show: money }} points=${[]}
        lines=${[{ name: "on the form", points: estimate.prices.map(row => ({ x: row.pieces, y: row.cost.total.likely })) },
          ...estimate.comparisons.map(way => ({ name: way.method === "bumping" ? "bumped directly" : way.name, points: way.costs.map(row => ({ x: row.pieces, y: row.cost.likely })) }))]} />`}
      ${estimate.comparisons.map(way => html`<div class="way" key=${way.name}><h3>${sentence(way.name)}</h3>
        <p>${sentence(way.breakEven.likely.text)}.</p>
        ${way.hits && html`<p class="hint">${way.hits.count} hits a panel.</p>`}</div>`)}
      <details><summary>What is assumed</summary><ul class="passed">${estimate.assumptions.map(one => html`<li key=${one.id}>${sentence(one.text)}: ${about(one.value)} ${one.unit}</li>`)}</ul></details>
      <details><summary>What to know about the prices</summary><ul class="passed">${estimate.notes.map(one => html`<li key=${one.id}>${one.text}</li>`)}</ul></details>
    </section>`;
}

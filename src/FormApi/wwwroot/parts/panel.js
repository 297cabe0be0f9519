// The panel: what was measured on it, what explains it, what to change on the form, and the plan for the next sheet.
import { Entry } from "../fields.js";
import { requestOf, typed } from "../job.js";
import { put } from "../planning.js";
import { call } from "../service.js";
import { read, write } from "../store.js";
import { html, useState } from "../vendor/preact.js";
import { about, degrees, length, sentence } from "../words.js";

/** @typedef {import("#contract").components["schemas"]["PanelCorrectionAnswer"]} Correction */
/** @typedef {import("../store.js").Problem} Problem */

// What was typed outlives a look at another part.
const measured = { sweep: "", radius: "", points: "" };

export function Panel() {
  const { job, answer } = read();
  const units = job["units"];
  const [, tell] = useState(0);
  const [found, setFound] = useState(/** @type {Correction | null} */ (null));
  const [problem, setProblem] = useState(/** @type {Problem | null} */ (null));
  if (!answer) return null;
  if (job["panel"].curve.type === "taper") return html`<p>A tapered panel’s corrections are not worked out yet: check the form, and measure both ends against the plan.</p>`;
  /** @param {"sweep" | "radius" | "points"} what @param {string} text */
  const set = (what, text) => {
    measured[what] = text;
    tell(count => count + 1);
  };
  /** @param {Event} event */
  const ask = async event => {
    event.preventDefault();
    const points = measured.points.trim() === "" ? undefined : measured.points.trim().split("\n").map(line => line.trim().split(/[\s;,]+/).map(typed));
    const body = { ...requestOf(job), measured: withoutEmpty({ sweep: typed(measured.sweep), radius: typed(measured.radius), points }) };
    const outcome = await call("v1/panels/corrections", { body });
    setFound(outcome.ok ? outcome.body : null);
    setProblem(outcome.ok ? null : outcome.problem);
    if (outcome.ok) write({ said: outcome.body.next[0]?.text ?? "" });
  };
  /** @param {string} pointer */
  const faults = pointer => (problem?.errors ?? []).filter(fault => fault.pointer === pointer || fault.pointer.startsWith(pointer + "/"));
  const { outcome } = answer.panel;
  return html`
    <p class="hint">Let the panel lie free and measure it: from flat to flat, and a radius over its middle folds or points along a template. One of them is enough; two say more.</p>
    <form onSubmit=${ask}>
      <div class="row">
        <${Entry} id="panel-sweep" label="Sweep, flat to flat" unit="°" place=${degrees(outcome.sweep).replace("°", "")} value=${measured.sweep} set=${(/** @type {string} */ text) => set("sweep", text)} faults=${faults("/measured/sweep")} />
        <${Entry} id="panel-radius" label="Radius over the middle folds" unit=${units} place=${length(outcome.radius, units)} value=${measured.radius} set=${(/** @type {string} */ text) => set("radius", text)} faults=${faults("/measured/radius")} />
      </div>
      <details><summary>Points of a template instead</summary>
        <div class="field"><label for="panel-points">Points along the face, from the lead-in: across and up, ${units}, a line each</label>
          <textarea id="panel-points" rows="6" spellcheck=${false} value=${measured.points} onInput=${(/** @type {any} */ event) => set("points", event.target.value)}></textarea>
          ${faults("/measured/points").map(fault => html`<p class="fault">${fault.text}</p>`)}</div>
      </details>
      <div class="row actions"><button class="main">What it says</button></div>
    </form>
    ${problem && html`<p class="fault">${[problem.detail, ...faults("/measured").filter(fault => !/^\/measured\/(sweep|radius|points)/.test(fault.pointer)).map(fault => fault.text)].join(" ")}</p>`}
    ${found && html`<${Findings} found=${found} units=${units} />`}`;
}

/** @param {Record<string, unknown>} values */
const withoutEmpty = values => Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));

/** @param {{ found: Correction, units: string }} props */
function Findings({ found, units }) {
  const stress = units === "in" ? "psi" : "MPa";
  return html`
    <section aria-labelledby="panel-found"><h2 id="panel-found">${found.meets && found.folds.length === 0 ? "Within its tolerance" : "What to change"}</h2>
      ${found.next.map(step => html`<p class="large" key=${step.id}>${step.text}</p>`)}
      ${found.folds.length > 0 && html`
        <table><caption>${found.proven ? "The fewest folds that do it" : "Folds that do it"}</caption>
          <thead><tr><th scope="col">fold</th><th scope="col">do</th><th scope="col">by</th><th scope="col">to</th></tr></thead>
          <tbody>${found.folds.map(one => html`<tr key=${one.fold}><th scope="row">${one.fold}</th><td>${one.change > 0 ? "close it" : "open it"}</td><td>${degrees(Math.abs(one.change))}</td><td class="strong">${degrees(one.angle)}</td></tr>`)}</tbody></table>`}
      <table class="pulls"><caption>Off the form</caption>
        <thead><tr><th scope="col">panel</th><th scope="col">radius, ${units}</th><th scope="col">sweep</th></tr></thead>
        <tbody>${/** @type {[string, Correction["planned"]][]} */ ([["as planned", found.planned], ["as this sheet explains it", found.explained], ["the next one, corrected", found.after]]).map(([name, panel]) => html`<tr key=${name}><th scope="row">${name}</th><td class="strong">${length(panel.radius, units)}</td><td class="strong">${degrees(panel.sweep)}</td></tr>`)}</tbody></table>
      <h3>This panel</h3>
      <p>${found.secondPull.text}</p>
      <h3>This sheet</h3>
      <p>It behaves as with a yield of ${about(found.yield.value)} ${stress} (${about(found.yield.low)} to ${about(found.yield.high)}).</p>
      ${found.doubts.map(doubt => html`<p class="fault" key=${doubt.id}>${doubt.text}</p>`)}
      <ul class="checks">${found.checks.filter(check => check.verdict !== "pass").map(check => html`<li key=${check.id} class=${check.verdict}>${sentence(check.text)}</li>`)}</ul>
      ${found.paste && html`<button type="button" class="main" onClick=${() => {
        put("/panel/springback", /** @type {any} */ (found.paste).panel.springback);
        write({ said: "The next plan is made with this sheet’s springback." });
      }}>Plan the next one with this sheet</button>`}
      <details><summary>What to know</summary><ul class="passed">${found.notes.map(one => html`<li key=${one.id}>${one.text}</li>`)}</ul></details>
    </section>`;
}

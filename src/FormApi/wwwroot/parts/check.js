// Check the form: an angle a fold as it was measured, and what to correct, as the angles come.
import { Entry } from "../fields.js";
import { requestOf, typed } from "../job.js";
import { call, newest } from "../service.js";
import { read, write } from "../store.js";
import { html, useEffect, useState } from "../vendor/preact.js";
import { degrees, length, sentence, setting } from "../words.js";

/** @typedef {import("#contract").components["schemas"]["InspectionAnswer"]} Inspection */
/** @typedef {import("../store.js").Problem} Problem */

const ask = newest(async (/** @type {{ body: unknown, show: (found: Inspection | null, problem: Problem | null) => void }} */ { body, show }) => {
  const outcome = await call("v1/inspections", { body });
  show(outcome.ok ? outcome.body : null, outcome.ok ? null : outcome.problem);
});

// What was typed outlives a look at another part; it belongs to one plan.
/** @type {{ name: string, angles: string[] }} */
const measured = { name: "", angles: [] };

export function CheckForm() {
  const { job, answer } = read();
  const stations = answer?.form.stations ?? [];
  const name = answer?.fingerprint ?? "";
  if (measured.name !== name) Object.assign(measured, { name, angles: stations.map(() => "") });
  const [, tell] = useState(0);
  const [found, setFound] = useState(/** @type {Inspection | null} */ (null));
  const [problem, setProblem] = useState(/** @type {Problem | null} */ (null));
  const [way, setWay] = useState("close-only");
  const given = measured.angles.filter(text => text.trim() !== "").length;

  useEffect(() => {
    if (!answer || given === 0) return;
    // A fold that is not measured yet is taken as planned.
    const angles = stations.map((station, index) => typed(measured.angles[index] ?? "") ?? station.angle);
    ask({ body: { ...requestOf(job), measured: { angles }, corrections: { direction: way } }, show: (next, wrong) => {
      if (next) setFound(next);
      setProblem(wrong);
      if (next) write({ said: next.withinTolerance ? "The form is within its tolerance." : next.next[0]?.text ?? "" });
    } });
  }, [name, measured.angles.join("|"), way]);

  if (!answer) return html`<p>The plan is on its way.</p>`;
  /** @param {number} index @param {string} text */
  const set = (index, text) => {
    measured.angles[index] = text;
    tell(count => count + 1);
  };
  return html`
    <p class="hint">Measure each fold with the form off the brake, and type what you read. ${given > 0 && given < stations.length ? `${given} of ${stations.length} are in; the others are taken as planned until you measure them.` : ""}</p>
    <div class="angles">${stations.map((station, index) => html`
      <${Entry} key=${station.number} id=${"fold-" + station.number} label=${`Fold ${station.number}`} unit="°" place=${degrees(station.angle).replace("°", "")} hint=${note(found, station.number)}
        value=${measured.angles[index] ?? ""} set=${(/** @type {string} */ text) => set(index, text)}
        faults=${(problem?.errors ?? []).filter(fault => fault.pointer === `/measured/angles/${index}`)} />`)}
    </div>
    ${problem && html`<p class="fault">${problem.detail}</p>`}
    ${found && given > 0 && html`<${Findings} found=${found} way=${way} choose=${setWay} units=${answer.request.units} />`}`;
}

/** @param {Inspection | null} found @param {number} number */
function note(found, number) {
  const correction = found?.corrections.folds.find(one => one.fold === number);
  return correction ? `${correction.change > 0 ? "close" : "open"} to ${degrees(correction.angle)}` : "";
}

/** @param {{ found: Inspection, way: string, choose: (way: string) => void, units: string }} props */
function Findings({ found, way, choose, units }) {
  const { corrections, panel } = found;
  return html`
    <section aria-labelledby="found"><h2 id="found">${found.withinTolerance ? "Within its tolerance" : "Not within its tolerance yet"}</h2>
      ${found.next.map(step => html`<p class="large" key=${step.id}>${step.text}</p>`)}
      ${corrections.folds.length > 0 && html`
        <table><caption>${corrections.proven ? "The fewest folds that cure it" : "Folds that cure it"}</caption>
          <thead><tr><th scope="col">fold</th><th scope="col">do</th><th scope="col">by</th><th scope="col">to</th></tr></thead>
          <tbody>${corrections.folds.map(one => html`<tr key=${one.fold}><th scope="row">${one.fold}</th><td>${one.change > 0 ? "close it" : "open it"}</td><td>${setting(Math.abs(one.change))}</td><td class="strong">${degrees(one.angle)}</td></tr>`)}</tbody></table>`}
      <label class="tick"><input type="checkbox" checked=${way === "both"} onChange=${(/** @type {any} */ event) => choose(event.target.checked ? "both" : "close-only")} /><span>folds may be opened too</span></label>
      <ul class="checks">${found.checks.filter(check => check.verdict !== "pass").map(check => html`<li key=${check.id} class=${check.verdict}>${sentence(check.text)}</li>`)}
        ${found.suspect.map(one => html`<li key=${one.pointer}>${sentence(one.text)}</li>`)}</ul>
      ${panel.asBuilt?.wraps && html`<dl class="figures">
        <div><dt>Radius off this form</dt><dd>${length(panel.asBuilt.radius, units)}<i>${units}</i></dd><dd class="band">${length(panel.planned?.radius, units)} as planned</dd></div>
        <div><dt>Sweep off this form</dt><dd>${degrees(panel.asBuilt.sweep)}</dd><dd class="band">${degrees(panel.planned?.sweep)} as planned</dd></div></dl>`}
      ${panel.text && html`<p>${panel.text}</p>`}
    </section>`;
}

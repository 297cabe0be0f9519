// The plan: what comes off, where to mark and fold, what is in the way and what cures it, and what other counts of folds would give.
import { at, requestOf } from "../job.js";
import { Picture } from "../picture.js";
import { apply, put } from "../planning.js";
import { read } from "../store.js";
import { html } from "../vendor/preact.js";
import { about, degrees, forceUnit, length, massUnit, ripple, sentence, setting } from "../words.js";
import { WhatIf } from "./whatif.js";

export function Plan() {
  const { answer, drawing, problem, job } = read();
  if (!answer) return html`<p>${problem ? "There is no plan yet: mend what is named on the left." : "The plan is on its way."}</p>`;
  const { form, panel } = answer;
  const units = answer.request.units;
  const open = answer.checks.filter(check => check.verdict !== "pass");
  return html`
    <section aria-labelledby="comes-off"><h2 id="comes-off">What comes off</h2>
      <${Outcome} answer=${answer} units=${units} />
    </section>
    <section aria-labelledby="checks"><h2 id="checks">${open.length === 0 ? "Every check passed" : open.length === 1 ? "One thing to look at" : `${open.length} things to look at`}</h2>
      <ol class="checks">${open.map(check => html`<${Check} key=${check.id} check=${check} />`)}</ol>
      <details><summary>The ${answer.checks.length - open.length} checks that passed</summary>
        <ul class="passed">${answer.checks.filter(check => check.verdict === "pass").map(check => html`<li key=${check.id}>${check.text}</li>`)}</ul></details>
    </section>
    <section aria-labelledby="marks"><h2 id="marks">Form blank, flat</h2>
      <div class="beside">
        <${Picture} svg=${drawing} view="form-blank" label="Flat form blank with its fold lines and marks" stale=${read().busy} />
        <div class="scroll" tabindex="0" role="region" aria-label="Folds">
          <table class="stations"><caption>From the ${datum(answer.request.marks?.datum)}, on a tape in ${tapeWord(at(answer.request, "/marks/tape") ?? units)}</caption>
            <thead><tr><th scope="col">fold</th><th scope="col">mark</th><th scope="col">sight line</th><th scope="col">angle</th><th scope="col">stop</th></tr></thead>
            <tbody>${form.stations.map(station => html`<tr key=${station.number}><th scope="row">${station.number}</th>
              <td class="strong">${station.markText}${station.markTextFar ? html`<br />${station.markTextFar}` : null}</td><td>${station.sightLineText}</td><td>${degrees(station.angle)}</td><td class="strong">${setting(station.stopSetting)}</td></tr>`)}
            </tbody></table>
        </div>
      </div>
      <dl class="facts">
        <div><dt>Form blank</dt><dd>${form.blank.lengthText} × ${form.blank.widthText} ${units}, ${about(form.blank.mass)} ${massUnit(units)}</dd></div>
        <div><dt>Form sheet</dt><dd>${length(form.thickness, units)} ${units}</dd></div>
        <div><dt>Panel blank</dt><dd>${panel.blank.lengthText} × ${panel.blank.widthText} ${units}, ${about(panel.blank.mass)} ${massUnit(units)}</dd></div>
        <div><dt>Pull</dt><dd>${about(panel.pull.force)} ${forceUnit(units)}, ${length(panel.pull.lever, units)} ${units} past the curve</dd></div>
      </dl>
      <div class="row">
        <label class="tick"><input type="checkbox" checked=${(at(job, "/marks/tape") ?? units) === "in"} onChange=${(/** @type {any} */ event) => put("/marks/tape", event.target.checked ? "in" : "mm")} /><span>my tape is in inches</span></label>
        <label class="tick"><input type="checkbox" checked=${at(job, "/marks/datum") === "far-edge"} onChange=${(/** @type {any} */ event) => put("/marks/datum", event.target.checked ? "far-edge" : undefined)} /><span>measure from the far edge</span></label>
      </div>
    </section>
    <${WhatIf} job=${requestOf(job)} answer=${answer} />
    <section aria-labelledby="next"><h2 id="next">What to do next</h2>
      <ol class="next">${answer.next.map(step => html`<li key=${step.id}>${step.text}</li>`)}</ol>
      <details><summary>Hints that save a panel</summary><ul class="passed">${answer.shopNotes.map(note => html`<li key=${note.id}>${note.text}</li>`)}</ul></details>
      <details><summary>What the values rest on</summary><ul class="passed">${answer.basis.map(one => html`<li key=${one.quantity}>${one.quantity}: ${one.method}. ${one.source} (${one.status}).</li>`)}</ul></details>
    </section>`;
}

/** @param {string | null | undefined} word */
const datum = word => word === "far-edge" ? "lead-out edge" : word === "centre" ? "centre" : "lead-in edge";

/** @param {string} unit */
const tapeWord = unit => unit === "in" ? "inches" : "millimetres";

/** @param {{ answer: import("../store.js").FormAnswer, units: string }} props */
function Outcome({ answer, units }) {
  const { outcome, outlook } = answer.panel;
  return html`
    <dl class="figures">
      <div><dt>Radius</dt><dd>${length(outcome.radius, units)}<i>${units}</i></dd><${Band} band=${outlook.radius} show=${(/** @type {number} */ value) => length(value, units)} /></div>
      <div><dt>Sweep</dt><dd>${degrees(outcome.sweep ?? outcome.turn)}</dd><${Band} band=${outlook.sweep ?? outlook.turn} show=${degrees} /></div>
      <div><dt>Ripple</dt><dd>${ripple(outcome.ripple?.height, units)}<i>${outcome.ripple?.height == null ? "" : units}</i></dd></div>
      <div><dt>Folds</dt><dd>${answer.form.folds}</dd></div>
    </dl>
    <p class="hint">${sentence(outlook.text)}</p>
    ${outcome.text && html`<p>${outcome.text}</p>`}`;
}

/** @param {{ band: { low: number | null, high: number | null } | null | undefined, show: (value: number) => string }} props */
const Band = ({ band, show }) => band?.low == null || band.high == null ? null : html`<dd class="band">${show(band.low)} to ${show(band.high)}</dd>`;

/** @param {{ check: import("#contract").components["schemas"]["CheckResult"] }} props */
const Check = ({ check }) => html`
  <li class=${check.verdict} data-check=${check.id}>
    <p><strong>${check.verdict === "fail" ? "Stop." : "Look."}</strong> ${sentence(check.text)}</p>
    ${check.remedy && html`<p class="remedy">${check.remedy.changes.length > 0
      ? html`<button type="button" onClick=${() => apply(/** @type {any} */ (check.remedy).changes)}>${sentence(check.remedy.text)}</button>`
      : sentence(check.remedy.text)}</p>`}
  </li>`;

// Pull: first what can hurt, then where to pull, and what to see and feel at each fold.
import { keep, kept } from "../kept.js";
import { Picture } from "../picture.js";
import { read, write } from "../store.js";
import { html } from "../vendor/preact.js";
import { about, degrees, forceUnit, length, sentence } from "../words.js";

// Cautions of other steps than the pull.
const elsewhere = new Set(["brake-pinch", "brake-rating", "aluminium-dust", "estimates"]);

export function Pull() {
  const { answer, drawing } = read();
  if (!answer) return html`<p>The plan is on its way.</p>`;
  const cautions = answer.safety.filter(one => one.level !== "caution" && !elsewhere.has(one.id));
  const name = answer.fingerprint;
  const seen = kept().seen[name] ?? false;
  return html`
    <section aria-labelledby="cautions" class="danger"><h2 id="cautions">Before anybody pulls</h2>
      <ul class="cautions">${cautions.map(one => html`<li key=${one.id} class=${one.level}><b>${sentence(one.level)}.</b> ${one.text}</li>`)}</ul>
      <label class="tick"><input type="checkbox" checked=${seen} onChange=${(/** @type {any} */ event) => {
        keep({ seen: { ...kept().seen, [name]: event.target.checked } });
        write({ said: event.target.checked ? "The pull is open below." : "" });
      }} /><span>I have read these, and so has whoever pulls with me</span></label>
    </section>
    ${seen ? html`<${Steps} answer=${answer} drawing=${drawing} />` : html`<p class="hint">The pull opens once they are read.</p>`}`;
}

/** @param {{ answer: import("../store.js").FormAnswer, drawing: string | null }} props */
function Steps({ answer, drawing }) {
  const { units } = answer.request;
  const { pull, marks, outcome } = answer.panel;
  const last = answer.form.folds + 1;
  return html`
    <section aria-labelledby="where"><h2 id="where">Where to clamp and where to pull</h2>
      <dl class="figures">
        <div><dt>Pull</dt><dd>${about(pull.force)}<i>${forceUnit(units)}</i></dd></div>
        <div><dt>Past the end of the curve</dt><dd>${length(pull.lever, units)}<i>${units}</i></dd></div>
        <div><dt>Clamps hold</dt><dd>${about(pull.clampLoad)}<i>${forceUnit(units)}</i></dd></div>
      </dl>
      <div class="beside panel-marks"><${Picture} svg=${drawing} view="panel-blank" label="Panel blank with its registration marks" />
        <table><caption>Marks on the panel blank, from the lead-in edge, ${units}</caption><tbody>${marks.map(mark => html`<tr key=${mark.name}><th scope="row">${mark.name}</th><td class="strong">${mark.atText}</td></tr>`)}</tbody></table></div>
    </section>
    ${outcome.touches.length > 0 && html`<section aria-labelledby="touches"><h2 id="touches">As it goes round</h2>
      <p class="hint">The angle of the sheet’s end, and the pull, when the panel reaches each fold.</p>
      <table class="touches"><thead><tr><th scope="col">it touches</th><th scope="col">end of the sheet</th><th scope="col">pull, ${forceUnit(units)}</th></tr></thead>
        <tbody>${outcome.touches.map(touch => html`<tr key=${touch.fold}><th scope="row">${touch.fold === last ? "the lead-out" : `fold ${touch.fold}`}</th><td class="strong">${degrees(touch.endAngle)}</td><td class="strong">${about(touch.force)}</td></tr>`)}</tbody></table>
    </section>`}
    <section aria-labelledby="let-go"><h2 id="let-go">Let it go</h2>
      ${answer.safety.filter(one => one.id === "springback-release").map(one => html`<p class="large" key=${one.id}>${one.text}</p>`)}
    </section>`;
}

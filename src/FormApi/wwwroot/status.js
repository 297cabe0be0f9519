// What the service says of the job, always in view: verdict, sentence, and the section.
import { Picture } from "./picture.js";
import { apply, open } from "./planning.js";
import { read } from "./store.js";
import { html } from "./vendor/preact.js";
import { degrees, length, sentence, verdicts } from "./words.js";

export function Status() {
  const { answer, drawing, problem, busy, away, job } = read();
  return html`
    <aside class="status" aria-label="The plan in short">
      <div class=${"verdict " + (problem ? "none" : answer?.verdict ?? "none")}>
        <h2>${problem ? "No plan yet" : answer ? verdicts[answer.verdict] : "One moment"}</h2>
        <p>${problem ? (problem.errors ? "" : problem.detail) : answer ? withoutVerdict(answer.text) : "The plan is on its way."}</p>
        ${problem?.errors && html`<ul>${problem.errors.map(fault => html`<li key=${fault.pointer + fault.code}>${labelAt(fault.pointer)}${fault.text}
          ${fault.remedy && fault.remedy.changes.length > 0 && html`<button type="button" onClick=${() => apply(/** @type {any} */ (fault.remedy).changes)}>${sentence(fault.remedy.text)}</button>`}</li>`)}</ul>`}
      </div>
      ${away && html`<p class="away">The service is away. What was planned before still opens; nothing new can be planned. <button type="button" class="plain" onClick=${() => open(null)}>Back to the example</button></p>`}
      <figure>
        <${Picture} svg=${drawing} view="section" label="Section: the form, the panel as pulled and as finished" stale=${problem !== null} />
        <figcaption>
          <span class="key form">form${answer && html`, ${answer.form.folds} folds, ${degrees(answer.form.sweep)}`}</span>
          <span class="key pulled">panel as pulled</span>
          <span class="key finished">as finished${answer && html`, ${finished(answer, job["units"])}`}</span>
        </figcaption>
      </figure>
      <p class="working" aria-hidden="true">${busy ? "planning…" : ""}</p>
    </aside>`;
}

// As the field is called; a fault elsewhere is named by the service alone.
/** @param {string} pointer */
function labelAt(pointer) {
  const field = /** @type {HTMLInputElement | null} */ (document.querySelector(`[data-pointer="${CSS.escape(pointer)}"]`));
  const label = field?.labels?.[0]?.textContent;
  return label ? html`<b>${sentence(label)}.</b> ` : null;
}

// The sentence begins with the verdict, which is its heading here.
/** @param {string} text */
const withoutVerdict = text => sentence(text.replace(/^(Look first|Ready|Cannot be made)[:.] /, ""));

/** @param {import("./store.js").FormAnswer} answer @param {string} units */
function finished({ panel: { outcome } }, units) {
  const sweep = outcome.sweep ?? outcome.turn;
  return [outcome.radius == null ? "" : `R ${length(outcome.radius, units)} ${units}`, sweep == null ? "" : degrees(sweep)].filter(Boolean).join(", ");
}

// Fold: one step a screen, in figures that are read from where the brake stands.
import { requestOf } from "../job.js";
import { keep, kept } from "../kept.js";
import { Picture } from "../picture.js";
import { call } from "../service.js";
import { read, write } from "../store.js";
import { html, useEffect, useRef, useState } from "../vendor/preact.js";
import { onScale, sentence, setting } from "../words.js";

/** @typedef {import("#contract").components["schemas"]["ProgramAnswer"]} Program */

export function Fold() {
  const { job, answer } = read();
  const [program, setProgram] = useState(/** @type {Program | null} */ (null));
  const [why, setWhy] = useState("");
  const [at, setAt] = useState(0);
  const place = useRef(/** @type {HTMLElement | null} */ (null));
  const name = answer?.fingerprint ?? "";

  useEffect(() => {
    if (!answer) return;
    let isWanted = true;
    setProgram(null);
    call("v1/programs", { body: requestOf(job) }).then(outcome => {
      if (!isWanted) return;
      if (outcome.ok) {
        setProgram(outcome.body);
        setWhy("");
        setAt(Math.min(kept().steps[name] ?? 0, outcome.body.steps.length));
      } else {
        const { problem } = outcome;
        setWhy(problem ? [problem.detail, ...(problem.errors ?? []).map(fault => fault.text), ...(problem.impossible?.folds ?? []).map(fold => fold.text)].join(" ") : "The service is away, and this form’s steps were not asked for before.");
      }
    });
    return () => { isWanted = false; };
  }, [name]);

  const count = program?.steps.length ?? 0;
  /** @param {number} to */
  const go = to => {
    const next = Math.max(0, Math.min(count, to));
    setAt(next);
    keep({ steps: { ...kept().steps, [name]: next } });
    const step = program?.steps[next];
    write({ said: step ? `Step ${step.number} of ${count}. ${step.text}` : "All folds are made." });
  };
  useKeys(go, at, program !== null);
  useAwake(program !== null);
  useEffect(() => { if (program) place.current?.focus(); }, [program]);

  if (why) return html`<p class="large">There are no steps for this form.</p><p>${why}</p>`;
  if (!program) return html`<p>The steps are on their way.</p>`;
  const step = program.steps[at];
  return html`
    <div class="bench" ref=${place} tabindex="-1" aria-label="Steps">
      ${step ? html`<${Step} key=${step.number} step=${step} count=${count} program=${program} />` : html`<${Done} count=${count} program=${program} />`}
      <div class="turns">
        <button type="button" class="turn" disabled=${at === 0} onClick=${() => go(at - 1)}>Back</button>
        <button type="button" class="turn main" disabled=${at === count} onClick=${() => go(at + 1)}>${at === count - 1 ? "Done" : "Next"}</button>
      </div>
      <p class="hint keys">Space bar or arrow keys work too. Where you are is kept.</p>
    </div>
    <details class="cautions"><summary>Cautions at the brake</summary><ul class="passed">${program.safety.map(one => html`<li key=${one.id}>${one.text}</li>`)}</ul></details>`;
}

/** @param {{ step: Program["steps"][0], count: number, program: Program }} props */
function Step({ step, count, program }) {
  const { units } = program.request;
  const next = program.steps[step.number];
  const picture = usePicture(program, step.number);
  usePicture(program, next ? next.number : null);
  return html`
    <p class="count">Step <b>${step.number}</b> of ${count}<span> · fold ${step.fold}</span></p>
    <dl class="huge">
      <${Gauge} step=${step} units=${units} tape=${program.request.marks?.tape ?? units} />
      <div class=${step.stopChange ? "new" : ""}><dt>${step.stopChange || step.number === 1 ? "Set the stop to" : "Same stop"}</dt><dd>${setting(step.stopSetting)}</dd></div>
    </dl>
    <p class="large">${step.text}</p>
    ${step.checks.map(check => html`<p class="fault" key=${check.id}>${sentence(check.text)}</p>`)}
    <div class="step-picture">${picture ? html`<${Picture} svg=${picture} view="step" label=${`The brake in section at step ${step.number}`} />` : html`<p class="hint">The picture is on its way.</p>`}</div>`;
}

/**
 * A mark reads as the tape does; a gauge is set on a scale, which the words of the step read too.
 * @param {{ step: Program["steps"][0], units: string, tape: string }} props
 */
const Gauge = ({ step, units, tape }) => step.gaugedBy === "mark" || tape === "in" && units === "in"
  ? html`<div><dt>${step.gaugedBy === "mark" ? "By its mark, to the edge behind" : "Gauge"}</dt><dd>${step.gaugeDistanceText}<i>${tape}</i></dd></div>`
  : html`<div><dt>Gauge</dt><dd>${onScale(step.gaugeDistance, units)}<i>${units}</i></dd></div>`;

/** @param {{ count: number, program: Program }} props */
const Done = ({ count, program }) => html`
  <p class="count">All ${count} folds are made</p>
  ${program.next.filter(step => step.id !== "run-program").map(step => html`<p class="large" key=${step.id}>${step.text}</p>`)}`;

/** @type {Map<string, string>} */
const pictures = new Map();

/** The picture of one step, from the link that holds the program. @param {Program} program @param {number | null} number */
function usePicture(program, number) {
  const link = number === null || !program.links.program ? null : `${program.links.program}?step=${number}`;
  const [, tell] = useState(0);
  useEffect(() => {
    if (!link || pictures.has(link)) return;
    let isWanted = true;
    call(link, { accept: "image/svg+xml" }).then(outcome => {
      if (outcome.ok) pictures.set(link, outcome.body);
      if (isWanted) tell(count => count + 1);
    });
    return () => { isWanted = false; };
  }, [link]);
  return link ? pictures.get(link) ?? null : null;
}

/** @param {(to: number) => void} go @param {number} at @param {boolean} on */
function useKeys(go, at, on) {
  useEffect(() => {
    if (!on) return;
    /** @param {KeyboardEvent} event */
    const press = event => {
      const target = /** @type {HTMLElement} */ (event.target);
      // A button, a link or a field that has the keyboard keeps its own keys.
      if (event.key === " " && target.closest("button, a, summary, input, select, textarea")) return;
      if (read().dialog || target.closest("nav, input, select, textarea, dialog")) return;
      const by = { " ": 1, ArrowRight: 1, ArrowDown: 0, PageDown: 1, ArrowLeft: -1, PageUp: -1 }[event.key];
      if (!by) return;
      event.preventDefault();
      go(at + by);
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, [go, at, on]);
}

// A screen that goes dark at the brake is no use; where the browser will not keep it on, it goes dark.
/** @param {boolean} on */
function useAwake(on) {
  useEffect(() => {
    if (!on || !navigator.wakeLock) return;
    /** @type {WakeLockSentinel | null} */
    let lock = null;
    const hold = () => {
      if (document.visibilityState === "visible") navigator.wakeLock.request("screen").then(held => { lock = held; }, () => {});
    };
    hold();
    document.addEventListener("visibilitychange", hold);
    return () => {
      document.removeEventListener("visibilitychange", hold);
      lock?.release();
    };
  }, [on]);
}

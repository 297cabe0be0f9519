// I bent a strip: what it says of the sheet's springback, ready to be taken into the plan.
import { Dialog, Entry } from "../fields.js";
import { at, typed, withValue } from "../job.js";
import { take } from "../planning.js";
import { call } from "../service.js";
import { read, write } from "../store.js";
import { html, useState } from "../vendor/preact.js";

const empty = { formRadius: "", finishedRadius: "" };

export function Strip() {
  const { job, answer } = read();
  const units = job["units"];
  const [strips, setStrips] = useState([{ ...empty }]);
  const [learnt, setLearnt] = useState(/** @type {any} */ (null));
  const [faults, setFaults] = useState(/** @type {{ pointer: string, text: string, allowed?: string }[]} */ ([]));
  const advice = answer?.next.find(step => step.id === "bend-strip");
  /** @param {Event} event */
  const ask = async event => {
    event.preventDefault();
    const { material, thickness, gauge, gaugeSystem } = job["panel"];
    const radius = at(job, "/panel/curve/radius");
    const body = {
      units, material, thickness, gauge, gaugeSystem,
      strips: strips.filter(one => one.formRadius || one.finishedRadius).map(one => ({ formRadius: typed(one.formRadius), finishedRadius: typed(one.finishedRadius) })),
      ...(typeof radius === "number" ? { targets: [radius] } : {}),
    };
    const outcome = await call("v1/test-strips/springback", { body });
    setLearnt(outcome.ok ? outcome.body : null);
    setFaults(outcome.ok || !outcome.problem ? [] : outcome.problem.errors ?? [{ pointer: "", text: outcome.problem.detail }]);
  };
  return html`
    <${Dialog} title="I bent a strip" close=${() => write({ dialog: null })}>
      ${advice && html`<p>${advice.text}</p>`}
      <form onSubmit=${ask}>
        ${strips.map((strip, row) => html`<div class="row" key=${row}>
          <${Entry} id=${"bar-" + row} label="Radius of the bar or pipe" unit=${units} value=${strip.formRadius} faults=${faults.filter(one => one.pointer === `/strips/${row}/formRadius`)}
            set=${(/** @type {string} */ text) => setStrips(strips.map((one, other) => other === row ? { ...one, formRadius: text } : one))} />
          <${Entry} id=${"left-" + row} label="Inside radius that was left" unit=${units} value=${strip.finishedRadius} faults=${faults.filter(one => one.pointer === `/strips/${row}/finishedRadius`)}
            set=${(/** @type {string} */ text) => setStrips(strips.map((one, other) => other === row ? { ...one, finishedRadius: text } : one))} />
        </div>`)}
        ${faults.filter(one => !/^\/strips\/\d+\/(form|finished)Radius$/.test(one.pointer)).map(one => html`<p class="fault">${one.text}</p>`)}
        <div class="row actions">
          <button class="main">What it says</button>
          <button type="button" onClick=${() => setStrips([...strips, { ...empty }])}>One more strip</button>
        </div>
      </form>
      ${learnt && html`<div class="learnt" role="status">
        <p class="large">${learnt.text}</p>
        ${learnt.doubts.map((/** @type {any} */ doubt) => html`<p class="fault">${doubt.text}</p>`)}
        ${learnt.next.map((/** @type {any} */ step) => html`<p key=${step.id}>${step.text}</p>`)}
        ${learnt.paste && html`<button type="button" class="main" onClick=${() => {
          take(withValue(read().job, "/panel/springback", learnt.paste.panel.springback));
          write({ dialog: null });
        }}>Use it in the plan</button>`}
      </div>`}
    </${Dialog}>`;
}

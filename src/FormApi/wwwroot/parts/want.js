// What I want: the finished curve, its width and its flats.
import { Choice, Faults, Field, Select, faultsAt, useTyped } from "../fields.js";
import { at, typed, withValue } from "../job.js";
import { put, take } from "../planning.js";
import { read } from "../store.js";
import { html, useState } from "../vendor/preact.js";
import { inField } from "../words.js";
import { Points } from "./points.js";

/** @param {string} path @param {string} words */
const drawn = (path, words) => html`<svg viewBox="0 0 48 36" aria-hidden="true"><path d=${path} /></svg><span>${words}</span>`;

/** @type {[string, unknown][]} */
const kinds = [
  ["arc", drawn("M4 31H14C28 31 37 22 37 5", "Arc")],
  ["progressive", drawn("M4 31H8C22 31 30 27 36 19C40 14 43 9 45 3", "Opening radius")],
  ["points", drawn("M4 31C18 31 26 27 32 20C37 14 40 9 41 4M4 31m-2 0a2 2 0 1 0 4 0a2 2 0 1 0-4 0M22 27m-2 0a2 2 0 1 0 4 0a2 2 0 1 0-4 0M33 19m-2 0a2 2 0 1 0 4 0a2 2 0 1 0-4 0M41 4m-2 0a2 2 0 1 0 4 0a2 2 0 1 0-4 0", "Measured points")],
  ["taper", drawn("M3 33C14 33 21 26 21 15M25 18C37 18 45 11 45 2M3 33L25 18M21 15L45 2", "Cone or taper")],
];

/** @type {[string, string][]} */
const arcMeasures = [["radius", "radius"], ["diameter", "diameter"], ["sweep", "sweep"], ["chord", "chord"], ["rise", "rise"]];

// What a kind begins with, in the units of the job. Values of shop jobs, to be typed over.
/** @type {Record<string, Record<string, any>>} */
const begins = {
  mm: {
    arc: { type: "arc", radius: 95, sweep: 85 },
    progressive: { type: "progressive", startRadius: 90, endRadius: 260, sweep: 70, law: "involute" },
    points: { type: "points", points: [[0, 0], [26.05, 2.28], [51.3, 9.05], [75, 20.1], [96.42, 35], [114.91, 53.58], [129.9, 75], [140.95, 98.7], [147.72, 123.95]], tolerance: 0.3 },
    taper: { type: "taper", near: { type: "arc", radius: 70, sweep: 80 }, far: { type: "arc", radius: 110, sweep: 80 }, length: 520, placement: "concentric" },
    through: [[0, 0], [62, 27], [87, 87]],
  },
  in: {
    arc: { type: "arc", radius: 3.75, sweep: 85 },
    progressive: { type: "progressive", startRadius: 3.5, endRadius: 10, sweep: 70, law: "involute" },
    points: { type: "points", points: [[0, 0], [1, 0.0875], [2, 0.355], [3, 0.82], [4, 1.53], [5, 2.684], [5.5, 3.604], [5.75, 4.319]], tolerance: 0.015 },
    taper: { type: "taper", near: { type: "arc", radius: 2.75, sweep: 80 }, far: { type: "arc", radius: 4.25, sweep: 80 }, length: 20, placement: "concentric" },
    through: [[0, 0], [2.5, 1.125], [3.5, 3.5]],
  },
};

export function Want() {
  const { job } = read();
  const units = job["units"];
  const curve = at(job, "/panel/curve");
  return html`
    <${Choice} name="kind" legend="Kind of curve" pictures options=${kinds} value=${curve.type}
      choose=${(/** @type {string} */ kind) => put("/panel/curve", begins[units]?.[kind])} />
    ${curve.type === "arc" && html`<${Arc} curve=${curve} units=${units} />`}
    ${curve.type === "progressive" && html`<${Opening} units=${units} curve=${curve} />`}
    ${curve.type === "points" && html`<${Points} units=${units} curve=${curve} />`}
    ${curve.type === "taper" && html`<${Taper} units=${units} curve=${curve} />`}
    ${!begins["mm"]?.[curve.type] && html`<p>This job came with a curve of the kind “${curve.type}”. It is planned as it is; choose a kind above to replace it.</p>`}
    <${Choice} name="surface" legend="Measured on" value=${at(job, "/panel/surface") ?? "inside"}
      options=${[["inside", "inside face"], ["outside", "outside face"], ["mid", "middle"]]} choose=${(/** @type {string} */ word) => put("/panel/surface", word)} />
    <div class="row">
      ${curve.type !== "taper" && html`<${Field} pointer="/panel/width" label="Width along the folds" unit=${units} />`}
      <${Field} pointer="/panel/leadIn" label="Flat before the curve" unit=${units} place=${shownAt("/panel/leadIn")} />
      <${Field} pointer="/panel/leadOut" label="Flat after it" unit=${units} place=${shownAt("/panel/leadOut")} />
    </div>
    <label class="tick"><input type="checkbox" checked=${at(job, "/panel/mirrored") ?? false} onChange=${(/** @type {any} */ event) => put("/panel/mirrored", event.target.checked)} />
      <span>the same curve at both ends of the panel</span></label>`;
}

/** What the plan takes where a field is left empty. @param {string} pointer */
export const shownAt = pointer => {
  const shown = at(read().answer?.request, pointer);
  return shown == null ? "" : inField(shown);
};

/** @param {{ curve: any, units: string }} props */
function Arc({ curve, units }) {
  // Two measures that are not both known yet: until they are, the job keeps its arc.
  const [draft, setDraft] = useState(/** @type {null | { names: string[], values: Record<string, unknown> }} */ (null));
  const names = draft?.names ?? arcMeasures.map(([name]) => name).filter(name => name in curve);
  const values = draft?.values ?? curve;
  const by = curve.through ? "points" : "two";
  /** @param {string[]} measures @param {Record<string, unknown>} known */
  const take = (measures, known) => {
    const whole = Object.fromEntries(measures.filter(name => known[name] !== undefined).map(name => [name, known[name]]));
    if (Object.keys(whole).length < 2) {
      setDraft({ names: measures, values: whole });
      return;
    }
    setDraft(null);
    put("/panel/curve", { type: "arc", ...whole });
  };
  return html`
    <${Choice} name="arc-by" legend="Known by" value=${by} options=${[["two", "two measures"], ["points", "three points"]]}
      choose=${(/** @type {string} */ way) => {
        setDraft(null);
        put("/panel/curve", way === "points" ? { type: "arc", through: begins[units]?.["through"] } : begins[units]?.["arc"]);
      }} />
    ${by === "two"
      ? html`<div class="pairs">${names.map((name, which) => html`
          <div class="pair" key=${which}>
            <${Select} id=${"measure-" + which} label=${which === 0 ? "I know the" : "and the"} value=${name} options=${measuresFor(names, which)}
              choose=${(/** @type {string} */ chosen) => take(names.map((one, place) => place === which ? chosen : one), values)} />
            <${Field} key=${name} pointer=${"/panel/curve/" + name} label=${name} unit=${name === "sweep" ? "°" : units} shown=${values[name] ?? ""} place=${draft ? "measure it" : ""}
              onValue=${(/** @type {unknown} */ value) => take(names, { ...values, [name]: value })} />
          </div>`)}</div>`
      : html`<p class="hint">First end, any point between, last end; from any corner you like.</p><${Pairs} pointer="/panel/curve/through" units=${units} />`}
    <${Faults} id="curve-faults" faults=${faultsAt("/panel/curve")} />`;
}

// Radius and diameter are one measure.
/** @param {string[]} names @param {number} which @returns {[string, string][]} */
function measuresFor(names, which) {
  const other = names[1 - which];
  const taken = other === "radius" || other === "diameter" ? ["radius", "diameter"] : [other];
  return arcMeasures.filter(([name]) => !taken.includes(name));
}

/** @param {{ curve: any, units: string }} props */
const Opening = ({ curve, units }) => html`
  <div class="row">
    <${Field} pointer="/panel/curve/startRadius" label="Radius at the start" unit=${units} />
    <${Field} pointer="/panel/curve/endRadius" label="Radius at the end" unit=${units} />
    <${Field} pointer="/panel/curve/sweep" label="Sweep" unit="°" />
  </div>
  <${Choice} name="law" legend="How it opens" value=${curve.law}
    options=${[["involute", "evenly with the turn"], ["clothoid", "evenly along the sheet"], ["logarithmic", "by the same share"]]} choose=${(/** @type {string} */ word) => put("/panel/curve/law", word)} />
  <p class="hint">Measured a pattern instead? Choose “Measured points”.</p>`;

/** @param {{ curve: any, units: string }} props */
const Taper = ({ curve, units }) => html`
  <div class="row">
    <${Field} pointer="/panel/curve/near/radius" label="Radius at the near end" unit=${units} />
    <${Field} pointer="/panel/curve/far/radius" label="Radius at the far end" unit=${units} />
    <${Field} pointer="/panel/curve/length" label="From end to end" unit=${units} />
    <${Field} pointer="/panel/curve/near/sweep" label="Sweep of both ends" unit="°"
      onValue=${(/** @type {unknown} */ value) => take(withValue(withValue(read().job, "/panel/curve/near/sweep", value), "/panel/curve/far/sweep", value))} />
  </div>
  <${Choice} name="placement" legend="The far end begins" value=${curve.placement ?? "concentric"}
    options=${[["concentric", "round the same centre"], ["flush", "at the same corner"]]} choose=${(/** @type {string} */ word) => put("/panel/curve/placement", word)} />
  <${Faults} id="curve-faults" faults=${faultsAt("/panel/curve", true).filter(fault => fault.pointer !== "/panel/curve/near/radius" && fault.pointer !== "/panel/curve/far/radius" && fault.pointer !== "/panel/curve/length" && fault.pointer !== "/panel/curve/near/sweep")} />`;

/** @param {{ pointer: string, units: string }} props */
export function Pairs({ pointer, units }) {
  const points = at(read().job, pointer);
  /** @param {number} row @param {number} column @param {string} text */
  const type = (row, column, text) => {
    const value = typed(text);
    if (value === undefined) return;
    const next = structuredClone(points);
    next[row][column] = value;
    put(pointer, next);
  };
  return html`
    <table class="pairs-table"><thead><tr><th scope="col">Point</th><th scope="col">across, ${units}</th><th scope="col">up, ${units}</th></tr></thead>
      <tbody>${points.map((/** @type {number[]} */ point, /** @type {number} */ row) => html`<tr key=${row}><th scope="row">${row + 1}</th>
        ${point.map((value, column) => html`<td key=${column}><${Cell} label=${`point ${row + 1}, ${column === 0 ? "across" : "up"}`} value=${value}
          set=${(/** @type {string} */ text) => type(row, column, text)} /></td>`)}</tr>`)}
      </tbody></table>
    <${Faults} id="points-faults" faults=${faultsAt(pointer, true)} />`;
}

/** @param {{ label: string, value: unknown, set: (text: string) => void }} props */
const Cell = ({ label, value, set }) => html`<input aria-label=${label} autocomplete="off" ...${useTyped(inField(value), set)} />`;

// My sheet: what the panel is made of, what a strip of it taught, and the sheet and brake of the form.
import { Choice, Faults, Field, Select, faultsAt } from "../fields.js";
import { at, withValue } from "../job.js";
import { forget, keepNamed, kept } from "../kept.js";
import { put, take } from "../planning.js";
import { read, write } from "../store.js";
import { materialNamed, tables } from "../tables.js";
import { html, useState } from "../vendor/preact.js";
import { length } from "../words.js";
import { Strip } from "./strip.js";
import { shownAt } from "./want.js";

export function MySheet() {
  const { job } = read();
  const learnt = at(job, "/panel/springback/effectiveYield") ?? at(job, "/panel/springback/factor");
  return html`
    <section aria-labelledby="panel-sheet"><h2 id="panel-sheet">The panel’s sheet</h2>
      <${SheetOf} part="panel" />
      <${Choice} name="finish" legend="Finish" value=${at(job, "/panel/finish") ?? "satin"}
        options=${[["gloss", "gloss: mirrors"], ["satin", "satin or mill"], ["hidden", "out of sight"]]} choose=${(/** @type {string} */ word) => put("/panel/finish", word)} />
      <div class="row actions">
        <button type="button" onClick=${() => write({ dialog: "strip" })}>I bent a strip</button>
        ${learnt !== undefined && html`<p class="hint">A strip’s springback is in this plan. <button type="button" class="plain" onClick=${() => put("/panel/springback", undefined)}>Leave it out</button></p>`}
      </div>
      <${Own} kind="sheets" what="sheet" value=${ownSheet(job)} use=${(/** @type {any} */ value) => take(withSheet(job, value))} />
    </section>
    <section aria-labelledby="form-sheet"><h2 id="form-sheet">The form’s sheet</h2>
      <${SheetOf} part="form" />
      <div class="row">
        <${Field} pointer="/form/foldRadius" label="Inside radius of a fold" unit=${job["units"]} place=${shownAt("/form/foldRadius")} />
        <${Field} pointer="/form/leadIn" label="Flat before the first fold" unit=${job["units"]} place=${shownAt("/form/leadIn")} />
        <${Field} pointer="/form/leadOut" label="Flat after the last" unit=${job["units"]} place=${shownAt("/form/leadOut")} />
      </div>
    </section>
    <section aria-labelledby="my-brake"><h2 id="my-brake">My brake</h2>
      <${Choice} name="brake" legend="Kind" value=${at(job, "/brake/kind") ?? "leaf"} options=${[["leaf", "leaf brake"], ["press", "press brake"]]} choose=${(/** @type {string} */ word) => put("/brake/kind", word)} />
      <div class="row">
        <${Field} pointer="/brake/length" label="Longest fold" unit=${job["units"]} place=${shownAt("/brake/length")} />
        <${Field} pointer="/brake/stopResolution" label="Step of its stop" unit="°" place=${shownAt("/brake/stopResolution")} />
        <${Field} pointer="/brake/minFacet" label="Narrowest facet" unit=${job["units"]} place=${shownAt("/brake/minFacet")} />
      </div>
      <${Own} kind="brakes" what="brake" value=${{ units: job["units"], brake: job["brake"] ?? {} }} use=${(/** @type {any} */ value) => put("/brake", value.brake)} />
    </section>
    ${read().dialog === "strip" && html`<${Strip} />`}`;
}

/** @param {import("../store.js").Job} job */
const ownSheet = job => {
  const { material, thickness, gauge, gaugeSystem, springback } = job["panel"];
  return structuredClone({ units: job["units"], material, thickness, gauge, gaugeSystem, springback });
};

/** @param {import("../store.js").Job} job @param {any} sheet */
function withSheet(job, { units: _, ...sheet }) {
  let next = job;
  for (const name of ["material", "thickness", "gauge", "gaugeSystem", "springback"]) next = withValue(next, "/panel/" + name, sheet[name]);
  return next;
}

/** @param {{ part: "panel" | "form" }} props */
function SheetOf({ part }) {
  const { job, answer } = read();
  const table = tables();
  const id = at(job, `/${part}/material/id`) ?? "";
  const material = materialNamed(id);
  const system = material?.gaugeSystem ?? null;
  const byGauge = at(job, `/${part}/gauge`) !== undefined;
  const [typedName, setTyped] = useState(/** @type {string | null} */ (null));
  const gauges = table?.gauges.find(one => one.id === (at(job, `/${part}/gaugeSystem`) ?? system));
  /** @param {string} name */
  const choose = name => {
    setTyped(name);
    const found = materialNamed(name);
    if (found) put(`/${part}/material`, { id: found.id });
  };
  return html`
    <div class="row">
      <div class=${"field wide" + (faultsAt(`/${part}/material`, true).length ? " wrong" : "")}>
        <label for=${part + "-metal"}>Metal</label>
        <span class="box"><input id=${part + "-metal"} list=${part + "-metals"} autocomplete="off" spellcheck=${false} value=${typedName ?? material?.name ?? id}
          placeholder=${part === "form" ? answer?.request.form?.material?.id ?? "" : ""}
          onFocus=${(/** @type {any} */ event) => event.target.select()}
          onInput=${(/** @type {any} */ event) => choose(event.target.value)}
          onBlur=${(/** @type {any} */ event) => {
            // What the table does not know the service is asked about: it answers with the nearest names.
            if (typedName !== null && event.target.value.trim() !== "" && !materialNamed(event.target.value)) put(`/${part}/material`, { id: event.target.value.trim() });
            setTyped(null);
          }} /></span>
        <datalist id=${part + "-metals"}>${table?.materials.flatMap(one => [
          html`<option key=${one.id} value=${one.name}>${one.family.replace("-", " ")}</option>`,
          ...one.aliases.map(alias => html`<option key=${one.id + alias} value=${alias}>${one.name}</option>`),
        ])}</datalist>
        ${part === "panel" && html`<small>Type a name as your merchant writes it: 3003-H14, 1.4301, mild steel</small>`}
        <${Faults} id=${part + "-metal-e"} faults=${faultsAt(`/${part}/material`, true)} />
      </div>
      ${byGauge && gauges
        ? html`<${Select} id=${part + "-gauge"} label="Gauge" value=${String(at(job, `/${part}/gauge`))} faults=${faultsAt(`/${part}/gauge`)}
            options=${gauges.gauges.map(one => [String(one.gauge), `${one.gauge} ga (${length(one.thickness, job["units"])} ${job["units"]})`])} choose=${(/** @type {string} */ gauge) => put(`/${part}/gauge`, Number(gauge))} />`
        : html`<${Field} pointer=${`/${part}/thickness`} label="Thickness" unit=${job["units"]} place=${shownAt(`/${part}/thickness`)} />`}
    </div>
    ${system && html`<${Choice} name=${part + "-by"} legend="Ordered by" quiet value=${byGauge ? "gauge" : "thickness"} options=${[["thickness", "by thickness"], ["gauge", "by gauge"]]}
      choose=${(/** @type {string} */ way) => {
        const { job: now } = read();
        const bare = withValue(withValue(withValue(now, `/${part}/gauge`, undefined), `/${part}/gaugeSystem`, undefined), `/${part}/thickness`, undefined);
        take(way === "gauge" ? withValue(bare, `/${part}/gauge`, gauges?.gauges.find(one => one.gauge === 16)?.gauge ?? gauges?.gauges[0]?.gauge) : withValue(bare, `/${part}/thickness`, gauges?.gauges.find(one => one.gauge === at(job, `/${part}/gauge`))?.thickness));
      }} />`}`;
}

/**
 * Own things of a kind, kept in this browser.
 * @param {{ kind: "sheets" | "brakes" | "rates", what: string, value: any, use: (value: any) => void }} props
 */
export function Own({ kind, what, value, use }) {
  const [name, setName] = useState("");
  const { units } = read().job;
  const own = kept()[kind].filter(one => one.name !== "last used" && (!one.value.units || one.value.units === units));
  return html`
    <details class="own"><summary>Kept ${kind}${own.length ? ` (${own.length})` : ""}</summary>
      ${own.map(one => html`<div class="row kept" key=${one.name}>
        <button type="button" onClick=${() => use(one.value)}>${one.name}</button>
        <button type="button" class="plain" aria-label=${"Forget " + one.name} onClick=${() => { forget(kind, one.name); write({}); }}>Forget</button></div>`)}
      <form class="row" onSubmit=${(/** @type {Event} */ event) => {
        event.preventDefault();
        if (name.trim() === "") return;
        keepNamed(kind, name.trim(), value);
        setName("");
        write({ said: `${name.trim()} is kept in this browser.` });
      }}>
        <div class="field"><label for=${"name-" + kind}>Keep this ${what} as</label><span class="box"><input id=${"name-" + kind} required maxlength="40" value=${name} onInput=${(/** @type {any} */ event) => setName(event.target.value)} /></span></div>
        <button>Keep</button>
      </form>
    </details>`;
}

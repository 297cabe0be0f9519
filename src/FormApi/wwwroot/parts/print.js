// Print: the sheet, parts at 1:1, files for machines, and the job as a symbol for another device.
import { Select } from "../fields.js";
import { download } from "../files.js";
import { requestOf } from "../job.js";
import { Picture } from "../picture.js";
import { addressOf } from "../planning.js";
import { call } from "../service.js";
import { read, write } from "../store.js";
import { html, useEffect, useState } from "../vendor/preact.js";

/** @type {[string, string][]} */
const parts = [
  ["check-template", "template to check the form"],
  ["form-blank", "form blank"],
  ["panel-blank", "panel blank"],
  ["rib", "rib"],
  ["gauge-inside", "gauge for the inside of the panel"],
  ["gauge-outside", "gauge for the outside of the panel"],
  ["gauge-pulled", "gauge for the panel while it is pulled"],
  ["strip-card", "card for what strips say"],
  ["panel-card", "card for what the panel says"],
];

/** @typedef {{ name: string, about: string, path: string, accept: string, file: string }} Sheet */

/** @type {Sheet[]} */
const sheets = [
  { name: "Sheet with a 1:1 story stick", about: "PDF, the whole job on paper", path: "v1/forms/drawing", accept: "application/pdf", file: "sheet.pdf" },
  { name: "Form blank laid out whole at 1:1", about: "PDF over as many pages as it takes", path: "v1/forms/drawing?layout=full", accept: "application/pdf", file: "form-1-1.pdf" },
  { name: "Brake program", about: "PDF, a small section for every handling", path: "v1/programs", accept: "application/pdf", file: "program.pdf" },
  { name: "Both blanks to cut", about: "DXF", path: "v1/forms/drawing", accept: "image/vnd.dxf", file: "blanks.dxf" },
  { name: "Folds as a table", about: "CSV", path: "v1/forms/drawing", accept: "text/csv", file: "folds.csv" },
  { name: "Brake program as a table", about: "CSV", path: "v1/programs", accept: "text/csv", file: "program.csv" },
  { name: "Form and panel as solids", about: "glTF, in metres", path: "v1/forms/drawing", accept: "model/gltf-binary", file: "form.glb" },
];

export function Print() {
  const { job, answer } = read();
  const [said, say] = useState("");
  const name = (job["sheet"]?.title ?? "form").toLowerCase().replace(/[^a-z0-9]+/g, "-");
  /** @param {Sheet} sheet */
  const fetched = async ({ path, accept, file }) => {
    say("One moment.");
    const outcome = await call(path, { body: path.startsWith("v1/programs") ? { ...requestOf(job), ...(job["sheet"] ? { sheet: job["sheet"] } : {}) } : job, accept });
    if (!outcome.ok) {
      say(outcome.problem ? [outcome.problem.detail, ...(outcome.problem.errors ?? []).map(fault => fault.text)].join(" ") : "The service is away, and this was not made before.");
      return;
    }
    say("");
    download(outcome.body instanceof Blob ? outcome.body : new Blob([outcome.body], { type: accept }), `${name}-${file}`);
  };
  return html`
    <section aria-labelledby="paper"><h2 id="paper">On paper, and for machines</h2>
      ${answer?.verdict === "cannot-be-made" && html`<p class="hint">This form cannot be made as it is: its drawings say so, and machines get no file of it.</p>`}
      <ul class="files">${sheets.map(sheet => html`<li key=${sheet.name}><button type="button" onClick=${() => fetched(sheet)}><b>${sheet.name}</b><span>${sheet.about}</span></button></li>`)}</ul>
      <p role="status" class="fault-line">${said}</p>
    </section>
    <${FullSize} fetched=${fetched} />
    <${Symbol} />`;
}

/** @param {{ fetched: (sheet: Sheet) => Promise<void> }} props */
function FullSize({ fetched }) {
  const { job, answer } = read();
  const [part, setPart] = useState("check-template");
  const [drawing, setDrawing] = useState(/** @type {string | null} */ (null));
  const [why, setWhy] = useState("");
  useEffect(() => {
    let isWanted = true;
    call("v1/forms/drawing?part=" + part, { body: job, accept: "image/svg+xml" }).then(outcome => {
      if (!isWanted) return;
      setDrawing(outcome.ok ? outcome.body : null);
      setWhy(outcome.ok ? "" : outcome.problem ? outcome.problem.errors?.[0]?.text ?? outcome.problem.detail : "The service is away, and this was not drawn before.");
    });
    return () => { isWanted = false; };
  }, [part, answer?.fingerprint]);
  const path = "v1/forms/drawing?part=" + part;
  return html`
    <section aria-labelledby="full-size" class="full-size"><h2 id="full-size">One part, or a card, at 1:1</h2>
      <div class="row actions">
        <${Select} id="part" label="Part" value=${part} options=${parts} choose=${setPart} />
        <button type="button" class="main" disabled=${drawing === null} onClick=${() => window.print()}>Print it from here</button>
        <button type="button" disabled=${drawing === null} onClick=${() => fetched({ name: "", about: "", path, accept: "application/pdf", file: part + ".pdf" })}>PDF</button>
        ${!part.endsWith("-card") && html`<button type="button" disabled=${drawing === null} onClick=${() => fetched({ name: "", about: "", path, accept: "image/vnd.dxf", file: part + ".dxf" })}>DXF</button>`}
      </div>
      <p class="hint">Print at 100 %, not fitted to the page, and check a length with a rule before you cut. What is larger than your paper comes in tiles with the PDF.</p>
      ${why && html`<p class="fault">${why}</p>`}
      ${drawing && html`<div class="scroll paper-room" tabindex="0" role="region" aria-label="The part, no wider than the screen"><${Picture} svg=${drawing} label="The part at 1:1" size="paper" /></div>`}
    </section>`;
}

function Symbol() {
  const { link, part } = read();
  const [symbol, setSymbol] = useState(/** @type {string | null} */ (null));
  const address = new URL(addressOf("fold"), location.href).href;
  useEffect(() => {
    call("page/symbol?address=" + encodeURIComponent(address), { accept: "image/svg+xml" }).then(outcome => setSymbol(outcome.ok ? outcome.body : null));
  }, [address]);
  return html`
    <section aria-labelledby="symbol"><h2 id="symbol">Take it to another device</h2>
      <p class="hint">${link ? "Point a camera at it: the job opens there, from the same service. Whoever has the link can read the job." : "The link is on its way."}</p>
      ${symbol && html`<div class="symbol"><${Picture} svg=${symbol} label="The link of this job, to be read by a camera" /></div>`}
      <button type="button" onClick=${async () => { await navigator.clipboard?.writeText(new URL(addressOf(part), location.href).href); write({ said: "The link is copied." }); }}>Copy the link</button>
    </section>`;
}

// Recent jobs, the name of this one, and everything this browser keeps as one file.
import { Dialog, Entry } from "./fields.js";
import { at } from "./job.js";
import { exported, imported, kept } from "./kept.js";
import { addressOf, open, put } from "./planning.js";
import { download } from "./files.js";
import { read, write } from "./store.js";
import { html, useState } from "./vendor/preact.js";

export function Jobs() {
  const [said, say] = useState("");
  const recent = kept().recent;
  const close = () => write({ dialog: null });
  return html`
    <${Dialog} title="Jobs" close=${close}>
      <${Entry} id="title" label="Name of this job" value=${at(read().job, "/sheet/title") ?? ""} set=${(/** @type {string} */ text) => put("/sheet/title", text === "" ? undefined : text)} />
      <div class="row actions">
        <button type="button" onClick=${async () => {
          await navigator.clipboard?.writeText(new URL(addressOf("plan"), location.href).href);
          say("The link is copied. Whoever has it can read the job.");
        }}>Copy the link</button>
        <button type="button" onClick=${() => { open(null); close(); }}>Open the example</button>
      </div>
      <h3>Recent</h3>
      ${recent.length === 0 && html`<p class="hint">None yet.</p>`}
      <ul class="recent">${recent.map(job => html`<li key=${job.link}><a href=${"./#plan/" + job.link} onClick=${close}><b>${job.title}</b> <span>${job.text}</span></a></li>`)}</ul>
      <h3>What this browser keeps</h3>
      <p class="hint">Recent jobs, my brakes, sheets and rates. The service keeps nothing.</p>
      <div class="row actions">
        <button type="button" onClick=${() => download(exported(), "formapi-bench.json")}>Save as a file</button>
        <label class="button">Take from a file<input type="file" accept="application/json,.json" class="hidden" onChange=${async (/** @type {any} */ event) => {
          const file = event.target.files[0];
          if (file) say(imported(await file.text()) ? "Taken." : "This file is not from this page.");
        }} /></label>
      </div>
      <p role="status">${said}</p>
    </${Dialog}>`;
}

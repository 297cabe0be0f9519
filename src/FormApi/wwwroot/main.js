// The page: its head, its parts in the order of the job, and the part that is open.
import { Choice, Dialog, Entry } from "./fields.js";
import { Jobs } from "./jobs.js";
import { CheckForm } from "./parts/check.js";
import { Fold } from "./parts/fold.js";
import { Panel } from "./parts/panel.js";
import { Price } from "./parts/price.js";
import { Print } from "./parts/print.js";
import { Pull } from "./parts/pull.js";
import { MySheet } from "./parts/sheet.js";
import { Plan } from "./parts/plan.js";
import { Want } from "./parts/want.js";
import { addressOf, open, takeIn } from "./planning.js";
import { Status } from "./status.js";
import { listen, read, write } from "./store.js";
import { html, render, useEffect, useLayoutEffect, useState } from "./vendor/preact.js";

/** @type {{ name: string, title: string, view: () => unknown, plan: boolean }[]} Plan: the short plan is beside it. */
const parts = [
  { name: "want", title: "What I want", view: Want, plan: true },
  { name: "sheet", title: "My sheet", view: MySheet, plan: true },
  { name: "plan", title: "The plan", view: Plan, plan: true },
  { name: "print", title: "Print", view: Print, plan: false },
  { name: "fold", title: "Fold", view: Fold, plan: false },
  { name: "check", title: "Check the form", view: CheckForm, plan: false },
  { name: "pull", title: "Pull", view: Pull, plan: false },
  { name: "panel", title: "The panel", view: Panel, plan: false },
  { name: "price", title: "Price", view: Price, plan: false },
];

function Page() {
  const [, tell] = useState(0);
  // At once, not after the first paint: a quick answer would be missed.
  useLayoutEffect(() => listen(() => tell(count => count + 1)), []);
  const { part: name, said, dialog, askedKey, job } = read();
  const part = parts.find(one => one.name === name) ?? /** @type {typeof parts[0]} */ (parts[0]);
  // On a narrow screen the open part may be beyond the edge.
  useEffect(() => document.querySelector("nav [aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" }), [part]);
  if (!job["units"]) return null;
  const following = parts[parts.indexOf(part) + 1];
  return html`
    <a class="skip" href="#main" onClick=${(/** @type {Event} */ event) => { event.preventDefault(); document.getElementById("main")?.focus(); }}>To the fields</a>
    <header class="head">
      <p class="name">FormApi</p>
      <p class="job">${job["sheet"]?.title ?? "Job without a name"}</p>
      <${Choice} name="units" legend="Units" quiet value=${job["units"] ?? "mm"} options=${[["mm", "mm"], ["in", "in"]]} choose=${takeIn} />
      <button type="button" onClick=${() => write({ dialog: "jobs" })}>Jobs</button>
    </header>
    <nav aria-label="Parts of the job"><ol>${parts.map(one => html`
      <li key=${one.name}><a href=${addressOf(one.name)} aria-current=${one === part ? "step" : null}>${one.title}</a></li>`)}</ol></nav>
    <main id="main" tabindex="-1" class=${part.plan ? "with-plan" : ""} data-part=${part.name}>
      <h1>${part.title}</h1>
      ${part.plan && html`<${Status} />`}
      <div class="work">${part.plan || read().answer ? html`<${part.view} key=${part.name} />` : html`<${Status} />`}
        ${following && html`<p class="onward"><a href=${addressOf(following.name)}>${following.title}<span aria-hidden="true"> →</span></a></p>`}</div>
    </main>
    <footer><p>Every number here is worked out by the service. <a href="./docs">The contract</a></p></footer>
    <p class="hidden" role="status" aria-live="polite">${said}</p>
    ${dialog === "jobs" && html`<${Jobs} />`}
    ${askedKey && html`<${Key} asked=${askedKey} />`}`;
}

/** @param {{ asked: { wrong: boolean, done: (key: string) => void } }} props */
function Key({ asked }) {
  const [key, setKey] = useState("");
  return html`
    <${Dialog} title="This service asks for a key" close=${null}>
      <p>${asked.wrong ? "That key does not open it." : "Whoever runs the service gives out keys."} It is kept until this tab closes.</p>
      <form onSubmit=${(/** @type {Event} */ event) => { event.preventDefault(); asked.done(key.trim()); }}>
        <${Entry} id="key" label="Key" value=${key} set=${setKey} />
        <button class="main">Open</button>
      </form>
    </${Dialog}>`;
}

function follow() {
  const [name, text] = location.hash.slice(1).split("/");
  const part = parts.find(one => one.name === name)?.name ?? "want";
  const changed = part !== read().part;
  write({ part, dialog: null });
  document.title = `${parts.find(one => one.name === part)?.title} · FormApi`;
  if (changed) window.scrollTo(0, 0);
  return text ?? null;
}

window.addEventListener("hashchange", () => {
  const text = follow();
  if (text && text !== read().link) open(text);
});

open(follow());
const place = /** @type {HTMLElement} */ (document.getElementById("page"));
place.replaceChildren();
render(html`<${Page} />`, place);
navigator.serviceWorker?.register("./page/service-worker.js", { scope: "./" }).catch(() => {});

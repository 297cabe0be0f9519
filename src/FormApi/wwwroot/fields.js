// Fields of the job. Each shows the fault that the service finds at its pointer.
import { at, typed } from "./job.js";
import { put } from "./planning.js";
import { read } from "./store.js";
import { html, useLayoutEffect, useRef, useState } from "./vendor/preact.js";
import { inField } from "./words.js";

/** @param {string} pointer */
const idOf = pointer => "f" + pointer.replaceAll("/", "-");

/**
 * Faults at a pointer, or below it.
 * @param {string} pointer
 * @param {boolean} [below]
 */
export const faultsAt = (pointer, below = false) =>
  (read().problem?.errors ?? []).filter(fault => fault.pointer === pointer || (below && fault.pointer.startsWith(pointer + "/")));

/** @param {{ id: string, faults: { text: string, allowed?: string }[] }} props */
export const Faults = ({ id, faults }) => faults.length === 0 ? null : html`
  <p class="fault" id=${id}>${faults.map(fault => html`<span>${fault.text}${fault.allowed && !fault.text.includes(fault.allowed) ? html` <em>${fault.allowed}</em>` : null}</span>`)}</p>`;

/**
 * What is typed stays until the field is left, whatever is drawn anew meanwhile.
 * @param {string} shown What stands there otherwise.
 * @param {(text: string) => void} set
 */
export function useTyped(shown, set) {
  const [text, setText] = useState(/** @type {string | null} */ (null));
  return {
    value: text ?? shown,
    onInput: (/** @type {any} */ event) => {
      setText(event.target.value);
      set(event.target.value);
    },
    onBlur: () => setText(null),
  };
}

/**
 * A value of the job to type: a length, an angle, a count.
 * @param {{ pointer: string, label: string, unit?: string, hint?: string, place?: string | undefined, shown?: unknown, onValue?: (value: number | string | undefined) => void }} props
 */
export function Field({ pointer, label, unit = "", hint = "", place = "", shown, onValue }) {
  const value = shown ?? at(read().job, pointer);
  const field = useTyped(inField(value), text => (onValue ?? (next => put(pointer, next)))(typed(text)));
  const faults = faultsAt(pointer);
  const id = idOf(pointer);
  const described = [hint ? id + "-h" : "", faults.length ? id + "-e" : ""].filter(Boolean).join(" ");
  return html`
    <div class=${"field" + (faults.length ? " wrong" : "")}>
      <label for=${id}>${label}</label>
      <span class="box">
        <input id=${id} data-pointer=${pointer} autocomplete="off" autocapitalize="off" spellcheck=${false} inputmode="text" placeholder=${place}
          aria-invalid=${faults.length > 0} aria-describedby=${described || null} ...${field} />
        ${unit && html`<span class="unit">${unit}</span>`}
      </span>
      ${hint && html`<small id=${id + "-h"}>${hint}</small>`}
      <${Faults} id=${id + "-e"} faults=${faults} />
    </div>`;
}

/**
 * A field of the page's own, whose value is not in the job yet.
 * @param {{ id: string, label: string, unit?: string, hint?: string, place?: string | undefined, value: string, set: (value: string) => void, faults?: { text: string, allowed?: string }[] }} props
 */
export function Entry({ id, label, unit = "", hint = "", place = "", value, set, faults = [] }) {
  const described = [hint ? id + "-h" : "", faults.length ? id + "-e" : ""].filter(Boolean).join(" ");
  return html`
    <div class=${"field" + (faults.length ? " wrong" : "")}>
      <label for=${id}>${label}</label>
      <span class="box">
        <input id=${id} autocomplete="off" spellcheck=${false} value=${value} placeholder=${place} aria-invalid=${faults.length > 0} aria-describedby=${described || null}
          onInput=${(/** @type {any} */ event) => set(event.target.value)} />
        ${unit && html`<span class="unit">${unit}</span>`}
      </span>
      ${hint && html`<small id=${id + "-h"}>${hint}</small>`}
      <${Faults} id=${id + "-e"} faults=${faults} />
    </div>`;
}

/**
 * One of a few words, each to be pressed.
 * @param {{ name: string, legend: string, value: string, options: [string, unknown][], choose: (value: string) => void, pictures?: boolean, quiet?: boolean }} props
 */
export const Choice = ({ name, legend, value, options, choose, pictures = false, quiet = false }) => html`
  <fieldset class=${pictures ? "choice pictures" : "choice"}>
    <legend class=${quiet ? "hidden" : ""}>${legend}</legend>
    <div class="options">${options.map(([word, shown]) => html`
      <label key=${word}><input type="radio" name=${name} value=${word} checked=${value === word} onChange=${() => choose(word)} /><span>${shown}</span></label>`)}
    </div>
  </fieldset>`;

/**
 * One of many words.
 * @param {{ id: string, label: string, value: string, options: [string, string][], choose: (value: string) => void, hint?: string, faults?: { text: string, allowed?: string }[] }} props
 */
export const Select = ({ id, label, value, options, choose, hint = "", faults = [] }) => html`
  <div class=${"field" + (faults.length ? " wrong" : "")}>
    <label for=${id}>${label}</label>
    <span class="box"><select id=${id} value=${value} onChange=${(/** @type {any} */ event) => choose(event.target.value)}>
      ${options.map(([word, shown]) => html`<option key=${word} value=${word} selected=${word === value}>${shown}</option>`)}
    </select></span>
    ${hint && html`<small>${hint}</small>`}
    <${Faults} id=${id + "-e"} faults=${faults} />
  </div>`;

/**
 * The browser's own dialog, closed by Escape as every dialog.
 * @param {{ title: string, close: (() => void) | null, children: unknown }} props
 */
export function Dialog({ title, close, children }) {
  const place = useRef(/** @type {HTMLDialogElement | null} */ (null));
  useLayoutEffect(() => {
    const dialog = place.current;
    if (dialog && !dialog.open) dialog.showModal();
    return () => dialog?.close();
  }, []);
  return html`
    <dialog ref=${place} aria-labelledby="dialog-title" onCancel=${(/** @type {Event} */ event) => { event.preventDefault(); close?.(); }}>
      <header><h2 id="dialog-title">${title}</h2>${close && html`<button type="button" class="plain" onClick=${close}>Close</button>`}</header>
      ${children}
    </dialog>`;
}

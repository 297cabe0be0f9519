// The service's own drawings, inside the page so that they take its colours; a part of a sheet by the name of its view.
import { html, useMemo, useRef, useLayoutEffect } from "./vendor/preact.js";

let count = 0;

/**
 * @param {{ svg: string | null, view?: string, label: string, size?: "paper" | "fit", stale?: boolean }} props
 * A view is a part that the sheet names; size paper keeps the millimetres that the drawing has.
 */
export function Picture({ svg, view, label, size = "fit", stale = false }) {
  const place = useRef(/** @type {HTMLElement | null} */ (null));
  const drawing = useMemo(() => svg === null ? null : parsed(svg, view, label, size), [svg, view, label, size]);
  useLayoutEffect(() => {
    place.current?.replaceChildren(...(drawing ? [drawing] : []));
  }, [drawing]);
  return html`<div class=${"picture " + size + (stale ? " stale" : "")} ref=${place}></div>`;
}

// The page's policy takes no styles inside, not even while they are read.
/** @param {string} svg */
const withoutStyles = svg => svg.replace(/<style>[^<]*<\/style>/g, "").replace(/ style="[^"]*"/g, "");

/**
 * A drawing as part of the page, which has each id once.
 * @param {string} svg
 * @param {string | undefined} view
 * @param {string} label
 * @param {string} size
 */
function parsed(svg, view, label, size) {
  const root = /** @type {SVGSVGElement} */ (/** @type {unknown} */ (new DOMParser().parseFromString(withoutStyles(svg), "image/svg+xml").documentElement));
  const box = view ? root.querySelector(`view[id="${view}"]`)?.getAttribute("viewBox") : null;
  const whole = root.getAttribute("viewBox") ?? "";
  for (const named of [...root.querySelectorAll("view")]) named.remove();
  const id = `picture-${++count}`;
  const title = root.querySelector("title");
  title?.setAttribute("id", `${id}-t`);
  root.querySelector("desc")?.removeAttribute("id");
  if (title) title.textContent = label;
  root.setAttribute("aria-labelledby", `${id}-t`);
  if (box) root.setAttribute("viewBox", box);
  if (size === "fit") {
    const [, , width, height] = (box ?? whole).split(" ");
    // Ten times, so that it is large by nature and shrinks into its place.
    root.setAttribute("width", String(10 * Number(width)));
    root.setAttribute("height", String(10 * Number(height)));
  }
  return document.importNode(root, true);
}

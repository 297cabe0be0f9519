// Measured points: a table to type or paste, and the points themselves to drag.
import { Faults, Field, faultsAt, useTyped } from "../fields.js";
import { at } from "../job.js";
import { put } from "../planning.js";
import { read } from "../store.js";
import { html, useRef, useState } from "../vendor/preact.js";
import { inField } from "../words.js";

const pointer = "/panel/curve/points";

/** @param {{ units: string, curve: { points: number[][] } }} props */
export function Points({ units, curve }) {
  const list = useTyped(curve.points.map(point => point.map(inField).join("  ")).join("\n"), text => {
    const typed = pasted(text);
    if (typed) put(pointer, typed);
  });
  return html`
    <p class="hint">Lay a straight edge along the flat the curve starts from; for each point measure how far along it and how far off. Drag a point, or type or paste the list.</p>
    <${Board} points=${curve.points} units=${units} />
    <div class="row">
      <div class="field wide">
        <label for="points-text">Points: along and off, ${units}, a line each</label>
        <textarea id="points-text" rows="7" spellcheck=${false} ...${list}></textarea>
        <${Faults} id="points-faults" faults=${faultsAt(pointer, true)} />
      </div>
      <${Field} pointer="/panel/curve/tolerance" label="How well you measured, ±" unit=${units} />
    </div>`;
}

/** @param {string} text Two numbers a line, parted by blanks, a tab, a comma or a semicolon. */
function pasted(text) {
  const points = text.split("\n").map(line => line.trim()).filter(line => line !== "").map(line => line.split(/[\s;,]+/).map(Number));
  return points.every(point => point.length === 2 && point.every(Number.isFinite)) ? points : null;
}

/** @param {{ points: number[][], units: string }} props */
function Board({ points, units }) {
  const board = useRef(/** @type {SVGSVGElement | null} */ (null));
  const [held, setHeld] = useState(/** @type {null | { index: number, box: Box }} */ (null));
  const box = held?.box ?? boxAround(points);
  const step = units === "in" ? 0.0625 : 0.5;
  const digits = units === "in" ? 2 : 1;
  /** @param {number} index @param {number} x @param {number} y */
  const move = (index, x, y) => {
    const now = structuredClone(at(read().job, pointer));
    now[index] = [Number(x.toFixed(digits + 2)), Number(y.toFixed(digits + 2))];
    put(pointer, now);
  };
  /** @param {PointerEvent} event */
  const drag = event => {
    const matrix = board.current?.getScreenCTM();
    if (!held || !matrix) return;
    const place = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    move(held.index, Number(place.x.toFixed(digits)), Number((-place.y).toFixed(digits)));
  };
  /** @param {KeyboardEvent} event @param {number} index */
  const key = (event, index) => {
    const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] }[event.key];
    const [x, y] = points[index] ?? [];
    if (!by || x === undefined || y === undefined) return;
    event.preventDefault();
    move(index, x + /** @type {number} */ (by[0]), y + /** @type {number} */ (by[1]));
  };
  return html`
    <svg class="board" ref=${board} viewBox=${[box.left, -box.top, box.width, box.height].join(" ")} role="group" aria-label="Measured points"
      onPointerMove=${drag} onPointerUp=${() => setHeld(null)} onPointerCancel=${() => setHeld(null)}>
      <path class="edge" d=${`M${box.left},0H${box.left + box.width}`} />
      <polyline points=${points.map(([x, y]) => `${x},${-(y ?? 0)}`).join(" ")} />
      ${points.map(([x, y], index) => html`
        <g key=${index} class=${held?.index === index ? "point held" : "point"} tabindex="0" role="slider" aria-label=${`point ${index + 1}`} aria-valuetext=${`${inField(x)} along, ${inField(y)} off`} aria-valuenow=${y}
          transform=${`translate(${x},${-(y ?? 0)})`} onKeyDown=${(/** @type {KeyboardEvent} */ event) => key(event, index)}
          onPointerDown=${(/** @type {any} */ event) => {
            board.current?.setPointerCapture(event.pointerId);
            event.currentTarget.focus();
            setHeld({ index, box });
          }}>
          <circle class="reach" r=${box.width / 14} /><circle class="dot" r=${box.width / 90} />
        </g>`)}
    </svg>`;
}

/** @typedef {{ left: number, top: number, width: number, height: number }} Box Top is up. */

/** @param {number[][]} points @returns {Box} The room that the picture shows. */
function boxAround(points) {
  const xs = points.map(([x]) => x ?? 0);
  const ys = points.map(([, y]) => y ?? 0);
  const width = Math.max(...xs) - Math.min(...xs) || 1;
  const height = Math.max(...ys) - Math.min(...ys) || 1;
  const rim = Math.max(width, height) * 0.12;
  return { left: Math.min(...xs) - rim, top: Math.max(...ys) + rim, width: width + 2 * rim, height: height + 2 * rim };
}

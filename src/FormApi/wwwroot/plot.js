// A small plot; a press on a point is a short way to what fields offer too. Only places on the screen are worked out here; the figures are the service's.
import { html } from "./vendor/preact.js";

/** @typedef {{ key: string, x: number, y: number, name: string, said: string, hollow?: boolean, chosen?: boolean }} PlotPoint */
/** @typedef {{ name: string, show: (value: number) => string }} Axis */

const [wide, high, left, bottom, rim] = [640, 300, 64, 44, 34];

/** @param {number[]} values @param {number} from @param {number} to */
function scale(values, from, to) {
  const least = Math.min(...values);
  const span = Math.max(...values) - least || 1;
  return (/** @type {number} */ value) => from + ((value - least) / span) * (to - from);
}

/**
 * Lines rise to the right: their names stand where none of them is, top left.
 * @param {{ label: string, x: Axis, y: Axis, points: PlotPoint[], choose?: (key: string) => void, lines?: { name: string, points: { x: number, y: number }[] }[] }} props
 */
export function Plot({ label, x, y, points, choose, lines = [] }) {
  const all = [...points, ...lines.flatMap(line => line.points)];
  const across = scale(all.map(one => one.x), left + rim, wide - rim);
  const up = scale(all.map(one => one.y), high - bottom - rim / 2, rim);
  const xs = all.map(one => one.x);
  const ys = all.map(one => one.y);
  return html`
    <figure class="plot"><svg viewBox=${`0 0 ${wide} ${high}`} role="img" aria-label=${[label, ...points.map(one => one.said)].join(". ")}>
      <path class="axis" d=${`M${left},${rim / 2}V${high - bottom}H${wide - 8}`} />
      <text class="small" x=${left - 8} y=${up(Math.max(...ys)) + 5} text-anchor="end">${y.show(Math.max(...ys))}</text>
      <text class="small" x=${left - 8} y=${up(Math.min(...ys)) + 5} text-anchor="end">${y.show(Math.min(...ys))}</text>
      <text class="small" x=${across(Math.min(...xs))} y=${high - bottom + 20} text-anchor="middle">${x.show(Math.min(...xs))}</text>
      <text class="small" x=${across(Math.max(...xs))} y=${high - bottom + 20} text-anchor="middle">${x.show(Math.max(...xs))}</text>
      <text class="small" x=${(left + wide) / 2} y=${high - 6} text-anchor="middle">${x.name}</text>
      <text class="small" x="4" y="12">${y.name}</text>
      ${lines.map((line, index) => html`<g key=${line.name}><polyline class=${"line line-" + index} points=${line.points.map(one => `${across(one.x)},${up(one.y)}`).join(" ")} />
        <path class=${"line line-" + index} d=${`M${left + 20},${rim + 20 * index}h36`} /><text class="small" x=${left + 64} y=${rim + 5 + 20 * index}>${line.name}</text></g>`)}
      ${points.map(one => {
        const place = `translate(${across(one.x)},${up(one.y)})`;
        const shape = html`<circle class="reach" r="26" /><circle class="mark" r="17" /><text text-anchor="middle" y="6">${one.name}</text>`;
        return html`<g key=${one.key} class=${"mark-point" + (choose ? " choosable" : "") + (one.chosen ? " chosen" : "") + (one.hollow ? " hollow" : "")} transform=${place} data-key=${one.key} onClick=${() => choose?.(one.key)}>${shape}</g>`;
      })}
    </svg></figure>`;
}

import type { Metres, Seconds } from '../units.js';
import { diameterText, type Units } from './length-text.js';

/** Round steps of time, seconds; from the last on its multiples. */
const STEPS: readonly Seconds[] = [1, 2, 5, 10, 15, 30, 60, 120, 180, 300, 600];

/** Cells that a tick with its text and a blank takes. */
const TICK = 18;

/**
 * The foot of the chart: round times with the diameter reached, `|2:00 271.3 mm`, the stroke where
 * the time is; near the end before it, `271.3 mm|`, or not at all.
 * @param diameterAt of the spiral that is cut, at a share of the side from 0 to 1
 */
export function chartTicks(
  cells: number,
  lasts: Seconds,
  diameterAt: (share: number) => Metres,
  units: Units,
): string {
  const least = (lasts * TICK) / cells;
  const step = STEPS.find((each) => each >= least) ?? Math.ceil(least / 600) * 600;
  let line = '';
  for (let at = 0; at < lasts; at += step) {
    const cell = Math.floor((at / lasts) * cells);
    const diameter = diameterAt(at / lasts);
    const text = `${clockText(at)} ${diameter > 0 ? diameterText(diameter, units) : '–'}`;
    const isLast = cell + 1 + text.length > cells;
    if (isLast && line.length + text.length >= cell) break;
    line = isLast ? `${line.padEnd(cell - text.length)}${text}|` : `${line.padEnd(cell)}|${text}`;
  }
  return line;
}

/** Minutes and whole seconds. */
function clockText(seconds: Seconds): string {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

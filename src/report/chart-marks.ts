import type { SideForecast } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import type { Ink } from './chart-ink.js';

/**
 * The line of marks under the chart: a number for each of the places with the least land, as they
 * are listed, and a cross wherever a fault lies that is not accepted. Empty without any.
 */
export function chartMarks(
  { hotSpots, findings }: SideForecast,
  cells: number,
  lasts: Seconds,
  ink: Ink,
): string {
  const marks = Array.from({ length: cells }, () => ' ');
  const cellAt = (seconds: Seconds) =>
    Math.min(cells - 1, Math.max(0, Math.floor((seconds / lasts) * cells)));
  for (const { severity, accepted, atSeconds, untilSeconds } of findings) {
    if (severity !== 'fault' || accepted !== undefined || atSeconds === null) continue;
    const to = cellAt(untilSeconds ?? atSeconds);
    marks.fill(ink.fault, cellAt(atSeconds), to + 1);
  }
  // The worst last, so that where two share a cell it is the one that shows.
  for (const [rank, { atSeconds }] of [...hotSpots.entries()].reverse()) {
    marks[cellAt(atSeconds)] = String(rank + 1);
  }
  return marks.join('').trimEnd();
}

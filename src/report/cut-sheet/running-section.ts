import type { ForecastedFile } from '../../forecast-result.js';
import type { Seconds } from '../../units.js';
import { type Markup, markup } from '../html/markup.js';
import { diameterText, type Units } from '../length-text.js';
import { timeText } from '../place-text.js';
import { rowType } from './row-room.js';
import { type SheetRow, sheetRows } from './sheet-rows.js';

/** What happens while the side is cut, to be ticked off. */
export function runningSection(file: ForecastedFile, units: Units): Markup {
  const all = sheetRows(file, units);
  const { className, most } = rowType(all.length, file);
  const rows = shown(all, most);
  const left = all.length - rows.length;
  const { speedFactor } = file.settings;
  const isHalf = speedFactor !== 1;
  const lines = rows.map(
    (row) =>
      markup`<tr class="${row.kind}"><td class="number">${row.number}</td><td class="what">${row.what}</td><td class="figure">${timeText(row.atSeconds)}</td>${
        isHalf && markup`<td class="figure">${latheClock(row.atSeconds, speedFactor)}</td>`
      }<td class="figure">${row.diameter === null ? '' : diameterText(row.diameter, units)}</td><td class="tick"><span></span></td></tr>`,
  );
  const more =
    left > 0 &&
    markup`<p class="more">${left} more ${left === 1 ? 'step has' : 'steps have'} no room here; furrow tells all in its text.</p>`;
  return markup`<section class="running${className}"><h2>While it is cut</h2>
<table><thead><tr><th></th><th class="what">track, or what is done by hand</th><th class="figure">time</th>${
    isHalf && markup`<th class="figure">lathe’s clock</th>`
  }<th class="figure">diameter</th><th class="tick">done</th></tr></thead><tbody>${lines}</tbody></table>${more}</section>`;
}

/** The last two, where the side ends, are always among them. */
function shown(rows: readonly SheetRow[], most: number): SheetRow[] {
  if (rows.length <= most) return [...rows];
  const ends = rows.filter(({ kind }) => kind === 'end');
  const others = rows.filter(({ kind }) => kind !== 'end');
  return [...others.slice(0, most - ends.length), ...ends];
}

function latheClock(atSeconds: Seconds, speedFactor: number): string {
  return timeText(atSeconds / speedFactor);
}

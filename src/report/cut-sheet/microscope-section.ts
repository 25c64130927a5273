import { QUARTERS_PER_TURN } from '../../analysis/motion.js';
import type { ForecastedFile } from '../../forecast-result.js';
import { type ExecutedColumns, executedColumns } from '../../model/executed-columns.js';
import type { HotSpot } from '../../model/forecast-types.js';
import { type Markup, markup } from '../html/markup.js';
import { frequencyText, largeLengthText, lengthText, type Units } from '../length-text.js';
import { timeText } from '../place-text.js';
import { trackPlace } from '../track-place.js';

/** The places to look at under the microscope, with what is predicted and room for what is found. */
export function microscopeSection(file: ForecastedFile, units: Units): Markup {
  const { forecast, settings, hand } = file;
  const { hotSpots } = forecast;
  if (hotSpots.length === 0) {
    return markup`<section class="microscope"><h2>Under the microscope</h2><p>No place has less land than a groove without modulation.</p></section>`;
  }
  const columns = executedColumns(forecast, settings, hand);
  const rows = hotSpots.map((spot, at) => {
    const track = trackPlace(spot.atSeconds, hand?.tracks);
    return markup`<tr><td class="number">${at + 1}</td><td class="figure">${timeText(spot.atSeconds)}</td><td>${
      hand !== undefined && (track === null ? '–' : `${track.number}, ${timeText(track.seconds)}`)
    }</td><td class="figure">${largeLengthText(2 * spot.radius, units)}</td><td>${takenBy(spot)}</td><td class="figure">${range(
      spot.land,
      spot.landNominal,
      units,
    )}</td><td class="blank"></td><td class="figure">${widthRange(spot, columns, units)}</td><td class="blank"></td></tr>`;
  });
  return markup`<section class="microscope"><h2>Under the microscope</h2>
<table><thead><tr><th></th><th class="figure">time</th><th>${hand !== undefined && 'track, at'}</th><th class="figure">diameter</th><th>taken by</th><th class="figure">land</th><th class="blank">measured</th><th class="figure">width</th><th class="blank">measured</th></tr></thead><tbody>${rows}</tbody></table>
<p class="note">Land: as far off as the profile lets the lathe be – on a perfect lathe; less than 0 is an overcut. Width: least – largest in that quarter turn.</p></section>`;
}

function takenBy({ cause, frequency, wall }: HotSpot): string {
  const words = {
    'lateral-low': 'bass',
    'lateral-high': 'sideways',
    vertical: 'vertical',
    width: 'wide groove',
    'one-wall': 'one wall',
  }[cause];
  const parts = [
    frequency === null ? words : `${words} ${frequencyText(frequency)}`,
    ...(wall === 'both' ? [] : [wall]),
  ];
  return parts.join(', ');
}

function range(from: number, until: number, units: Units): string {
  return `${lengthText(from, units).replace(/ \D*$/, '')} – ${lengthText(until, units)}`;
}

/** Of the quarter turn that a place lies in, and nothing where it is none of the program's. */
function widthRange({ turn }: HotSpot, columns: ExecutedColumns, units: Units): string {
  const quarter = Math.floor(turn * QUARTERS_PER_TURN + 1e-6);
  const width = columns.widthSet[quarter];
  if (width === undefined) return '–';
  const { lift, sink } = columns;
  return range(width - 2 * (lift[quarter] ?? 0), width + 2 * (sink[quarter] ?? 0), units);
}

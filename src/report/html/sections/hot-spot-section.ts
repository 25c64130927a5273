import type { ForecastedFile } from '../../../forecast-result.js';
import { HOT_SPOT_FIELDS } from '../../hot-spot-fields.js';
import type { Units } from '../../length-text.js';
import { type Markup, markup } from '../markup.js';
import { goButton } from './go-button.js';
import { scroller } from './scroller.js';

/** The places with the least land, the worst first, and the errors they hold to. */
export function hotSpotSection(file: ForecastedFile, units: Units): Markup {
  const { hotSpots } = file.forecast;
  // The first is the time, which is a button here; a column without a figure is none.
  const fields = HOT_SPOT_FIELDS.slice(1).filter(({ cell }) =>
    hotSpots.some((spot) => !/^–?$/.test(cell(spot, file, units))),
  );
  const heads = fields.map(
    ({ head, align }) => markup`<th scope="col" class="${align}">${head}</th>`,
  );
  const rows = hotSpots.map(
    (spot, at) =>
      markup`<tr><th scope="row">${at + 1}</th><td>${goButton(spot.atSeconds)}</td>${fields.map(
        ({ align, cell }) => markup`<td class="${align}">${cell(spot, file, units)}</td>`,
      )}</tr>`,
  );
  const table = markup`<table class="figures places"><caption>Least land, and the error of speed, depth or timing it holds to, each alone.${
    file.readFrom === 'motion' &&
    ' What speed error they hold to is asked of the audio, for the side as it was forecast.'
  }</caption>
<thead><tr><th scope="col">#</th><th scope="col" class="left">at</th>${heads}</tr></thead><tbody>${rows}</tbody></table>`;
  const none = markup`<p>No place has less land than a groove without modulation.</p>`;
  return markup`<section class="spots" aria-labelledby="spots"><h2 id="spots">Where land is least</h2>${
    hotSpots.length === 0 ? none : scroller('Where land is least', table)
  }</section>`;
}

import type { ForecastedFile } from '../forecast-result.js';
import { HOT_SPOT_FIELDS, type HotSpotField } from './hot-spot-fields.js';
import { overcutText } from './hot-spot-text.js';
import type { Units } from './length-text.js';
import { plainTable } from './plain-table.js';
import { wrapText } from './wrap-text.js';

/** From so many columns on there is room for all figures. */
const WIDE = 100;

/**
 * The places with the least land, the worst first, a line each: what to look at under the
 * microscope, and how far off the lathe may be there. Where two walls meet, how deep, which has a line
 * of its own where the screen is narrow or two clocks are told.
 */
export function hotSpotTable(file: ForecastedFile, units: Units, columns: number): string[] {
  const { hotSpots } = file.forecast;
  if (hotSpots.length === 0) return [];
  // A second clock takes the room of other figures.
  const most = (columns >= WIDE ? 2 : 1) - (file.settings.speedFactor === 1 ? 0 : 1);
  const isRoomy = most === 2;
  const fields = HOT_SPOT_FIELDS.filter(({ room }) => room <= most);
  const [heads = '', ...rows] = plainTable(
    [{ align: 'right', gap: 2 }, ...fields.map((field) => columnOf(field, isRoomy))],
    [
      ['', ...fields.map(({ head }) => head)],
      ...hotSpots.map((spot, at) => [
        String(at + 1),
        ...fields.map(({ cell }) => cell(spot, file, units)),
      ]),
    ],
  );
  const lines = rows.flatMap((row, at) => {
    const spot = hotSpots[at];
    if (spot === undefined || spot.overcutDepth <= 0 || isRoomy) return [row];
    return [row, wrapText(overcutText(spot, units), '     ', '     ', columns)];
  });
  return [heads, ...lines];
}

function columnOf({ align }: HotSpotField, isRoomy: boolean) {
  // A word behind a number needs more room than a number behind one.
  return { align, gap: isRoomy || align === 'left' ? 2 : 1 };
}

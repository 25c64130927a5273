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
  if (file.forecast.hotSpots.length === 0) return [];
  // A second clock takes the room of other figures.
  const most = (columns >= WIDE ? 2 : 1) - (file.settings.speedFactor === 1 ? 0 : 1);
  const layouts = [
    { room: most, gap: most === 2 ? 2 : 1 },
    { room: most, gap: 1 },
    { room: most - 1, gap: 1 },
  ];
  const tables = layouts.map((layout) => tableOf(file, units, columns, layout));
  const fits = (table: readonly string[]) => table.every((line) => line.length <= columns);
  return tables.find(fits) ?? tables.at(-1) ?? [];
}

interface Layout {
  /** The fields that are told are those that want no more of it. */
  readonly room: number;
  /** Blanks before a number. */
  readonly gap: number;
}

function tableOf(
  file: ForecastedFile,
  units: Units,
  columns: number,
  { room, gap }: Layout,
): string[] {
  const { hotSpots } = file.forecast;
  const fields = HOT_SPOT_FIELDS.filter(
    (field) => field.room <= room && (field.concerns?.(file) ?? true),
  );
  const [heads = '', ...rows] = plainTable(
    [{ align: 'right', gap: 2 }, ...fields.map((field) => columnOf(field, gap))],
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
    if (spot === undefined || spot.overcutDepth <= 0 || room === 2) return [row];
    const meet = wrapText(overcutText(spot, units), '     ', '     ', columns);
    return [row, ...meet.split('\n')];
  });
  return [heads, ...lines];
}

function columnOf({ align }: HotSpotField, gap: number) {
  // A word behind a number needs more room than a number behind one.
  return { align, gap: align === 'left' ? 2 : gap };
}

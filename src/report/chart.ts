import type { ChalkInstance } from 'chalk';
import type { ForecastedFile } from '../forecast-result.js';
import type { Metres } from '../units.js';
import { type BandRow, chartBand } from './chart-band.js';
import { type Ink, inkOf } from './chart-ink.js';
import { chartMarks } from './chart-marks.js';
import { chartPoints } from './chart-points.js';
import { chartSeries } from './chart-series.js';
import { chartTicks } from './chart-ticks.js';
import { lengthText, pitchText, type Units } from './length-text.js';

export interface ChartOptions {
  readonly units: Units;
  readonly paint: ChalkInstance;
  readonly columns: number;
  readonly ascii: boolean;
}

/** Left of the drawing: what the edges of the rows stand for. */
const GUTTER = 16;
/** Shorter than this, quarter turns, there is nothing to see along a side. */
const SHORTEST = 16;

/**
 * Pitch and land along the side, the widest pitch and the least land of each stretch, so that
 * nothing is averaged away; the land has a row of its own between zero and landMin, and one under
 * zero. No lines for a side that is silent or of a few turns.
 */
export function chart(
  file: ForecastedFile,
  { units, paint, columns, ascii }: ChartOptions,
): string[] {
  const { forecast, settings } = file;
  const series = chartSeries(file);
  const quarters = series.pitch.length;
  if (quarters < SHORTEST || forecast.findings.some(({ id }) => id === 'silent')) return [];
  const ink = inkOf(ascii);
  const cells = columns - GUTTER - 2;
  const points = cells * ink.across;
  const pitch = chartPoints(series.pitch, points, Math.max);
  const other = chartPoints(series.otherPitch, points, Math.max);
  const land = chartPoints(series.land, points, Math.min);
  const lasts = (quarters * 15) / settings.rpm;
  const pitchRows = rowsOfPitch([...pitch, ...other], units);
  const landRows = rowsOfLand(land, settings.landMin, units);
  const marks = chartMarks(forecast, cells, lasts, ink);
  const at = (share: number): Metres => 2 * (series.radius[Math.round(share * quarters)] ?? 0);
  const indent = ' '.repeat(GUTTER + 2);
  const lines = [
    titleText(file, marks, ink),
    ...labelled(pitchRows, chartBand(pitchRows, pitch, ink, other)),
    ...labelled(landRows, chartBand(landRows, land, ink)),
    ...(marks === '' ? [] : [`${indent}${painted(marks, ink, paint)}`]),
    `${indent}${chartTicks(cells, lasts, at, units)}`,
  ];
  return lines.map((line) => line.trimEnd());
}

/** What the drawing shows; of the marks, those that it has. */
function titleText({ forecast }: ForecastedFile, marks: string, ink: Ink): string {
  const compared = forecast.executes === 'plan' ? "the machine's" : "the plan's";
  const most = marks.match(/[1-9]/g)?.toSorted().at(-1);
  return [
    `  Widest pitch (${ink.other} ${compared}), least land of each stretch`,
    ...(marks.includes(ink.fault) ? [`${ink.fault} fault`] : []),
    ...(most === undefined ? [] : [`${most === '1' ? '1' : `1–${most}`} below`]),
  ].join('; ');
}

function painted(marks: string, { fault }: Ink, paint: ChalkInstance): string {
  return marks.replaceAll(new RegExp(`${fault}+`, 'g'), (faults) => paint.red(faults));
}

function labelled(rows: readonly BandRow[], lines: readonly string[]): string[] {
  return lines.map((line, row) => `  ${(rows[row]?.label ?? '').padStart(GUTTER - 1)} ${line}`);
}

/** Three rows from the tightest to the widest; one where nothing that shows lies between them. */
function rowsOfPitch(pitch: readonly number[], units: Units): BandRow[] {
  const least = Math.min(...pitch);
  const most = Math.max(...pitch);
  const label = `pitch ${pitchText(most, units)}`;
  if (label === `pitch ${pitchText(least, units)}`) {
    return [{ label, top: most, bottom: least, rule: '' }];
  }
  const step = (most - least) / 3;
  return [
    { label, top: most, bottom: most - step, rule: '' },
    { label: '', top: most - step, bottom: least + step, rule: '' },
    { label: pitchText(least, units), top: least + step, bottom: least, rule: '_' },
  ];
}

/** One row above landMin, one down to zero, and one under it if anything is there. */
function rowsOfLand(land: readonly number[], landMin: number, units: Units): BandRow[] {
  const most = Math.max(...land, 2 * landMin);
  const least = Math.min(...land);
  const middle = (most + landMin) / 2;
  const rows: BandRow[] = [
    { label: `land ${lengthText(most, units)}`, top: most, bottom: middle, rule: '' },
    { label: `limit ${lengthText(landMin, units)}`, top: middle, bottom: landMin, rule: '_ ' },
    { label: '0', top: landMin, bottom: 0, rule: '_' },
  ];
  if (least < 0) rows.push({ label: lengthText(least, units), top: 0, bottom: least, rule: '' });
  return rows;
}

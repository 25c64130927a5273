import type { ChalkInstance } from 'chalk';
import type { ForecastedFile } from '../forecast-result.js';
import type { Settings } from '../settings.js';
import { asciiText } from './ascii-text.js';
import { diameterText, type Units } from './length-text.js';
import { timeText } from './place-text.js';
import { scaleEventTexts } from './scale-event-text.js';
import { scaleHead } from './scale-head.js';
import { ruleText } from './scale-inches.js';
import { nextText } from './scale-next.js';
import { type ScaleRow, scaleRows } from './scale-rows.js';

export interface ScaleOptions {
  readonly units: Units;
  readonly paint: ChalkInstance;
  /** Nothing beyond ASCII, but for the name. */
  readonly ascii?: boolean;
}

/** Paper is no wider than this, so a wide terminal makes no difference. */
const COLUMNS = 80;

/** The diameters to read off the lathe while it cuts, on one page. */
export function scaleText(
  file: ForecastedFile,
  { units, paint, ascii = false }: ScaleOptions,
): string {
  const rows = scaleRows(file);
  const starts = startTexts(rows, file.settings, units);
  const lines = rows.flatMap((row, index) => {
    const start = starts[index] ?? '';
    const isSpot = row.events.some(({ kind }) => kind === 'spot');
    const told = inLines(toldOf(row, rows, file.settings, units), COLUMNS - start.length);
    return told.map((text, line) => {
      const whole = `${line === 0 ? start : ' '.repeat(start.length)}${text}`.trimEnd();
      return isSpot ? paint.bold(whole) : whole;
    });
  });
  const text = [...scaleHead(file, units, ascii), '', ...lines, ''].join('\n');
  return ascii ? asciiText(text) : text;
}

/** Mark, clock and diameter of each row, in columns. */
function startTexts(rows: readonly ScaleRow[], settings: Settings, units: Units): string[] {
  const cells = rows.map((row) => [clockText(row, settings), ...diameterCells(row, units)]);
  const widest = (column: number) =>
    cells.reduce((most, cell) => Math.max(most, cell[column]?.length ?? 0), 0);
  const widths = (cells[0] ?? []).map((_, column) => widest(column));
  return cells.map((cell, index) => {
    const mark = rows[index]?.events.some(({ kind }) => kind === 'spot') ? '>' : ' ';
    const [clock = '', ...diameters] = cell.map((text, column) =>
      column === 0 ? text.padEnd(widths[column] ?? 0) : text.padStart(widths[column] ?? 0),
    );
    return `${[`${mark} ${clock}`, ...diameters].join('  ')}   `;
  });
}

/** `02:24.1`, whole minutes as `02:00`; at half speed the lathe's clock behind it. */
function clockText({ atSeconds }: ScaleRow, { speedFactor }: Settings): string {
  if (atSeconds === null) return '';
  const short = (seconds: number) => timeText(seconds).replace(/(:00)\.0$/, '$1');
  const lathe = speedFactor === 1 ? '' : ` (lathe ${short(atSeconds / speedFactor)})`;
  return `${short(atSeconds)}${lathe}`;
}

/** Millimetres; or inches as a decimal, for a readout, and as a rule shows them. */
function diameterCells({ diameter }: ScaleRow, units: Units): string[] {
  const text = diameter === null ? '' : diameterText(diameter, units);
  if (units === 'metric') return [text];
  return [text, diameter === null ? '' : ruleText(diameter)];
}

/** Everything that is said at a row, the countdown last. */
function toldOf(
  row: ScaleRow,
  rows: readonly ScaleRow[],
  settings: Settings,
  units: Units,
): string[] {
  const events = row.events.flatMap((event) => scaleEventTexts(event, settings, units));
  const next = nextText(row, rows, settings);
  return next === '' ? events : [...events, next];
}

/** Texts behind each other, each whole, in as many lines as that takes; one at least. */
function inLines(texts: readonly string[], columns: number): string[] {
  const lines: string[] = [];
  for (const text of texts) {
    const last = lines.at(-1);
    const joined = `${last}; ${text}`;
    if (last !== undefined && joined.length <= columns) lines[lines.length - 1] = joined;
    else lines.push(text);
  }
  return lines.length === 0 ? [''] : lines;
}

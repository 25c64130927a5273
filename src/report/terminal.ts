import type { ChalkInstance } from 'chalk';
import type { ForecastedFile } from '../forecast-result.js';
import { voidText } from './acceptance-text.js';
import { asciiText } from './ascii-text.js';
import { chart } from './chart.js';
import { findingList } from './finding-list.js';
import { handText } from './hand-text.js';
import { headLoadText } from './head-load-text.js';
import { headroomText } from './headroom-text.js';
import { hotSpotTable } from './hot-spot-table.js';
import { hotSpotText } from './hot-spot-text.js';
import type { Units } from './length-text.js';
import { orderText } from './order-text.js';
import { planTable } from './plan-table.js';
import { levelsText, programLengthText } from './program-text.js';
import { safeText } from './safe-text.js';
import { assumptionText, setUpText } from './set-up-text.js';
import type { ToldFile } from './told-file.js';
import { trackTable } from './track-table.js';
import { unseenSpeed } from './unseen-speed.js';
import { verdictText } from './verdict-text.js';
import { wrapText } from './wrap-text.js';

export interface TerminalOptions {
  readonly units: Units;
  readonly paint: ChalkInstance;
  /** Of the terminal; 80 where there is none. Less than 80 is not used, nor more than 100. */
  readonly columns?: number;
  /** Every finding, and every hot spot in full, however long that gets. */
  readonly details?: boolean;
  /** Nothing beyond ASCII, but for names. */
  readonly ascii?: boolean;
}

const NARROWEST = 80;
const WIDEST = 100;
/**
 * Lines that a side may take: of a screen of 50, what the cautions behind it and a prompt leave. A
 * narrow one takes more.
 */
const LINES = { wide: 45, narrow: 54 };
/** Lines that the findings get, however full the screen is. */
const LEAST_FOR_FINDINGS = 8;

/** One side on one screen, for the engineer at the lathe: what to dial in first, then why. */
export function sideText(file: ToldFile, options: TerminalOptions): string {
  const { units, paint, details = false, ascii = false } = options;
  const columns = Math.min(WIDEST, Math.max(NARROWEST, options.columns ?? NARROWEST));
  const wrap = (text: string, first = '  ') =>
    text === '' ? [] : wrapText(text, first, `${first}  `, columns).split('\n');
  const name = paint.bold(safeText(file.name));
  const top = [
    ...wrap(`${name}${assumptionText(file)}: ${setUpText(file, units)}`, ''),
    ...wrap(handText(file, units)),
    ...wrap(verdictText(file, paint)),
    ...wrap(voidText(file.voidAcceptances ?? [])),
    ...wrap(programLengthText(file, units)),
    ...wrap([levelsText(file), headroomText(file)].filter((text) => text !== '').join(' ')),
    ...wrap(isSilent(file) ? '' : headLoadText(file.forecast.headLoad)),
  ];
  const below = [
    ...planTable(file, units, columns),
    ...spaced(trackTable(file, units, columns, ascii)),
    ...spaced(wrap(orderText(file, units))),
    ...spaced(chart(file, { units, paint, columns, ascii })),
    ...spaced(hotSpotLines(file, units, columns, details)),
  ];
  const lines = columns < WIDEST ? LINES.narrow : LINES.wide;
  const left = lines - top.length - below.length;
  const room = details ? Number.POSITIVE_INFINITY : Math.max(LEAST_FOR_FINDINGS, left - 1);
  const findings = spaced(findingList(file, { units, paint, columns, room }));
  // A blank between the sentences and the table, where it costs no finding.
  const blank = findings.length < left ? [''] : [];
  const text = [...top, ...blank, ...below, ...findings, ''].join('\n');
  // The name stays as it is: it is looked for.
  return ascii ? name + asciiText(text.slice(name.length)) : text;
}

function isSilent({ forecast }: ForecastedFile): boolean {
  return forecast.findings.some(({ id }) => id === 'silent');
}

function spaced(lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', ...lines];
}

function hotSpotLines(
  file: ForecastedFile,
  units: Units,
  columns: number,
  details: boolean,
): string[] {
  const { hotSpots } = file.forecast;
  if (hotSpots.length === 0) return [];
  const unseen = unseenSpeed(file) === '' ? [] : [`  ${unseenSpeed(file)}`];
  if (!details) {
    return [
      wrapText(TITLE, '  ', '    ', columns),
      ...hotSpotTable(file, units, columns),
      ...unseen,
    ];
  }
  const texts = hotSpots.map((spot) => hotSpotText(spot, file.settings, units, file.hand?.tracks));
  const lines = texts.map((text, at) => wrapText(`${at + 1}  ${text}`, '  ', '     ', columns));
  return ['  Where land is least:', ...lines.join('\n').split('\n'), ...unseen];
}

const TITLE = 'Least land, and the error of speed, depth or timing it holds to, each alone:';

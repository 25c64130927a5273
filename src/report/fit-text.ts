import type { ChalkInstance } from 'chalk';
import type { SideFit } from '../fit/fit-result.js';
import { asciiText } from './ascii-text.js';
import { formatTable } from './fit-format-table.js';
import { levelTable } from './fit-level-table.js';
import { basePitchText, limitTexts } from './fit-limit-text.js';
import { fitNotes, REMEDIES_TITLE } from './fit-notes.js';
import { remedyTable } from './fit-remedy-table.js';
import { clockText } from './fit-remedy-text.js';
import { fitSentence } from './fit-sentence.js';
import { fixed, levelText, type Units } from './length-text.js';
import { safeText } from './safe-text.js';
import { severityPaint } from './severity-paint.js';
import { wrapText } from './wrap-text.js';

export interface FitTextOptions {
  readonly units: Units;
  readonly paint: ChalkInstance;
  /** Of the terminal; 80 where there is none. Less than 80 is not used, nor more than 100. */
  readonly columns?: number;
  readonly details: boolean;
  readonly ascii: boolean;
}

const NARROWEST = 80;
const WIDEST = 100;

/** One side for the engineer: what to do, then how loud, how long, on which disc, and why. */
export function fitText(fit: SideFit, options: FitTextOptions): string {
  const { units, paint, details, ascii } = options;
  const columns = Math.min(WIDEST, Math.max(NARROWEST, options.columns ?? NARROWEST));
  const wrap = (text: string, first = '  ') =>
    text === '' ? [] : wrapText(text, first, `${first}  `, columns).split('\n');
  const name = paint.bold(safeText(fit.name));
  const lines = [
    ...wrap(`${name}: ${fitSentence(fit, units)}`, ''),
    ...wrap(verdictLine(fit, paint)),
    ...wrap(lengthLine(fit)),
    ...limitTexts(fit).flatMap((text) => wrap(text)),
    ...wrap(basePitchText(fit.basePitch, fit, units)),
    '',
    ...levelTable(fit, units),
    '',
    ...formatTable(fit, units),
    ...remedyLines(fit, units, details),
    ...fitNotes(fit).flatMap((note) => wrap(note)),
    '',
  ];
  const text = `${lines.join('\n')}\n`;
  // The name stays as it is: it is looked for.
  return ascii ? name + asciiText(text.slice(name.length)) : text;
}

function verdictLine(
  { verdict, findings, levelDb, executed }: SideFit,
  paint: ChalkInstance,
): string {
  const label = severityPaint(verdict, paint)(verdict.toUpperCase());
  const faults = findings.filter(({ severity }) => severity === 'fault').length;
  const count = faults === 0 ? 'no fault' : `${faults} fault${faults > 1 ? 's' : ''}`;
  return `${label} at the planned ${levelText(levelDb)} by ${executed === 'machine' ? "the lathe's own automation" : executed}: ${count}.`;
}

function lengthLine({ durationSeconds, turns, settings }: SideFit): string {
  const speed = `${fixed(turns, 1)} turns at ${Number(fixed(settings.rpm, 2))} rpm`;
  return `${clockText(durationSeconds, settings)}, ${speed}, ${settings.disc}-inch ${settings.medium}.`;
}

function remedyLines(fit: SideFit, units: Units, details: boolean): string[] {
  const table = remedyTable(fit, units, details);
  if (table.length === 0) return [];
  return ['', `  ${REMEDIES_TITLE}:`, ...table];
}

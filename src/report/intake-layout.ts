import type { ChalkInstance } from 'chalk';
import { INTAKE_IDS } from '../intake/broken-rule.js';
import type { Severity, Verdict } from '../model/forecast-types.js';
import { clustersOf, columnsOf } from './folder-clusters.js';
import { folderLabels, type Named } from './folder-labels.js';
import { padded } from './folder-layout.js';
import { shortenNames } from './folder-shorten.js';
import { type IntakeCells, NOTHING } from './intake-columns.js';
import type { Units } from './length-text.js';
import { safeText } from './safe-text.js';
import { severityPaint } from './severity-paint.js';

/** Lines of a run, one a file. */
export interface IntakeLayout {
  /** What stands over them; empty where a program reads. */
  readonly head: string;
  /** @param at place of the file among all of the run; what is behind the last has `path` alone */
  readonly line: (at: number, cells: IntakeCells, path?: string) => string;
}

/** A line a file for programs: words behind tabs, the path first and in full. */
export function tabbedLayout(paths: readonly string[]): IntakeLayout {
  return {
    head: '',
    line: (at, { verdict, worst, time, spare, level }, path = paths[at] ?? '') =>
      `${[safeText(path), verdict, worst, time, spare, level].join('\t')}\n`,
  };
}

export interface TerminalFacts {
  readonly columns: number;
  readonly ascii: boolean;
  readonly paint: ChalkInstance;
  readonly units: Units;
}

const VERDICT_WIDTH = 'caution'.length;
const WORST_WIDTH = Math.max(...INTAKE_IDS.map((id) => id.length));
const NUMBERS = { time: 6, spare: 7, level: 6 };
const GAP = '  ';
/** Less would not tell names apart. */
const NARROWEST_NAME = 12;

/**
 * A line a file for a reader, in columns whose widths are known before the first file is: names are
 * cut to what the terminal leaves them.
 */
export function terminalLayout(
  paths: readonly string[],
  { columns, ascii, paint, units }: TerminalFacts,
): IntakeLayout {
  const others = [VERDICT_WIDTH, WORST_WIDTH, ...Object.values(NUMBERS)];
  const taken = others.reduce((sum, width) => sum + GAP.length + width, 0);
  const room = Math.max(NARROWEST_NAME, columns - taken);
  const labels = folderLabels(paths.map(named), room, ascii ? '~' : '…');
  const shortened = (path: string) => shortenNames([path], room, ascii ? '~' : '…')[0] ?? '';
  const widths = labels.map((label) => columnsOf(clustersOf(label)));
  const nameWidth = widths.reduce((widest, width) => Math.max(widest, width), 'file'.length);
  const row = (name: string, cells: IntakeCells, verdict: string) => {
    const words = [
      padded(name, nameWidth, 'left'),
      `${verdict}${' '.repeat(Math.max(0, VERDICT_WIDTH - cells.verdict.length))}`,
      padded(cells.worst, WORST_WIDTH, 'left'),
    ];
    // What was not judged has no figures, and its code takes their room.
    if (cells.time === NOTHING) return words.join(GAP).trimEnd();
    const { time, spare, level } = NUMBERS;
    const figures = [
      padded(cells.time, time, 'right'),
      padded(cells.spare, spare, 'right'),
      padded(cells.level, level, 'right'),
    ];
    return [...words, ...figures].join(GAP);
  };
  const head = {
    verdict: 'verdict',
    worst: 'worst finding',
    time: 'min:s',
    spare: units === 'us' ? 'in left' : 'mm left',
    level: 'fit dB',
  };
  return {
    head: `${row('file', head, head.verdict)}\n`,
    line: (at, cells, path = '') =>
      `${row(labels[at] ?? shortened(path), cells, painted(cells.verdict, paint))}\n`,
  };
}

function painted(verdict: string, paint: ChalkInstance): string {
  const known = VERDICTS.find((one) => one === verdict);
  return known === undefined ? paint.bold.red(verdict) : severityPaint(known, paint)(verdict);
}

const VERDICTS: readonly (Verdict | Severity)[] = ['clear', 'note', 'caution', 'fault'];

function named(path: string): Named {
  const name = path.split('/').at(-1) ?? '';
  return { name: name === '' ? path : name, path };
}

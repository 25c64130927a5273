import type { ForecastedFile } from '../forecast-result.js';
import type { Finding, Severity } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import type { Cell } from './csv.js';
import { findingText } from './finding-text.js';
import { roundSeconds } from './numbers.js';
import { timeText } from './place-text.js';

type Cells = Readonly<Record<string, Cell>>;

const WORST_FIRST = ['fault', 'caution', 'note'] as const satisfies readonly Severity[];

/** How many findings there are of each severity; those the house accepts are counted apart. */
export function countCells(findings: readonly Finding[] | null): Cells {
  const count = (severity: Severity) =>
    findings?.filter((one) => isOpen(one) && one.severity === severity).length ?? null;
  return {
    faults: count('fault'),
    cautions: count('caution'),
    notes: count('note'),
    accepted: findings?.filter((one) => !isOpen(one)).length ?? null,
  };
}

/** The first in time of the worst severity; one about the whole file comes before all. */
export function worstCells(file: ForecastedFile | null): Cells {
  const open = file?.forecast.findings.filter(isOpen) ?? [];
  const severity = WORST_FIRST.find((one) => open.some((finding) => finding.severity === one));
  const worst = open
    .filter((finding) => finding.severity === severity)
    .sort((a, b) => (a.atSeconds ?? -Infinity) - (b.atSeconds ?? -Infinity))[0];
  const words =
    file === null || worst === undefined
      ? null
      : findingText(worst, { settings: file.settings, units: 'metric', tracks: file.hand?.tracks });
  return {
    worstFinding: worst?.id ?? null,
    worstSeverity: worst?.severity ?? null,
    ...placeCells('worst', worst?.atSeconds ?? null),
    worstMessage: words?.message ?? null,
    worstRemedy: words?.remedy ?? null,
  };
}

/** A place as a reader and as a script wants it: `03:12.4` and seconds. */
export function placeCells(name: string, atSeconds: Seconds | null): Cells {
  return {
    [`${name}At`]: atSeconds === null ? null : timeText(atSeconds),
    [`${name}AtSeconds`]: roundSeconds(atSeconds),
  };
}

function isOpen({ accepted }: Finding): boolean {
  return accepted === undefined;
}
